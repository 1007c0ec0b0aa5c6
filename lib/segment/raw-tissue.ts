import { convertLinearToLab65 } from '../colour/convert-linear-to-lab65';
import { DARK_BELOW_L, HUE_U_DEG, LIGHTNESS_U, YELLOW_FROM_HUE_DEG } from './constants';
import type { ToeColours } from './toe-colours';

/** A share of the raw surface, 0…1, and its standard uncertainty. */
export interface Share {
  readonly value: number;
  readonly u: number;
}

/** Red (granulating), yellow (slough, pus) and dark (crust, dried blood, dead) shares of a raw surface; they add up to one. */
export interface RawTissue {
  readonly red: Share;
  readonly yellow: Share;
  readonly dark: Share;
}

/**
 * What the raw surface is made of, by the red–yellow–black convention of wound care (common practice), from colours relative
 * to the card's white: dark by lightness, yellow by hue, the rest red.
 *
 * @param colours the map's colours
 * @param raw 1 where the surface is raw
 * @returns shares, or null where no raw pixel is seen
 * The limits are ours; u is half of what moving a limit by its own uncertainty changes.
 * @example rawTissue(colours, new Uint8Array(pixels)) // null
 */
export function rawTissue(colours: ToeColours, raw: Uint8Array): RawTissue | null {
  const seen: { lightness: number; hueDeg: number }[] = [];
  for (let i = 0; i < raw.length; i++) {
    if (raw[i] === 0 || colours.seen[i] === 0) continue;
    const colour = convertLinearToLab65({ red: colours.red[i], green: colours.green[i], blue: colours.blue[i] });
    seen.push({ lightness: colour.l65, hueDeg: (Math.atan2(colour.b65, colour.a65) * 180) / Math.PI });
  }
  if (seen.length === 0) return null;
  const dark = (limit: number) => seen.filter(({ lightness }) => lightness < limit).length / seen.length;
  const yellow = (limit: number) => seen.filter(({ lightness, hueDeg }) => lightness >= DARK_BELOW_L && hueDeg >= limit).length / seen.length;
  const darkU = (dark(DARK_BELOW_L + LIGHTNESS_U) - dark(DARK_BELOW_L - LIGHTNESS_U)) / 2;
  const yellowU = (yellow(YELLOW_FROM_HUE_DEG - HUE_U_DEG) - yellow(YELLOW_FROM_HUE_DEG + HUE_U_DEG)) / 2;
  const [darkShare, yellowShare] = [dark(DARK_BELOW_L), yellow(YELLOW_FROM_HUE_DEG)];
  return {
    red: { value: 1 - darkShare - yellowShare, u: Math.hypot(darkU, yellowU) },
    yellow: { value: yellowShare, u: Math.hypot(darkU, yellowU) },
    dark: { value: darkShare, u: darkU },
  };
}
