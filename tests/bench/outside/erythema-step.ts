import { individualTypologyAngle } from '../../../lib/colour/individual-typology-angle';
import { convertLinearToLab65 } from '../../../lib/colour/convert-linear-to-lab65';
import { medianOf } from '../../../lib/rectify/median-of';
import { distanceField } from '../../../lib/segment/distance-field';
import type { ToeColours } from '../../../lib/segment/toe-colours';

/** Skin between 2 and 6 mm from a wound is what it is compared with. */
const RING_FROM_MM = 2;
const RING_TO_MM = 6;
const LEAST_PIXELS = 50;

/** Median erythema index inside a mask above that of the skin around it, and that skin's typology angle. */
export function erythemaStep(colours: ToeColours, inside: Uint8Array): { readonly stepEi: number; readonly itaDeg: number } | null {
  const away = distanceField(colours.grid, inside, RING_TO_MM + 1);
  const at = (chosen: (i: number) => boolean): number[] => Array.from(inside.keys()).filter((i) => Number.isFinite(colours.erythemaIndex[i]) && chosen(i));
  const within = at((i) => inside[i] === 1);
  const around = at((i) => inside[i] === 0 && away[i] >= RING_FROM_MM && away[i] <= RING_TO_MM);
  if (within.length < LEAST_PIXELS || around.length < LEAST_PIXELS) return null;
  const indexOf = (pixels: readonly number[]): number => medianOf(pixels.map((i) => colours.erythemaIndex[i]));
  const channel = (plane: Float32Array): number => medianOf(around.map((i) => plane[i]));
  const ita = individualTypologyAngle(convertLinearToLab65({ red: channel(colours.red), green: channel(colours.green), blue: channel(colours.blue) }));
  return ita && { stepEi: indexOf(within) - indexOf(around), itaDeg: ita.angleDeg };
}
