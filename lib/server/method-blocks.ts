import { CONTENT_WIDTH_MM } from '../card/sheet-layout';
import type { FlowBlock } from '../report/flow-boxes';
import type { PlainTable } from '../report/plain-table';
import type { ShownMethod } from './load-method';

/** The first column names the row and takes more than its share. */
const FIRST_COLUMN_SHARE = { few: 0.52, many: 0.25 } as const;
const FEW_COLUMNS = 3;

const small = (words: string): FlowBlock => ({ kind: 'small', words });
const listed = (words: string): FlowBlock => ({ kind: 'listed', words });

function table({ caption, columns, rows }: PlainTable): FlowBlock[] {
  const share = columns.length <= FEW_COLUMNS ? FIRST_COLUMN_SHARE.few : FIRST_COLUMN_SHARE.many;
  const others = (CONTENT_WIDTH_MM * (1 - share)) / (columns.length - 1);
  const widths = columns.map((title, at) => ({ title, widthMm: at === 0 ? CONTENT_WIDTH_MM * share : others }));
  return [small(`${caption}.`), { kind: 'table', columns: widths, rows }];
}

/** The method page as the last part of a printed report: how well the numbers hold, from the benches' own files. */
export function methodBlocks(method: ShownMethod): FlowBlock[] {
  const { example } = method;
  return [
    { kind: 'heading', words: 'How well these numbers hold' },
    { kind: 'text', words: 'Phantoms are photos that this project’s own renderer makes of toes and cards whose every millimetre is known. They are not patients. All curves are on the method page of the program.' },
    ...method.madeBy.map(small),
    ...method.accuracy.flatMap(table),
    ...table(method.fairness),
    ...method.unfair.map((sentence) => listed(`Beyond the limit: ${sentence}.`)),
    { kind: 'heading', words: 'Where the uncertainty comes from: an example' },
    ...(example === null
      ? [small('The example could not be worked out on this machine just now.')]
      : [
          small(`Worked out when this report was made, on the sample photo ${example.photo}: redness area ${example.value}; the phantom’s true area is ${example.trueAreaMm2.toFixed(1)} mm².`),
          ...table(example.table),
          small(example.sentence),
        ]),
    { kind: 'heading', words: 'Pictures made by others' },
    ...table(method.outside),
    ...method.outsideNotes.map(small),
    { kind: 'heading', words: 'Where the stated uncertainty stops holding' },
    ...(method.breaks.length === 0 ? [small('At no level did more than one photo in three lie outside its stated uncertainty.')] : method.breaks.map(listed)),
    ...method.gateReasons.map(listed),
  ];
}
