// The page for a bench that was never opened on this device: which ones were.

import { CACHE } from "./bench-kept.js";

const list = document.querySelector("[data-x=kept]");
try {
  const cache = await caches.open(CACHE);
  const paths = (await cache.keys()).map((request) => new URL(request.url).pathname);
  for (const path of paths.filter((each) => /^\/bench\/[^/]+$/.test(each)).sort()) {
    const link = document.createElement("a");
    link.href = path;
    link.className = "strip";
    link.textContent = `Weigh ${decodeURIComponent(path.slice("/bench/".length))}`;
    const item = document.createElement("li");
    item.append(link);
    list.append(item);
  }
} catch {
  // Nothing is kept here.
}
document.querySelector("[data-x=none]").hidden = list.children.length > 0;
