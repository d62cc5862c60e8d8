// The ways out of a slip that have a closed form: jar, leave, hold, scale with whole eggs.
// Nothing here touches the page; every number is held to the library's own by a test.

export const NOISE = 1e-6;
const FINEST = 1_000_000_000;

const clean = (value) => Number(value.toFixed(6));

/** Sum without the machine's rounding on the way (Shewchuk). */
export function sum(values) {
  let parts = [];
  for (let x of values) {
    const next = [];
    for (let y of parts) {
      if (Math.abs(x) < Math.abs(y)) [x, y] = [y, x];
      const high = x + y;
      const low = y - (high - x);
      if (low) next.push(low);
      x = high;
    }
    next.push(x);
    parts = next;
  }
  return parts.reduceRight((total, part) => total + part, 0);
}

/** Nearest whole number, an exact half to the even one. */
export function nearest(value) {
  const down = Math.floor(value);
  const rest = value - down;
  if (rest !== 0.5) return rest > 0.5 ? down + 1 : down;
  return down % 2 ? down + 1 : down;
}

// Whole steps of the scale, closest in ratio: the limit on the worst error first, then the squares.
function wholeSteps(sizes, step) {
  const there = sizes.filter((size) => size > 0n);
  const begun = there.map((size) => most((2n * size + step - 1n) / (2n * step), 1n));
  const wanted = most(evenSteps(there.reduce((a, b) => a + b, 0n), step), BigInt(there.length));
  const lacking = wanted - begun.reduce((a, b) => a + b, 0n);
  if (lacking) spread(begun, there, step, lacking);
  let at = 0;
  return sizes.map((size) => (size > 0n ? begun[at++] : 0n));
}

const most = (a, b) => (a > b ? a : b);
const size = (a) => (a < 0n ? -a : a);

function evenSteps(total, step) {
  const count = total / step;
  const rest = total % step;
  return 2n * rest > step || (2n * rest === step && count % 2n === 1n) ? count + 1n : count;
}

function spread(counts, sizes, step, lacking) {
  const sign = lacking > 0n ? 1n : -1n;
  const whole = sizes.reduce((a, b) => a * b, 1n);
  const weights = sizes.map((each) => whole / each);
  const error = (at, count) => size(count * step - sizes[at]) * weights[at];
  const following = (at, count) => (count + sign < 1n ? null : error(at, count + sign));
  let limit = take([...counts], sign, size(lacking), following);
  counts.forEach((count, at) => { limit = most(limit, error(at, count)); });
  take(counts, sign, size(lacking), (at, count) => {
    const next = following(at, count);
    if (next === null || next > limit) return null;
    return (step + 2n * sign * (count * step - sizes[at])) * weights[at] ** 2n;
  });
}

function take(counts, sign, times, cost) {
  let dearest = 0n;
  for (let n = 0n; n < times; n += 1n) {
    let best = null;
    counts.forEach((count, at) => {
      const price = cost(at, count);
      if (price === null) return;
      const order = Number(sign) * at;
      if (best === null || price < best.price || (price === best.price && order < best.order)) {
        best = { price, order, at };
      }
    });
    dearest = best.price;
    counts[best.at] += sign;
  }
  return dearest;
}

function finer(mass, step, errorMost) {
  let fine = step / 10;
  while (Math.abs(nearest(mass / fine) * fine - mass) > errorMost * mass + 1e-9) fine /= 10;
  return Number((nearest(mass / fine) * fine).toFixed(9));
}

/** Masses at the scale's step, their sum kept, their ratios closest. */
export function roundMasses(exact, step, errorMost) {
  const units = exact.map((mass) => mass / step);
  const hurts = units.map((u) => u > 0 && Math.abs(nearest(u) - u) > errorMost * u + 1e-9);
  const plain = units.filter((_, n) => !hurts[n]).map((u) => BigInt(nearest(u * FINEST)));
  const whole = wholeSteps(plain, BigInt(FINEST));
  let at = 0;
  return exact.map((mass, n) =>
    hurts[n] ? finer(mass, step, errorMost) : Number((Number(whole[at++]) * step).toFixed(9)));
}

/** Masses as the scale reaches them from what lies there; nothing comes out again. */
export function reached(exact, held, step, errorMost) {
  const open = exact.map((_, at) => at).filter((at) => exact[at] - held[at] > NOISE);
  const odd = open.map((at) => {
    const rest = held[at] % step;
    return step - rest < NOISE || rest < NOISE ? 0 : rest;
  });
  const rounded = roundMasses(open.map((at, n) => exact[at] - odd[n]), step, errorMost);
  const found = new Map(open.map((at, n) => [at, one(rounded[n] + odd[n], held[at], step)]));
  return held.map((there, at) => found.get(at) ?? { mass: clean(there), add: 0 });
}

function one(mass, held, step) {
  const add = clean(mass - held);
  if (add < step - NOISE && held > 0) return { mass: clean(held), add: 0 };
  return { mass: clean(mass), add };
}

/** All bowls with what lies in each: a line's grams fill its bowls in the order of work. */
function filled(ground, held) {
  const left = held.map((mass) => mass ?? 0);
  const last = new Map();
  ground.bowls.forEach((bowl, b) => bowl.items.forEach((item, i) => last.set(item.line, `${b} ${i}`)));
  return ground.bowls.map((bowl, b) => ({
    ...bowl,
    items: bowl.items.map((item, i) => {
      const isLast = last.get(item.line) === `${b} ${i}`;
      const there = isLast ? left[item.line] : Math.min(item.plan_g, left[item.line]);
      left[item.line] -= there;
      return { ...item, held_g: there };
    }),
  }));
}

const needed = (bowl) =>
  Math.max(0, ...bowl.items.filter((i) => i.plan_g).map((i) => i.held_g / i.plan_g));
const planOf = (bowl) => sum(bowl.items.map((i) => i.plan_g));
const isOpen = (item) => item.held_g < item.plan_g - NOISE;

function slipBowl(bowls, over) {
  const touched = bowls.filter((bowl) => bowl.is_blend &&
    bowl.items.some((i) => over.has(i.line) && i.held_g > i.plan_g + NOISE));
  return touched.reduce((best, bowl) => (best && needed(best) >= needed(bowl) ? best : bowl), null);
}

function withBowl(lines, masses, bowl, ends) {
  const out = [...masses];
  bowl.items.forEach((item, n) => {
    const whole = lines[item.line].plan_g;
    const mass = masses[item.line];
    if (whole === null || mass === null) return;
    const inside = item.plan_g >= whole - 1e-6 ? mass : Math.min(item.plan_g, mass);
    out[item.line] = ends[n] + Math.max(0, mass - inside);
  });
  return out;
}

/** Ends of a bowl whose sum is the plan's: what is open shrinks by one factor. */
function heldTotal(bowl) {
  const ends = bowl.items.map((i) => Math.max(i.held_g, i.plan_g));
  let taking = bowl.items.map((_, n) => n).filter((n) => isOpen(bowl.items[n]) && bowl.items[n].is_bulk);
  let room = planOf(bowl) - sum(ends.filter((_, n) => !taking.includes(n)));
  let factor = 0;
  while (taking.length) {
    factor = room / sum(taking.map((n) => bowl.items[n].plan_g));
    const full = taking.filter((n) => factor * bowl.items[n].plan_g < bowl.items[n].held_g);
    if (!full.length) break;
    for (const n of full) {
      ends[n] = bowl.items[n].held_g;
      room -= ends[n];
    }
    taking = taking.filter((n) => !full.includes(n));
  }
  if (!taking.length || factor <= NOISE) return null;
  for (const n of taking) ends[n] = factor * bowl.items[n].plan_g;
  return ends;
}

function basis(bowl, masses) {
  const flour = masses.filter((_, n) => bowl.items[n].is_flour);
  return sum(flour) || sum(masses);
}

const shares = (bowl, masses) => {
  const whole = basis(bowl, masses);
  return masses.map((mass) => (whole ? (100 * mass) / whole : 0));
};

function worstShift(ground, bowl, ends, card) {
  const beside = new Set(bowl ? bowl.items.map((i) => i.line) : []);
  const found = [0];
  if (bowl) {
    const plan = bowl.items.map((i) => i.plan_g);
    const was = shares(bowl, plan);
    shares(bowl, ends ?? plan).forEach((now, n) => found.push(Math.abs(now - was[n])));
  }
  return Math.max(...found, ...ratios(ground.lines, card, beside));
}

function ratios(lines, card, beside) {
  const plan = lines.map((line) => line.plan_g);
  const eggs = (masses) => masses.reduce((t, m, n) => t + (lines[n].is_egg ? m ?? 0 : 0), 0);
  const all = (masses) => masses.reduce((t, m) => t + (m ?? 0), 0);
  const hasEggs = eggs(plan) > 0;
  const before = hasEggs ? eggs(plan) : all(plan);
  const after = hasEggs ? eggs(card) : all(card);
  if (!after || !before) return [];
  const oneEgg = lines.filter((line) => line.is_egg).length === 1;
  return plan.flatMap((mass, n) =>
    mass && !beside.has(n) && !(oneEgg && lines[n].is_egg)
      ? [Math.abs((((card[n] ?? 0) / mass) * before) / after - 1) * 100] : []);
}

function ofBowl(ground, bowl, ends, base, isJar) {
  const rows = reached(ends, bowl.items.map((i) => i.held_g), ground.step_g, ground.error_most);
  const masses = rows.map((row) => row.mass);
  const lines = bowl.items.map((item, n) => (
    { line: item.line, mass_g: rows[n].mass, add_g: rows[n].add, was_g: item.plan_g }));
  const inCake = isJar ? bowl.items.map((i) => i.plan_g) : masses;
  return { lines, card_g: withBowl(ground.lines, base, bowl, inCake) };
}

function groups(ground) {
  const used = new Set();
  const found = ground.bowls.filter((bowl) => bowl.is_blend).map((bowl) => {
    const whole = bowl.items
      .filter((i) => Math.abs(i.plan_g - (ground.lines[i.line].plan_g ?? 0)) <= NOISE)
      .map((i) => i.line);
    whole.forEach((line) => used.add(line));
    return whole;
  });
  ground.lines.forEach((_, n) => { if (!used.has(n)) found.push([n]); });
  return found;
}

function ofFormula(ground, ends, held) {
  const found = new Map();
  for (const group of groups(ground)) {
    const known = group.filter((n) => ends[n] !== null);
    const there = known.map((n) => Math.min(held[n] ?? 0, ends[n]));
    const rows = reached(known.map((n) => ends[n]), there, ground.step_g, ground.error_most);
    known.forEach((n, at) => found.set(n, rows[at]));
  }
  const order = [...found.keys()].sort((a, b) => a - b);
  const card = [...ends];
  const lines = order.map((n) => {
    card[n] = found.get(n).mass;
    return { line: n, mass_g: card[n], add_g: found.get(n).add, was_g: ground.lines[n].plan_g ?? 0 };
  });
  return { lines, card_g: card };
}

function eggsOf(lines, card) {
  let whole = 0;
  const parts = { yolk: 0, white: 0 };
  let makeUp = 0;
  let counted = 0;
  lines.forEach((line, n) => {
    if (!line.each_g) return;
    counted += 1;
    const count = Math.ceil(Number(((card[n] ?? 0) / line.each_g).toFixed(9)) - 0.5);
    makeUp += Number(((card[n] ?? 0) - count * line.each_g).toFixed(9));
    if (line.part in parts) parts[line.part] += count; else whole += count;
  });
  if (!counted) return { count: null, make_up_g: null };
  const total = Math.abs(makeUp) < 0.05 ? 0 : clean(makeUp);
  return { count: whole + Math.max(parts.yolk, parts.white), make_up_g: total };
}

function wholeFactor(counts, near) {
  const isWhole = (count) => nearest(count) >= 1 && Math.abs(count - nearest(count)) <= 0.005 * count;
  const most = Math.max(Math.ceil(counts[0] * near) + 2, 2) * 6;
  const found = [];
  for (let n = 1; n <= most; n += 1) {
    const factor = n / counts[0];
    if (counts.every((count) => isWhole(count * factor))) found.push(factor);
  }
  const around = [...found.filter((f) => f <= near).slice(-2), ...found.filter((f) => f > near).slice(0, 2)];
  return around.find((f) => f >= near - NOISE) ?? null;
}

function way(ground, kind, factor, parts, shift, jar = null) {
  const total = clean(sum(parts.lines.map((line) => line.mass_g)));
  return {
    kind, factor, lines: parts.lines, total_g: total, card_g: parts.card_g,
    jar_g: jar === null ? null : clean(total - jar),
    next_g: jar === null ? null : clean(Math.max(0, jar - clean(total - jar))),
    eggs: eggsOf(ground.lines, parts.card_g),
    shift_pct: Number(shift.toFixed(9)),
    of_bowl: jar !== null || parts.of_bowl === true,
    bowl: parts.bowl ?? null,
  };
}

function bowlWays(ground, bowl, settled) {
  const found = [];
  const plan = bowl.items.map((i) => i.plan_g);
  const made = (kind, factor, ends, isJar) => {
    const parts = ofBowl(ground, bowl, ends, settled, isJar);
    const card = withBowl(ground.lines, settled, bowl, isJar ? plan : ends);
    const shift = worstShift(ground, bowl, ends, kind === "leave" ? settled : card);
    const named = { ...parts, of_bowl: true, bowl: bowl.key };
    found.push(way(ground, kind, factor, named, shift, isJar ? planOf(bowl) : null));
  };
  const factor = Math.max(1, needed(bowl));
  if (factor <= ground.jar_most && factor - 1 > NOISE) made("jar", factor, plan.map((m) => factor * m), true);
  made("leave", 1, bowl.items.map((i) => Math.max(i.held_g, i.plan_g)), false);
  const ends = heldTotal(bowl);
  if (ends) made("hold", 1, ends, false);
  return found;
}

/**
 * The ways of a slip: what is over in `held` (grams of each line in all bowls, null where none).
 * In a fixed order, for the bands are not judged here: jar, leave, hold, scale.
 */
export function waysOut(ground, held) {
  const lines = ground.lines;
  const over = new Set(lines.flatMap((line, n) =>
    line.plan_g !== null && (held[n] ?? 0) - line.plan_g > NOISE ? [n] : []));
  if (!over.size) return [];
  const bowls = filled(ground, held);
  const bowl = slipBowl(bowls, over);
  const settled = lines.map((line, n) =>
    line.plan_g === null ? null : Math.max(held[n] ?? 0, line.plan_g));
  const found = bowl
    ? bowlWays(ground, bowl, settled)
    : [way(ground, "leave", 1, ofFormula(ground, settled, held), worstShift(ground, null, null, settled))];
  const whole = scaled(ground, held, bowl);
  if (whole) found.push(whole);
  return found;
}

function scaled(ground, held, bowl) {
  const lines = ground.lines;
  const counts = lines.filter((line) => line.each_g).map((line) => line.count);
  if (!counts.length) return null;
  const own = lines.flatMap((line, n) => (line.plan_g ? [(held[n] ?? 0) / line.plan_g] : []));
  const near = Math.max(1, ...own, bowl ? Math.max(1, needed(bowl)) : 1);
  const factor = wholeFactor(counts, near);
  if (factor === null || factor > ground.factor_most) return null;
  const ends = lines.map((line) => (line.plan_g === null ? null : line.plan_g * factor));
  return way(ground, "scale", factor, ofFormula(ground, ends, held), worstShift(ground, null, null, ends));
}

/** What each row of the bench comes to by a way; `spots` are the rows as they stand. */
export function targetsOf(way, spots) {
  const inside = new Map(way.lines.map((line) => [line.line, line.mass_g]));
  const targets = {};
  way.card_g.forEach((card, line) => {
    const rows = spots.filter((spot) => spot.line === line && spot.add_g !== null);
    const within = rows.filter((spot) => way.of_bowl && spot.bowl === way.bowl && inside.has(line));
    const beside = rows.filter((spot) => !within.includes(spot));
    inMeasure(targets, within, inside.get(line) ?? 0);
    let end = way.of_bowl ? card ?? 0 : inside.get(line) ?? card ?? 0;
    if (within.length) {
      end -= way.kind === "jar" ? sum(within.map((spot) => spot.add_g)) : inside.get(line);
    }
    (way.kind === "scale" ? inMeasure : ofRest)(targets, beside, Math.max(0, end));
  });
  return targets;
}

function inMeasure(targets, spots, end) {
  const plan = sum(spots.map((spot) => spot.add_g));
  if (plan) for (const spot of spots) targets[spot.position] = clean((end * spot.add_g) / plan);
}

function ofRest(targets, spots, end) {
  const still = spots.filter((spot) => !spot.done);
  const done = spots.filter((spot) => spot.done);
  for (const spot of done) targets[spot.position] = spot.got_g ?? 0;
  const rest = Math.max(0, end - sum(done.map((spot) => spot.got_g ?? 0)));
  if (still.length) inMeasure(targets, still, rest);
  else if (rest > NOISE && spots.length) targets[spots.at(-1).position] += rest;
}
