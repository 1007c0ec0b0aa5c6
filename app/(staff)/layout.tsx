import type { Metadata } from 'next';
import { headers } from 'next/headers';
import type { ReactNode } from 'react';
import { staffHere } from '@/lib/server/staff-here';
import { StaffBar } from './_staff/staff-bar';
import styles from './_staff/staff.module.css';

export const metadata: Metadata = { title: 'Foldwatch', manifest: null };

/** The head of every page of the staff. It opens nothing: each page and each route asks by itself. */
export default async function StaffLayout({ children }: { readonly children: ReactNode }) {
  const here = await staffHere(await headers());
  return (
    <div className={styles.desk}>
      {here === null ? null : <StaffBar here={here} />}
      {children}
      <footer className={styles.foot}>
        A measurement aid under the clinic’s own judgement; not a diagnosis and not a medical device. It cannot see depth, heat, pus under the skin, or bone. <a href="/method">How it is measured, and how well</a>.
      </footer>
    </div>
  );
}
