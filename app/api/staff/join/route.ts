import { commandJoin } from '@/lib/server/command-join';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) => serve(request, async (actor) => commandJoin(actor, await readJson(request)));
