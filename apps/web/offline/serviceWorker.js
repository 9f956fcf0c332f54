// Keeps the page itself in the browser, so that it opens where there is no network. VERSION and FILES are put in by the
// build: one version is one set of files, kept whole or not at all, and never mixed with another.
const CACHE = `panewright-${VERSION}`;
/** How long the server is waited for before the kept page is shown, ms. */
const PATIENCE = 3000;

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(CACHE)
      .then((cache) => cache.addAll(FILES.map((path) => new Request(path, { cache: 'reload' }))))
      .catch(async (error) => {
        await caches.delete(CACHE);
        throw error;
      }),
  );
});

// A new version comes into its own when no page of the old one is open any more: only then are the old files dropped.
self.addEventListener('activate', (event) => {
  const dropOld = async () => {
    const names = await caches.keys();
    const old = names.filter((name) => name.startsWith('panewright-') && name !== CACHE);
    await Promise.all(old.map((name) => caches.delete(name)));
  };
  // The page is asked for while this worker is still being started.
  event.waitUntil(Promise.all([dropOld(), self.registration.navigationPreload?.enable()]));
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin || pathname.startsWith('/api/')) return;
  if (request.mode === 'navigate') event.respondWith(page(request, event.preloadResponse));
  else event.respondWith(file(request));
});

/** The newest page from the server; where it does not answer in time, the one that is kept, which is whole too. */
async function page(request, preload) {
  const kept = await caches.open(CACHE).then((cache) => cache.match('/'));
  if (!kept) return fetch(request);
  const late = new Promise((resolve) => setTimeout(() => resolve(kept), PATIENCE));
  const fresh = Promise.resolve(preload)
    .then((answer) => answer ?? fetch(request))
    .then(
      (answer) => (answer.ok ? answer : kept),
      () => kept,
    );
  return Promise.race([fresh, late]);
}

/** A file that is kept is the same at the server: its name tells its content, or it belongs to this version. */
async function file(request) {
  const kept = await caches.open(CACHE).then((cache) => cache.match(request, { ignoreSearch: true }));
  return kept ?? fetch(request);
}
