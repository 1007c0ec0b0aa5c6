import { median, quantile } from 'd3-array';
import { OWN_CARD } from '../../../lib/card/own-card';
import { detectFiducials } from '../../../lib/edges/vision/detect-fiducials';
import { type OpenCv, openCv } from '../../../lib/edges/vision/open-cv';
import { findCard } from '../../../lib/rectify/find-card';
import { shrinkToGrey } from '../../../lib/rectify/grey-image';
import type { PointPx } from '../../../lib/units';
import { distance, FOREIGN, KNOWN, markersIn, nearest } from '../../known-answers/rectify/board-markers';
import { boardTruth, readBoardPhoto } from '../../known-answers/rectify/read-board-photo';
import type { OutsideRow, OutsideTable } from './outside-table';

/** Printed markers on real photos: are they found where their authors say they are, and is none taken for our card? */
export async function markerPhotos(): Promise<OutsideTable> {
  const { cv } = await openCv();
  const offsets: number[] = [];
  const rows: OutsideRow[] = [];
  for (const [name, dictionary] of Object.entries(KNOWN)) rows.push(await knownBoard(cv, name, dictionary, offsets));
  for (const name of FOREIGN) rows.push(await foreignBoard(cv, name));
  return {
    kind: 'marker photos',
    figure: 'largest corner error against the published corners or native OpenCV 4.6, px',
    worse: 'higher',
    assumed: 'published corners are pinned outputs of other detectors, right to 1–2 px',
    rows,
    facts: { markers: offsets.length, medianCornerErrorPx: rounded(median(offsets)), p95CornerErrorPx: rounded(quantile(offsets, 0.95)) },
  };
}

async function knownBoard(cv: OpenCv, name: string, dictionary: string, offsets: number[]): Promise<OutsideRow> {
  const truth = boardTruth()[name];
  const expected = truth.corners_truth ?? truth.opencv46_reference?.markers ?? [];
  const found = await markersIn(cv, name, dictionary);
  const errors = expected.flatMap((marker) => {
    const same = nearest(found, marker);
    return same ? [cornerErrorPx(same.cornersPx, marker.corners)] : [];
  });
  offsets.push(...errors);
  const card = await takenForCard(cv, name);
  return {
    name,
    verdict: card ? 'wrong' : errors.length > 0 ? 'found' : 'refused',
    figure: errors.length > 0 ? rounded(Math.max(...errors)) : null,
    note: card ? 'taken for our card' : `${errors.length} of ${expected.length} markers`,
  };
}

/** Which corner is the first differs from author to author: the best of the four ways round counts. */
function cornerErrorPx(found: readonly PointPx[], published: readonly (readonly [number, number])[]): number {
  const ways = [0, 1, 2, 3].flatMap((turn) => [1, -1].map((way) => Math.max(...found.map((corner, i) => distance(corner, published[(((way * i + turn) % 4) + 4) % 4])))));
  return Math.min(...ways);
}

async function foreignBoard(cv: OpenCv, name: string): Promise<OutsideRow> {
  const ids = detectFiducials(cv, shrinkToGrey(await readBoardPhoto(name), 1), OWN_CARD.dictionary);
  const wrong = ids.length > 0 || (await takenForCard(cv, name));
  return { name, verdict: wrong ? 'wrong' : 'refused', figure: null, note: wrong ? `read as ids ${ids.map(({ id }) => id).join(' ')}` : 'markers of no known dictionary: none read' };
}

async function takenForCard(cv: OpenCv, name: string): Promise<boolean> {
  return findCard(await readBoardPhoto(name), OWN_CARD, (image, dictionary) => detectFiducials(cv, image, dictionary)).found;
}

const rounded = (value: number | undefined): number | null => (value === undefined ? null : Number(value.toFixed(3)));
