// A bake written down: kept here at once, and in the book once it can be.

import { plain } from "./bench-state.js";
import { tellWrong } from "./bench-fields.js";
import { Side } from "./bench-side.js";
import { clocksNow, cupNow, minutesOf, numberIn } from "./bench-times.js";

const side = new Side(draw, ({ wrong }) => {
  x("refused").textContent = wrong ?? "That was not kept.";
  x("refused").hidden = false;
});
const { page, root } = side;
const limits = JSON.parse(root.dataset.limits);
const form = page.querySelector("form");
const x = (name) => page.querySelector(`[data-x="${name}"]`);
let left = false;
let trial = side.many.find((each) => each.kind === "end")?.id ?? null;

function draw() {
  const waits = side.many.some((each) => each.kind === "end");
  x("writing").hidden = waits;
  x("written").hidden = !waits;
  if (trial && !waits && side.state.state === "done") leave();
  else if (!trial) drafted();
}

/** On to the trial, once. */
function leave() {
  if (left) return;
  left = true;
  location.assign(`/trials/${trial}`);
}

/** What the clocks and the cup know already, into boxes that are still empty. */
function drafted() {
  const oven = clocksNow(side.state, side.many).findLast((each) => each.kind === "oven");
  const minutes = oven ? minutesOf(oven, side.now()) : 0;
  put("minutes", minutes >= 1 ? String(Math.round(minutes)) : "");
  const { sg } = cupNow(side.state, side.many);
  put("sg", sg === null || sg === undefined ? "" : plain(sg, 3));
}

function put(name, text) {
  const box = form.elements[name];
  if (box.value === "" && text && box !== document.activeElement && !box.dataset.mine) box.value = text;
}

/** What is wrong with a number; nothing where it may stand. */
function wrongIn(name) {
  const text = form.elements[name].value.trim();
  if (!text) return "";
  const value = numberIn(text);
  const { least, most, hint } = limits[name];
  return value !== null && value > 0 && value >= least && value <= most ? "" : hint;
}

form.addEventListener("input", ({ target }) => { target.dataset.mine = "yes"; });
form.addEventListener("submit", (event) => {
  event.preventDefault();
  let first = null;
  for (const name of Object.keys(limits)) {
    const wrong = wrongIn(name);
    tellWrong(page, name, wrong);
    first ??= wrong ? form.elements[name] : null;
  }
  if (first) {
    if (first.closest("details")) first.closest("details").open = true;
    first.focus();
    return;
  }
  const typed = Object.fromEntries([...new FormData(form)].filter(([name]) => name !== "key" && name !== "trial"));
  const said = side.say({ kind: "end", typed });
  trial = side.many.find((each) => each.kind === "end")?.id ?? null;
  said.then(draw);
});

side.begin();
