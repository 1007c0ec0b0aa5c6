import { commandClaimCase } from '@/lib/server/command-claim-case';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly episodeId: string }>;
}

export const POST = (request: Request, { params }: Place) =>
  serve(request, async (actor) => commandClaimCase(actor, (await params).episodeId, await readJson(request)));
