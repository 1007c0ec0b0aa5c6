import { loadReportPdf } from '@/lib/server/load-report-pdf';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly caseCode: string }>;
}

export const GET = (request: Request, { params }: Place) => serve(request, async (actor) => loadReportPdf(actor, (await params).caseCode));
