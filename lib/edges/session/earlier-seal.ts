/** Second factors of before: as they were, or sealed by AES-256-GCM and bound to their owner. They are opened once, to be sealed anew. */
import { createDecipheriv } from 'node:crypto';

const KIND = 'gcm1:';

/** @throws where the key is another, the owner is, or somebody has changed it */
export function openEarlierSeal(kept: string, key: Uint8Array, staffId: string): string {
  if (!kept.startsWith(KIND)) return kept;
  const [nonce, tag, sealed] = kept.slice(KIND.length).split(':').map((part) => Buffer.from(part, 'base64url'));
  const cipher = createDecipheriv('aes-256-gcm', key, nonce, { authTagLength: 16 }).setAAD(Buffer.from(`secondFactor ${staffId}`)).setAuthTag(tag);
  return Buffer.concat([cipher.update(sealed), cipher.final()]).toString('utf8');
}
