/**
 * sRGB code value → linear light, IEC 61966-2-1. Blur happens in linear light, so edges are located there: in coded
 * values every dark square looks a third of a pixel smaller per side. The colour stage later finds the phone's own
 * curve; for edges the standard one is near enough.
 */
export const LINEAR_LIGHT: Float32Array = Float32Array.from({ length: 256 }, (_, code) => {
  const c = code / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
});
