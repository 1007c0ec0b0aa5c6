import { commandStartEpisode } from '@/lib/server/command-start-episode';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) => serve(request, async (actor) => commandStartEpisode(actor, request.headers, await readJson(request)));
