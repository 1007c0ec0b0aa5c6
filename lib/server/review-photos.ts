import type { EpisodeRows } from '../edges/db/read-episode-rows';
import type { OutlinesJson } from '../pipeline/analysis-json';
import { type Homography, invertHomography, pxPerMmAt } from '../rectify/homography';
import { penLines } from '../report/pen-lines';
import { placeOnPicture } from '../report/place-on-picture';
import type { EpisodeClock } from './episode-clock';
import { episodePhotos } from './episode-photos';
import type { ReviewPhoto } from './review-case';
import { newestOutlines } from './seen-outlines';

/** The newest say why somebody looks now; the episode's own page has them all. */
export const MOST_PHOTOS = 4;
/** Around the toe there is room for redness that runs on. */
const AROUND = 0.25;

interface Looking {
  readonly photoFolder: string;
  readonly clock: EpisodeClock;
  readonly nameOf: (by: string) => string;
}

/** The newest photos of a case, newest first, with the pen lines as they lie on each picture. */
export async function reviewPhotos(rows: EpisodeRows, { photoFolder, clock, nameOf }: Looking): Promise<ReviewPhoto[]> {
  const photos = rows.photos.slice(-MOST_PHOTOS);
  const shown = await episodePhotos({ ...rows, photos }, { photoFolder, clock, nameOf, dayOf: new Map() });
  const seen = new Map(photos.map((photo) => [photo.id, newestOutlines(photo)]));
  return shown.reverse().map(({ id, at, state, versions: [newest], picture, size, cardFromView }) => {
    const drawn = drawnOn(seen.get(id) ?? null, cardFromView);
    const byHand = newest.number > 0 ? [newest.words] : [];
    return { id, at, state, numbers: [...newest.numbers, ...byHand], picture, widthPx: size?.widthPx ?? 0, heightPx: size?.heightPx ?? 0, ...drawn };
  });
}

type Drawn = Pick<ReviewPhoto, 'lines' | 'toe' | 'pxPerMm'>;

/** Its lines upon its picture, and where the toe is in it. */
export function drawnOn(outlines: OutlinesJson | null, cardFromView: Homography | null): Drawn {
  const places = outlines?.toe?.flatMap(({ ring }) => ring) ?? [];
  if (!outlines || cardFromView === null) return { lines: [], toe: null, pxPerMm: null };
  const placeOn = placeOnPicture(cardFromView);
  // The plate is no finding, and here there are lines enough.
  const lines = penLines(outlines, placeOn).filter(({ name }) => name !== 'nailPlate');
  if (places.length === 0) return { lines, toe: null, pxPerMm: null };
  const points = places.map(placeOn);
  const [columns, rows] = [points.map(([column]) => column), points.map(([, row]) => row)];
  const [left, top] = [Math.min(...columns), Math.min(...rows)];
  const [width, height] = [Math.max(...columns) - left, Math.max(...rows) - top];
  const [acrossMm, downMm] = places[0];
  const toe = [left - AROUND * width, top - AROUND * height, width * (1 + 2 * AROUND), height * (1 + 2 * AROUND)].map(Math.round);
  return { lines, toe: toe as unknown as ReviewPhoto['toe'], pxPerMm: pxPerMmAt(invertHomography(cardFromView), { acrossMm, downMm }) };
}
