import type { Episode } from './episode';

/**
 * Is this a foot at risk? Then a finding weighs more.
 *
 * @param episode its risks, any of the list
 * @example isAtRisk({ risks: ['diabetes'] }) // true
 */
export const isAtRisk = ({ risks }: Pick<Episode, 'risks'>): boolean => risks.length > 0;
