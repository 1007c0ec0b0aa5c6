import { commandKeepProcedurePhoto } from '@/lib/server/command-keep-procedure-photo';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly episodeId: string; readonly kind: string }>;
}

/** The body is the photo itself, streamed to the disk as it comes. */
export const PUT = (request: Request, { params }: Place) =>
  serve(request, async (actor) => {
    const { episodeId, kind } = await params;
    return commandKeepProcedurePhoto(actor, episodeId, { kind, headers: request.headers, body: request.body });
  });
