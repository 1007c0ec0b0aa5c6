import { loadReviewCase } from '@/lib/server/load-review-case';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly episodeId: string }>;
}

export const GET = (request: Request, { params }: Place) => serve(request, async (actor) => loadReviewCase(actor, (await params).episodeId));
