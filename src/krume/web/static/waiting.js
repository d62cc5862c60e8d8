// What was done at a bench without the network and still waits on this device, said on the first page.

import { START } from "./bench-queue.js";

const list = document.querySelector("[data-waiting]");

function many(place) {
  try {
    const said = JSON.parse(localStorage.getItem(place) ?? "[]");
    return Array.isArray(said) ? said.length : 0;
  } catch {
    return 0;
  }
}

try {
  for (const place of Object.keys(localStorage).filter((each) => each.startsWith(START)).sort()) {
    const name = place.slice(START.length);
    if (!many(place)) continue;
    const link = document.createElement("a");
    link.href = `/bench/${encodeURIComponent(name)}`;
    link.textContent = `Open the bench of ${name}`;
    const line = document.createElement("p");
    line.append(`${many(place)} done at the bench of ${name} wait on this phone. `, link, " and they go into the book.");
    list.append(line);
  }
  list.hidden = list.children.length === 0;
} catch {
  // Nothing is kept here.
}
