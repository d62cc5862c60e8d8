// Handles on the heights of a torte: what follows from them is asked of the same page, and put in.

const WAIT_MS = 250;

const form = document.querySelector("[data-handles]");
let waits = 0;
let asked = 0;

function numberOf(box) {
  const value = Number(box.value.replace(",", "."));
  return Number.isFinite(value) ? value : 0;
}

function moved(event) {
  const box = document.getElementById(event.target.dataset.of ?? event.target.id);
  if (event.target.dataset.step) {
    box.value = String(Math.max(1, numberOf(box) + Number(event.target.dataset.step)));
  } else if (event.target.type === "range") {
    box.value = event.target.value;
  }
  const slide = form.querySelector(`.slide[data-of="${box.id}"]`);
  if (slide !== event.target) slide.value = String(numberOf(box));
  clearTimeout(waits);
  waits = setTimeout(follow, WAIT_MS);
}

/** All that follows from the heights, as the page itself says it. */
async function follow() {
  const number = ++asked;
  const said = new URLSearchParams(new FormData(form));
  said.delete("seen");
  const address = `${form.dataset.handles}?${said}`;
  try {
    const response = await fetch(address);
    const page = new DOMParser().parseFromString(await response.text(), "text/html");
    if (number !== asked) return;
    for (const part of document.querySelectorAll("[data-live]")) {
      const next = page.querySelector(`[data-live="${part.dataset.live}"]`);
      if (next) part.replaceWith(document.adoptNode(next));
    }
    history.replaceState(null, "", address);
  } catch {
    // No network: the heights stand as they are, and are seen when it is back.
  }
}

if (form) {
  for (const node of form.querySelectorAll(".slide, [data-step]")) node.hidden = false;
  form.querySelector("[data-see]").hidden = true;
  form.addEventListener("input", moved);
  form.addEventListener("click", (event) => { if (event.target.dataset.step) moved(event); });
}
