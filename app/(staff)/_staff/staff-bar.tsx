'use client';

import type { StaffHere } from '@/lib/server/staff-here';
import { Button } from '../../_components/button';
import styles from './staff.module.css';

/** Whose machine it is now, and the way out. */
export function StaffBar({ here }: { readonly here: StaffHere }) {
  const signOut = () =>
    void fetch('/api/staff/sign-out', { method: 'POST' }).finally(() => {
      // A whole new page: nothing of the old one stays in memory.
      window.location.assign('/sign-in');
    });
  return (
    <header className={styles.bar}>
      <a className={styles.home} href={here.role === 'admin' ? '/clinic' : '/review'}>
        {here.clinicName}
      </a>
      <nav className={styles.places} aria-label="Places">
        {here.role === 'admin' ? null : <a href="/review">List</a>}
        {here.role === 'admin' ? null : <a href="/episodes/new">Start an episode</a>}
        <a href="/clinic">Clinic</a>
      </nav>
      <a className={styles.who} href="/account">
        <span className={styles.name}>
          {here.name}, {here.role}
        </span>
        <span className={styles.short}>Account</span>
      </a>
      <Button look="plain" onClick={signOut}>
        Sign out
      </Button>
    </header>
  );
}
