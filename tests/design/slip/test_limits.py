"""Bands as limits: the split inside all of them is the best of all splits on the scale."""

from itertools import product

import pytest

from krume.design import Rescue, rescue
from krume.design.slip.judging import judge_of
from krume.design.slip.limits import band_limits
from krume.design.slip.settled import settled_g
from tests.design.slip.demo import formula, slip_of

CASES = (
    ("F2", {"white rice": 40.0, "teff": 26.0}),
    ("F2", {"white rice": 46.0, "teff": 20.0}),
    ("F3", {"white rice": 26.0, "millet": 22.0}),
    ("F5", {"white rice": 48.0, "millet": 12.0}),
    ("F1", {"buckwheat": 68.0}),
)


def _best_by_trying(found: Rescue) -> tuple[float, float] | None:
    """Worst and squared shift in grams of the best whole-gram split inside every band."""
    slip, bowl = found.slip, found.bowl
    assert bowl is not None
    judge = judge_of(slip)
    taking = [n for n, item in enumerate(bowl.items) if item.is_open and item.is_bulk]
    fixed = {i.line: max(i.held_g, i.plan_g) for n, i in enumerate(bowl.items) if n not in taking}
    room = round(bowl.plan_g - sum(fixed.values()))
    beyond = max(abs(fixed[i.line] - i.plan_g) for i in bowl.items if i.line in fixed)
    best: tuple[float, float] | None = None
    for amounts in product(range(room + 1), repeat=len(taking) - 1):
        last = room - sum(amounts)
        if last < 0:
            continue
        off = [a - bowl.items[n].plan_g for n, a in zip(taking, (*amounts, last), strict=True)]
        cost = (max(beyond, *map(abs, off)), sum(x * x for x in off))
        if best is not None and cost >= best:
            continue
        card = list(settled_g(slip))
        for n, amount in zip(taking, (*amounts, last), strict=True):
            card[bowl.items[n].line] = float(amount)
        if judge.is_in_band(judge.after(card)):
            best = cost
    return best


@pytest.mark.parametrize(("name", "weighed"), CASES)
def test_the_split_inside_every_band_is_the_best_there_is(
    name: str, weighed: dict[str, float]
) -> None:
    found = rescue(slip_of(name, weighed, step_g=1.0))
    inside = [each for each in found.ways if each.kind == "hold-in-band"]
    best = _best_by_trying(found)
    if not inside:
        assert best is None or any(each.kind == "hold" and each.in_band for each in found.ways)
        return
    assert best is not None
    off = [abs(row.mass_g - row.was_g) for row in inside[0].lines]
    open_off = [
        x for x, row in zip(off, inside[0].lines, strict=True) if row.add_g or not row.mass_g
    ]
    assert max(off) == pytest.approx(best[0])
    assert sum(x * x for x in open_off) == pytest.approx(best[1])


def test_one_of_the_cases_has_a_split_that_the_even_one_misses() -> None:
    kinds = [
        {each.kind for each in rescue(slip_of(name, weighed, step_g=1.0)).ways}
        for name, weighed in CASES
    ]
    assert any("hold-in-band" in each for each in kinds)


def test_a_limit_holds_exactly_where_the_band_does() -> None:
    slip = slip_of("F2", {"white rice": 40.0, "teff": 26.0})
    judge = judge_of(slip)
    base = [each.mass_g for each in formula("F2").lines]
    base[1] = 26.0
    for n in (2, 3, 4):
        base[n] = 0.0
    limits = band_limits(judge, base, (2, 3, 4), step_g=0.1)
    assert limits is not None
    for split in product((200, 255, 280, 300, 380), (30, 52, 53, 70, 130), (0, 40, 60, 90)):
        inside = all(
            sum(c * x for c, x in zip(limit.coefficients, split, strict=True)) <= limit.most + 1e-6
            for limit in limits
        )
        card = list(base)
        for n, steps in zip((2, 3, 4), split, strict=True):
            card[n] = steps * 0.1
        assert inside == judge.is_in_band(judge.after(card)), split
