import { loadFhir } from '@/lib/server/load-fhir';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly caseCode: string }>;
}

export const GET = (request: Request, { params }: Place) => serve(request, async (actor) => loadFhir(actor, (await params).caseCode));
