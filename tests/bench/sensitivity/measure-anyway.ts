import { a65Map } from '../../../lib/colour/a65-map';
import type { ToeMeasurement } from '../../../lib/measure/measure-input';
import type { Analysis } from '../../../lib/pipeline/analysis';
import { measureSegmentation } from '../../../lib/pipeline/measure-segmentation';

/**
 * What would have been measured had no gate spoken: the study looks beyond the limits to see whether they stand in the
 * right place. Null where the journey ended before any outline was drawn.
 */
export function measureAnyway({ measurement, segmentation, card, fields, colours, colour }: Analysis): ToeMeasurement | null {
  if (measurement) return measurement;
  if (!segmentation || !card || !fields || !colours || !colour) return null;
  return measureSegmentation(segmentation, card, fields, a65Map(colours, colour.paperLight, fields.toe));
}
