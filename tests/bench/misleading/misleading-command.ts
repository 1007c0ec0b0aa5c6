import { writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { analysisPorts } from '../../../lib/edges/analysis-ports';
import { METHOD_VERSION } from '../../../lib/pipeline/method-version';
import { isGross, judgeMisleading } from '../../misleading/judge-misleading';
import { MISLEADINGS } from '../../phantom/misleading-spec';

const OPTIONS = { seed: { type: 'string', default: '1' }, each: { type: 'string', default: '12' }, json: { type: 'string' } } as const;

/** Iodine, varnish, shadow edges and dried blood on toes with and without redness. `npm run bench -- misleading [SEED] [--each 12] [--json FILE]` */
export async function misleadingCommand(words: readonly string[]): Promise<void> {
  const { values, positionals } = parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
  const seed = Number(positionals[0] ?? values.seed);
  const ports = await analysisPorts();
  const rows = [];
  for (const isRed of [false, true]) {
    for (const kind of MISLEADINGS) {
      const photos = await judgeMisleading(kind, Number(values.each), seed, isRed, ports);
      const measured = photos.flatMap(({ area, trueMm2 }) => (area && 'value' in area ? [{ trueMm2, area }] : []));
      const gross = photos.filter(isGross).map(({ skinClass, trueMm2, area }) => ({ skinClass, trueMm2, foundMm2: area && 'value' in area ? area.value : null }));
      const row = {
        kind,
        isRed,
        photos: photos.length,
        refused: photos.filter(({ area }) => area === null).length,
        measured: measured.length,
        withinU: measured.filter(({ trueMm2, area }) => Math.abs(area.value - trueMm2) <= area.U).length,
        gross,
      };
      rows.push(row);
      console.log(`${isRed ? 'red  ' : 'clean'} ${kind.padEnd(11)} ${row.photos} photos  refused ${row.refused}  with an area ${row.measured}  within U ${row.withinU}  gross ${gross.length}`);
    }
  }
  if (values.json) await writeFile(values.json, `${JSON.stringify({ madeOn: new Date().toISOString().slice(0, 10), methodVersion: METHOD_VERSION, seed, rows }, null, 1)}\n`);
}
