'use client';

import { Button } from '../../../_components/button';

/** Prints the page: the paper form is in the style sheet. */
export function PrintButton() {
  return <Button onClick={() => window.print()}>Print one page</Button>;
}
