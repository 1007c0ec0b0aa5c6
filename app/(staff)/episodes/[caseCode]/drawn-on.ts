import type { ShownPhoto } from '../../../../lib/server/shown-episode';
import type { DrawnLines } from '../../../_components/photo-with-lines';

/** The pen lines of one version of a photo's outlines, with the photo's date: the newest unless another is named. */
export function drawnOn({ id, date, versions }: ShownPhoto, number = versions[0].number): DrawnLines {
  const { lines, places } = versions.find((version) => version.number === number) ?? versions[0];
  return { id, date, lines, dateAt: places.dateAt };
}
