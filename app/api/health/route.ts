import { loadHealth } from '@/lib/server/load-health';
import { serve } from '@/lib/server/serve';

export const GET = (request: Request) => serve(request, (actor) => loadHealth(actor));
