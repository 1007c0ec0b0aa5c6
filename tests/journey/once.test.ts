/** However often it is sent, it is there once; and what is answered is the same. */
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { closeStore } from '../../lib/server/store';
import { checkInBody, newClientId, photoHeaders, type Send, sendCheckIn, sendPhoto } from './phone';
import { openLink } from './routes-in-process';
import { samplePhoto, sha256Of, type TestClinic, testClinic, type TestPatient } from './test-clinic';

let clinic: TestClinic;
let patient: TestPatient;
let send: Send;
beforeAll(async () => {
  clinic = await testClinic();
  process.env.FOLDWATCH_DATA = clinic.folder;
  patient = await clinic.patient('one', 5);
  send = await openLink(patient.secret);
});
afterAll(async () => {
  await closeStore();
  await clinic.close();
});

const twentyTimes = <Result>(work: () => Promise<Result>) => Promise.all(Array.from({ length: 20 }, work));

describe('twenty at once of the same', () => {
  it('check-in are one row, one line in the audit list, and twenty equal answers', async () => {
    const [clientId, body] = [newClientId(), checkInBody()];
    const answers = await twentyTimes(() => sendCheckIn(send, clientId, body));
    expect(new Set(answers.map((one) => JSON.stringify(one))).size).toBe(1);
    expect(await clinic.database.checkIn.count({ where: { clientId } })).toBe(1);
    expect(await clinic.database.auditEvent.count({ where: { action: 'checkIn.send' } })).toBe(1);
  });

  it('photo are one row, one file, one job, and twenty equal answers', async () => {
    const photo = samplePhoto('measured/light-shade.jpg');
    const [clientId, headers] = [newClientId(), photoHeaders(photo)];
    const put = () => send(`/api/patient/check-ins/${clientId}/photo?offset=0`, { method: 'PUT', headers, body: Uint8Array.from(photo) });
    const answers = await Promise.all((await twentyTimes(put)).map(async (one) => `${one.status} ${await one.text()}`));
    expect(new Set(answers)).toEqual(new Set([`200 {"receivedBytes":${photo.length},"complete":true}`]));
    const rows = await clinic.database.photo.findMany({ where: { clientId }, include: { job: true } });
    expect(rows.map(({ sha256, job }) => [sha256, job?.state])).toEqual([[sha256Of(photo), 'waiting']]);
    expect(readdirSync(path.join(clinic.folder, 'photos', 'whole', patient.episodeId))).toEqual([sha256Of(photo)]);
    expect(readdirSync(path.join(clinic.folder, 'photos', 'unfinished', patient.episodeId))).toEqual([]);
  });
});

describe('sent again', () => {
  it('with other words, the first stay and the new ones stand beside them', async () => {
    const clientId = newClientId();
    await sendCheckIn(send, clientId, checkInBody({ answers: { pain: 2 } }));
    await sendCheckIn(send, clientId, checkInBody({ answers: { pain: 9 } }));
    const rows = await clinic.database.checkIn.findMany({ where: { clientId } });
    expect(rows.map(({ answers }) => answers).sort()).toEqual(['{"pain":2}', '{"pain":9}']);
  });

  it('under the same name by another person, each has their own', async () => {
    const other = await openLink((await clinic.patient('two', 5)).secret);
    const clientId = newClientId();
    await sendCheckIn(send, clientId, checkInBody());
    await sendCheckIn(other, clientId, checkInBody());
    expect(await clinic.database.checkIn.count({ where: { clientId } })).toBe(2);
    expect((await other(`/api/patient/check-ins/${clientId}/photo/verdict`, {})).status).toBe(404);
  });

  it('after its receipt was lost, the photo is confirmed without being sent again', async () => {
    const [clientId, photo] = [newClientId(), samplePhoto('measured/light-shade.jpg', 120)];
    await sendPhoto(send, clientId, photo);
    const receipt = await send(`/api/patient/check-ins/${clientId}/photo`, { headers: photoHeaders(photo) });
    expect(await receipt.json()).toEqual({ receivedBytes: photo.length, complete: true });
  });
});

describe('what cannot be taken', () => {
  const refused = async (more: Record<string, string>, query = '?offset=0') => {
    const headers = { ...photoHeaders(samplePhoto('measured/light-shade.jpg')), ...more };
    return (await send(`/api/patient/check-ins/${newClientId()}/photo${query}`, { method: 'PUT', headers, body: 'a' })).status;
  };

  it('is refused by its reason: too large, no hash, no length, another kind, a place that is no number', async () => {
    expect(await refused({ 'x-photo-length': String(40 * 1024 * 1024 + 1) })).toBe(413);
    expect(await refused({ 'x-photo-sha256': 'f00' })).toBe(400);
    expect(await refused({ 'x-photo-length': 'many' })).toBe(400);
    expect(await refused({ 'x-photo-kind': 'face' })).toBe(400);
    expect(await refused({}, '?offset=-1')).toBe(400);
  });

  it('is refused where it is no check-in: unknown answers, a temperature in Fahrenheit, a whole book', async () => {
    const put = async (body: string) => (await send(`/api/patient/check-ins/${newClientId()}`, { method: 'PUT', body })).status;
    expect(await put(JSON.stringify({ ...checkInBody(), answers: { mood: 'good' } }))).toBe(400);
    expect(await put(JSON.stringify(checkInBody({ answers: { feverC: 101 } })))).toBe(400);
    expect(await put('not json')).toBe(400);
    expect(await put(JSON.stringify(checkInBody({ worry: 'a'.repeat(100_000) })))).toBe(400);
  });
});
