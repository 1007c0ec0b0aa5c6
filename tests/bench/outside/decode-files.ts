import { readFileSync } from 'node:fs';
import { decodePhoto } from '../../../lib/edges/decode/decode-photo';
import { REFUSED } from '../../known-answers/photo/expected-refusals';
import { sharedFile } from '../../shared-data';
import type { OutsideRow, OutsideTable } from './outside-table';

/** Hostile and unusual files: decoded or refused as their list says. */
export async function decodeFiles(): Promise<OutsideTable> {
  const names = Object.keys(JSON.parse(readFileSync(sharedFile('decode', 'facts.json'), 'utf8')) as object);
  const rows: OutsideRow[] = [];
  for (const name of names) {
    const start = performance.now();
    const result = await decodePhoto(new Uint8Array(readFileSync(sharedFile('decode', name))));
    const got = result.decoded ? 'decoded' : result.refusal.id;
    const expected = REFUSED[name] ?? 'decoded';
    rows.push({ name, verdict: got !== expected ? 'wrong' : result.decoded ? 'found' : 'refused', figure: Math.round(performance.now() - start), note: got === expected ? got : `${got}, expected ${expected}` });
  }
  return { kind: 'decode files', figure: 'time, ms', worse: 'higher', assumed: null, rows, facts: {} };
}
