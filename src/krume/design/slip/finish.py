"""A draft becomes a way: rounded to the scale, balanced, judged."""

import math
from dataclasses import dataclass, replace

from krume.design.balance import Balance, balance
from krume.design.slip.bowl import Bowl, Bowls
from krume.design.slip.eggs import egg_lines, eggs_of
from krume.design.slip.judging import Judge, at_masses, shares_pct, worst_shift_pct
from krume.design.slip.settled import Masses, settled_g, with_bowl
from krume.design.slip.state import NOISE_G, Slip
from krume.design.slip.step import Reached, reached
from krume.design.slip.tins import way_tin
from krume.design.slip.way import Draft, Jar, Way, WayLine, WayTin
from krume.pantry import egg_size

_WHOLE_FORMULA = ("scale", "scale-exact", "second", "down")
_DIGITS = 6


@dataclass(frozen=True, slots=True)
class Case:
    """A slip with its bowls and its judge, each worked out once."""

    slip: Slip
    bowls: Bowls
    judge: Judge


def finish(case: Case, draft: Draft) -> Way:
    """The way a draft becomes on this scale."""
    bowl = case.bowls.slip
    if bowl is not None and draft.bowl_g is not None:
        lines, card = _of_bowl(case.slip, bowl, draft, draft.bowl_g)
    else:
        lines, card = _of_formula(case, draft)
    after = _balance(case, draft, card)
    outside = case.judge.new_findings(_exact(case, draft, card, after))
    eggs = eggs_of(case.slip.formula, card, _there(case, draft))
    total = round(math.fsum(line.mass_g for line in lines), _DIGITS)
    return Way(
        kind=draft.kind,
        factor=draft.factor,
        lines=lines,
        total_g=total,
        card_g=card,
        jar=_jar(case, draft, lines, card),
        eggs=eggs,
        balance=after,
        findings=after.findings,
        shifts=case.judge.shifts(after),
        worst_shift_pct=_worst(case, draft),
        in_band=not outside,
        outside=outside,
        unknown=case.judge.unknown(after),
        waste_g=round(eggs.waste_g, _DIGITS),
        tin=_tin(case, draft, card),
    )


def _worst(case: Case, draft: Draft) -> float:
    """The worst shift, of exact grams."""
    bowl = None if draft.kind in _WHOLE_FORMULA else case.bowls.slip
    return round(worst_shift_pct(case.slip, bowl, draft.bowl_g, draft.card_g), 9)


def _exact(case: Case, draft: Draft, card_g: Masses, after: Balance) -> Balance:
    """Balance before the grams were rounded: what the scale's step adds is no change of the cake.

    A split solved on the scale's grid is exact as it stands.
    """
    return after if card_g == draft.card_g else _balance(case, draft, draft.card_g)


def _there(case: Case, draft: Draft) -> Masses:
    """What lies in the bowls of each line already; a second cake gets eggs of its own."""
    slip = case.slip
    return tuple(0.0 if draft.kind == "second" else slip.held_g(n) for n in range(len(slip.lines)))


def _balance(case: Case, draft: Draft, card_g: Masses) -> Balance:
    """Balance of the corrected cake; a second one stands in another tin."""
    if draft.kind != "second":
        return case.judge.after(card_g)
    small = at_masses(case.slip.formula, card_g)
    return balance(replace(small, tin=None, tins=(), baked=None))


def _tin(case: Case, draft: Draft, card_g: Masses) -> WayTin | None:
    if draft.kind not in (*_WHOLE_FORMULA, "follow"):
        return None
    return way_tin(case.slip, math.fsum(mass or 0.0 for mass in card_g))


def _jar(case: Case, draft: Draft, lines: tuple[WayLine, ...], card_g: Masses) -> Jar | None:
    if draft.jar_factor <= NOISE_G:
        return None
    blend = _jar_lines(draft)
    plan = math.fsum(case.slip.plan_g(n) or 0.0 for n in blend)
    held = math.fsum(line.mass_g for line in lines if line.line in blend)
    if draft.bowl_g is not None and case.bowls.slip is not None:
        plan = case.bowls.slip.plan_g
        return Jar(round(held - plan, _DIGITS), _more(plan, held - plan))
    left = held - math.fsum(card_g[n] or 0.0 for n in blend)
    return Jar(round(left, _DIGITS), _more(plan, left))


def _more(plan_g: float, jar_g: float) -> float:
    return round(max(0.0, plan_g - jar_g), _DIGITS)


def _jar_lines(draft: Draft) -> frozenset[int]:
    """Lines of which more is in the bowls than goes into this cake."""
    pairs = zip(draft.end_g, draft.card_g, strict=True)
    return frozenset(
        n for n, (end, card) in enumerate(pairs) if end and card and end > card + NOISE_G
    )


def _of_bowl(
    slip: Slip, bowl: Bowl, draft: Draft, ends_g: tuple[float, ...]
) -> tuple[tuple[WayLine, ...], Masses]:
    """Lines of the slip's bowl, and the whole corrected formula."""
    found = reached(ends_g, [item.held_g for item in bowl.items], step_g=slip.step_g)
    masses = tuple(each.mass_g for each in found)
    now, was = shares_pct(bowl, masses), shares_pct(bowl, tuple(i.plan_g for i in bowl.items))
    lines = tuple(
        WayLine(item.line, each.mass_g, each.add_g, item.plan_g, now[n], was[n], mark=each.mark)
        for n, (item, each) in enumerate(zip(bowl.items, found, strict=True))
    )
    if draft.kind == "follow":
        return lines, _followed(slip, bowl, draft.card_g, masses)
    in_cake = tuple(i.plan_g for i in bowl.items) if draft.kind == "jar" else masses
    return lines, with_bowl(slip, settled_g(slip), bowl, in_cake)


def _followed(slip: Slip, bowl: Bowl, card_g: Masses, masses_g: tuple[float, ...]) -> Masses:
    """The formula that grew with its bowl, each line outside it at the scale's step."""
    inside = {item.line: mass for item, mass in zip(bowl.items, masses_g, strict=True)}
    return tuple(
        inside[n]
        if n in inside and _is_whole(slip, bowl, n)
        else None
        if mass is None
        else _alone(slip, n, mass).mass_g
        for n, mass in enumerate(card_g)
    )


def _is_whole(slip: Slip, bowl: Bowl, line: int) -> bool:
    """Whether all of a line lies in a bowl."""
    inside = math.fsum(item.plan_g for item in bowl.items if item.line == line)
    return abs(inside - (slip.plan_g(line) or 0.0)) <= NOISE_G


def _alone(slip: Slip, line: int, mass_g: float) -> Reached:
    return reached([mass_g], [slip.held_g(line)], step_g=slip.step_g)[0]


def _of_formula(case: Case, draft: Draft) -> tuple[tuple[WayLine, ...], Masses]:
    """Every line of the formula: what is in the bowls at the end, and what the cake gets."""
    slip = case.slip
    ends, cards = _rounded(case, draft.end_g, held=True), _rounded(case, draft.card_g, held=False)
    lines, card = [], list(draft.card_g)
    for n, end in ends.items():
        plan, held = slip.plan_g(n) or 0.0, slip.held_g(n)
        kept = abs((draft.end_g[n] or 0.0) - (draft.card_g[n] or 0.0)) <= NOISE_G
        card[n] = end.mass_g if kept else cards[n].mass_g
        take_out = round(max(0.0, held - end.mass_g), _DIGITS)
        lines.append(WayLine(n, end.mass_g, end.add_g, plan, take_out_g=take_out, mark=end.mark))
    if draft.kind == "fresh":
        fresh = [_fresh(slip, line) for line in lines]
        lines = [now for now, was in zip(fresh, lines, strict=True) if now is not was]
        card = list(draft.card_g)
    return tuple(lines), tuple(card)


def _rounded(case: Case, masses_g: Masses, *, held: bool) -> dict[int, Reached]:
    """Masses at the scale's step: a blend's lines together, every other line alone."""
    slip, found = case.slip, dict[int, Reached]()
    for group in _groups(case):
        known = [(n, mass) for n in group if (mass := masses_g[n]) is not None]
        there = [min(slip.held_g(n), mass) if held else 0.0 for n, mass in known]
        rows = reached([mass for _, mass in known], there, step_g=slip.step_g)
        for (n, _), row in zip(known, rows, strict=True):
            found[n] = row
    return dict(sorted(found.items()))


def _groups(case: Case) -> list[list[int]]:
    """Lines that are rounded together: those that lie whole in one blend."""
    groups, used = [], set[int]()
    for bowl in case.bowls.all:
        if not bowl.is_blend:
            continue
        whole = [
            item.line
            for item in bowl.items
            if abs(item.plan_g - (case.slip.plan_g(item.line) or 0.0)) <= NOISE_G
        ]
        groups.append(whole)
        used.update(whole)
    return [*groups, *([n] for n in range(len(case.slip.lines)) if n not in used)]


def _fresh(slip: Slip, line: WayLine) -> WayLine:
    """A line of eggs with the fresh whites still to add."""
    egg = next((each for each in egg_lines(slip.formula) if each.line == line.line), None)
    if egg is None or egg.part == "yolk":
        return line
    white = whites_g(slip, egg.each_g, egg.part) * min(slip.spoilt_whites, egg.count)
    return replace(line, add_g=round(white, _DIGITS))


def whites_g(slip: Slip, each_g: float, part: str) -> float:
    """White of one egg of a line."""
    key = slip.formula.egg_size or next((x.egg_size for x in slip.lines if x.egg_size), None)
    if part == "white" or key is None:
        return each_g
    size = egg_size(key)
    return each_g * size.white_g.best / (size.white_g.best + size.yolk_g.best)
