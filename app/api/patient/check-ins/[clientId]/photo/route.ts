import { commandKeepPhotoPiece } from '@/lib/server/command-keep-photo-piece';
import { loadPhotoReceipt } from '@/lib/server/load-photo-receipt';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly clientId: string }>;
}

export const GET = (request: Request, { params }: Place) =>
  serve(request, async (actor) => loadPhotoReceipt(actor, (await params).clientId, request.headers));

/** The body is the piece itself, streamed to the disk as it comes. */
export const PUT = (request: Request, { params }: Place) =>
  serve(request, async (actor) => {
    const { clientId } = await params;
    const offset = new URL(request.url).searchParams.get('offset');
    return commandKeepPhotoPiece(actor, { clientId, offset, headers: request.headers, body: request.body });
  });
