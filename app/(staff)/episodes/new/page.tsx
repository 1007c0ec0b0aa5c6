import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound, redirect } from 'next/navigation';
import { loadStart } from '@/lib/server/load-start';
import { readActor } from '@/lib/server/read-actor';
import { NewEpisodeScreen } from './new-episode-screen';

export const metadata: Metadata = { title: 'Start an episode' };

export default async function NewEpisodePage() {
  const found = await loadStart(await readActor(await headers()));
  if ('form' in found) return <NewEpisodeScreen form={found.form} />;
  if (found.refused.status === 401) redirect('/sign-in');
  notFound();
}
