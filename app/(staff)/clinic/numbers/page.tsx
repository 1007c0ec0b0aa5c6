import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound, redirect } from 'next/navigation';
import { loadClinic } from '@/lib/server/load-clinic';
import { readActor } from '@/lib/server/read-actor';
import { NumbersScreen } from './numbers-screen';

export const metadata: Metadata = { title: 'Numbers and paper' };

export default async function NumbersPage() {
  const found = await loadClinic(await readActor(await headers()));
  if ('clinic' in found) return <NumbersScreen clinic={found.clinic} />;
  if (found.refused.status === 401) redirect('/sign-in');
  notFound();
}
