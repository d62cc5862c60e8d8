// Clocks and the cup as they stand: what the book has, with what was said here since.
// Nothing here touches the page; the same rules as on the other side.

const BEFORE_OVEN = ["foam", "batter"];

/** All clocks of this weighing, those of the book first. */
export function clocksNow(state, many) {
  const clocks = (state.clocks ?? []).map((each) => ({ ...each }));
  const stop = (kinds, at) => {
    for (const each of clocks) {
      if (kinds.includes(each.kind) && each.stopped === null && !(Date.parse(each.started) > Date.parse(at))) {
        each.stopped = at;
      }
    }
  };
  for (const said of many) {
    if (said.kind === "clock-stop") stop([said.clock], said.at);
    if (said.kind !== "clock-start" || clocks.some((each) => each.id === said.id)) continue;
    if (said.clock === "oven") stop(BEFORE_OVEN, said.at);
    clocks.push({ id: said.id, kind: said.clock, started: said.at, stopped: null, reason: said.reason });
  }
  return clocks;
}

/** The clock that is shown: the oven's before a foam's, a foam's before a batter's. */
export function runningOf(clocks) {
  for (const kind of ["oven", ...BEFORE_OVEN]) {
    const found = clocks.findLast((each) => each.kind === kind && each.stopped === null);
    if (found) return found;
  }
  return null;
}

export function minutesOf(clock, now) {
  const end = clock.stopped === null ? now : Date.parse(clock.stopped);
  return Math.max(0, (end - Date.parse(clock.started)) / 60000);
}

/** The last cup: the book's, or one that was weighed here since. */
export function cupNow(state, many) {
  const said = many.findLast((each) => each.kind === "cup");
  if (!said) return state.cup;
  return { ...said, sg: gravityOf(said) };
}

export function gravityOf({ empty_g, water_g, batter_g }) {
  return (batter_g - empty_g) / (water_g - empty_g);
}

/** Where a specific gravity stands in its band. */
export function placeOf(sg, { low, high }) {
  if (sg === null) return "";
  if (low === null || high === null) return "not known";
  if (sg < low) return "light";
  return sg > high ? "heavy" : "inside";
}

/** A number as a person types it; null for none that can be. */
export function numberIn(text) {
  const plain = text.trim().replace(",", ".").replace(/\s*g$/, "");
  const value = Number(plain);
  return plain !== "" && Number.isFinite(value) ? value : null;
}
