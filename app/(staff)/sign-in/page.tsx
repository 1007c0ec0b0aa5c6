import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { staffHere } from '@/lib/server/staff-here';
import { SignInScreen } from './sign-in-screen';

export default async function SignInPage() {
  const here = await staffHere(await headers());
  if (here !== null) redirect(here.role === 'admin' ? '/clinic' : '/review');
  return <SignInScreen />;
}
