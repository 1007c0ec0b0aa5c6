import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound } from 'next/navigation';
import { loadMethod } from '@/lib/server/load-method';
import { readActor } from '@/lib/server/read-actor';
import { MethodSection } from './method-section';
import styles from './method.module.css';

export const metadata: Metadata = { title: 'How it is measured', manifest: null };

export default async function MethodPage() {
  const found = await loadMethod(await readActor(await headers()));
  if (!('method' in found)) notFound();
  return (
    <main className={styles.page}>
      <h1>How it is measured, and how well</h1>
      <MethodSection method={found.method} />
    </main>
  );
}
