import { APIError } from 'better-auth/api';

/** Why the library refused, in its own word: 'INVALID_CODE'. @throws anything else that went wrong */
export function authRefusal(error: unknown): string {
  if (error instanceof APIError && error.statusCode < 500) return error.body?.code ?? String(error.status);
  throw error;
}
