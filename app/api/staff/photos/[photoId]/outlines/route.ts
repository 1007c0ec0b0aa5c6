import { commandKeepOutline } from '@/lib/server/command-keep-outline';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly photoId: string }>;
}

export const POST = (request: Request, { params }: Place) =>
  serve(request, async (actor) => commandKeepOutline(actor, (await params).photoId, await readJson(request)));
