import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { staffHere } from '@/lib/server/staff-here';

/** The first place of the clinic that this person may see. */
export default async function ClinicPage() {
  const here = await staffHere(await headers());
  if (here === null) redirect('/sign-in');
  redirect(here.role === 'admin' ? '/clinic/people' : '/clinic/plans');
}
