const EXIF_TIME = /\d{4}:\d\d:\d\d \d\d:\d\d:\d\d/g;
/** The tags of our own rendered photos stand at the very beginning. */
const TAG_BYTES = 8192;

/** A copy of a rendered photo whose camera's clock shows `at` (UTC): sample photos were "taken" on fixed days. */
export function redatePhoto(photo: Uint8Array, at: Date): Uint8Array {
  const wanted = at.toISOString().slice(0, 19).replaceAll('-', ':').replace('T', ' ');
  const head = Buffer.from(photo.subarray(0, TAG_BYTES)).toString('latin1').replace(EXIF_TIME, wanted);
  return Buffer.concat([Buffer.from(head, 'latin1'), photo.subarray(TAG_BYTES)]);
}
