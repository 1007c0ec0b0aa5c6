import { commandChangeSecondFactor } from '@/lib/server/command-change-second-factor';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) => serve(request, async (actor) => commandChangeSecondFactor(actor, request.headers, await readJson(request)));
