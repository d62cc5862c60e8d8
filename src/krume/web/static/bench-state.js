// Where a weighing stands: every step that was said, folded over the rows as planned.
// The same rules as on the other side; a test holds both to one another. No page in here.

import { NOISE, sum, targetsOf, waysOut } from "./slip.js";

const clean = (value) => Number(value.toFixed(6));
const SILENT = new Set(["undo", "cup"]);

/** Fold all steps over the rows; a step that was taken back counts as never said. */
export function standing(rows, steps) {
  const spots = rows.map((row) => (
    { ...row, target_g: row.add_g, got_g: null, done: false, closed: false }));
  const base = {};
  const gone = new Set(steps.filter((step) => step.undone).map((step) => step.id));
  const alive = steps.filter((step) => !SILENT.has(step.kind) && !step.undone && !gone.has(step.of));
  for (const step of alive) take(spots, base, step);
  const weighed = alive.filter((step) => step.kind !== "tare" && step.kind !== "choose");
  const last = alive.at(-1) ?? null;
  return {
    spots,
    now: spots.find((spot) => !spot.done)?.position ?? null,
    slip: spots.find((spot) => overOf(spot) || shortOf(spot))?.position ?? null,
    last,
    before: weighed.at(-1) ?? null,
    chosen: last?.kind === "choose" ? last : null,
    base,
  };
}

export function overOf(spot) {
  if (spot.got_g === null || spot.target_g === null) return 0;
  const over = spot.got_g - spot.target_g;
  return over > spot.tolerance_g + NOISE ? over : 0;
}

export function shortOf(spot) {
  if (!spot.closed || spot.target_g === null) return 0;
  const short = spot.target_g - (spot.got_g ?? 0);
  return short > spot.tolerance_g + NOISE ? short : 0;
}

function take(spots, base, step) {
  const spot = spots[step.position];
  if (!spot) return;
  if (step.kind === "choose") {
    choose(spots, base, spot.group, step.said?.targets ?? {});
  } else if (step.kind === "no-more") {
    spot.closed = true;
    spot.done = true;
  } else if (step.kind === "tare") {
    spot.done = true;
  } else {
    spot.got_g = step.got_g;
    const least = (spot.target_g ?? 0) - spot.tolerance_g - NOISE;
    spot.done = step.kind === "in" || spot.kind !== "add" || (spot.got_g ?? 0) >= least;
  }
}

function choose(spots, base, group, targets) {
  const again = new Set();
  const order = Object.keys(targets).map(Number).sort((a, b) => a - b);
  for (const at of order) {
    const spot = spots[at];
    const held = spot.got_g ?? 0;
    const target = spot.closed ? held : Math.max(targets[at], held);
    const isMore = spot.target_g !== null && target > spot.target_g + NOISE;
    if (spot.got_g !== null && isMore && target > held + spot.tolerance_g) {
      spot.done = false;
      again.add(spot.group);
    }
    if (spot.got_g === null && target <= NOISE) spot.done = true;
    spot.target_g = target;
  }
  const elsewhere = [...again].some((each) => each !== group);
  if (elsewhere && spots.some((spot) => spot.group === group && !spot.done)) again.add(group);
  if (!elsewhere) return;
  for (const each of again) {
    spots[each].done = false;
    base[each] = sum(spots.filter((spot) => spot.group === each).map((spot) => spot.got_g ?? 0));
  }
}

/** What the display shows before anything more of a row goes in. */
export function runningOf(found, at) {
  const { group } = found.spots[at];
  const held = found.spots.filter((spot) => spot.group === group && spot.kind !== "tare");
  return clean(sum(held.map((spot) => spot.got_g ?? 0)) - (found.base[group] ?? 0));
}

/** What of a row is still to add; null where its grams are not known. */
export function addOf(found, at) {
  const spot = found.spots[at];
  return spot.target_g === null ? null : clean(Math.max(0, spot.target_g - (spot.got_g ?? 0)));
}

/** What the display must show when a row is in. */
export function displayOf(found, at) {
  const add = addOf(found, at);
  return add === null ? null : clean(runningOf(found, at) + add);
}

/** Grams of each line in all bowls, null where nothing of it was weighed. */
export function heldOf(ground, found) {
  const held = ground.lines.map(() => null);
  for (const spot of found.spots) {
    if (spot.line !== null && spot.got_g !== null) held[spot.line] = (held[spot.line] ?? 0) + spot.got_g;
  }
  return held;
}

/** The step that what was said comes to on what stands; null where it comes to nothing. */
export function stepOf(rows, ground, steps, said) {
  const found = standing(rows, steps);
  if (said.kind === "undo") return { ...said, undone: false };
  if (said.kind === "choose") return choiceOf(ground, found, steps, said);
  const spot = found.spots[said.position];
  if (!spot) return null;
  let got = null;
  if (said.kind === "in") got = spot.target_g;
  else if (said.kind === "no-more") got = spot.got_g;
  else if (said.kind === "got") {
    got = clean(said.display_g - runningOf(found, said.position) + (spot.got_g ?? 0));
    if (got < 0) return null;
  }
  return { id: said.id, kind: said.kind, position: said.position, got_g: got,
    display_g: said.kind === "in" ? displayOf(found, said.position) : said.display_g ?? null,
    of: "", undone: false, said: null };
}

function choiceOf(ground, found, steps, said) {
  if (found.slip === null) return null;
  const way = said.kept ? null
    : waysOut(ground, heldOf(ground, found)).find((each) => each.kind === said.way);
  if (!way && !said.kept) return null;
  const wrong = [...steps].reverse().find((step) => step.position === found.slip && !step.undone &&
    ["got", "in", "no-more"].includes(step.kind));
  if (said.kept) {
    return { id: said.id, kind: "choose", position: found.slip, got_g: null, display_g: null,
      of: wrong?.id ?? "", undone: false, said: said.kept };
  }
  const jar = way.kind === "jar" ? way.jar_g : null;
  return { id: said.id, kind: "choose", position: found.slip, got_g: null, display_g: null,
    of: wrong?.id ?? "", undone: false,
    said: { kind: way.kind, jar_g: jar, factor: way.factor,
      card: way.kind === "scale" ? way.card_g : null, targets: targetsOf(way, found.spots),
      say: jar === null ? "Card corrected." : `Card corrected. Put ${plain(jar)} g in a jar.` } };
}

/** All steps with what was said since: each on what stands after the one before it. */
export function withSaid(rows, ground, steps, many) {
  let all = [...steps];
  for (const said of many) {
    if (all.some((step) => step.id === said.id)) continue;
    const step = stepOf(rows, ground, all, said);
    if (!step) continue;
    if (step.kind === "undo") {
      all = all.map((each) => (each.id === step.of ? { ...each, undone: true } : each));
    }
    all.push(step);
  }
  return all;
}

/** A number without needless zeros, at most one digit after the point, halves to even. */
export function plain(value, digits = 1) {
  const scale = 10 ** digits;
  const scaled = clean(value * scale);
  const down = Math.floor(scaled);
  const rest = scaled - down;
  const whole = rest === 0.5 ? down + (down % 2) : Math.round(scaled);
  return String(whole / scale);
}

/** The ground as a way that was chosen here, and is not in the book yet, made it. */
export function grown(ground, all, kept) {
  const known = new Set(kept.map((step) => step.id));
  const mine = all.filter((step) =>
    step.kind === "choose" && !step.undone && !known.has(step.id) && step.said?.card);
  const last = mine.at(-1);
  if (!last) return ground;
  const { card, factor } = last.said;
  return {
    ...ground,
    lines: ground.lines.map((line, n) => (
      { ...line, plan_g: card[n], count: line.each_g ? card[n] / line.each_g : null })),
    bowls: ground.bowls.map((bowl) => (
      { ...bowl, items: bowl.items.map((item) => ({ ...item, plan_g: item.plan_g * factor })) })),
  };
}
