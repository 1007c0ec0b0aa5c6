/**
 * The colour of skin from what is in it: light crosses the pigmented epidermis twice and is scattered back by a deep
 * dermis that holds blood.
 * Sources: Kubelka and Munk 1931 (deep layer) with K = 2 µa and S = 3/4 µs′ (Star, Marijnissen, van Gemert 1988);
 * scattering of skin a (nm/500)^-b with a = 46 /cm, b = 1.42 (Jacques 2013, from memory); inner reflection of the
 * surface after Saunderson 1942 with k1 = 0.028 (index 1.4) and k2 = 0.45 (from memory).
 */
import { bloodlessSkinPerCm, melanosomePerCm, wholeBloodPerCm } from './absorption';
import { WAVELENGTHS_NM } from './wavelengths';

export interface SkinContents {
  /** Share of the epidermis that is melanosomes, 0…0.6. */
  readonly melaninShare: number;
  /** Share of the dermis that is blood, 0…0.3. */
  readonly bloodShare: number;
  /** Oxygen saturation of that blood, 0…1. */
  readonly saturation: number;
}

const EPIDERMIS_CM = 0.0075;
/** Diffuse light takes a slanting way: about twice the thickness for each crossing would be full diffusion. */
const PATH_PER_CROSSING = 1.35;
const OUTER_REFLECTION = 0.028;
const INNER_REFLECTION = 0.45;

/** Melanin sits in clumps: its amount over a spot is spread like a gamma distribution of this shape, not even. */
const MELANIN_EVENNESS = 1.6;
/** Light that the rough horny layer throws back before it meets any colour. */
const SURFACE_HAZE = 0.012;

const scatteringPerCm = (nm: number): number => 46 * (nm / 500) ** -1.42;

function deepLayerReflectance(absorptionPerCm: number, reducedScatteringPerCm: number): number {
  const ratio = (2 * absorptionPerCm) / (0.75 * reducedScatteringPerCm);
  return 1 + ratio - Math.sqrt(ratio * (ratio + 2));
}

/** The diffuse reflectance of skin at each wavelength, without the shine of its surface. */
export function skinReflectance({ melaninShare, bloodShare, saturation }: SkinContents): number[] {
  return WAVELENGTHS_NM.map((nm, i) => {
    const bare = bloodlessSkinPerCm(nm);
    const epidermis = melaninShare * melanosomePerCm(nm) + (1 - melaninShare) * bare;
    const dermis = bloodShare * wholeBloodPerCm(i, saturation) + (1 - bloodShare) * bare;
    const depth = 2 * PATH_PER_CROSSING * EPIDERMIS_CM * epidermis;
    const transmitted = (1 + depth / MELANIN_EVENNESS) ** -MELANIN_EVENNESS;
    const inside = transmitted * deepLayerReflectance(dermis, scatteringPerCm(nm));
    return SURFACE_HAZE + ((1 - OUTER_REFLECTION) * (1 - INNER_REFLECTION) * inside) / (1 - INNER_REFLECTION * inside);
  });
}
