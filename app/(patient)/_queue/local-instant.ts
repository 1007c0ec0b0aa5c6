const two = (count: number) => String(count).padStart(2, '0');

/** A moment as this phone's clock shows it, with its offset: `2026-03-01T09:30:00+01:00`. */
export function localInstant(ms: number, offsetMinutes: number = -new Date(ms).getTimezoneOffset()): string {
  const shifted = new Date(ms + offsetMinutes * 60_000).toISOString().slice(0, 19);
  const [sign, size] = [offsetMinutes < 0 ? '-' : '+', Math.abs(offsetMinutes)];
  return `${shifted}${sign}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
