"""Two bakes beside each other: the same batter, the same draws, one thing otherwise."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from krume.bake import Bake, Batter, Oven, depth_cm, drawn, likeliest, predict, simulate_many
from krume.base import Infeasible, Interval, Problem, as_text
from krume.size import Tin, tin_text
from krume.usecases.asking.answer import clash_problems
from krume.usecases.bake.bake import BakeGround
from krume.usecases.bake.other import Other
from krume.usecases.bake.result import BakeBeside, curve_of, rules_of

if TYPE_CHECKING:
    from krume.bake import Draws

_DRAWS = 256
_SEED, _OTHER_TIN = 7, 8
"""A second tin of another material is drawn by itself; everything else is the same draw."""
_LOW, _MIDDLE, _HIGH = 0.10, 0.50, 0.90


@dataclass(frozen=True, slots=True)
class Beside:
    """The second bake and where it stands, or what is asked about it; None where none is wished."""

    ground: BakeGround | None = None
    bake: Bake | None = None
    result: BakeBeside | None = None
    label: str = ""
    problems: tuple[Problem, ...] = ()
    is_possible: bool = True


def beside_of(ground: BakeGround, other: Other, own: Sequence[float] | None = None) -> Beside:
    """The second bake; `own` are the minutes of the first one's draws.

    Without them the likeliest bakes alone are compared, with no doubt.
    """
    second = other.ground
    if second is None or second.batter is None or second.tin is None or second.oven is None:
        return Beside(problems=other.problems)
    answer = _baked(second.batter, second.tin, second.oven, work=own is not None)
    if isinstance(answer, Infeasible):
        return Beside(problems=clash_problems(answer, "--beside"), is_possible=False)
    bake, minutes = answer
    found = BakeBeside(
        tin=tin_text(second.tin),
        name=other.name,
        oven_c=second.oven.temp_c,
        fan=second.oven.fan,
        around=second.bare.result.around,
        minutes=minutes,
        check_from_min=None if minutes is None else int(minutes.low),
        done_by=bake.done_by,
        rules=rules_of(bake),
        core_c=round(bake.core_c, 1),
        depth_cm=round(depth_cm(second.batter, second.tin), 2),
        curve=curve_of(bake),
        sooner_min=None,
        text="",
    )
    return Beside(second, bake, _compared(found, ground, second, bake, own), other.label)


def _baked(
    batter: Batter, tin: Tin, oven: Oven, *, work: bool
) -> tuple[Bake, Interval | None] | Infeasible:
    if not work:
        bake = likeliest(batter, tin, oven)
        return bake if isinstance(bake, Infeasible) else (bake, None)
    answer = predict(batter, tin, oven)
    if isinstance(answer, Infeasible):
        return answer
    span = answer.minutes
    return answer.bake, Interval(span.low, round(span.best, 1), span.high)


def _compared(
    found: BakeBeside,
    ground: BakeGround,
    second: BakeGround,
    bake: Bake,
    own: Sequence[float] | None,
) -> BakeBeside:
    """The difference: with doubt from draw to draw, without it between the likeliest bakes."""
    batter, first, oven = ground.batter, ground.tin, ground.oven
    tin, there = second.tin, second.oven
    if batter is None or first is None or oven is None or tin is None or there is None:
        return found
    if own is None:
        likely = likeliest(batter, first, oven)
        if isinstance(likely, Infeasible):
            return found
        return replace(found, text=_about(found.name, likely.minutes - bake.minutes))
    sooner = sooner_min(own, _other_minutes(batter, first, tin, there))
    return replace(found, sooner_min=sooner, text=_in_words(found.name, sooner))


def own_draws(batter: Batter, tin: Tin, oven: Oven) -> "Draws":
    """The nominal bake and the draws of a first tin, the same for every tin beside it."""
    return drawn(batter, tin, oven, count=_DRAWS, seed=_SEED)


def _other_minutes(batter: Batter, own: Tin, other: Tin, oven: Oven) -> Sequence[float]:
    draws = drawn(batter, other, oven, count=_DRAWS, seed=_SEED)
    if own.material != other.material:
        again = drawn(batter, other, oven, count=_DRAWS, seed=_OTHER_TIN)
        draws = replace(draws, tin=again.tin)
    return [float(minute) for minute in simulate_many(batter, other, oven, draws).minutes]


def sooner_min(own: Sequence[float], other: Sequence[float]) -> Interval | None:
    """Minutes by which the other tin is ready sooner, negative is later; None is no telling.

    Each draw bakes both tins: the oven, the batter and what the model leaves out are the same in
    both, so what they share falls out of the difference. The first of both is the nominal bake.
    """
    apart = sorted(
        0.0 if math.isinf(a) and math.isinf(b) else float(a - b)
        for a, b in zip(own[1:], other[1:], strict=True)
    )
    low, middle, high = (apart[round(q * (len(apart) - 1))] for q in (_LOW, _MIDDLE, _HIGH))
    if not math.isfinite(low) or not math.isfinite(high):
        return None
    return Interval(math.floor(low), round(middle, 1), math.ceil(high))


def _about(name: str, apart: float) -> str:
    """The likeliest difference in words."""
    minutes = round(abs(apart))
    if minutes == 0:
        return f"{_capital(name)} is ready at about the same minute."
    word = "sooner" if apart > 0 else "later"
    return f"{_capital(name)} is ready about {minutes} min {word}; how sure is not worked out yet."


def _in_words(name: str, sooner: Interval | None) -> str:
    """The difference in words, both ends of it."""
    if sooner is None:
        return f"Which of both is ready first cannot be told: some bakes of {name} never end."
    low, high = sooner.low, sooner.high
    start = f"{_capital(name)} is ready"
    if low > 0 or high < 0:
        ends = (low, high) if low > 0 else (-high, -low)
        return f"{start} {_span(*ends)} min {'sooner' if low > 0 else 'later'}."
    if low == 0 and high == 0:
        return f"{start} at the same minute."
    if low == 0 or high == 0:
        word = "sooner" if low == 0 else "later"
        return f"{start} up to {_span(max(-low, high), max(-low, high))} min {word}."
    return (
        f"{start} {_likely(sooner.best)}; between {as_text(high, 0)} min sooner and "
        f"{as_text(-low, 0)} min later."
    )


def _likely(best: float) -> str:
    minutes = round(abs(best))
    if minutes == 0:
        return "at about the same minute"
    return f"most likely {minutes} min {'sooner' if best > 0 else 'later'}"


def _span(low: float, high: float) -> str:
    low_text, high_text = as_text(low, 0), as_text(high, 0)
    return low_text if low_text == high_text else f"{low_text} to {high_text}"


def _capital(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}"
