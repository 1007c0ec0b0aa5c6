import { randomUUID } from 'node:crypto';
import type { Actor } from '../access/actor';
import { errorFacts, logEvent } from '../edges/log/log-event';
import { isSameOrigin } from '../edges/session/same-origin';
import { type Answer, refusal } from './answer';
import { readActor } from './read-actor';
import { store } from './store';

/** Nothing that is answered here may be kept, sniffed, framed or run by anybody. */
const HEADERS = {
  'cache-control': 'private, no-store',
  'content-security-policy': "default-src 'none'; frame-ancestors 'none'; sandbox",
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
} as const;

const READS = ['GET', 'HEAD'];

/**
 * Every route goes through here: changes come from our own pages or are refused, the actor is read from the session,
 * and an error is answered as what it is, with an id that the log has too.
 */
export async function serve(request: Request, work: (actor: Actor) => Promise<Answer>): Promise<Response> {
  return respond(await answered(request, work));
}

async function answered(request: Request, work: (actor: Actor) => Promise<Answer>): Promise<Answer> {
  try {
    const { settings } = await store();
    if (!READS.includes(request.method) && !isSameOrigin(request.headers, settings.origin)) return refusal(403, 'otherOrigin');
    const preferred = new URL(request.url).pathname.startsWith('/api/patient/') ? 'patient' : 'staff';
    return await work(await readActor(request.headers, preferred));
  } catch (error) {
    // Never the address: a personal link's secret stands in one.
    const requestId = randomUUID();
    logEvent('requestFailed', { requestId, method: request.method, ...errorFacts(error) });
    return refusal(500, 'ourMistake', { requestId });
  }
}

function respond({ status, json, bytes, headers }: Answer): Response {
  const isJson = json !== undefined;
  const body = isJson ? JSON.stringify(json) : (bytes ?? null);
  return new Response(body, { status, headers: { ...HEADERS, ...(isJson ? { 'content-type': 'application/json' } : {}), ...headers } });
}
