// A clock on the page: minutes by the book's moment, other words and shapes at its limits.

import { keepAwake } from "./bench-awake.js";
import { sizeOf } from "./bench-draw.js";

const plate = document.querySelector("[data-clock]");
const started = Date.parse(plate.dataset.started);
const ahead = Date.parse(plate.dataset.now) - Date.now();
const says = [...plate.querySelectorAll("[data-from]")];
let stage = plate.className.split(" ").at(-1);

function tick() {
  const minutes = Math.max(0, (Date.now() + ahead - started) / 60000);
  const text = String(Math.floor(minutes));
  plate.querySelector('[data-x="minutes"]').textContent = text;
  plate.querySelector(".display").className = `display ${sizeOf(`${text}m`)}`;
  const now = says.filter((each) => Number(each.dataset.from) <= minutes).at(-1) ?? says[0];
  for (const each of says) each.hidden = each !== now;
  if (now && now.dataset.stage !== stage) {
    stage = now.dataset.stage;
    plate.className = `plate ${stage}`;
    navigator.vibrate?.(400);
  }
}

keepAwake();
if (plate.dataset.clock) {
  stage = says.find((each) => !each.hidden)?.dataset.stage ?? "";
  setInterval(tick, 1000);
  tick();
}
