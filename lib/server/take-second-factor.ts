import { findSecondFactor, useSecondFactor } from '../edges/db/second-factors';
import type { Queries } from '../edges/db/open-database';
import { stepOfCode } from '../edges/session/one-time-code';
import { hashRecoveryCode } from '../edges/session/recovery-codes';
import { openFactorSecret } from './second-factor-key';

/** Somebody without a second factor needs none; with one, a code is asked for, taken once, or refused. */
export type FactorOutcome = 'notAsked' | 'codeNeeded' | 'wrongCode' | 'taken';

/** Call within a transaction, so that a code that comes twice at once is taken once. */
export async function takeSecondFactor(queries: Queries, staffId: string, code: string | null, at: Date, key: Uint8Array): Promise<FactorOutcome> {
  const factor = await findSecondFactor(queries, staffId);
  if (factor === null || factor.confirmedAt === null) return 'notAsked';
  if (code === null || code.trim() === '') return 'codeNeeded';
  const step = stepOfCode(openFactorSecret(factor.secret, key, staffId), code, at.getTime(), factor.lastStep);
  const left = factor.recoveryHashes.filter((hash) => hash !== hashRecoveryCode(code));
  if (step === null && left.length === factor.recoveryHashes.length) return 'wrongCode';
  await useSecondFactor(queries, staffId, step === null ? { lastStep: factor.lastStep, recoveryHashes: left } : { lastStep: step, recoveryHashes: factor.recoveryHashes });
  return 'taken';
}
