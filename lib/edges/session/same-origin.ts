/**
 * Does a changing request come from our own pages? A browser says so in one of two headers; a request that says
 * neither is refused, for then nobody vouches for it.
 * @param origin the address people type; null where it is not set, and the request's own host counts
 */
export function isSameOrigin(headers: Headers, origin: string | null): boolean {
  const [site, from] = [headers.get('sec-fetch-site'), headers.get('origin')];
  if (site === null && from === null) return false;
  if (site !== null && site !== 'same-origin') return false;
  return from === null || isOurs(from, headers.get('host'), origin);
}

function isOurs(from: string, host: string | null, origin: string | null): boolean {
  if (!URL.canParse(from)) return false;
  return origin === null ? host !== null && new URL(from).host === host : from === origin;
}
