import { commandCloseEpisode } from '@/lib/server/command-close-episode';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly episodeId: string }>;
}

export const POST = (request: Request, { params }: Place) =>
  serve(request, async (actor) => commandCloseEpisode(actor, (await params).episodeId, await readJson(request)));
