import { commandSignIn } from '@/lib/server/command-sign-in';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) => serve(request, async (actor) => commandSignIn(actor, request.headers, await readJson(request)));
