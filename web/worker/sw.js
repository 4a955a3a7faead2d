// The page's own service worker: keeps the page so that it opens without a network. It never reloads anything under a hand:
// a new page is taken when it is opened the next time. What is under /api is not its business.
// vite.config.ts puts in which files the page is made of, and a stamp over them.
const files = __FILES__;
const shelf = 'page-__STAMP__';

self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(shelf).then((cache) => cache.addAll(files.map((file) => new Request(file, { cache: 'reload' })))));
});

self.addEventListener('activate', (event) => {
  event.waitUntil(caches.keys().then((names) => Promise.all(
    names.filter((name) => name.startsWith('page-') && name !== shelf).map((name) => caches.delete(name)))));
});

const fromShelf = (key) => caches.match(key);

// The network first, for a new page; what is kept when it does not answer soon.
async function openPage(request) {
  try {
    return await fetch(request, { signal: AbortSignal.timeout(3000) });
  } catch {
    return (await fromShelf('/')) ?? Response.error();
  }
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin || url.pathname.startsWith('/api/')) return;
  if (request.mode === 'navigate') event.respondWith(openPage(request));
  else event.respondWith(fromShelf(url.pathname).then((kept) => kept ?? fetch(request)));
});
