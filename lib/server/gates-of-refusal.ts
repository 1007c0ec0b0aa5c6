import type { DecodeRefusalId } from '../photo/decode-refusals';
import type { GateId } from '../photo/reasons';

/** Files that another photo mends are asked for again; with the others a person looks first. */
const MENDED_BY: Partial<Record<DecodeRefusalId, GateId>> = {
  emptyFile: 'notAPhotograph',
  unsupportedFormat: 'notAPhotograph',
  severalPictures: 'notAPhotograph',
  tooSmall: 'resolution',
};

/** What the patient is told about a file that could not be opened: `gatesOfRefusal('tooSmall')` is `['resolution']`. */
export function gatesOfRefusal(id: DecodeRefusalId): GateId[] {
  const gate = MENDED_BY[id];
  return gate === undefined ? [] : [gate];
}
