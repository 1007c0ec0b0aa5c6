/**
 * Words that makers write into the EXIF fields of phones. Only the class is kept, never maker or model: from memory,
 * checked against public sample files; a device that is not listed is 'unknown', which nothing depends on.
 */
const PHONE_WORDS =
  /\b(iphone|phone|android|pixel|galaxy|nokia|htc|huawei|honor|xiaomi|redmi|oneplus|oppo|vivo|realme|moto(rola)?|sm-\w+)\b/i;
const CAMERA_WORDS = /\b(canon|nikon|fuji(film)?|olympus|om digital|panasonic|pentax|ricoh|leica|hasselblad|powershot|coolpix|eos)\b/i;

/**
 * Whether the file says that it comes from a phone or from a camera with its own lens.
 * @param words what the file says about maker, model and lens, in any order; null where it says nothing
 * @returns 'unknown' when no word is recognised; never refuses
 * @example classifyDevice(['Nokia', 'Nokia 8.3 5G', null]) // 'phone'
 */
export function classifyDevice(words: readonly (string | null)[]): 'phone' | 'camera' | 'unknown' {
  const text = words.filter((word) => word !== null).join(' ');
  if (PHONE_WORDS.test(text)) return 'phone';
  if (CAMERA_WORDS.test(text)) return 'camera';
  return 'unknown';
}
