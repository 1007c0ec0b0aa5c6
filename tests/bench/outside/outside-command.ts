import { writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { METHOD_VERSION } from '../../../lib/pipeline/method-version';
import { hasSharedData } from '../../shared-data';
import { chartPhotos } from './chart-photos';
import { decodeFiles } from './decode-files';
import { markerPhotos } from './marker-photos';
import { nailPhotos } from './nail-photos';
import { OutsideSheet } from './outside-sheet';
import { count, type OutsideTable, worstOf } from './outside-table';
import { photosWithoutCard, toePhotos, woundPhotos } from './skin-photos';

const KINDS: readonly { readonly folder: string; readonly judge: (sheet: OutsideSheet | null) => Promise<OutsideTable> }[] = [
  { folder: 'markers', judge: markerPhotos },
  { folder: 'colour', judge: chartPhotos },
  { folder: 'decode', judge: decodeFiles },
  { folder: 'skin', judge: photosWithoutCard },
  { folder: 'skin', judge: toePhotos },
  { folder: 'skin', judge: woundPhotos },
  { folder: 'skin', judge: nailPhotos },
];

/**
 * Pictures that nobody of this project made: one table for each kind, worst cases named.
 * `npm run bench -- outside [--json FILE] [--sheet FILE.png]`
 */
export async function outsideCommand(words: readonly string[]): Promise<void> {
  const { values } = parseArgs({ args: [...words], options: { json: { type: 'string' }, sheet: { type: 'string' } } });
  const sheet = values.sheet ? new OutsideSheet() : null;
  const tables: OutsideTable[] = [];
  for (const { folder, judge } of KINDS.filter(({ folder: one }) => hasSharedData(one))) {
    const table = await judge(sheet);
    if (table.rows.length === 0) throw new Error(`../shared/data/${folder} is there but empty`);
    printTable(table);
    tables.push(table);
  }
  if (values.json) await writeFile(values.json, `${JSON.stringify({ madeOn: new Date().toISOString().slice(0, 10), methodVersion: METHOD_VERSION, tables }, null, 1)}\n`);
  if (sheet && values.sheet) await sheet.write(values.sheet);
}

function printTable(table: OutsideTable): void {
  console.log(`\n${table.kind}: ${table.rows.length}, found ${count(table, 'found')}, refused ${count(table, 'refused')}, wrong ${count(table, 'wrong')}`);
  if (table.assumed) console.log(`  assumed: ${table.assumed}`);
  for (const [name, value] of Object.entries(table.facts)) console.log(`  ${name}: ${value ?? '–'}`);
  console.log(`  worst${table.figure ? ` (${table.figure})` : ''}:`);
  for (const { name, verdict, figure, note } of worstOf(table)) console.log(`    ${verdict.padEnd(8)} ${name.padEnd(32)} ${String(figure ?? '–').padStart(8)}  ${note}`);
}
