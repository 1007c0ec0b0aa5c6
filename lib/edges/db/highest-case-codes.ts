import type { Queries } from './open-database';

/** The highest case code of a clinic that is this prefix and a number; an empty list where there is none. */
export async function highestCaseCodes(queries: Queries, clinicId: string, prefix: string): Promise<string[]> {
  const [row] = await queries.$queryRaw<{ highest: number | bigint | null }[]>`
    SELECT max(CAST(substr(caseCode, ${prefix.length + 1}) AS INTEGER)) AS highest FROM Episode
    WHERE clinicId = ${clinicId} AND substr(caseCode, 1, ${prefix.length}) = ${prefix} AND substr(caseCode, ${prefix.length + 1}) NOT GLOB '*[^0-9]*' AND length(caseCode) > ${prefix.length}`;
  return row.highest === null ? [] : [`${prefix}${row.highest}`];
}
