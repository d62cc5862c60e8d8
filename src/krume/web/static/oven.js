// The oven's minutes by the book's moment: the number runs, the wedge moves down its line.

const page = document.querySelector("[data-now]");
const output = document.querySelector("#oven-minutes");
const wedge = document.querySelector("#oven-now");
const opened = Date.now();
const ahead = Date.parse(page.dataset.now) - opened;
const PASSED = ["over", "since", "probe"];

// Whole minutes to a moment, or since it; nothing less than none.
export function minutesOf(now, until, kind) {
  const minutes = (until - now) / 60000;
  return PASSED.includes(kind) ? Math.max(0, Math.floor(-minutes)) : Math.max(0, Math.ceil(minutes));
}

function clockOf(text, minutes) {
  const [hour, minute] = text.split(":").map(Number);
  const all = (hour * 60 + minute + minutes) % 1440;
  return `${Math.floor(all / 60)}:${String(all % 60).padStart(2, "0")}`;
}

const shown = wedge?.querySelector("text").textContent;

function tick() {
  const now = Date.now() + ahead;
  if (output) {
    const { until, kind } = output.dataset;
    output.textContent = String(minutesOf(now, Date.parse(until), kind));
    // The moment awaited is here: other words stand there now.
    if (!PASSED.includes(kind) && now >= Date.parse(until) && !document.querySelector(".boxed")) location.reload();
  }
  if (wedge) {
    const passed = Math.floor((Date.now() - opened) / 60000);
    const y = Math.min(Number(wedge.dataset.end), Number(wedge.dataset.y) + passed * Number(wedge.dataset.step));
    wedge.setAttribute("transform", `translate(0 ${y})`);
    wedge.querySelector("text").textContent = clockOf(shown, passed);
  }
}

setInterval(tick, 5000);
