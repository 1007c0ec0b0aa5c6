import { expect, it } from 'vitest';
import { episodeCsv } from '../../../lib/report/episode-csv';

it('quotes commas, quotes and line ends as RFC 4180 says, and ends each line with CRLF', () => {
  expect(episodeCsv(['a', 'b'], [['x,y', 'say "no"'], ['two\nlines', 1.5]])).toBe('a,b\r\n"x,y","say ""no"""\r\n"two\nlines",1.5\r\n');
});

it.each(['=1+1', '+1', '-1', '@sum', '\tx'])('disarms the text %j', (text) => {
  expect(episodeCsv(['a'], [[text]])).toBe(`a\r\n'${text}\r\n`);
});

it('leaves a negative number a number, and nothing empty', () => {
  expect(episodeCsv(['a', 'b'], [[-1.5, null]])).toBe('a,b\r\n-1.5,\r\n');
});

it('refuses a row with a cell too few', () => {
  expect(() => episodeCsv(['a', 'b'], [[1]])).toThrow('2 cells are needed, received 1');
});
