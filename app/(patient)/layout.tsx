import { headers } from 'next/headers';
import type { ReactNode } from 'react';
import { KeepShell } from './_patient/keep-shell';
import { PatientProvider } from './_patient/patient-context';

/** The HTML carries nothing about the person: what is theirs comes from the server's state or from the phone. */
export default async function PatientLayout({ children }: { readonly children: ReactNode }) {
  const wanted = (await headers()).get('accept-language') ?? '';
  return (
    <PatientProvider firstLanguage={/^es\b/i.test(wanted) ? 'es' : 'en'}>
      <KeepShell />
      {children}
    </PatientProvider>
  );
}
