import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { type Answer, answer, refusedBy } from './answer';
import { store } from './store';

/** Does the database answer? Nothing about anybody. */
export async function loadHealth(actor: Actor): Promise<Answer> {
  const may = guard(actor, 'health.read', null);
  if (!may.allowed) return refusedBy(may);
  const { database } = await store();
  const waiting = await database.job.count({ where: { state: { in: ['waiting', 'running'] } } });
  return answer({ database: 'answers', photosWaiting: waiting });
}
