/** One owner of the pages' security headers. It decides nothing about who may see what: every route and page asks by itself. */
import { type NextRequest, NextResponse } from 'next/server';

/** Scripts run by their nonce; development needs more, and only development gets it. */
function contentSecurityPolicy(nonce: string): string {
  const isDevelopment = process.env.NODE_ENV === 'development';
  return [
    "default-src 'self'",
    `script-src 'nonce-${nonce}' 'strict-dynamic'${isDevelopment ? " 'unsafe-eval'" : ''}`,
    isDevelopment ? "style-src 'self' 'unsafe-inline'" : `style-src 'self' 'nonce-${nonce}'`,
    // Drawn lines and bars carry their measures in style attributes; an attribute can load nothing (see img-src).
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' blob: data:",
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}

export function proxy(request: NextRequest): NextResponse {
  const nonce = Buffer.from(crypto.randomUUID()).toString('base64');
  const policy = contentSecurityPolicy(nonce);
  const headers = new Headers(request.headers);
  // Next reads the nonce for its own scripts out of the request's policy.
  headers.set('content-security-policy', policy);
  headers.set('x-nonce', nonce);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set('content-security-policy', policy);
  response.headers.set('referrer-policy', 'no-referrer');
  response.headers.set('x-content-type-options', 'nosniff');
  response.headers.set('cross-origin-opener-policy', 'same-origin');
  response.headers.set('permissions-policy', 'camera=(self), geolocation=(), microphone=()');
  response.headers.set('cache-control', 'private, no-store');
  return response;
}

/**
 * Pages only. Not the routes: a proxy in front of an upload would hold its body and cut it off at ten megabytes; they
 * set their own headers. Not the built files, which are the same for everybody.
 */
export const config = { matcher: ['/((?!api/|p/|_next/static/|_next/image|.*\\.[a-z0-9]+$).*)'] };
