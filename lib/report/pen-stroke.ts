import type { Srgb } from '../card/constants';
import { HALO_MM, INK, LINE_MM, PAPER } from './constants';
import { svgColour } from './svg-colour';

export type PenStyle = 'solid' | 'dashes' | 'dots' | 'dashDot' | 'fineDots';

const DASHES: Readonly<Record<PenStyle, string>> = {
  solid: '',
  dashes: '1.1 0.5',
  dots: '0.05 0.5',
  dashDot: '1 0.4 0.05 0.4',
  fineDots: '0.05 0.9',
};

/**
 * A path in ink alone, as on paper.
 *
 * @param path the `d` of an SVG path, mm
 * @param style pattern of the line
 * @param ink sRGB code values
 * @example inkStroke('M0 0h4', 'solid') // '<path d="M0 0h4" stroke="rgb(20,32,72)" stroke-width="0.2"/>'
 */
export function inkStroke(path: string, style: PenStyle, ink: Srgb = INK): string {
  return `<path d="${path}" stroke="${svgColour(ink)}" stroke-width="${LINE_MM}"${dash(style)}/>`;
}

/**
 * A path in ink over its pale halo, as on a photo.
 *
 * @param path the `d` of an SVG path, mm
 * @param style pattern of the line
 * @param ink sRGB code values
 * @example penStroke('M0 0h4', 'dots').split('/>').length // 3
 */
export function penStroke(path: string, style: PenStyle, ink: Srgb = INK): string {
  const halo = `<path d="${path}" stroke="${svgColour(PAPER)}" stroke-opacity="0.55" stroke-width="${HALO_MM}"${dash(style)}/>`;
  return halo + inkStroke(path, style, ink);
}

const dash = (style: PenStyle): string => (DASHES[style] ? ` stroke-dasharray="${DASHES[style]}"` : '');
