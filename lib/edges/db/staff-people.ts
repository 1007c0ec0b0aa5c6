import { newId } from './new-id';
import type { Queries } from './open-database';

const select = { id: true, name: true, email: true, role: true, active: true, madeAt: true, hasFactor: true } as const;

/** Everybody who works or worked at a clinic, those who work there now first. */
export async function staffPeople(queries: Queries, clinicId: string) {
  return queries.staff.findMany({ where: { clinicId }, select, orderBy: [{ active: 'desc' }, { name: 'asc' }] });
}

export async function findStaff(queries: Queries, clinicId: string, id: string) {
  return queries.staff.findUnique({ where: { id, clinicId }, select });
}

/** Who has just signed in. */
export async function findStaffByEmail(queries: Queries, email: string) {
  return queries.staff.findUniqueOrThrow({ where: { email }, select: { id: true, clinicId: true, role: true } });
}

/** Under which address a person signs in. */
export async function findStaffEmail(queries: Queries, id: string): Promise<string> {
  return (await queries.staff.findUniqueOrThrow({ where: { id }, select: { email: true } })).email;
}

/** Is this the only admin who may still sign in? */
export async function isLastAdmin(queries: Queries, clinicId: string, id: string): Promise<boolean> {
  const admins = await queries.staff.findMany({ where: { clinicId, role: 'admin', active: true }, select: { id: true }, take: 2 });
  return admins.length === 1 && admins[0].id === id;
}

/** Another role; whoever is signed in has it with the next request. */
export async function setStaffRole(queries: Queries, id: string, role: string): Promise<void> {
  await queries.staff.update({ where: { id }, data: { role } });
}

/** Nobody is deleted: what they did stays under their name. Ends what they are signed in to. */
export async function setStaffActive(queries: Queries, id: string, active: boolean): Promise<void> {
  await queries.staff.update({ where: { id }, data: { active } });
  await queries.staffSession.deleteMany({ where: { staffId: id } });
  await queries.reviewClaim.deleteMany({ where: { staffId: id } });
}

export interface InvitationWords {
  readonly clinicId: string;
  readonly name: string;
  readonly email: string;
  readonly role: string;
  readonly madeBy: string;
}

export async function addInvitation(queries: Queries, tokenHash: string, words: InvitationWords, madeAt: Date, endsAt: Date): Promise<void> {
  await queries.staffInvitation.create({ data: { tokenHash, ...words, madeAt, endsAt, usedAt: null } });
}

/** Takes an invitation that still stands, once. Call within a transaction. @returns null where there is none such */
export async function takeInvitation(queries: Queries, tokenHash: string, at: Date): Promise<InvitationWords | null> {
  const { count } = await queries.staffInvitation.updateMany({ where: { tokenHash, usedAt: null, endsAt: { gt: at } }, data: { usedAt: at } });
  return count === 0 ? null : queries.staffInvitation.findUniqueOrThrow({ where: { tokenHash }, select: { clinicId: true, name: true, email: true, role: true, madeBy: true } });
}

/** With this password from now on; signed in nowhere. Somebody new, or somebody whose access was ended and who comes back. @returns the id; null where the address is another clinic's, or the last admin would be one no longer */
export async function employStaff(queries: Queries, { clinicId, name, email, role }: InvitationWords, passwordHash: string, at: Date): Promise<string | null> {
  const known = await queries.staff.findUnique({ where: { email }, select: { id: true, clinicId: true } });
  if (known !== null && known.clinicId !== clinicId) return null;
  if (known !== null && role !== 'admin' && (await isLastAdmin(queries, clinicId, known.id))) return null;
  const id = known?.id ?? newId();
  const now = { name, role, active: true };
  await queries.staff.upsert({ where: { id }, create: { id, clinicId, email, madeAt: at, ...now }, update: now });
  await queries.staffCredential.upsert({ where: { staffId: id }, create: { id: newId(), staffId: id, passwordHash, changedAt: at }, update: { passwordHash, changedAt: at } });
  await queries.staffSession.deleteMany({ where: { staffId: id } });
  return id;
}
