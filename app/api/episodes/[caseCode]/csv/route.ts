import { loadEpisodeCsv } from '@/lib/server/load-episode-csv';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly caseCode: string }>;
}

export const GET = (request: Request, { params }: Place) => serve(request, async (actor) => loadEpisodeCsv(actor, (await params).caseCode));
