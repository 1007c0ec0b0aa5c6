import { loadPhotoVerdict } from '@/lib/server/load-photo-verdict';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly clientId: string }>;
}

export const GET = (request: Request, { params }: Place) =>
  serve(request, async (actor) => loadPhotoVerdict(actor, (await params).clientId, request.headers));
