import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { parseClinicCard } from '../../../lib/colour/parse-clinic-card';

const FILE = [
  'name,L,a,b',
  'ramp1,94.0,0.5,-2.0',
  'ramp2,82.1,0.2,-1.1',
  'ramp3,66.0,0.1,-0.4',
  'ramp4,50.2,0.0,0.3',
  'red,45.0,50.1,30.2',
].join('\n');
const parse = (text: string) => parseClinicCard(text, OWN_CARD.patches);

describe('a clinic’s file of measured patches', () => {
  it('tells the light of every patch relative to the card’s white, and the white’s own', () => {
    const known = parse(FILE);
    if ('refused' in known) throw new Error(known.refused);
    expect(known.kind).toBe('clinic');
    expect(known.patches.get('ramp1')?.green).toBeCloseTo(1, 12);
    // L* 94 is Y = ((94 + 16) / 116)^3 = 0.853 (CIE 15); L* 50.2 is Y = 0.1859, 0.218 of the white.
    const white = known.paperLight;
    expect(0.2126 * white.red + 0.7152 * white.green + 0.0722 * white.blue).toBeCloseTo(0.853, 2);
    expect(known.patches.get('ramp4')?.green).toBeCloseTo(0.218, 2);
    expect(known.patches.get('red')?.red).toBeGreaterThan(3 * (known.patches.get('red')?.green ?? NaN));
  });

  it('may come with a byte order mark, Windows line ends and empty lines', () => {
    const windows = `\uFEFF${FILE.replaceAll('\n', '\r\n')}\r\n\r\n`;
    expect(parse(windows)).toEqual(parse(FILE));
  });

  it.each([
    ['another header', FILE.replace('name,L,a,b', 'patch;L;a;b'), 'the first line must be name,L,a,b', 1, 'patch;L;a;b'],
    ['decimal commas', FILE.replace('82.1,0.2,-1.1', '82,1,0,2,-1,1'), 'four fields', 3, 'ramp2,82,1,0,2,-1,1'],
    ['a patch that the card does not have', FILE.replace('red,', 'crimson,'), 'patch of this card', 6, 'crimson'],
    ['a word for a number', FILE.replace('66.0', 'dark'), 'must be numbers', 4, 'ramp3,dark,0.1,-0.4'],
    ['an empty field', FILE.replace('66.0', ''), 'must be numbers', 4, 'ramp3,,0.1,-0.4'],
    ['an L above 100', FILE.replace('94.0', '940'), 'between 0 and 100', 2, '940'],
    ['an a beyond any print', FILE.replace('50.1', '501'), 'between -128 and 128', 6, 'red,45.0,501,30.2'],
    ['a patch twice', `${FILE}\nred,45,50,30`, 'may stand once', 7, 'red'],
    ['no white', FILE.replace('ramp1,94.0,0.5,-2.0\n', ''), 'a white patch must be measured', null, 'no white patch'],
    ['too few greys', FILE.replace('ramp2', 'yellow'), 'at least 3 grey patches', null, '2 grey patches'],
  ])('is refused with %s, saying where and why', (_case, text, rule, line, received) => {
    const refused = parse(text);
    if (!('refused' in refused)) throw new Error('this file must be refused');
    expect(refused.refused).toContain(rule);
    expect(refused.line).toBe(line);
    expect(refused.received).toBe(received);
  });
});
