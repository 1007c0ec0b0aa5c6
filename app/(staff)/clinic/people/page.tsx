import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound, redirect } from 'next/navigation';
import { loadPeople } from '@/lib/server/load-people';
import { readActor } from '@/lib/server/read-actor';
import { PeopleScreen } from './people-screen';

export const metadata: Metadata = { title: 'People' };

export default async function PeoplePage() {
  const found = await loadPeople(await readActor(await headers()));
  if ('people' in found) return <PeopleScreen people={found.people} />;
  if (found.refused.status === 401) redirect('/sign-in');
  notFound();
}
