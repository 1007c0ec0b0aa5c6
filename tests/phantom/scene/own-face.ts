/** The project's own card as a printed face, with a serial that the seed decides, cut along one of its three lines. */
import QRCode from 'qrcode';
import { NOTCH_WIDTHS_MM, type NotchSize } from '../../../lib/card/constants';
import { mintSerial } from '../../../lib/card/mint-serial';
import { notchOutline } from '../../../lib/card/notch-outline';
import { OWN_CARD } from '../../../lib/card/own-card';
import { ownCardDrawing } from '../../../lib/card/own-card-drawing';
import { rasterDrawing } from '../../../lib/card/raster-drawing';
import { cardCode } from '../../../lib/card/serial';
import { randomSource } from '../random/random-source';
import type { CardFace } from './card-face';
import { standInFace } from './stand-in-card';

const PX_PER_MM = 24;

function qrModules(text: string): boolean[][] {
  const { modules } = QRCode.create(text, { version: 1, errorCorrectionLevel: 'Q' });
  return Array.from({ length: modules.size }, (_, row) => Array.from({ length: modules.size }, (_, column) => Boolean(modules.get(row, column))));
}

/** Draws the own card with the serial of a seed. */
export function ownFace(serialSeed: number, cut: NotchSize): CardFace {
  const random = randomSource(serialSeed, 'serial');
  const serial = mintSerial((limit) => random.whole(0, limit - 1));
  const drawn = rasterDrawing(ownCardDrawing(serial, qrModules(cardCode(serial))), OWN_CARD, PX_PER_MM);
  return { geometry: OWN_CARD, cut: notchOutline(NOTCH_WIDTHS_MM[cut]), pxPerMm: PX_PER_MM, ...drawn };
}

const kept = new Map<string, CardFace>();

/** The face that a card spec names; the last few are kept, because drawing one costs more than using it. */
export function faceByName(name: string, serialSeed: number): CardFace {
  const key = `${name} ${serialSeed}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const standIn = /^stand-in(?:-(\d+))?$/.exec(name);
  const own = /^own-([SML])$/.exec(name);
  if (!standIn && !own) throw new RangeError(`faceByName: own-S, own-M, own-L or stand-in-N, received ${name}`);
  const face = standIn ? standInFace(Number(standIn[1] ?? 0)) : ownFace(serialSeed, own![1] as NotchSize);
  if (kept.size > 3) kept.clear();
  kept.set(key, face);
  return face;
}
