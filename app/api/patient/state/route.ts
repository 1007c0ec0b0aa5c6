import { loadPatientState } from '@/lib/server/load-patient-state';
import { serve } from '@/lib/server/serve';

export const GET = (request: Request) => serve(request, (actor) => loadPatientState(actor));
