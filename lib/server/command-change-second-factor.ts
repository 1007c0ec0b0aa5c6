import { z } from 'zod';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { readClinicFacts } from '../edges/db/read-clinic-facts';
import { beginSecondFactor, confirmSecondFactor, endSecondFactor, findSecondFactor } from '../edges/db/second-factors';
import { findStaff } from '../edges/db/staff-people';
import { addressModules } from '../edges/paper/qr-modules';
import { codeAddress, newCodeSecret, stepOfCode } from '../edges/session/one-time-code';
import { hashRecoveryCode, newRecoveryCodes } from '../edges/session/recovery-codes';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { openFactorSecret, sealFactorSecret, secondFactorKey } from './second-factor-key';
import { store } from './store';
import { takeSecondFactor } from './take-second-factor';

const code = z.string().min(6).max(40);
const bodySchema = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('begin') }),
  z.strictObject({ step: z.literal('confirm'), code }),
  z.strictObject({ step: z.literal('end'), code }),
]);

/** Sets up one's own second factor, or ends it with a code of its own. It counts from its first code on. */
export async function commandChangeSecondFactor(actor: Actor, body: unknown): Promise<Answer> {
  const may = guard(actor, 'secondFactor.change', findOwnClinic(actor));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const read = bodySchema.safeParse(body);
  if (!read.success) return refusal(400, 'notUnderstood');
  const asked = read.data;
  const { staffId, clinicId } = actor;
  const open = await store();
  const { database } = open;
  const key = await secondFactorKey(open);
  const at = now();
  return database.$transaction(async (queries) => {
    const factor = await findSecondFactor(queries, staffId);
    const note = () => noteAudit(queries, { clinicId, episodeId: null, actor: actorName(actor), action: `secondFactor.${asked.step}`, rule: may.rule, at });
    if (asked.step === 'begin') {
      if (factor?.confirmedAt) return refusal(409, 'hasOne', { sentence: 'There is a second factor already. End it first.' });
      const secret = newCodeSecret();
      await beginSecondFactor(queries, staffId, sealFactorSecret(secret, key, staffId), at);
      const person = await findStaff(queries, clinicId, staffId);
      const address = codeAddress(secret, person?.email ?? staffId, (await readClinicFacts(queries, clinicId)).name);
      return answer({ secret, address, code: addressModules(address) });
    }
    if (asked.step === 'confirm') {
      const step = factor === null || factor.confirmedAt ? null : stepOfCode(openFactorSecret(factor.secret, key, staffId), asked.code, at.getTime(), 0);
      if (step === null) return refusal(400, 'wrongCode', { sentence: 'That code does not fit. Is the clock of the phone right?' });
      const recoveryCodes = newRecoveryCodes();
      await confirmSecondFactor(queries, staffId, { lastStep: step, recoveryHashes: recoveryCodes.map(hashRecoveryCode), confirmedAt: at });
      await note();
      return answer({ recoveryCodes });
    }
    if ((await takeSecondFactor(queries, staffId, asked.code, at, key)) !== 'taken') return refusal(400, 'wrongCode', { sentence: 'That code does not fit, or it was used already.' });
    await endSecondFactor(queries, staffId);
    await note();
    return answer({ ended: true });
  });
}
