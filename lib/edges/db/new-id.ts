import { randomUUID } from 'node:crypto';

/** An id that says nothing and cannot be guessed. */
export const newId = (): string => randomUUID();
