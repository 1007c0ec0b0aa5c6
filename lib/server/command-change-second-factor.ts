import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { readClinicFacts } from '../edges/db/read-clinic-facts';
import { beginSecondFactor, endSecondFactor, findSecondFactor, keepRecoveryHashes } from '../edges/db/second-factors';
import { clearSignInDelay, takeSignInDelay } from '../edges/db/sign-in-delay';
import { findStaffEmail } from '../edges/db/staff-people';
import { addressModules } from '../edges/paper/qr-modules';
import { factorAddress, newFactorSecret, sealFactorSecret } from '../edges/session/factor-secret';
import { hashRecoveryCode, newRecoveryCodes } from '../edges/session/recovery-codes';
import { sessionCookie } from '../edges/session/session-cookie';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { authOfStore } from './auth-of-store';
import { findOwnClinic } from './find-own-clinic';
import { store } from './store';
import { takeCode } from './take-code';

const code = z.string().min(6).max(40);
const bodySchema = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('begin') }),
  z.strictObject({ step: z.literal('confirm'), code }),
  z.strictObject({ step: z.literal('end'), code }),
]);

/** Sets up one's own second factor, or ends it with a code of its own. It counts from its first code on. */
export async function commandChangeSecondFactor(actor: Actor, headers: Headers, body: unknown): Promise<Answer> {
  const may = guard(actor, 'secondFactor.change', findOwnClinic(actor));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood');
  const asked = read.data;
  const { staffId, clinicId } = actor;
  const open = await store();
  const { database } = open;
  const auth = await authOfStore(open);
  const at = now();
  const email = await findStaffEmail(database, staffId);
  const factor = await findSecondFactor(database, staffId);

  if (asked.step === 'begin') {
    if (factor?.verified) return refusal(409, 'hasOne', { sentence: 'There is a second factor already. End it first.' });
    const secret = newFactorSecret();
    await beginSecondFactor(database, staffId, await sealFactorSecret(auth, secret));
    const address = factorAddress(secret, email, (await readClinicFacts(database, clinicId)).name);
    return answer({ secret, address, code: addressModules(address) });
  }
  const waitSeconds = await database.$transaction((queries) => takeSignInDelay(queries, email, at));
  if (waitSeconds > 0) return refusal(429, 'tooManyTries', { sentence: `Too many tries. Wait ${waitSeconds} s.` });
  const isFirst = asked.step === 'confirm';
  // One that counts is not confirmed again, and one that waits for its first code is not ended with it.
  const taken = factor?.verified === !isFirst ? await takeCode(auth, { email, typed: asked.code }, headers) : 'wrongCode';
  if (typeof taken === 'string') return refusal(400, 'wrongCode', { sentence: isFirst ? 'That code does not fit. Is the clock of the phone right?' : 'That code does not fit, or it was used already.' });
  const recoveryCodes = newRecoveryCodes();
  await database.$transaction(async (queries) => {
    await (isFirst ? keepRecoveryHashes(queries, staffId, recoveryCodes.map(hashRecoveryCode)) : endSecondFactor(queries, staffId));
    await clearSignInDelay(queries, email);
    await noteAudit(queries, { clinicId, episodeId: null, actor: actorName(actor), action: `secondFactor.${asked.step}`, rule: may.rule, at });
  });
  // With its first code comes another session.
  return isFirst ? { ...answer({ recoveryCodes }), headers: { 'set-cookie': await sessionCookie(auth, taken) } } : answer({ ended: true });
}
