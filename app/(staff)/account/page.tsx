import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { loadSecondFactor } from '@/lib/server/load-second-factor';
import { readActor } from '@/lib/server/read-actor';
import { AccountScreen } from './account-screen';

export const metadata: Metadata = { title: 'Your account' };

export default async function AccountPage() {
  const found = await loadSecondFactor(await readActor(await headers()));
  if ('refused' in found) redirect('/sign-in');
  return <AccountScreen {...found} />;
}
