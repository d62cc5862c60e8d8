"""The cup at the bench: the batter's specific gravity from one number, the cup remembered."""

import json
from dataclasses import dataclass

from krume.base import InputError
from krume.design import family
from krume.evidence import figures
from krume.properties import specific_gravity
from krume.store import KeptStep, book_at, last_said, say_steps
from krume.usecases.asking.answer import Asked
from krume.usecases.bench.bench import begin_at_bench, check_id
from krume.usecases.bench.result import Bench

_WORDS = {
    "light": "Lighter than usual: fold five more, then take the cup again.",
    "inside": "In its band: go on, fill the tin.",
    "heavy": "Heavier than usual: too far to mend. Bake it anyway; it is noted.",
    "not known": "This family has no band for it. Note it, and go on.",
}


@dataclass(frozen=True, slots=True)
class CupNow:
    """The cup as it is remembered, the family's band, and the last batter of this weighing."""

    empty_g: float | None
    water_g: float | None
    batter_g: float | None
    sg: float | None
    low: float | None
    high: float | None
    place: str
    say: str


def cup_at_bench(bench: Bench, asked: Asked) -> CupNow:
    """What is known of the cup, and what was measured in it for this weighing."""
    last = last_said(book_at(asked.book), "cup")
    cup = {} if last is None else json.loads(last.said)
    mine = next((s for s in reversed(bench.steps) if s.kind == "cup" and not s.is_undone), None)
    got = {} if mine is None else json.loads(mine.said)
    known = bench.plan.formula.family
    rules = None if known is None else family(known)
    low, high = (None, None) if rules is None else (rules.sg_low, rules.sg_high)
    sg = got.get("sg")
    place, say = judged(sg, low, high)
    return CupNow(cup.get("empty_g"), cup.get("water_g"), got.get("batter_g"), sg, low, high, place,
                  say)  # fmt: skip


def judged(sg: float | None, low: float | None, high: float | None) -> tuple[str, str]:
    """Where a specific gravity stands, and the one sentence about it.

    >>> judged(0.48, 0.46, 0.5)
    ('inside', 'In its band: go on, fill the tin.')
    """
    if sg is None:
        return "", ""
    if low is None or high is None:
        place = "not known"
    elif sg < low:
        place = "light"
    else:
        place = "heavy" if sg > high else "inside"
    return place, _WORDS[place]


def cup_limits() -> tuple[float, dict[str, str]]:
    """The heaviest cup, and the sentence of each place a batter may stand at."""
    return figures("trial_limits.csv")["cup-most"].value, dict(_WORDS)


def keep_cup(
    name: str, key: str, asked: Asked, *, client_id: str, empty_g: float, water_g: float,
    batter_g: float,
) -> None:  # fmt: skip
    """Keep one cup: its specific gravity stands in the weighing, the cup in the book."""
    most, _ = cup_limits()
    for field, value in (("empty", empty_g), ("water", water_g), ("batter", batter_g)):
        if not 0 < value <= most:
            raise InputError(
                f"A cup weighs more than 0 and at most {most:.0f} g.", field=field, got=str(value)
            )
    for field, value in (("water", water_g), ("batter", batter_g)):
        if value <= empty_g:
            message = "That is no more than the empty cup. Weigh the cup with it, cup included."
            raise InputError(message, field=field, got=str(value), want=f"over {empty_g}")
    sg = specific_gravity(empty_g, water_g=water_g, batter_g=batter_g)
    began = begin_at_bench(name, key, asked)
    said = json.dumps({"empty_g": empty_g, "water_g": water_g, "batter_g": batter_g, "sg": sg})
    step = KeptStep(check_id(client_id), "cup", got_g=batter_g, said=said)
    say_steps(book_at(asked.book), began, lambda _: (step,))


def cup_of_weighing(steps: tuple[KeptStep, ...]) -> float | None:
    """The last specific gravity of a weighing; None where no cup was taken."""
    mine = next((s for s in reversed(steps) if s.kind == "cup" and not s.is_undone), None)
    return None if mine is None else json.loads(mine.said)["sg"]
