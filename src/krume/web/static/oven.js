// The oven's minutes by the book's moment: the number runs, the wedge moves down its line.

import { clockOf, hasPassed, minutesOf } from "./oven-minutes.js";

const page = document.querySelector("[data-now]");
const output = document.querySelector("#oven-minutes");
const wedge = document.querySelector("#oven-now");
const opened = Date.now();
const ahead = Date.parse(page.dataset.now) - opened;

const shown = wedge?.querySelector("text").textContent;

function tick() {
  const now = Date.now() + ahead;
  if (output) {
    const { until, kind } = output.dataset;
    output.textContent = String(minutesOf(now, Date.parse(until), kind));
    // The moment awaited is here: other words stand there now.
    if (!hasPassed(kind) && now >= Date.parse(until) && !document.querySelector(".boxed")) location.reload();
  }
  if (wedge) {
    const passed = Math.floor((Date.now() - opened) / 60000);
    const y = Math.min(Number(wedge.dataset.end), Number(wedge.dataset.y) + passed * Number(wedge.dataset.step));
    wedge.setAttribute("transform", `translate(0 ${y})`);
    wedge.querySelector("text").textContent = clockOf(shown, passed);
  }
}

setInterval(tick, 5000);
