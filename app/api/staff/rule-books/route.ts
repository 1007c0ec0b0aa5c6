import { commandChangeRuleBook } from '@/lib/server/command-change-rule-book';
import { readJson } from '@/lib/server/read-json';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) => serve(request, async (actor) => commandChangeRuleBook(actor, await readJson(request)));
