import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { staffHere } from '@/lib/server/staff-here';
import { SignInScreen } from './sign-in-screen';

export default async function SignInPage() {
  if ((await staffHere(await headers())) !== null) redirect('/review');
  return <SignInScreen />;
}
