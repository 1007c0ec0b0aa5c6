'use client';

import { useEffect, useRef, type ReactNode } from 'react';

interface StepTitleProps {
  /** Another step takes the focus, so that it is read out and the next key lands there. */
  readonly step: string;
  readonly children: ReactNode;
}

/** The title of a step. The first one of a page leaves the focus where the browser put it. */
export function StepTitle({ step, children }: StepTitleProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const shown = useRef(step);
  useEffect(() => {
    if (shown.current === step) return;
    shown.current = step;
    heading.current?.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  }, [step]);
  return (
    <h1 ref={heading} tabIndex={-1}>
      {children}
    </h1>
  );
}
