/** The wavelengths that every spectrum of the phantom is sampled at, in nanometres: 400, 410 … 700. */
export const WAVELENGTHS_NM: readonly number[] = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);

/** A reflectance, transmission or power at each of `WAVELENGTHS_NM`. */
export type Spectrum = readonly number[];

/** A spectrum from a formula in nanometres. `spectrumOf(() => 1)[0]` is 1. */
export const spectrumOf = (formula: (nm: number) => number): number[] => WAVELENGTHS_NM.map(formula);
