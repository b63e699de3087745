// Caches the page itself for times without a network; requests to the server never pass through here.
const SHELL = 'shell';

/** All files of this build, and the first document; files of earlier builds go. */
async function fetchBuild() {
  const files = await (await fetch('/files.json', { cache: 'no-cache' })).json();
  const built = Object.values(files).flatMap(({ file, css = [], assets = [] }) => [file, ...css, ...assets]);
  const wanted = ['/', '/icon.svg', ...new Set(built.map((name) => `/${name}`))];
  const cache = await caches.open(SHELL);
  const cached = new Set((await cache.keys()).map(({ url }) => new URL(url).pathname));
  // The first document has the same name in every build; every other name has a hash of its content.
  await cache.addAll(wanted.filter((path) => path === '/' || !cached.has(path)));
  for (const request of await cache.keys()) {
    if (!wanted.includes(new URL(request.url).pathname)) await cache.delete(request);
  }
}

/** The network first, so that a new build is seen at once; the cached document where there is none. */
async function documentFor(event) {
  try {
    const document = await fetch(event.request);
    event.waitUntil(fetchBuild().catch(() => undefined));
    return document;
  } catch {
    return (await caches.match('/')) ?? Response.error();
  }
}

self.addEventListener('install', (event) => event.waitUntil(fetchBuild().then(() => self.skipWaiting())));
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('notificationclick', (event) => {
  event.notification.close();
  event.waitUntil(self.clients.matchAll({ type: 'window' }).then(([page]) => page?.focus()));
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin || pathname.startsWith('/api/')) return;
  if (request.mode === 'navigate') event.respondWith(documentFor(event));
  // The name of a built file holds a hash of its content, so a cached one is never stale.
  else if (pathname.startsWith('/assets/')) {
    event.respondWith(caches.match(request).then((cached) => cached ?? fetch(request)));
  }
});
