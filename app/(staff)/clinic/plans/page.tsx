import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound, redirect } from 'next/navigation';
import { loadPlans } from '@/lib/server/load-plans';
import { readActor } from '@/lib/server/read-actor';
import { PlansScreen } from './plans-screen';

export const metadata: Metadata = { title: 'Plans' };

export default async function PlansPage() {
  const found = await loadPlans(await readActor(await headers()));
  if ('page' in found) return <PlansScreen page={found.page} />;
  if (found.refused.status === 401) redirect('/sign-in');
  notFound();
}
