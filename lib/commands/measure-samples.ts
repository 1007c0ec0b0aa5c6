/** `npm run samples:measure`: measures the sample photos, draws their overlays, and puts both on one page. */
import { mkdir, readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { OWN_CARD } from '../card/own-card';
import { analysisPorts } from '../edges/analysis-ports';
import { writeWholeFile } from '../edges/paper/write-whole-file';
import { analysePhoto } from '../pipeline/analyse-photo';
import type { AnalysisJson } from '../pipeline/analysis-json';
import { analysisToJson } from '../pipeline/analysis-json';
import { demoPage, type DemoPicture } from '../report/demo-page';
import { CAUTION } from './caution';
import { drawOverlay } from './draw-overlay';
import { tableText, type UnreadPhoto } from './table-text';

const ROOT = path.resolve(import.meta.dirname, '..', '..');
const SAMPLES = path.join(ROOT, 'sample-images');
const OUT = path.join(ROOT, 'out', 'samples');
const FOLDERS = [
  { folder: 'measured', title: 'Photos that can be measured' },
  { folder: 'series', title: 'One toe, ten visits in two weeks: the redness spreads from day six' },
  { folder: 'refused', title: 'Photos that are kept but not measured, and why' },
] as const;

const ports = await analysisPorts();
await mkdir(OUT, { recursive: true });
// A photo that was handed in before is recognised across the folders.
const known = new Set<string>();
const sections: { title: string; pictures: DemoPicture[] }[] = [];
for (const { folder, title } of FOLDERS) {
  const results: (AnalysisJson | UnreadPhoto)[] = [];
  const pictures: DemoPicture[] = [];
  const names = (await readdir(path.join(SAMPLES, folder))).filter((name) => name.endsWith('.jpg')).sort();
  for (const name of names) {
    const file = await readFile(path.join(SAMPLES, folder, name));
    const context = { receivedAt: new Date().toISOString(), knownSha256: known };
    const result = await analysePhoto(file, { geometry: OWN_CARD, print: { scale: 1, relativeU: 0.005, confirmed: true }, context }, ports);
    if (!result.analysed) {
      results.push({ photo: name, unread: result.refusal });
      pictures.push({ name, picture: null, reasons: [result.refusal.sentence] });
      continue;
    }
    known.add(result.analysis.photo.sha256);
    const overlay = await drawOverlay(result.analysis);
    const picture = overlay && `${folder}-${name.replace('.jpg', '.png')}`;
    if (overlay && picture) await writeWholeFile(path.join(OUT, picture), overlay);
    results.push(analysisToJson(result.analysis, name));
    pictures.push({ name, picture, reasons: result.analysis.reasons.map((reason) => reason.advice) });
  }
  console.log(`\n${title}\n\n${tableText(results)}`);
  sections.push({ title, pictures });
}
await writeWholeFile(path.join(OUT, 'index.html'), demoPage(sections, CAUTION));
console.log(`\n${CAUTION}\n\nOverlays: ${path.join('out', 'samples', 'index.html')}`);
