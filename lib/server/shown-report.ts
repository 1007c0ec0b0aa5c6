import type { EpisodePage, ShownPhoto } from './shown-episode';

/** All that the report of one episode says; plain data with its words ready. */
export interface EpisodeReport {
  readonly page: EpisodePage;
  /** Versions of the method that its photos were measured with. */
  readonly methodVersions: readonly string[];
  readonly visits: readonly ReportVisit[];
  /** Outlines that people drew, by photo, oldest first. */
  readonly redrawn: readonly { readonly key: string; readonly photo: string; readonly words: string; readonly numbers: string }[];
  readonly pictures: readonly ReportPicture[];
}

/** One line for each message and each photo, also where nothing could be measured. */
export interface ReportVisit {
  readonly key: string;
  readonly day: string;
  readonly at: string;
  /** Measured, or why not. */
  readonly photo: string;
  /** Each with its expanded uncertainty, or why there is none; in the order of `REPORT_MEASURED`. */
  readonly numbers: readonly string[];
  readonly pain: string;
  readonly signs: string;
}

export interface ReportPicture {
  /** Why this one is here. */
  readonly title: string;
  readonly photo: ShownPhoto;
}

export const REPORT_MEASURED = [
  ['reach', 'Reach', 'mm'],
  ['erythemaArea', 'Redness', 'mm²'],
  ['rawArea', 'Raw area', 'mm²'],
  ['grooveWidth', 'Groove', 'mm'],
] as const;

/** What every report says before anything else. */
export const REPORT_CAUTIONS = [
  'A measurement aid under the clinic’s own judgement: not a diagnosis and not a medical device. Local protocols and licensed practice come first.',
  'It cannot see depth, heat, pus under the skin or bone. Redness on darker skin may not show in a photo at all.',
  'All lengths and areas are projected onto the plane of the card: skin that turns away from it is seen shortened. A toe is curved.',
  'Each number is given with its uncertainty at k = 2. What is missing was not measured, and is not zero.',
] as const;

/** How it was measured, in short. */
export const REPORT_METHOD = [
  'A printed calibration card lies around the toe. Its markers give the plane and the scale of the picture, so that lengths are in millimetres; its grey and coloured fields give the light. A photo is refused, with its reason, where card, sharpness, light or tilt do not allow a measurement.',
  'A trained model proposes where redness, raw tissue, nail and nail fold lie; a region counts only where the erythema index steps across its outline by more than the reference skin scatters, and the index has a say in where that outline runs. Reach is the largest distance of the redness from the nail-fold margin; area is what its outline encloses.',
  'The uncertainty combines print and card plane, lens, height of the nail over the card, where the outline lies, and what the model leaves over on rendered photos of known truth (JCGM 100, k = 2). Accuracy was judged on rendered photos, not on patients.',
] as const;
