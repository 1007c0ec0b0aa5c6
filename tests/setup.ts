/**
 * A hostile test environment: an unusual time zone and a pinned locale (see vitest.config.ts), no network, the same
 * chance in every test, and `console.error` fails the test that caused it. Proved by tests/unit/setup.
 */
import net from 'node:net';
import { afterEach, beforeEach } from 'vitest';
import { complaints } from './hostile/complaints';
import { outsideHost } from './hostile/outside-host';
import { seededRandom } from './seeded-random';

const connect = net.Socket.prototype.connect as (...args: unknown[]) => net.Socket;
net.Socket.prototype.connect = function refuseOutside(this: net.Socket, ...args: unknown[]) {
  const host = outsideHost(args);
  if (host !== null) throw new Error(`A test tried to reach ${host}: tests use this machine only.`);
  return connect.apply(this, args);
};

const { hear, expectNone } = complaints();

beforeEach(() => {
  console.error = hear;
  Math.random = seededRandom(1);
});

afterEach(expectNone);
