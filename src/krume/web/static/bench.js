// The bench as it reacts to a hand: at once, with or without the network.

import { keepAwake } from "./bench-awake.js";
import { bar, grams, sizeOf } from "./bench-draw.js";
import { asOf, isKept, keepPages, keepState } from "./bench-kept.js";
import { Queue } from "./bench-queue.js";
import { showSlip } from "./bench-slip.js";
import { addOf, displayOf, grown, plain, standing, withSaid } from "./bench-state.js";
import { Voice } from "./bench-voice.js";

const LOOK_MS = 5000;
const RETRY_MS = 2000;
const PATIENCE_MS = 800;
const SAME_G = 0.05;

const root = document.getElementById("bench");
const main = root.closest("main");
const page = document.querySelector(".bench");
let state = JSON.parse(root.dataset.state);
let key = state.key || newId();
let typing = location.search.includes("else");
let slipSince = 0;
let shown = "";
let wished = "";

const x = (name) => page.querySelectorAll(`[data-x="${name}"]`);
const put = (name, text) => x(name).forEach((node) => { node.textContent = text; });
const show = (name, is) => x(name).forEach((node) => { node.hidden = !is; });

const queue = new Queue(root.dataset.name, root.dataset.address, heard);
const voice = new Voice(x("aloud")[0]);

function heard(answer) {
  if (answer.status >= 400) {
    put("wrong", answer.body.wrong ?? "That was not kept.");
    show("wrong", true);
    typing = true;
  } else {
    state = answer.body;
    key = state.key || key;
    if (!answer.kept && state.state === "open") keepState(root.dataset.address, state);
    // What was written down is done with: the bench is free for the next one.
    if (state.state !== "open") free();
  }
  draw();
}

function free() {
  key = newId();
  queue.look();
}

function steps() {
  return withSaid(state.rows, state.ground, state.steps, queue.many);
}

function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Say one thing: it is kept here at once, drawn, and sent. */
function say(said) {
  queue.add({ id: newId(), version: state.version, ...said });
  wished = "";
  typing = false;
  show("wrong", false);
  document.getElementById("shows").value = "";
  draw();
  send();
}

async function send() {
  await queue.send(key);
  draw();
  if (wished && await isReady(wished)) location.assign(wished);
}

/** A way may be gone once all is kept; without the network, where its page opens all the same. */
async function isReady(href) {
  return queue.lost ? isKept(href) : queue.many.length === 0;
}

function panelOf(found) {
  if (queue.many.some((said) => said.kind === "end")) return "ended";
  if (found.slip !== null) return "slip";
  if (found.now === null) return "done";
  const { kind } = found.spots[found.now];
  if (kind === "tare") return "tare";
  return typing || kind !== "add" ? "number" : "add";
}

/** Draw the one panel there is now. */
function draw() {
  const all = steps();
  const found = standing(state.rows, all);
  const panel = panelOf(found);
  show("lost", queue.lost);
  put("as-of", asOf(state.now));
  for (const node of main.querySelectorAll("[data-panel]")) node.hidden = node.dataset.panel !== panel;
  put("progress", progress(found));
  drawBefore(found, panel);
  drawJar(found, all);
  if (panel === "slip") drawSlip(found, all);
  else slipSince = 0;
  if (panel === "done") drawTotal(found, all);
  if (found.now !== null && !["slip", "ended"].includes(panel)) drawRow(found, panel);
  for (const node of page.querySelectorAll('input[name="position"]')) node.value = found.now ?? -1;
  for (const node of page.querySelectorAll('input[name="key"]')) node.value = key;
  for (const node of page.querySelectorAll('input[name="version"]')) node.value = state.version;
  show("aside", all.length > 0 && !queue.lost);
  focusOn(panel, `${panel} ${found.now} ${found.slip}`);
}

/** A hand on the keys stays where the next thing is. */
function focusOn(panel, now) {
  if (now === shown) return;
  const first = shown === "";
  shown = now;
  const lost = document.activeElement === document.body || document.activeElement?.closest("[hidden]");
  if (panel === "number") document.getElementById("shows").focus();
  else if (!first && lost) {
    main.querySelector(`[data-panel="${panel}"] .strip.in, [data-panel="${panel}"] .out`)?.focus();
  }
}

function progress(found) {
  const at = found.slip ?? found.now;
  if (at === null) return "all in";
  const row = found.spots[at];
  if (row.kind === "tare") return row.label;
  const mine = found.spots.filter((spot) => spot.bowl === row.bowl && spot.kind !== "tare");
  return `${row.label}, ${mine.indexOf(row) + 1} of ${mine.length}`;
}

function drawBefore(found, panel) {
  const { last, before, chosen } = found;
  const is = !["slip", "ended"].includes(panel) && !(panel === "number" && typing);
  show("before", last !== null && is);
  for (const node of x("undo")) node.value = last?.id ?? "";
  const was = x("was")[0];
  was.replaceChildren();
  if (chosen) was.append(named("strong", chosen.said.say));
  else if (last?.kind === "tare") was.append(named("span", "The scale was set to 0.", "quiet"));
  else if (before) was.append(...beforeNodes(found, before));
  const say = chosen ? "The way back: take the choice back" : "Take the last one back";
  x("back")[0].setAttribute("aria-label", say);
}

function beforeNodes(found, step) {
  const row = found.spots[step.position];
  const struck = named("s", `${row.take} `);
  struck.dir = "auto";
  struck.append(named("span", row.add_g === null ? "" : grams(row.add_g), "n"));
  const near = row.kind === "egg" ? row.tolerance_g : SAME_G;
  const same = row.add_g !== null && step.got_g !== null && Math.abs(step.got_g - row.add_g) < near;
  const word = step.got_g === null ? "not weighed" : `it was ${grams(step.got_g)}`;
  const got = named("span", "", same ? "state good" : "state off");
  got.append(document.getElementById(same ? "glyph-in" : "glyph-outside").content.cloneNode(true), word);
  return [struck, got];
}

function named(name, text, kind = "") {
  const node = document.createElement(name);
  node.textContent = text;
  node.className = kind;
  return node;
}

function jarOf(all) {
  const gone = new Set(all.filter((step) => step.undone).map((step) => step.id));
  return all.filter((s) => s.kind === "choose" && !s.undone && !gone.has(s.of) && s.said?.jar_g).at(-1);
}

function drawTotal(found, all) {
  const weighed = found.spots.reduce((total, spot) => total + (spot.got_g ?? 0), 0);
  const text = grams(weighed - (jarOf(all)?.said.jar_g ?? 0));
  put("total", text);
  x("total-size")[0].className = `display ${sizeOf(text)}`;
}

function drawJar(found, all) {
  const step = jarOf(all);
  const rows = step ? found.spots.filter((s) => s.group === found.spots[step.position].group && s.kind !== "tare") : [];
  const next = found.now === null || (found.spots[found.now].kind === "tare" && rows.at(-1)?.position + 1 === found.now);
  const full = rows.length > 0 && rows.every((spot) => spot.done) && next;
  show("jar", full);
  if (full) put("jar", `Sift it twice, then put ${plain(step.said.jar_g)} g of it in a labelled jar.`);
}

function drawRow(found, panel) {
  const at = found.now;
  const row = found.spots[at];
  const add = addOf(found, at);
  const display = displayOf(found, at);
  const text = display === null ? "" : grams(display, row.step_g);
  if (panel === "tare") {
    const again = row.take.includes(" again:") || at in found.base;
    put("new", again ? "The same bowl" : "A new bowl");
    x("put")[0].firstChild.data = again ? "Leave the " : "Put the ";
    put("label", row.label);
    voice.say(`${again ? "Leave" : "Put"} the ${row.label} on the scale. Set it to zero.`, 0);
    return;
  }
  put("take", row.take);
  put("display", text);
  x("size")[0].className = `display ${sizeOf(text)}`;
  put("add", grams(add));
  put("mark", row.mark);
  show("mark", row.mark !== "");
  x("bar")[0].replaceChildren(bar(found, at) ?? "");
  if (panel === "number") drawNumber(row, add, text);
  if (panel === "add") voice.say(`${row.take}. Stop at ${text}.`, rounded(display, row));
  else voice.say(`${row.take}. About ${grams(add)}.`, rounded(add, row));
}

/** A number as it is said: with the digits it is shown with. */
function rounded(value, row) {
  return value === null ? null : Number(grams(value, row.step_g).replaceAll("\u202f", ""));
}

function drawNumber(row, add, text) {
  put("number-take", row.take);
  const about = x("about")[0];
  const figure = named("span", row.kind === "egg" ? grams(add) : text, "n");
  figure.append(named("span", "g", "u"));
  if (row.kind === "egg" && add === null) about.replaceChildren("No grams are known, weigh.");
  else if (row.kind === "egg") about.replaceChildren("About ", figure, ", weigh.");
  else if (row.kind === "unknown") about.replaceChildren(`No mass is known: ${row.mark}`);
  else about.replaceChildren("It should show ", figure);
  show("of-row", row.kind === "add");
  show("unweighed", row.kind !== "add");
}

function drawSlip(found, all) {
  if (!slipSince) {
    slipSince = performance.now();
    setTimeout(draw, PATIENCE_MS);
  }
  const isKept = queue.many.length === 0 && state.slip?.position === found.slip;
  const waits = !isKept && !queue.lost && performance.now() - slipSince < PATIENCE_MS;
  showSlip(page, found, grown(state.ground, all, state.steps), isKept ? state.slip : null, waits);
}

function submitted(event) {
  const form = event.target;
  if (!form.action.endsWith("/say")) return;
  event.preventDefault();
  const data = new FormData(form, event.submitter);
  const kind = data.get("kind") ?? "got";
  if (kind === "undo") say({ kind, of: data.get("of") });
  else if (kind === "choose") choose(data.get("way"));
  else if (kind === "got") number(data);
  else say({ kind, position: Number(data.get("position")) });
}

/** A way as the book worked it out where it did, else as it is worked out here. */
function choose(way) {
  const kept = queue.many.length ? null : state.slip?.outs.find((out) => out.kind === way)?.kept;
  say({ kind: "choose", way, kept: kept ?? null });
}

function number(data) {
  const typed = String(data.get("shows")).trim().replace(",", ".").replace(/\s*g$/, "");
  const value = Number(typed);
  const position = Number(data.get("position"));
  const found = standing(state.rows, steps());
  const row = found.spots[position];
  const least = displayOf(found, position) === null ? 0 : displayOf(found, position) - addOf(found, position) - (row.got_g ?? 0);
  const isNumber = typed !== "" && Number.isFinite(value) && value >= 0 && value <= 100000;
  if (isNumber && value >= least - 1e-6) {
    say({ kind: "got", position, display_g: value });
    return;
  }
  put("wrong", isNumber
    ? `${plain(least)} g are in already, so it cannot show less. Set it to 0 again, or look once more.`
    : "Type what the display shows, a number such as 96 or 96.5.");
  show("wrong", true);
  document.getElementById("shows").focus();
}

function clicked(event) {
  const link = event.target.closest("a");
  if (link?.dataset.x === "else" || link?.dataset.x === "scale") {
    event.preventDefault();
    typing = link.dataset.x === "else";
    draw();
  } else if (link && (queue.lost || queue.many.length)) {
    // A page that cannot be had now would take this one away.
    event.preventDefault();
    wished = link.href;
    show("lost", queue.lost);
    send();
  }
}

function pressed(event) {
  const button = event.target.closest("[data-key]");
  if (!button) return;
  const box = document.getElementById("shows");
  box.value = button.dataset.key === "back" ? box.value.slice(0, -1) : box.value + button.dataset.key;
}

/** A page that was kept begins from where the weighing stands now. */
async function begin() {
  await queue.look();
  await send();
}

page.addEventListener("submit", submitted);
page.addEventListener("click", clicked);
x("keys")[0].addEventListener("click", pressed);
show("keys", true);
if (matchMedia("(pointer: coarse)").matches) document.getElementById("shows").inputMode = "none";
addEventListener("online", send);
addEventListener("offline", () => { queue.lost = true; draw(); });
document.addEventListener("visibilitychange", () => { if (!document.hidden) queue.look(); });
setInterval(() => { if (!document.hidden && !queue.lost && !queue.many.length) queue.look(); }, LOOK_MS);
setInterval(async () => {
  if (queue.many.length) await send();
  else if (queue.lost) { await queue.look(); draw(); }
}, RETRY_MS);
keepAwake(x("dark")[0]);
keepPages(root.dataset.address);
draw();
begin();
page.dataset.ready = "yes";
