// A slip on the page: what lies in the bowl, and the ways out as buttons.

import { bar, grams } from "./bench-draw.js";
import { heldOf, overOf, plain, shortOf } from "./bench-state.js";
import { waysOut } from "./slip.js";

const MOST = 3;

/** Show a slip; `kept` are the ways as the book ranked them, null while it has not answered. */
export function showSlip(page, found, ground, kept, waits) {
  const x = (name) => page.querySelector(`[data-x="${name}"]`);
  const spot = found.spots[found.slip];
  const name = spot.name.charAt(0).toUpperCase() + spot.name.slice(1);
  const wrong = overOf(spot) ? "over" : "short, and there is no more";
  x("slip-text").textContent = `${name} is ${grams(overOf(spot) || shortOf(spot))} g ${wrong}.`;
  x("slip-bar").replaceChildren(bar(found, found.slip, false) ?? "");
  const held = found.spots.filter((each) => each.bowl === spot.bowl && each.got_g !== null);
  x("held").replaceChildren("In the bowl: ",
    held.map((each) => `${each.name} ${grams(each.got_g)}`).join(", "), ".");
  x("spoon").hidden = !kept?.back;
  if (kept?.back) x("spoon").querySelector(".n").firstChild.data = kept.back;
  x("ways").setAttribute("aria-busy", String(waits));
  if (kept) legend(x, "Grams still to add. ", kept.unit);
  const outs = kept ? kept.outs : waits ? [] : closed(found, ground);
  if (!kept) plainLegend(x, waits, outs);
  if (x("ways").dataset.now !== JSON.stringify(outs)) {
    x("ways").replaceChildren(...outs.map((out, n) => button(page, out, n === 0)));
    x("ways").dataset.now = JSON.stringify(outs);
  }
}

function legend(x, start, unit) {
  const strong = document.createElement("strong");
  strong.textContent = "Shift";
  x("legend").replaceChildren(start, strong, `: how far it moves, in ${unit}.`);
}

function plainLegend(x, waits, outs) {
  if (waits) x("legend").replaceChildren("Looking for the ways out.");
  else if (!outs.length) x("legend").replaceChildren("The ways for this one need the book. They come when it is back.");
  else x("legend").replaceChildren("Worked out on this phone; the usual ranges are not looked at. Grams still to add.");
}

/** The ways with a closed form, smallest shift first. */
function closed(found, ground) {
  const ways = waysOut(ground, heldOf(ground, found)).sort((a, b) =>
    Number(a.kind === "scale") - Number(b.kind === "scale") || a.shift_pct - b.shift_pct);
  return ways.slice(0, MOST).map((way) => ({
    kind: way.kind,
    title: title(way),
    shift: plain(way.shift_pct),
    adds: way.lines.filter((line) => line.add_g > 0)
      .map((line) => [ground.lines[line.line].name, `+${grams(line.add_g)}`]),
    why: why(way),
    outside: "",
  }));
}

function title(way) {
  if (way.kind === "jar") return "Same blend, more of it";
  if (way.kind === "leave") return "Leave it as it is";
  if (way.kind === "hold") return `Hold the total at ${plain(way.total_g)}`;
  return `All of it larger, ×${plain(way.factor, 4)}`;
}

function why(way) {
  const total = plain(way.total_g);
  if (way.kind === "jar") {
    return `${total} g in all: use ${plain(way.total_g - way.jar_g)}, put ${plain(way.jar_g)} g in a jar.`;
  }
  if (way.kind === "hold") return `The blend stays ${total} g.`;
  if (way.kind === "leave") return way.of_bowl ? `Comes to ${total} g.` : "All else as planned.";
  return `Whole eggs: ${way.eggs.count}.`;
}

function button(page, out, first) {
  const node = page.querySelector("#way").content.cloneNode(true).firstElementChild;
  node.value = out.kind;
  node.classList.toggle("first", first);
  node.querySelector(".head span").textContent = out.title;
  node.querySelector(".shift").textContent = `shift ${out.shift}`;
  const adds = node.querySelector(".adds");
  for (const [name, mass] of out.adds) {
    const one = document.createElement("span");
    const figure = document.createElement("span");
    figure.className = "n";
    figure.textContent = mass;
    one.append(name, figure);
    adds.append(one);
  }
  if (!out.adds.length) adds.textContent = "nothing more goes in";
  const reason = node.querySelector(".because");
  reason.textContent = out.why;
  if (out.outside) {
    const off = document.createElement("span");
    off.className = "state off";
    off.append(page.querySelector("#glyph-outside").content.cloneNode(true), out.outside);
    reason.append(" ", off);
  }
  return node;
}
