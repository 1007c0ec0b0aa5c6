import { commandLeave } from '@/lib/server/command-leave';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) => serve(request, (actor) => commandLeave(actor, request.headers));
