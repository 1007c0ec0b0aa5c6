/** The staff's cookie: out of reach of scripts, sent along when a link is followed, never to another site's request. */
const NAME = 'foldwatch_staff';

interface CookieSettings {
  /** Only over https; false on a machine that has no certificate, such as a demo's. */
  readonly secure: boolean;
  readonly maxAgeSeconds: number;
}

/** The `Set-Cookie` that begins a session; with the secret '' it ends one. */
export function staffCookie(secret: string, { secure, maxAgeSeconds }: CookieSettings): string {
  return `${NAME}=${secret}; Path=/; HttpOnly; SameSite=Lax; Max-Age=${secret === '' ? 0 : maxAgeSeconds}${secure ? '; Secure' : ''}`;
}

/** The secret in a `Cookie` header, or null. */
export function readStaffCookie(header: string | null): string | null {
  const pairs = (header ?? '').split(';').map((pair) => pair.trim().split('='));
  return pairs.find(([name]) => name === NAME)?.[1] || null;
}
