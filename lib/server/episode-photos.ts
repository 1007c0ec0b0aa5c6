import { open } from 'node:fs/promises';
import { jpegSegments } from '../edges/decode/jpeg-segments';
import type { EpisodeRows } from '../edges/db/read-episode-rows';
import { viewPath } from '../edges/files/photo-path';
import type { AnalysisJson } from '../pipeline/analysis-json';
import { cardFromView, type PictureSize } from '../report/card-from-view';
import { gapReasonWords } from '../report/trend-words';
import type { EpisodeClock } from './episode-clock';
import { outlineVersions } from './outline-versions';
import type { ShownPhoto } from './shown-episode';
import { standOf } from './stand-of';

type PhotoRows = EpisodeRows['photos'][number];

/** A JPEG says its size before its coded data; a large profile and thumbnail come before it. */
const HEAD_BYTES = 262_144;
const FRAMES: ReadonlySet<number> = new Set([0xc0, 0xc1, 0xc2]);

const OUTCOME: Readonly<Record<string, string>> = {
  measured: 'measured',
  held: 'held: another card is in the picture',
  unread: 'could not be opened as a photo',
  kept: 'a dressing: kept, not measured',
};
/** Given up on, it would have an outcome. */
const WAITING = 'not measured yet';
interface Place {
  readonly photoFolder: string;
  readonly clock: EpisodeClock;
  readonly nameOf: (by: string) => string;
  /** Days of the photos that the trend knows. */
  readonly dayOf: ReadonlyMap<string, number>;
}

/** The photos of an episode, oldest first, with what is needed to lay them over one another. */
export async function episodePhotos({ photos }: EpisodeRows, place: Place): Promise<ShownPhoto[]> {
  const shown = await Promise.all(photos.map(async (photo) => ({ day: place.dayOf.get(photo.id) ?? place.clock.dayOf(photo.receivedAt), photo: await shownPhoto(photo, place) })));
  return shown.sort((a, b) => a.day - b.day).map(({ day, photo }) => ({ ...photo, day: day.toFixed(1) }));
}

async function shownPhoto(photo: PhotoRows, { photoFolder, clock, nameOf }: Place): Promise<Omit<ShownPhoto, 'day'>> {
  const { id, receivedAt } = photo;
  const analysis = photo.analyses.at(0);
  const json = analysis?.json ? (JSON.parse(analysis.json) as AnalysisJson) : null;
  const view = analysis?.viewSha256 ? await sizeOfJpeg(viewPath(photoFolder, { episodeId: photo.episodeId, sha256: analysis.viewSha256 })) : null;
  const card = json?.card ?? null;
  return {
    id,
    date: clock.date(receivedAt),
    at: clock.at(receivedAt),
    picture: view && `/api/photos/${id}`,
    size: view,
    cardFromView: view && card && json?.picture ? cardFromView(card.homography, json.picture, view) : null,
    tiltDeg: card && Math.round(card.tiltDeg),
    state: analysis ? (OUTCOME[analysis.outcome] ?? `not measured: ${(JSON.parse(analysis.gates) as string[]).map(gapReasonWords).join(', ')}`) : WAITING,
    isHeld: analysis?.outcome === 'held',
    versions: outlineVersions(photo, json, { clock, nameOf }),
    stand: standOf(json),
    canRedraw: Boolean(analysis?.mapSha256),
  };
}

/** Our own picture: nothing is decoded, only the frame's size is read. */
async function sizeOfJpeg(file: string): Promise<PictureSize | null> {
  const handle = await open(file).catch(() => null);
  if (handle === null) return null;
  try {
    const { bytesRead, buffer } = await handle.read(new Uint8Array(HEAD_BYTES), 0, HEAD_BYTES, 0);
    if (buffer[0] !== 0xff || buffer[1] !== 0xd8) return null;
    for (const { marker, payload } of jpegSegments(buffer.subarray(0, bytesRead))) {
      if (FRAMES.has(marker)) return { heightPx: payload[1] * 256 + payload[2], widthPx: payload[3] * 256 + payload[4] };
    }
    return null;
  } finally {
    await handle.close();
  }
}
