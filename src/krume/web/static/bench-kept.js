// The pages of one bench kept on this device, so that they open when the network is gone.

const { book, madeBy } = document.documentElement.dataset;

/** Pages of one book by one version of the program: no other book's, no older script's. */
export const CACHE = `krume bench ${book} ${madeBy}`;
const PLACES = ["", "/clock", "/cup", "/end"];
const FRESH_MS = 6 * 60 * 60 * 1000;

/** Let the worker in, and keep the pages of this bench that are not kept yet, or not of today. */
export async function keepPages(address) {
  if (!("serviceWorker" in navigator)) return;
  try {
    await navigator.serviceWorker.register(`/bench-worker.js?${new URLSearchParams({ cache: CACHE })}`, { scope: "/bench/" });
    const cache = await caches.open(CACHE);
    for (const place of PLACES) {
      const kept = await cache.match(address + place);
      const age = kept ? Date.now() - Date.parse(kept.headers.get("date") ?? "") : Infinity;
      if (age < FRESH_MS) continue;
      const response = await fetch(address + place, { cache: "no-store" });
      if (response.ok) await cache.put(address + place, response);
    }
  } catch {
    // Not allowed here, or no network: the open page goes on all the same.
  }
}

/** Where the weighing stands, for a page that is opened while the network is gone. */
export async function keepState(address, body) {
  try {
    const cache = await caches.open(CACHE);
    const headers = { "content-type": "application/json" };
    await cache.put(`${address}/state`, new Response(JSON.stringify(body), { headers }));
  } catch {
    // No room, or none allowed.
  }
}

/** Of when that is which a page says while it hears nothing of the book. */
export function asOf(moment) {
  const when = new Date(moment).toLocaleString("sv-SE", { dateStyle: "short", timeStyle: "short" });
  return `What the book says here is of ${when}.`;
}

/** Whether a page would open without the network. */
export async function isKept(href) {
  if (!navigator.serviceWorker?.controller) return false;
  try {
    const cache = await caches.open(CACHE);
    return Boolean(await cache.match(new URL(href).pathname));
  } catch {
    return false;
  }
}
