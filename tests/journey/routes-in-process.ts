/** The program's own route handlers without a web server around them; a session as a browser would have it. */
import path from 'node:path';
import { ROOT, treeFiles } from '../architecture/source-tree';
import type { Send } from './phone';
import { ORIGIN } from './test-clinic';

type Handler = (request: Request, place: { params: Promise<Record<string, string>> }) => Promise<Response>;

const routes = treeFiles('app')
  .filter((file) => file.endsWith('/route.ts'))
  .map((file) => {
    const pattern = file.replace(/^app/, '').replace(/\/route\.ts$/, '').replace(/\[(\w+)\]/g, '(?<$1>[^/]+)');
    return { file, pattern: new RegExp(`^${pattern}$`) };
  });

async function handle(request: Request): Promise<Response> {
  const { pathname } = new URL(request.url);
  for (const { file, pattern } of routes) {
    const match = pattern.exec(pathname);
    if (match === null) continue;
    const { [request.method]: handler } = (await import(/* @vite-ignore */ path.join(ROOT, file))) as Record<string, Handler | undefined>;
    if (handler) return handler(request, { params: Promise.resolve({ ...match.groups }) });
  }
  return new Response(null, { status: 404 });
}

/** Opens a personal link and answers how to send requests in its session. */
export async function openLink(secret: string): Promise<Send> {
  const opened = await handle(new Request(`${ORIGIN}/p/${secret}`));
  const [cookie] = (opened.headers.get('set-cookie') ?? '').split(';');
  return (address, init) => {
    const headers = { ...(init.headers as Record<string, string>), cookie, host: 'clinic.test', origin: ORIGIN };
    return handle(new Request(ORIGIN + address, { ...init, headers }));
  };
}
