/**
 * Keeps one page and the hashed files it is made of, for times without network. Pages, data and pictures always come
 * from the network and are never stored: the next person on this phone must not see them.
 */
const SHELL = '/offline';
const CACHE = 'shell-1';
/** Names with a hash in them: what lies behind one never changes. */
const HASHED = /static\/(?:chunks|css|media)\/[\w./~%()-]+\.(?:js|css|woff2)/g;

async function keepShell() {
  const page = await fetch(SHELL, { cache: 'no-store', credentials: 'omit' });
  if (!page.ok || page.redirected) return;
  const text = await page.clone().text();
  const wanted = [...new Set(text.match(HASHED) ?? [])].map((name) => `/_next/${name}`);
  const cache = await caches.open(CACHE);
  const missing = await Promise.all(wanted.map(async (url) => ((await cache.match(url)) ? [] : [url])));
  await cache.addAll(missing.flat());
  // The page last: it is only kept with everything it needs.
  await cache.put(SHELL, page);
  const needed = new Set([SHELL, ...wanted]);
  for (const { url } of await cache.keys()) if (!needed.has(new URL(url).pathname)) await cache.delete(url);
}

self.addEventListener('install', (event) => event.waitUntil(keepShell().then(() => self.skipWaiting())));

self.addEventListener('activate', (event) => {
  const others = async () => {
    for (const name of await caches.keys()) if (name !== CACHE) await caches.delete(name);
    await self.clients.claim();
  };
  event.waitUntil(others());
});

self.addEventListener('message', (event) => {
  if (event.data === 'keepShell') event.waitUntil(keepShell().catch(() => undefined));
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin) return;
  if (request.mode === 'navigate') {
    event.respondWith(fetch(request).catch(async () => (await caches.match(SHELL)) ?? Response.error()));
  } else if (pathname.startsWith('/_next/static/')) {
    event.respondWith(caches.match(request).then((kept) => kept ?? fetch(request)));
  }
});
