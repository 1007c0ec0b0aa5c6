import { commandChangePassword } from '@/lib/server/command-change-password';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) => serve(request, async (actor) => commandChangePassword(actor, request.headers, await readJson(request)));
