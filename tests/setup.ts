/**
 * A hostile test environment: an unusual time zone (set in vitest.config.ts), no network, and `console.error` fails
 * the test that caused it.
 */
import net from 'node:net';
import { afterEach, beforeEach, expect } from 'vitest';

const complaints: string[] = [];

const connect = net.Socket.prototype.connect;
net.Socket.prototype.connect = function refuseOutside(this: net.Socket, ...args: unknown[]) {
  const first = Array.isArray(args[0]) ? (args[0] as unknown[])[0] : args[0];
  const host = typeof first === 'object' && first !== null ? (first as { host?: string }).host : undefined;
  const local = host === undefined || ['localhost', '127.0.0.1', '::1'].includes(host);
  if (!local) throw new Error(`A test tried to reach ${host}: tests use this machine only.`);
  return (connect as (...a: unknown[]) => net.Socket).apply(this, args);
} as typeof connect;

beforeEach(() => {
  complaints.length = 0;
  console.error = (...parts: unknown[]) => {
    complaints.push(parts.map(String).join(' '));
  };
});

afterEach(() => {
  expect(complaints, 'console.error was called').toEqual([]);
});
