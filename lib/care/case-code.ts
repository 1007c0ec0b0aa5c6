/** First letters of the first two words of a clinic's name. */
const LETTERS = 2;
const FIRST_NUMBER = 101;

/**
 * The letters that a clinic's case codes begin with.
 *
 * @param clinicName as people say it
 * @returns two capital letters where the name has two words, one or none where it has fewer
 * @example casePrefix('Heron Lane Foot Clinic') // 'HL-'
 */
export function casePrefix(clinicName: string): string {
  const words = clinicName.normalize('NFD').replace(/[^\p{L}\s]/gu, '').split(/\s+/).filter(Boolean);
  const letters = words.slice(0, LETTERS).map((word) => word[0].toUpperCase()).join('');
  return letters === '' ? '' : `${letters}-`;
}

/**
 * The next case code: letters and a number, easy to read out, and nothing of the person in it.
 *
 * @param clinicName gives the letters
 * @param taken codes that begin with those letters; others do no harm
 * @returns a code that is higher than all of them
 * @example nextCaseCode('Heron Lane Foot Clinic', ['HL-101', 'HL-109']) // 'HL-110'
 */
export function nextCaseCode(clinicName: string, taken: readonly string[]): string {
  const prefix = casePrefix(clinicName);
  const numbers = taken.flatMap((code) => (code.startsWith(prefix) && /^\d+$/.test(code.slice(prefix.length)) ? [Number(code.slice(prefix.length))] : []));
  return `${prefix}${numbers.reduce((highest, one) => Math.max(highest, one), FIRST_NUMBER - 1) + 1}`;
}
