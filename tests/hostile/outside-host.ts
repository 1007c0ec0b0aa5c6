import net from 'node:net';

interface Destination {
  readonly host?: string;
  readonly path?: string;
}

const LOCAL_NAMES = new Set(['localhost', '::1']);

/** Is a host this machine's own loopback? `isLocal('127.0.0.3')` is true, `isLocal('10.0.0.1')` is false. */
function isLocal(host: string): boolean {
  const bare = host.replace(/^\[|\]$/g, '').replace(/^::ffff:/, '');
  return LOCAL_NAMES.has(bare) || (net.isIPv4(bare) && bare.startsWith('127.'));
}

/**
 * The host outside this machine that a call of `Socket.connect` would reach, or null. Node calls it in four ways:
 * with options, with a path, with port and host, and with all of that already gathered in a list.
 * @example outsideHost([80, '192.0.2.1']) // '192.0.2.1'
 */
export function outsideHost(args: readonly unknown[]): string | null {
  const [first, second] = args;
  if (Array.isArray(first)) return outsideHost(first);
  if (typeof first === 'object' && first !== null) {
    const { host, path } = first as Destination;
    return path || host === undefined || isLocal(host) ? null : host;
  }
  return typeof second === 'string' && !isLocal(second) ? second : null;
}
