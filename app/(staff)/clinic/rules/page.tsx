import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound, redirect } from 'next/navigation';
import { loadRuleBook } from '@/lib/server/load-rule-book';
import { readActor } from '@/lib/server/read-actor';
import { RulesScreen } from './rules-screen';

export const metadata: Metadata = { title: 'Rule book' };

export default async function RulesPage() {
  const found = await loadRuleBook(await readActor(await headers()));
  if ('page' in found) return <RulesScreen page={found.page} />;
  if (found.refused.status === 401) redirect('/sign-in');
  notFound();
}
