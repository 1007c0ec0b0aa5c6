/** Writes the file that the phone would have written: JPEG with chroma at half resolution and the tags of its camera. */
import sharp from 'sharp';
import type { CameraSpec } from '../phantom-spec';

/** Turn of the stored pixels against the upright picture, clockwise, for each orientation tag (TIFF 6.0, tag 274). */
const STORED_TURN_DEG = { 1: 0, 3: 180, 6: 270, 8: 90 } as const;
/** Invented small sensors: film focal length over true focal length. */
const CROP_FACTOR = 6.2;

const exifTime = (time: string): string => time.replace(/-/g, ':').replace('T', ' ');

/** The bytes of the file. `srgb` is upright; the stored pixels are turned so that the orientation tag turns them back. */
export async function encodeJpeg(srgb: Uint8Array, camera: CameraSpec): Promise<Uint8Array> {
  const raw = sharp(srgb, { raw: { width: camera.widthPx, height: camera.heightPx, channels: 3 } });
  const { data, info } = await raw.rotate(STORED_TURN_DEG[camera.orientationTag]).raw().toBuffer({ resolveWithObject: true });
  const focalMm = camera.focal35Mm / CROP_FACTOR;
  const exif = {
    IFD0: { Make: 'Phantom', Model: `Phone ${camera.phoneSeed}` },
    IFD2: {
      FocalLength: `${Math.round(focalMm * 100)}/100`,
      FocalLengthIn35mmFilm: `${Math.round(camera.focal35Mm)}`,
      LensModel: `Phone ${camera.phoneSeed} lens`,
      ...(camera.captureTime === null ? {} : { DateTimeOriginal: exifTime(camera.captureTime) }),
    },
  };
  const file = await sharp(data, { raw: { width: info.width, height: info.height, channels: 3 } })
    .withExif(exif)
    .withMetadata({ orientation: camera.orientationTag })
    .jpeg({ quality: camera.jpegQuality, chromaSubsampling: '4:2:0' })
    .toBuffer();
  return new Uint8Array(file.buffer, file.byteOffset, file.byteLength);
}
