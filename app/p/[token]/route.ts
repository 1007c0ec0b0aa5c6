import { commandOpenLink } from '@/lib/server/command-open-link';
import { serve } from '@/lib/server/serve';

interface Place {
  readonly params: Promise<{ readonly token: string }>;
}

/** A personal link. Its answer only sends the browser on, to an address that can be seen by anybody. */
export const GET = (request: Request, { params }: Place) => serve(request, async (actor) => commandOpenLink(actor, (await params).token));
