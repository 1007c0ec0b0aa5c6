import { commandKeepCheckIn } from '@/lib/server/command-keep-check-in';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly clientId: string }>;
}

export const PUT = (request: Request, { params }: Place) =>
  serve(request, async (actor) => commandKeepCheckIn(actor, (await params).clientId, await readJson(request)));
