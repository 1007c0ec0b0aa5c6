import { commandSignOut } from '@/lib/server/command-sign-out';
import { serve } from '@/lib/server/serve';

export const POST = (request: Request) => serve(request, (actor) => commandSignOut(actor, request.headers));
