'use client';

import { useEffect, useRef } from 'react';

const KEPT_AS = 'foldwatchLetterKeys';

/** Letters as commands can be switched off, for those who dictate (WCAG 2.2, 2.1.4). */
export const lettersAreOn = (): boolean => localStorage.getItem(KEPT_AS) !== 'off';
export const setLettersOn = (on: boolean): void => localStorage.setItem(KEPT_AS, on ? 'on' : 'off');

/** Where letters are written they are letters. */
function isWriting(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && (target.isContentEditable || /^(TEXTAREA|SELECT)$/.test(target.tagName) || (target instanceof HTMLInputElement && !/^(radio|checkbox)$/.test(target.type)));
}

/**
 * Keys without Ctrl, Alt or Meta as commands, wherever the focus is, except where somebody writes. A command that answers
 * `false` has left the key alone: it does what it does without us.
 */
export function useLetters(commands: Readonly<Record<string, () => void | false>>): void {
  const newest = useRef(commands);
  useEffect(() => {
    newest.current = commands;
  });
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented || isWriting(event.target)) return;
      if (event.key.length === 1 && !lettersAreOn()) return;
      const command = newest.current[event.key];
      if (command === undefined) return;
      if (command() !== false) event.preventDefault();
    };
    document.addEventListener('keydown', pressed);
    return () => document.removeEventListener('keydown', pressed);
  }, []);
}
