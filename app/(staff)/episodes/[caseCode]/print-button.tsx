'use client';

import { Button } from '../../../_components/button';

/** Prints the page: the paper form is in the style sheet. */
export function PrintButton({ words = 'Print one page' }: { readonly words?: string }) {
  return <Button onClick={() => window.print()}>{words}</Button>;
}
