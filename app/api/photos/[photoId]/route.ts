import { loadPhotoView } from '@/lib/server/load-photo-view';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly photoId: string }>;
}

export const GET = (request: Request, { params }: Place) => serve(request, async (actor) => loadPhotoView(actor, (await params).photoId));
