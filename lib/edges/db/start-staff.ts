import { newId } from './new-id';
import type { Queries } from './open-database';

export interface StaffWords {
  readonly clinicId: string;
  readonly name: string;
  readonly email: string;
  readonly role: string;
  /** As `hashPassword` gives it. */
  readonly passwordHash: string;
}

/** @returns the id */
export async function startStaff(queries: Queries, { passwordHash, email, ...words }: StaffWords, madeAt: Date): Promise<string> {
  const id = newId();
  await queries.staff.create({ data: { id, ...words, email: email.trim().toLowerCase(), active: true, madeAt } });
  await queries.staffCredential.create({ data: { id: newId(), staffId: id, passwordHash, changedAt: madeAt } });
  return id;
}
