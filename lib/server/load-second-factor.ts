import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { findSecondFactor } from '../edges/db/second-factors';
import { type Answer, refusedBy } from './answer';
import { findOwnClinic } from './find-own-clinic';
import { store } from './store';

/** Whether one has a second factor, and how many recovery codes are left. */
export async function loadSecondFactor(actor: Actor): Promise<{ readonly hasFactor: boolean; readonly codesLeft: number } | { readonly refused: Answer }> {
  const { database } = await store();
  const may = guard(actor, 'secondFactor.change', findOwnClinic(actor));
  if (!may.allowed || !('staffId' in actor)) return { refused: may.allowed ? { status: 404 } : refusedBy(may) };
  const factor = await findSecondFactor(database, actor.staffId);
  return factor?.verified ? { hasFactor: true, codesLeft: factor.recoveryHashes.length } : { hasFactor: false, codesLeft: 0 };
}
