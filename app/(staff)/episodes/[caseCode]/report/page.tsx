import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound, redirect } from 'next/navigation';
import { loadReport } from '@/lib/server/load-report';
import { loadMethod } from '@/lib/server/load-method';
import { readActor } from '@/lib/server/read-actor';
import { MethodSection } from '../../../../method/method-section';
import { ReportScreen } from './report-screen';

interface Place {
  readonly params: Promise<{ readonly caseCode: string }>;
}

export async function generateMetadata({ params }: Place): Promise<Metadata> {
  return { title: `Report of case ${decodeURIComponent((await params).caseCode)}` };
}

export default async function ReportPage({ params }: Place) {
  const caseCode = decodeURIComponent((await params).caseCode);
  const found = await loadReport(await readActor(await headers()), caseCode);
  if ('report' in found) return <ReportScreen report={found.report} method={<Method />} />;
  if (found.refused.status === 401) redirect('/sign-in');
  notFound();
}

/** Its example is worked out once in the life of the server: the report does not wait for it. */
async function Method() {
  const found = await loadMethod(await readActor(await headers()));
  return 'method' in found ? <MethodSection method={found.method} /> : null;
}
