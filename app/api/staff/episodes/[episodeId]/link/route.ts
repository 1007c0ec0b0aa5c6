import { commandChangeLink } from '@/lib/server/command-change-link';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly episodeId: string }>;
}

export const POST = (request: Request, { params }: Place) =>
  serve(request, async (actor) => commandChangeLink(actor, request.headers, (await params).episodeId, await readJson(request)));
