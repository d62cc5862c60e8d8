// Numbers and bars as the page sets them.

import { plain } from "./bench-state.js";

const WIDTH = 326;
const NEEDLE = "M-7 0h14l-7 13z";
const SVG = "http://www.w3.org/2000/svg";

export function grams(value, step = 0.1) {
  if (value === null || value === undefined) return "not known";
  const digits = step >= 1 ? 0 : step >= 0.1 || value >= 1 ? 1 : 2;
  const [whole, rest] = plain(value, digits).split(".");
  const parted = whole.replace(/\B(?=(\d{3})+$)/g, "\u202f");
  return rest ? `${parted}.${rest}` : parted;
}

export const sizeOf = (display) =>
  display.length <= 2 ? "" : display.length === 3 ? "three" : display.length <= 5 ? "five" : "seven";

function make(name, attributes, text = "") {
  const node = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  node.textContent = text;
  return node;
}

/** The bowl of a row on its rule: what is in, what goes in now, what is still to come. */
export function bar(found, at, needle = true) {
  const { group } = found.spots[at];
  const parts = found.spots.filter((spot) => spot.group === group && spot.kind !== "tare");
  const whole = (spot) => Math.max(spot.target_g ?? 0, spot.got_g ?? 0);
  const total = parts.reduce((t, spot) => t + whole(spot), 0);
  if (total <= 0) return null;
  const scale = WIDTH / total;
  const held = parts.reduce((t, spot) => t + (spot.got_g ?? 0), 0);
  const svg = make("svg", { class: "bowl-bar", viewBox: needle ? "0 0 328 64" : "0 16 328 48", role: "img",
    "aria-label": `${plain(held)} of ${plain(total)} grams are in the bowl` });
  const pattern = make("pattern", { id: "hatched", patternUnits: "userSpaceOnUse", width: 6, height: 6 });
  pattern.append(make("path", { class: "d-line", "stroke-width": 1.6, d: "M-1 7L7-1M-1 1l2-2M5 7l2-2" }));
  svg.append(pattern);
  let x = 1;
  for (const spot of parts) {
    const got = spot.got_g ?? 0;
    if (got > 0) svg.append(rect("d-ink", x, got * scale));
    const rest = whole(spot) - got;
    if (rest > 0 && spot.position === at) {
      const now = rect("", x + got * scale, rest * scale);
      now.setAttribute("fill", "url(#hatched)");
      const line = rect("d-line", x + got * scale, rest * scale);
      line.setAttribute("stroke-width", 2);
      svg.append(now, line);
    } else if (rest > 0) {
      const open = rect("d-hair", x + got * scale, rest * scale);
      open.setAttribute("stroke-width", 1);
      svg.append(open);
    }
    x += whole(spot) * scale;
    if (needle && spot.position === at) {
      svg.append(make("path", { class: "d-ink", d: NEEDLE, transform: `translate(${x} 4)` }));
    }
  }
  rule(svg, total, scale);
  return svg;
}

function rect(kind, x, width) {
  return make("rect", { class: kind, x: x + 0.7, y: 20, width: Math.max(0.5, width - 1.4), height: 14 });
}

function rule(svg, total, scale) {
  const steps = [-1, 0, 1, 2, 3, 4, 5].flatMap((p) => [1, 2, 5].map((m) => m * 10 ** p));
  const step = steps.find((each) => total / each <= 16);
  for (let n = 0; n * step <= total + 1e-9; n += 1) {
    const long = n % 5 === 0;
    svg.append(make("path", { class: "d-line", "stroke-width": long ? 1.5 : 1,
      d: `M${1 + n * step * scale} 37v${long ? 9 : 5}` }));
  }
  svg.append(make("path", { class: "d-line", "stroke-width": 1.5, d: "M1 37H327" }));
  const label = (x, anchor, text) =>
    svg.append(make("text", { x, y: 62, "font-size": 14, class: "d-text", "text-anchor": anchor }, text));
  label(1, "start", "0");
  const middle = 1 + 5 * step * scale;
  if (middle < WIDTH - 68) label(middle, "middle", plain(5 * step));
  label(327, "end", plain(total));
}
