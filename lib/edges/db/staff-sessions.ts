import type { Queries } from './open-database';

export interface StaffRow {
  readonly staffId: string;
  readonly clinicId: string;
  readonly role: string;
  readonly name: string;
  readonly clinicName: string;
}

/** Whose session this is, if it still runs and the person still works here. */
export async function findStaffSession(queries: Queries, tokenHash: string, now: Date): Promise<StaffRow | null> {
  const session = await queries.staffSession.findUnique({
    where: { tokenHash, endsAt: { gt: now }, staff: { active: true } },
    select: { staff: { select: { id: true, clinicId: true, role: true, name: true, clinic: { select: { name: true } } } } },
  });
  if (session === null) return null;
  const { id, clinic, role, ...person } = session.staff;
  return { staffId: id, ...person, role, clinicName: clinic.name };
}

export async function startStaffSession(queries: Queries, session: { tokenHash: string; staffId: string; startedAt: Date; endsAt: Date }): Promise<void> {
  await queries.staffSession.create({ data: session });
}

/** Ends it; and sweeps away those that have run out. */
export async function endStaffSession(queries: Queries, tokenHash: string, now: Date): Promise<void> {
  await queries.staffSession.deleteMany({ where: { OR: [{ tokenHash }, { endsAt: { lte: now } }] } });
}

/** Ends all that this person is signed in to, but one. */
export async function endOtherSessions(queries: Queries, staffId: string, tokenHash: string): Promise<void> {
  await queries.staffSession.deleteMany({ where: { staffId, NOT: { tokenHash } } });
}

/** Who signs in with this address, and what the password is compared with. */
export async function findStaffByEmail(queries: Queries, email: string) {
  return queries.staff.findUnique({
    where: { email, active: true },
    select: { id: true, clinicId: true, role: true, credential: { select: { passwordHash: true } } },
  });
}
