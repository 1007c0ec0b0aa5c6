/** The quick choices of the form, in words. */
import { EDGES, FEET, IF_IT_FAILS, MATRICECTOMIES, SIDES } from '@/lib/care/procedure';
import { RISKS } from '@/lib/care/risks';

const options = <Value extends string>(values: readonly Value[], words: Readonly<Record<Value, string>>) => values.map((value) => ({ value, label: words[value] }));

export const FOOT = options(FEET, { left: 'Left', right: 'Right' });
export const SIDE = options(SIDES, { medial: 'Medial (towards the other foot)', lateral: 'Lateral (towards the second toe)' });
export const EDGE = options(EDGES, { whole: 'Whole curved edge', spike: 'Spike seen', torn: 'Torn end', unknown: 'Not known' });
export const MATRIX = options(MATRICECTOMIES, { none: 'None', naoh: 'Sodium hydroxide', phenol30: 'Phenol 30 s', phenol60: 'Phenol 60 s', unknown: 'Not known' });
export const FAILS = options(IF_IT_FAILS, { partialAgain: 'Partial removal again', withMatricectomy: 'Again, matrix treated', wholeNail: 'Whole nail removed', refer: 'Refer to a surgeon' });
export const RISK = options(RISKS, {
  diabetes: 'Diabetes',
  neuropathy: 'Neuropathy',
  arterial: 'Arterial disease',
  immunosuppressed: 'Immunosuppression',
  dialysis: 'Dialysis',
  anticoagulant: 'Anticoagulant',
  prosthesis: 'Prosthetic joint or valve',
  under12: 'Under 12',
  pregnant: 'Pregnancy',
  amputation: 'Earlier amputation',
});
export const SEEN = [
  { value: 'yes', label: 'Seen' },
  { value: 'no', label: 'None seen' },
] as const;
export const FELT = [
  { value: 'yes', label: 'Felt' },
  { value: 'no', label: 'Not felt' },
] as const;
export const STRIP = ['2', '2.5', '3', '3.5', '4', '5'].map((value) => ({ value, label: `${value} mm` }));
export const BLOCK = [
  { value: 'none', label: 'Not given' },
  ...['10', '20', '30', '45'].map((value) => ({ value, label: `${value} min before` })),
  { value: 'other', label: 'At another time' },
];
export const ANTIBIOTIC = [
  { value: 'none', label: 'Not started' },
  { value: 'now', label: 'Started at the procedure' },
  { value: 'other', label: 'At another time' },
];
export const LANGUAGE = [
  { value: 'en', label: 'English' },
  { value: 'es', label: 'Español' },
] as const;
