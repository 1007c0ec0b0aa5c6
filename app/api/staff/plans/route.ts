import { commandChangePlan } from '@/lib/server/command-change-plan';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) => serve(request, async (actor) => commandChangePlan(actor, await readJson(request)));
