import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound, redirect } from 'next/navigation';
import { loadAudit } from '@/lib/server/load-audit';
import { readActor } from '@/lib/server/read-actor';
import { ButtonLink } from '../../../_components/button';
import { DataTable } from '../../../_components/data-table';
import styles from '../_clinic/clinic.module.css';

export const metadata: Metadata = { title: 'Who did what' };

export default async function AuditPage({ searchParams }: { readonly searchParams: Promise<{ readonly before?: string | string[] }> }) {
  const { before } = await searchParams;
  const found = await loadAudit(await readActor(await headers()), typeof before === 'string' ? before : null);
  if ('refused' in found && found.refused.status === 401) redirect('/sign-in');
  if (!('page' in found)) notFound();
  const { rows, next } = found.page;
  return (
    <main className={styles.page}>
      <h1>Who did what</h1>
      <p className={styles.soft}>Newest first: every look at a case and every change. Rows are only ever added.</p>
      <DataTable
        caption="Who did what, and what allowed it"
        captionUnseen
        columns={['When', 'Who', 'What', 'Case', 'Allowed by']}
        rows={rows.map(({ id, at, who, action, caseCode, rule }) => ({ key: id, cells: [at, who, action, caseCode, rule] }))}
      />
      <p className={styles.tools}>
        {next === null ? 'This is the end of the list.' : <ButtonLink href={`/clinic/audit?before=${next}`}>Older</ButtonLink>}
      </p>
    </main>
  );
}
