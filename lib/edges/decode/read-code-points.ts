/** Primaries and transfer curve as code points: ITU-T H.273 tables 2 and 3, as PNG (cICP) and HEIF (nclx) carry them. */
const BT709_PRIMARIES = 1;
const P3_D65_PRIMARIES = 12;
/**
 * sRGB, and the camera curves of BT.709/601 that phones write for pictures meant to be shown as sRGB; 2 is
 * "unspecified". Perceptual quantiser (16) and hybrid log-gamma (18) are high dynamic range: their values mean light.
 */
const SRGB_LIKE_TRANSFERS = new Set([1, 2, 6, 13]);
const UNSPECIFIED = 2;
/** BT.470BG and BT.601-525: the primaries of the JPEG tradition, within 0.01 of BT.709 in x and y. */
const NEAR_BT709 = new Set([5, 6]);

/** `readCodePoints(12, 13)` → 'display-p3'; 'unsupported' when this project cannot vouch for the colours. */
export function readCodePoints(primaries: number, transfer: number): 'srgb' | 'display-p3' | 'unsupported' | null {
  if (!SRGB_LIKE_TRANSFERS.has(transfer)) return 'unsupported';
  if (primaries === UNSPECIFIED) return null;
  if (primaries === P3_D65_PRIMARIES) return 'display-p3';
  return primaries === BT709_PRIMARIES || NEAR_BT709.has(primaries) ? 'srgb' : 'unsupported';
}
