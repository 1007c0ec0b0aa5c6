import { commandChangePeople } from '@/lib/server/command-change-people';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) => serve(request, async (actor) => commandChangePeople(actor, request.headers, await readJson(request)));
