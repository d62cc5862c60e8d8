// Pages of the bench from the network; those that were opened before also without it.

const START = "krume bench";
const CACHE = new URL(self.location).searchParams.get("cache") ?? START;
const AWAY = "/offline";
const FILES = [
  "tokens.css", "base.css", "pages.css", "bench.css", "crumb.svg", "next-400.woff2", "next-600.woff2",
  "next-800.woff2", "bench.js", "bench-awake.js", "bench-away.js", "bench-clock.js", "bench-cup.js",
  "bench-draw.js", "bench-end.js", "bench-fields.js", "bench-kept.js", "bench-queue.js", "bench-side.js",
  "bench-slip.js", "bench-state.js", "bench-times.js", "bench-voice.js", "slip.js",
].map((name) => `/static/${name}`);

self.addEventListener("install", (event) => event.waitUntil(prepare()));
self.addEventListener("activate", (event) => event.waitUntil(begin()));
self.addEventListener("fetch", (event) => {
  const { origin, pathname } = new URL(event.request.url);
  const isOurs = pathname.startsWith("/bench/") || pathname.startsWith("/static/");
  if (event.request.method === "GET" && origin === self.location.origin && isOurs) {
    event.respondWith(answer(event.request));
  }
});

async function prepare() {
  const cache = await caches.open(CACHE);
  await cache.addAll([AWAY, ...FILES]);
  await self.skipWaiting();
}

/** What another book or an older version of the program left here opens no more. */
async function begin() {
  const others = (await caches.keys()).filter((name) => name.startsWith(START) && name !== CACHE);
  await Promise.all(others.map((name) => caches.delete(name)));
  await self.clients.claim();
}

/** The network's answer, kept for later; without the network what was kept, and marked as that. */
async function answer(request) {
  const { pathname, search } = new URL(request.url);
  const cache = await caches.open(CACHE);
  try {
    const response = await fetch(request);
    // Where a weighing stands is kept by its page, in the order in which the page heard it.
    if (response.ok && !search && !pathname.endsWith("/state")) await cache.put(pathname, response.clone());
    return response;
  } catch {
    const kept = await cache.match(pathname);
    if (kept) return marked(kept);
    const away = request.mode === "navigate" ? await cache.match(AWAY) : null;
    return away ?? Response.error();
  }
}

function marked(kept) {
  const headers = new Headers(kept.headers);
  headers.set("x-krume-kept", "yes");
  return new Response(kept.body, { status: kept.status, headers });
}
