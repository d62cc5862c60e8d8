// The clocks under a hand: started, stopped and read here, with or without the network.

import { sizeOf } from "./bench-draw.js";
import { Side } from "./bench-side.js";
import { clocksNow, minutesOf, runningOf } from "./bench-times.js";

const TICK_MS = 1000;
const BUZZ_MS = 400;

const side = new Side(draw, refused);
const { page, root } = side;
const x = (name) => page.querySelectorAll(`[data-x="${name}"]`);
const show = (name, is) => x(name).forEach((node) => { node.hidden = !is; });
let choosing = root.dataset.panelNow === "choosing";
let stage = null;

/** What the book would not keep; a foam beside an oven that is occupied since is asked for why. */
function refused({ wrong, field }) {
  x("refused")[0].textContent = wrong ?? "That was not kept.";
  show("refused", true);
  choosing = field === "reason";
  if (choosing) side.queue.look();
}

/** Draw the one panel there is now. */
function draw() {
  const running = runningOf(clocksNow(side.state, side.many));
  const panel = running ? running.kind : choosing ? "choosing" : "idle";
  for (const node of page.querySelectorAll("[data-panel]")) node.hidden = node.dataset.panel !== panel;
  x("corner")[0].textContent = panel === "oven" ? "in the oven" : "the clock";
  const busy = root.dataset.kind === "oven" ? null : side.state.busy;
  show("free", !busy);
  show("taken", Boolean(busy));
  if (busy) {
    const minutes = Math.floor(minutesOf(busy, side.now()));
    x("busy").forEach((node) => { node.textContent = `The oven is occupied since ${minutes} minutes.`; });
  }
  beside(running);
  tick();
}

function beside(running) {
  const is = running !== null && running.kind !== "oven";
  const reason = running?.reason ? `Begun although the oven was occupied: ${running.reason}. ` : "";
  x("beside")[0].textContent = is ? reason + root.dataset.where : "";
  show("beside", is && x("beside")[0].textContent !== "");
}

/** Minutes, and at a limit other words, another shape, another ground, and a buzz. */
function tick() {
  const running = runningOf(clocksNow(side.state, side.many));
  if (!running) {
    stage = null;
    return;
  }
  const plate = page.querySelector(`[data-clock="${running.kind}"]`);
  const minutes = minutesOf(running, side.now());
  const text = String(Math.floor(minutes));
  plate.querySelector('[data-x="minutes"]').textContent = text;
  plate.querySelector(".display").className = `display ${sizeOf(`${text}m`)}`;
  const says = [...plate.querySelectorAll("[data-from]")];
  const now = says.filter((each) => Number(each.dataset.from) <= minutes).at(-1) ?? says[0];
  for (const each of says) each.hidden = each !== now;
  plate.className = `plate ${now?.dataset.stage ?? ""}`;
  if (stage !== null && now && now.dataset.stage !== stage) navigator.vibrate?.(BUZZ_MS);
  stage = now?.dataset.stage ?? "";
}

async function submitted(event) {
  event.preventDefault();
  const data = new FormData(event.target, event.submitter);
  const stop = data.get("stop") ?? data.get("out");
  show("refused", false);
  if (stop) {
    await side.say({ kind: "clock-stop", clock: stop });
    if (data.has("out")) side.go(`${side.address}/end`);
    return;
  }
  choosing = false;
  await side.say({ kind: "clock-start", clock: data.get("start"), reason: data.get("reason") ?? "" });
}

page.addEventListener("submit", submitted);
page.addEventListener("click", (event) => {
  const link = event.target.closest("a");
  if (link?.dataset.x !== "wait" && link?.dataset.x !== "taken") return;
  event.preventDefault();
  choosing = link.dataset.x === "taken";
  draw();
});
setInterval(tick, TICK_MS);
side.begin();
