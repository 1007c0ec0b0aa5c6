import { createServer } from 'node:net';

const MOST_TRIED = 20;

const isFree = (port: number): Promise<boolean> =>
  new Promise((resolve) => {
    const server = createServer();
    server.once('error', () => resolve(false));
    server.listen(port, () => server.close(() => resolve(true)));
  });

/** The first port from `wanted` on that nobody listens on. */
export async function freePort(wanted: number): Promise<number> {
  for (let port = wanted; port < wanted + MOST_TRIED; port += 1) if (await isFree(port)) return port;
  throw new Error(`None of the ports ${wanted} to ${wanted + MOST_TRIED - 1} is free; name another in PORT.`);
}
