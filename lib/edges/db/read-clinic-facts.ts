import type { Queries } from './open-database';

/** What a clinic says about itself, without anything that belongs to it. */
export async function readClinicFacts(queries: Queries, id: string) {
  return queries.clinic.findUniqueOrThrow({
    where: { id },
    select: { name: true, phone: true, emergencyPhone: true, openingHours: true, timeZone: true, language: true, asksBirthYear: true, paper: true },
  });
}

export type ClinicFacts = Awaited<ReturnType<typeof readClinicFacts>>;

/** Whom patients call, and what paper lies in the printer. */
export async function setClinicFacts(queries: Queries, id: string, facts: Pick<ClinicFacts, 'phone' | 'emergencyPhone' | 'openingHours' | 'paper'>): Promise<void> {
  await queries.clinic.update({ where: { id }, data: facts });
}
