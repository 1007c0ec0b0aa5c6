/**
 * The camera's own wall clock as the file states it. EXIF (CIPA DC-008) writes `YYYY:MM:DD HH:MM:SS` without a zone;
 * cameras without a set clock write zeros or spaces.
 * @param text the DateTimeOriginal field, or null
 * @returns `2026-03-02T19:32:31`, or null when the field is absent, blank or no date of the calendar
 * @example parseExifTime('2026:03:02 19:32:31') // '2026-03-02T19:32:31'
 */
export function parseExifTime(text: string | null): string | null {
  const parts = /^(\d{4})[:-](\d\d)[:-](\d\d)[ T](\d\d):(\d\d):(\d\d)/.exec(text ?? '');
  if (!parts) return null;
  const [, year, month, day, hour, minute, second] = parts;
  const iso = `${year}-${month}-${day}T${hour}:${minute}:${second}`;
  const instant = new Date(`${iso}Z`);
  // A date such as 30 February is moved on by the calendar: it was never on a clock.
  return !Number.isNaN(instant.getTime()) && instant.toISOString().startsWith(iso) ? iso : null;
}

/**
 * The zone of that wall clock, from OffsetTimeOriginal only: OffsetTime belongs to the date of the last change.
 * @param text the OffsetTimeOriginal field, or null
 * @returns `+05:45`, or null when absent or outside −12:00 … +14:00 (IANA tz); never guessed
 * @example parseExifOffset('+05:45') // '+05:45'
 */
export function parseExifOffset(text: string | null): string | null {
  const parts = /^([+-])(\d\d):([0-5]\d)$/.exec((text ?? '').trim());
  if (!parts) return null;
  const minutes = (parts[1] === '-' ? -1 : 1) * (Number(parts[2]) * 60 + Number(parts[3]));
  return minutes >= -12 * 60 && minutes <= 14 * 60 ? parts[0] : null;
}
