import type { Srgb } from '../card/constants';

/**
 * An ink as SVG has it.
 * @example svgColour([20, 32, 72]) // 'rgb(20,32,72)'
 */
export const svgColour = (ink: Srgb): string => `rgb(${ink.join(',')})`;
