import type { HandedLink } from '../care/start-contract';
import { hashSecret, newSecret } from '../edges/session/secret';
import type { Settings } from '../edges/env/settings';

const DAY_MS = 86_400_000;

/** The address that people type: as it is set, or else as this request, which comes from our own page, names it. */
export const ownOrigin = ({ origin }: Settings, headers: Headers): string => origin ?? headers.get('origin') ?? `http://${headers.get('host') ?? 'localhost'}`;

/** A new link: what is told once, and what is kept. */
export function handLink(settings: Settings, headers: Headers): { readonly link: HandedLink; readonly tokenHash: string } {
  const secret = newSecret();
  return { link: { secret, address: linkAddress(settings, headers, secret) }, tokenHash: hashSecret(secret) ?? '' };
}

export const linkAddress = (settings: Settings, headers: Headers, secret: string): string => `${ownOrigin(settings, headers)}/p/${secret}`;

export const linkEndsAt = (madeAt: Date, days: number): Date => new Date(madeAt.getTime() + days * DAY_MS);
