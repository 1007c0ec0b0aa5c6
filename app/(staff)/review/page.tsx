import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { staffHere } from '@/lib/server/staff-here';
import { ReviewScreen } from './review-screen';

export default async function ReviewPage() {
  const here = await staffHere(await headers());
  if (here === null) redirect('/sign-in');
  return <ReviewScreen />;
}
