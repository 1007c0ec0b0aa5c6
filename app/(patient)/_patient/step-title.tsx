'use client';

import { useEffect, useRef, type ReactNode } from 'react';

interface StepTitleProps {
  /** Another step takes the focus, so that it is read out and the next key lands there. */
  readonly step: string;
  readonly children: ReactNode;
}

/** The step that was shown last since the page was loaded. */
let shown: string | null = null;

/** The title of a step. The first one after loading leaves the focus where the browser put it. */
export function StepTitle({ step, children }: StepTitleProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (shown !== null && shown !== step) {
      heading.current?.focus({ preventScroll: true });
      window.scrollTo(0, 0);
    }
    shown = step;
  }, [step]);
  return (
    <h1 ref={heading} tabIndex={-1}>
      {children}
    </h1>
  );
}
