/** What the journey needs from the outside world; `lib/edges` provides it, tests may hand in others. */
import type { DecodeRefusal } from '../photo/decode-refusals';
import type { PartPx } from '../photo/part-of';
import type { UprightPhoto } from '../photo/upright-photo';
import type { CardFit } from '../rectify/fit-card';
import type { DetectFiducials } from '../rectify/find-card';
import type { CardGeometry } from '../card/card-geometry';
import type { GreyImage } from '../rectify/grey-image';
import type { TissueFields } from '../segment/segmentation';
import type { ReflectanceMap } from '../colour/reflectance-map';

export type Decoded =
  | { readonly decoded: true; readonly photo: UprightPhoto }
  | { readonly decoded: false; readonly refusal: DecodeRefusal };

export interface AnalysisPorts {
  /** `glance` may be shown a small grey copy first, and answers which part of the photo it needs; null is all of it. */
  decodePhoto(file: Uint8Array, glance?: (copy: GreyImage) => PartPx | null): Promise<Decoded>;
  readonly detectFiducials: DetectFiducials;
  /** Text of the card's QR code; null where it cannot be read, which never matters to measuring. */
  readQr(photo: UprightPhoto, fit: CardFit, geometry: CardGeometry): string | null;
  inferTissue(map: ReflectanceMap): Promise<TissueFields>;
}
