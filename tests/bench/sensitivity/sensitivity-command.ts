import { writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { runSensitivity, type Sensitivity, STUDIED } from './run-sensitivity';

/**
 * How each measurand's error moves when one thing about the photo changes, also beyond what the gates let pass.
 * `npm run bench -- sensitivity [--json FILE]`; about a hundred phantoms, ten minutes.
 */
export async function sensitivityCommand(words: readonly string[]): Promise<void> {
  const { values } = parseArgs({ args: [...words], options: { json: { type: 'string' } } });
  const result = await runSensitivity((text) => process.stderr.isTTY && process.stderr.write(`\r\x1b[K${text}`));
  const made = { madeOn: new Date().toISOString().slice(0, 10), ...result };
  printSensitivity(made);
  if (values.json) await writeFile(values.json, `${JSON.stringify(made, null, 1)}\n`);
}

function printSensitivity({ photos, factors }: Sensitivity): void {
  console.log(`${photos} phantoms; median absolute error / median U, areas in % of the truth, lengths in mm`);
  for (const { name, unit, levels } of factors) {
    console.log(`\n  ${name}${unit ? `, ${unit}` : ''}`);
    for (const { level, refused, photos: n, gates, measurands } of levels) {
      const cells = STUDIED.map((key) => {
        const { medianAbsError, medianU } = measurands[key];
        const area = key.endsWith('Area');
        const text = (value: number | null): string => (value === null ? '–' : area ? (100 * value).toFixed(0) : value.toFixed(2));
        return `${key} ${text(medianAbsError)} / ${text(medianU)}`.padEnd(28);
      });
      console.log(`    ${String(level).padEnd(13)} refused ${refused} of ${n}  ${cells.join('')} ${gates.join(' ')}`);
    }
  }
}
