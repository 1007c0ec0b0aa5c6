import { commandAnswerBirthYear } from '@/lib/server/command-answer-birth-year';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) =>
  serve(request, async (actor) => commandAnswerBirthYear(actor, request.headers, await readJson(request)));
