/** How wide a text comes out, mm. */
export type WidthOf = (text: string, sizePt: number, weight: 'regular' | 'bold') => number;

/**
 * Breaks a text into lines that fit; a word that is wider than the line has one of its own.
 *
 * @param text words, line breaks kept
 * @param widthMm of the line
 * @param measure width of a piece of text, mm
 * @returns lines without the spaces at which they were broken
 * @example wrapWords('one two three', 7, (text) => text.length) // ['one two', 'three']
 */
export function wrapWords(text: string, widthMm: number, measure: (text: string) => number): string[] {
  return text.split('\n').flatMap((paragraph) => {
    const lines = [''];
    for (const word of paragraph.split(/\s+/).filter(Boolean)) {
      const longer = lines[lines.length - 1] === '' ? word : `${lines[lines.length - 1]} ${word}`;
      if (lines[lines.length - 1] === '' || measure(longer) <= widthMm) lines[lines.length - 1] = longer;
      else lines.push(word);
    }
    return lines.filter((line, at) => line !== '' || at > 0);
  });
}
