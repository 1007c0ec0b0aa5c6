import { headers } from 'next/headers';
import type { ReactNode } from 'react';
import { staffHere } from '@/lib/server/staff-here';
import styles from './_clinic/clinic.module.css';

const PLACES = [
  { href: '/clinic/plans', words: 'Plans', roles: ['nurse', 'clinician', 'lead'] },
  { href: '/clinic/rules', words: 'Rule book', roles: ['nurse', 'clinician', 'lead'] },
  { href: '/clinic/numbers', words: 'Numbers and paper', roles: ['lead', 'admin'] },
  { href: '/clinic/people', words: 'People', roles: ['admin'] },
  { href: '/clinic/audit', words: 'Who did what', roles: ['lead', 'admin'] },
];

/** Where one may go from here; each page asks by itself whether one may. */
export default async function ClinicLayout({ children }: { readonly children: ReactNode }) {
  const here = await staffHere(await headers());
  const places = PLACES.filter(({ roles }) => here !== null && roles.includes(here.role));
  return (
    <>
      <nav className={styles.places} aria-label="The clinic">
        {places.map(({ href, words }) => (
          <a key={href} href={href}>
            {words}
          </a>
        ))}
      </nav>
      {children}
    </>
  );
}
