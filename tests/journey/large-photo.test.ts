/** The production build takes what a phone may send, whole, and refuses what was cut off on the way. */
import { randomFillSync } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { photoPath } from '../../lib/edges/files/photo-path';
import { startPages } from '../browser/start-pages';
import { newClientId, photoHeaders, sendPhoto, type Send } from './phone';
import { samplePhoto, sha256Of, type TestClinic, testClinic, type TestPatient } from './test-clinic';

let clinic: TestClinic;
let patient: TestPatient;
let pages: { port: number; stop: () => void };
let send: Send;
beforeAll(async () => {
  clinic = await testClinic();
  patient = await clinic.patient('one', 2);
  pages = await startPages({ FOLDWATCH_DATA: clinic.folder });
  const origin = `http://127.0.0.1:${pages.port}`;
  const opened = await fetch(`${origin}/p/${patient.secret}`, { redirect: 'manual' });
  const [cookie] = (opened.headers.get('set-cookie') ?? '').split(';');
  send = (address, init) => fetch(origin + address, { ...init, headers: { ...(init.headers as Record<string, string>), cookie, origin } });
}, 300_000);
afterAll(async () => {
  pages.stop();
  await clinic.close();
});

/** A sample photo with bytes behind its end, as phones append them: the first megabytes are not all of it. */
function largePhoto(bytes: number): Uint8Array {
  const large = new Uint8Array(bytes);
  randomFillSync(large);
  large.set(samplePhoto('measured/light-shade.jpg'));
  return large;
}

const stored = (photo: Uint8Array) =>
  readFileSync(photoPath(`${clinic.folder}/photos`, { episodeId: patient.episodeId, sha256: sha256Of(photo) }));

it('keeps 25 megabytes in one piece, and 40 in pieces of four', async () => {
  const one = largePhoto(25 * 1024 * 1024);
  await sendPhoto(send, newClientId(), one, { pieceBytes: one.length });
  expect(sha256Of(stored(one))).toBe(sha256Of(one));
  const most = largePhoto(40 * 1024 * 1024);
  await sendPhoto(send, newClientId(), most, { pieceBytes: 4 * 1024 * 1024 });
  expect(sha256Of(stored(most))).toBe(sha256Of(most));
});

it('does not confirm a photo that was cut off at ten megabytes', async () => {
  const photo = largePhoto(25 * 1024 * 1024);
  const [clientId, headers] = [newClientId(), photoHeaders(photo)];
  const cut = await send(`/api/patient/check-ins/${clientId}/photo?offset=0`, { method: 'PUT', headers, body: Uint8Array.from(photo.subarray(0, 10 * 1024 * 1024)) });
  expect(await cut.json()).toEqual({ receivedBytes: 10 * 1024 * 1024, complete: false });
  expect(() => stored(photo)).toThrow(/ENOENT/);
});

it('answers no route to somebody who pretends to have passed a proxy', async () => {
  const response = await fetch(`http://127.0.0.1:${pages.port}/api/patient/state`, { headers: { 'x-middleware-subrequest': 'proxy:proxy:proxy:proxy:proxy' } });
  expect(response.status).toBe(401);
});

it('sends its pages with one policy, whose nonce its own scripts carry', async () => {
  const response = await fetch(`http://127.0.0.1:${pages.port}/today`);
  const [, nonce] = /'nonce-([^']+)'/.exec(response.headers.get('content-security-policy') ?? '') ?? [];
  const scripts = [...(await response.text()).matchAll(/<script\b[^>]*>/g)].map(([tag]) => tag);
  expect(scripts.length).toBeGreaterThan(0);
  expect(scripts.filter((tag) => !tag.includes(`nonce="${nonce}"`))).toEqual([]);
  expect(response.headers.get('cache-control')).toContain('no-store');
});
