import { patientStateSchema } from '../../../lib/care/patient-contract';
import { hasSomethingToSend } from './kept-check-in';
import { phoneStore } from './phone-store';
import { sendCheckIn, type SendOutcome, type SendPorts } from './send-check-in';

/** A piece that has not got through by then will not; the next attempt goes on where the server stands. */
const STALLED_MS = 45_000;

const PORTS: SendPorts = {
  request: (path, init) => fetch(path, { ...init, cache: 'no-store', signal: AbortSignal.timeout(STALLED_MS) }),
  checkIn: phoneStore.checkIn,
  piece: phoneStore.piece,
  update: phoneStore.update,
  forgetPieces: phoneStore.forgetPieces,
};

/** Whose link the server knows this phone by now; it may have changed since this page was opened. */
async function ownerNow(): Promise<string> {
  const response = await PORTS.request('/api/patient/state');
  if (!response.ok) throw new Error(`The server answered ${response.status}.`);
  return patientStateSchema.parse(await response.json()).procedureAt;
}

async function sendEach(owner: string): Promise<SendOutcome> {
  if ((await ownerNow()) !== owner) return 'done';
  const waiting = (await phoneStore.checkIns()).filter((kept) => kept.owner === owner && hasSomethingToSend(kept));
  let worst: SendOutcome = 'done';
  for (const { clientId } of waiting) {
    const outcome = await sendCheckIn(clientId, PORTS);
    if (outcome !== 'done') worst = outcome;
    if (outcome === 'later') break;
  }
  return worst;
}

let running: Promise<SendOutcome> | null = null;
let wantedAgain = false;

/**
 * Sends everything of one person that waits, one after the other. However often it is called, and in however many
 * tabs, one sender works at a time; what was added meanwhile is looked at before it ends.
 */
export function sendAll(owner: string): Promise<SendOutcome> {
  if (running) {
    wantedAgain = true;
    return running;
  }
  running = alone(() => untilNothingNew(owner)).finally(() => (running = null));
  return running;
}

async function untilNothingNew(owner: string): Promise<SendOutcome> {
  let outcome: SendOutcome;
  do {
    wantedAgain = false;
    outcome = await sendEach(owner);
  } while (wantedAgain && outcome === 'done');
  return outcome;
}

/** Old browsers have no locks; there the server's own guard against doubles is the only one. */
const alone = async (work: () => Promise<SendOutcome>): Promise<SendOutcome> =>
  'locks' in navigator ? await navigator.locks.request('send', work) : work();
