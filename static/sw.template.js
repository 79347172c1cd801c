// Keeps the whole site in the browser, so that it opens with no network. The build fills in the version, which follows
// every file, and the list of files with their digests.
const VERSION = "VERSION";
const FILES = [/* FILES */];

const SCOPE = self.registration.scope;
const PREFIX = `falsewright ${SCOPE} `;
const CACHE = PREFIX + VERSION;
const PAGE = new URL("index.html", SCOPE).href;

// The page is known by its folder, since some hosts redirect from its file.
const keyOf = (url) => (url === PAGE ? SCOPE : url);

self.addEventListener("install", (event) => event.waitUntil(store()));

self.addEventListener("activate", (event) => event.waitUntil(dropOldVersions().then(() => self.clients.claim())));

// A new version waits until the user asks for it.
self.addEventListener("message", (event) => {
  if (event.data === "skip-waiting") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !url.href.startsWith(SCOPE)) return;
  url.search = "";
  url.hash = "";
  event.respondWith(answer(event.request, keyOf(url.href)));
});

async function store() {
  const cache = await caches.open(CACHE);
  await Promise.all(
    FILES.map(async ([file, integrity]) => {
      const url = keyOf(new URL(file, SCOPE).href);
      const response = await fetch(url, { cache: "reload", integrity });
      if (!response.ok) throw new Error(`${url}: ${response.status}`);
      await cache.put(url, response);
    }),
  );
}

async function answer(request, url) {
  const cache = await caches.open(CACHE);
  return (await cache.match(url)) ?? fetch(request);
}

async function dropOldVersions() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
}
