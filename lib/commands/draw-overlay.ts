import { encodeOverlay } from '../edges/decode/encode-overlay';
import type { Analysis } from '../pipeline/analysis';
import { legendHeightMm } from '../report/legend-svg';
import { overlaySvg } from '../report/overlay-svg';
import { rectifiedPicture } from '../report/rectified-picture';
import { mapWindow } from '../rectify/map-window';

/** Fine enough that a phone shows every pen line. */
const OVERLAY_PX_PER_MM = 18;

/** The overlay of an analysis as PNG; null where no card was found, for there are no millimetres to draw on. */
export async function drawOverlay(analysis: Analysis): Promise<Uint8Array | null> {
  if (!analysis.card) return null;
  const window = mapWindow(analysis.card.frame, OVERLAY_PX_PER_MM);
  const legendPx = Math.ceil(legendHeightMm(analysis) * OVERLAY_PX_PER_MM);
  const svg = overlaySvg(analysis, { window, legendMm: legendPx / OVERLAY_PX_PER_MM });
  const srgb = rectifiedPicture(analysis.photo, analysis.card.fit.imageFromCard, window);
  return encodeOverlay({ srgb, widthPx: window.widthPx, heightPx: window.heightPx, legendPx, svg });
}
