import { commandChangeClinic } from '@/lib/server/command-change-clinic';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) => serve(request, async (actor) => commandChangeClinic(actor, await readJson(request)));
