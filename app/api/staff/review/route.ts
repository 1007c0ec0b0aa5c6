import { loadReview } from '@/lib/server/load-review';
import { serve } from '@/lib/server/serve';

export const GET = (request: Request) => serve(request, (actor) => loadReview(actor, new URL(request.url).searchParams.get('since')));
