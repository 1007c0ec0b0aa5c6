import { loadPlanCalendar } from '@/lib/server/load-plan-calendar';
import { serve } from '@/lib/server/serve';

export const GET = (request: Request) => serve(request, (actor) => loadPlanCalendar(actor));
