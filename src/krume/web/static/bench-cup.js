// The cup under a hand: its sum, its band and its sentence, with or without the network.

import { grams } from "./bench-draw.js";
import { bigKeys, tellWrong } from "./bench-fields.js";
import { Side } from "./bench-side.js";
import { cupNow, gravityOf, numberIn, placeOf } from "./bench-times.js";

const FIELDS = ["empty", "water", "batter"];
const [LOW, HIGH, EDGE, END] = [82, 246, 8, 320];

const side = new Side(draw, ({ wrong, field }) => tellWrong(page, field || "batter", wrong));
const { page, root } = side;
const band = JSON.parse(root.dataset.band);
const form = page.querySelector("form");
const x = (name) => page.querySelector(`[data-x="${name}"]`);
let shown = null;

function draw() {
  const cup = cupNow(side.state, side.many);
  if (cup.empty_g !== null) {
    x("cup").textContent = `The cup: empty ${grams(cup.empty_g)} g, with water ${grams(cup.water_g)} g`;
  }
  if (shown === null) fill(cup);
  shown = cup;
  const sg = cup.sg ?? null;
  x("said").hidden = sg === null;
  if (sg === null) return;
  const place = placeOf(sg, band);
  x("sg").textContent = sg.toFixed(2);
  x("say").textContent = band.words[place];
  const glyph = page.querySelector(place === "inside" ? "#glyph-inside" : "#glyph-outside");
  x("glyph").replaceChildren(glyph.content.cloneNode(true));
  if (x("strip")) mark(sg);
}

/** The cup as it is remembered, where a page that was kept does not know it yet. */
function fill(cup) {
  for (const [name, value] of [["empty", cup.empty_g], ["water", cup.water_g]]) {
    const box = page.querySelector(`#f-${name}`);
    if (box.value === "" && value !== null) box.value = String(value);
  }
}

function mark(sg) {
  const share = (sg - band.low) / (band.high - band.low);
  const at = Math.min(Math.max(LOW + share * (HIGH - LOW), EDGE), END);
  x("mark").setAttribute("d", `M${at - 7} 0h14l-7 13z`);
  x("strip").setAttribute("aria-label", `${band.strip}; this batter is ${sg.toFixed(2)}`);
}

/** What is wrong with the masses, by field. */
function wrongIn(cup) {
  const wrong = {};
  for (const name of FIELDS) {
    const value = cup[`${name}_g`];
    if (value === null) wrong[name] = "Type its grams, cup included, a number such as 212.";
    else if (!(value > 0 && value <= band.most)) wrong[name] = `A cup weighs more than 0 and at most ${band.most} g.`;
  }
  for (const name of ["water", "batter"]) {
    if (!Object.keys(wrong).length && cup[`${name}_g`] <= cup.empty_g) {
      wrong[name] = "That is no more than the empty cup. Weigh the cup with it, cup included.";
    }
  }
  return wrong;
}

form.addEventListener("submit", (event) => {
  event.preventDefault();
  const cup = {};
  for (const name of FIELDS) cup[`${name}_g`] = numberIn(form.elements[name].value);
  const wrong = wrongIn(cup);
  for (const name of FIELDS) tellWrong(page, name, wrong[name]);
  const first = FIELDS.find((name) => wrong[name]);
  if (first) {
    if (first !== "batter") page.querySelector("details").open = true;
    form.elements[first].focus();
    return;
  }
  form.elements.batter.value = "";
  page.querySelector("details").open = false;
  side.say({ kind: "cup", ...cup, sg: gravityOf(cup) });
});

bigKeys(x("keys"), form.elements.batter);
side.begin();
