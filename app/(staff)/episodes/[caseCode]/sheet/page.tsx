import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound, redirect } from 'next/navigation';
import { loadHandOut } from '@/lib/server/load-hand-out';
import { readActor } from '@/lib/server/read-actor';
import { HandOutScreen } from '../../../_hand-out/hand-out-screen';

interface Place {
  readonly params: Promise<{ readonly caseCode: string }>;
}

export const metadata: Metadata = { title: 'Link, card and sheet' };

export default async function SheetPage({ params }: Place) {
  const caseCode = decodeURIComponent((await params).caseCode);
  const found = await loadHandOut(await readActor(await headers()), caseCode);
  if ('handOut' in found) return <HandOutScreen handOut={found.handOut} link={null} />;
  if (found.refused.status === 401) redirect('/sign-in');
  notFound();
}
