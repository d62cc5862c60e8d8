"""What the page works out without the network is what the library says, number by number."""

import random
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from krume.design import Formula, Slip, Way, rescue
from krume.usecases import Asked
from krume.usecases.asking.read import formula_of
from krume.usecases.bench.ground import ground_of
from tests.browser import browser, page
from tests.web.bench.slip_module import call

__all__ = ["browser", "page"]

SLIPS = 5_200
NAMES = ("F1", "F2", "F3", "F4", "F5", "F6", "F7", "C1", "C2")
CLOSED = ("jar", "leave", "hold", "scale")
STEPS = (0.1, 0.1, 1.0)


def random_slips(formulas: list[Formula], count: int) -> Iterator[tuple[Formula, Slip]]:
    """Slips as they come: some lines weighed as planned, one to three of them over."""
    chance = random.Random(20270610)  # noqa: S311
    while count:
        formula = chance.choice(formulas)
        step = chance.choice(STEPS)
        known = [n for n, line in enumerate(formula.lines) if line.mass_g]
        done = chance.sample(known, chance.randint(1, len(known)))
        held: list[float | None] = [None] * len(formula.lines)
        for n in done:
            held[n] = formula.lines[n].mass_g
        for n in chance.sample(done, min(len(done), chance.choice((1, 1, 1, 2, 3)))):
            plan = formula.lines[n].mass_g or 0.0
            over = max(step, round(plan * chance.uniform(0.01, 0.7) / step) * step)
            held[n] = round(plan + over, 6)
        for n in chance.sample(done, 1):
            if chance.random() < 0.3 and held[n] == formula.lines[n].mass_g:
                held[n] = round((held[n] or 0.0) * chance.random(), 1)
        slip = Slip(formula, tuple(held), step_g=step)
        if slip.over:
            count -= 1
            yield formula, slip


def numbers(way: Way) -> dict[str, Any]:
    """Every number of a way that the page works out too."""
    return {
        "kind": way.kind,
        "factor": way.factor,
        "lines": [
            {"line": x.line, "mass_g": x.mass_g, "add_g": x.add_g, "was_g": x.was_g}
            for x in way.lines
        ],
        "total_g": way.total_g,
        "card_g": list(way.card_g),
        "jar_g": None if way.jar is None else way.jar.mass_g,
        "next_g": None if way.jar is None else way.jar.next_g,
        "eggs": {"count": way.eggs.count, "make_up_g": way.eggs.make_up_g},
        "shift_pct": way.worst_shift_pct,
    }


def unlike(mine: Any, theirs: Any, at: str = "") -> list[str]:
    """Where two answers differ by more than a millionth."""
    if isinstance(mine, dict):
        return [x for key in mine for x in unlike(mine[key], theirs.get(key), f"{at}.{key}")]
    if isinstance(mine, list):
        if len(mine) != len(theirs):
            return [f"{at}: {len(mine)} and {len(theirs)}"]
        pairs = enumerate(zip(mine, theirs, strict=True))
        return [x for n, (a, b) in pairs for x in unlike(a, b, f"{at}[{n}]")]
    if isinstance(mine, int | float) and isinstance(theirs, int | float):
        return (
            [] if abs(mine - theirs) <= 1e-6 * max(1.0, abs(mine)) else [f"{at}: {mine} {theirs}"]
        )
    return [] if mine == theirs else [f"{at}: {mine!r} {theirs!r}"]


@pytest.fixture(scope="module")
def formulas(demo_book: Path) -> list[Formula]:
    """The demo studio's formulas, batters, creams and a tart."""
    return [formula_of(name, Asked(book=demo_book)).formula for name in NAMES]


def test_every_number_of_every_closed_way_is_the_librarys(
    page: Page, formulas: list[Formula]
) -> None:
    slips = list(random_slips(formulas, SLIPS))
    asked = [[ground_of(f, s.step_g), list(s.weighed_g)] for f, s in slips]
    answers = call(page, "slip.js", "waysOut", asked)
    wrong: list[str] = []
    counted = dict.fromkeys(CLOSED, 0)
    for (formula, slip), answer in zip(slips, answers, strict=True):
        theirs = {way["kind"]: way for way in answer}
        mine = {w.kind: numbers(w) for w in rescue(slip).ways if w.kind in CLOSED}
        at = f"{formula.name} {slip.weighed_g} at {slip.step_g}"
        if set(mine) != set(theirs):
            wrong.append(f"{at}: {sorted(mine)} and {sorted(theirs)}")
            continue
        for kind, way in mine.items():
            counted[kind] += 1
            wrong += [f"{at} {kind}{x}" for x in unlike(way, theirs[kind])]
    assert wrong[:5] == []
    assert min(counted.values()) >= SLIPS // 10
