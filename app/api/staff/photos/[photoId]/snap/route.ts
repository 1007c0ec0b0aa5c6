import { commandSnapOutline } from '@/lib/server/command-snap-outline';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly photoId: string }>;
}

export const POST = (request: Request, { params }: Place) =>
  serve(request, async (actor) => commandSnapOutline(actor, (await params).photoId, await readJson(request)));
