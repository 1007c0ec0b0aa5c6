import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound, redirect } from 'next/navigation';
import { loadEpisode } from '../../../../lib/server/load-episode';
import { readActor } from '../../../../lib/server/read-actor';
import { EpisodeScreen } from './episode-screen';

interface Place {
  readonly params: Promise<{ readonly caseCode: string }>;
}

export async function generateMetadata({ params }: Place): Promise<Metadata> {
  return { title: `Case ${decodeURIComponent((await params).caseCode)}` };
}

export default async function EpisodePage({ params }: Place) {
  const caseCode = decodeURIComponent((await params).caseCode);
  const found = await loadEpisode(await readActor(await headers()), caseCode);
  if ('page' in found) return <EpisodeScreen page={found.page} />;
  if (found.refused.status === 401) redirect('/sign-in');
  notFound();
}
