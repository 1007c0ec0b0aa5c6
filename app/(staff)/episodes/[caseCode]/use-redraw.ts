'use client';

import { useEffect, useState } from 'react';
import type { SnappedOutline } from '../../../../lib/server/command-snap-outline';
import type { ShownPhoto } from '../../../../lib/server/shown-episode';
import type { SetPoint } from './set-points';

export type Outline = 'erythema' | 'nailFoldMargin' | 'raw';

/** Points move while they are dragged; asked is when they rest. */
const REST_MS = 150;

const PROBLEMS: Readonly<Record<string, string>> = {
  tooFewPoints: 'Set more points: at least three around an area, two along the margin.',
  noMap: 'This photo has no map to draw on: it was measured by an older version.',
  changed: 'Somebody else has drawn on this photo meanwhile. Load the page again to see it.',
};
const NO_ANSWER = 'There is no answer from the server. What you have drawn is still here; it is not kept yet.';

async function post(address: string, body: unknown): Promise<{ status: number; said: { problem?: string; sentence?: string } & Partial<SnappedOutline> }> {
  const response = await fetch(address, { method: 'POST', body: JSON.stringify(body) });
  if (response.status === 401) window.location.assign('/sign-in');
  return { status: response.status, said: (await response.json()) as { problem?: string } };
}

export interface Redraw {
  readonly snapped: SnappedOutline | null;
  readonly problem: string;
  /** @returns whether it is kept */
  readonly keep: (reason: string) => Promise<boolean>;
}

/** The line through the points as the server lays it, what would be measured with it, and the way to keep it. */
export function useRedraw(photo: ShownPhoto, outline: Outline, points: readonly SetPoint[] | null): Redraw {
  const [snapped, setSnapped] = useState<SnappedOutline | null>(null);
  const [problem, setProblem] = useState('');
  const words = JSON.stringify({ outline, points });
  const isEnough = points === null || points.length >= (outline === 'nailFoldMargin' ? 2 : 3);

  useEffect(() => {
    setProblem('');
    if (!isEnough) return setSnapped(null);
    let stale = false;
    const ask = async () => {
      const { status, said } = await post(`/api/staff/photos/${photo.id}/snap`, JSON.parse(words)).catch(() => ({ status: 0, said: {} as { problem?: string } }));
      if (stale) return;
      if (status === 200) setSnapped(said as SnappedOutline);
      else setProblem(PROBLEMS[said.problem ?? ''] ?? NO_ANSWER);
    };
    const timer = setTimeout(() => void ask(), REST_MS);
    return () => {
      stale = true;
      clearTimeout(timer);
    };
  }, [photo.id, words, isEnough]);

  const keep = async (reason: string): Promise<boolean> => {
    try {
      const { status, said } = await post(`/api/staff/photos/${photo.id}/outlines`, { ...JSON.parse(words), reason, from: photo.versions[0].number });
      setProblem(status === 200 ? '' : (said.sentence ?? PROBLEMS[said.problem ?? ''] ?? NO_ANSWER));
      return status === 200;
    } catch {
      setProblem(NO_ANSWER);
      return false;
    }
  };
  return { snapped, problem, keep };
}
