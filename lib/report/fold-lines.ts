/** RFC 5545, 3.1: a line has at most 75 octets, its line break not counted. */
const MOST_OCTETS = 75;

/**
 * Folds the lines of a calendar file anew, counted in octets of UTF-8 as the standard asks and never inside a character; the
 * library counts characters, and accented lines came out too long.
 *
 * @param text lines ended by CRLF, folded or not
 * @example foldLines('A:1\r\n') // 'A:1\r\n'
 */
export function foldLines(text: string): string {
  return text.replace(/\r\n[ \t]/g, '').split('\r\n').map(foldLine).join('\r\n');
}

function foldLine(line: string): string {
  const encoder = new TextEncoder();
  let folded = '';
  let octets = 0;
  for (const character of line) {
    const length = encoder.encode(character).length;
    if (octets + length > MOST_OCTETS) {
      folded += '\r\n ';
      octets = 1;
    }
    folded += character;
    octets += length;
  }
  return folded;
}
