"""A bake and all beside it: a second tin, what makes the doubt, the colour of the top."""

from dataclasses import replace
from typing import TYPE_CHECKING

from krume.bake import crust_colour, crust_steps, crust_word, sections, simulate_many
from krume.properties import screen_colour
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.bake.around import door_too_late
from krume.usecases.bake.bake import BakeGround, bake_formula, bake_ground
from krume.usecases.bake.beside import Beside, beside_of, own_draws
from krume.usecases.bake.cooling import Cooled, cooling_after
from krume.usecases.bake.other import other_of
from krume.usecases.bake.result import BakeResult, BakeTop
from krume.usecases.bake.unknowns import narrowed
from krume.usecases.bake.wish import BakeWish

if TYPE_CHECKING:
    from krume.bake import Section

_LONGEST_MIN = 200.0


def bake_with_more(name: str, wish: BakeWish, asked: Asked) -> Answer[BakeResult]:
    """Minutes of a formula with their doubt, and what was wished beside them."""
    answer = bake_formula(name, wish, asked)
    if answer.result.minutes is None:
        return answer
    return with_more(answer, bake_ground(name, wish, asked), wish, asked)[0]


def with_more(
    answer: Answer[BakeResult], ground: BakeGround, wish: BakeWish, asked: Asked
) -> tuple[Answer[BakeResult], Beside]:
    """An answer with its doubt worked out, and what stands beside it."""
    batter, tin, oven, minutes = ground.batter, ground.tin, ground.oven, answer.result.minutes
    if batter is None or tin is None or oven is None or minutes is None:
        return answer, Beside()
    other = other_of(ground, wish, asked)
    own = _own_minutes(ground) if wish.doubt or other.ground is not None else None
    second = beside_of(ground, other, own)
    cooled = Cooled(None)
    if wish.cooling:
        cooled = cooling_after(ground.formula, batter, tin, oven)
    result = replace(
        answer.result,
        beside=second.result,
        unknowns=narrowed(ground, own, minutes) if wish.doubt and own is not None else (),
        tops=tops_of(ground, answer.result),
        cooling=cooled.result,
    )
    problems = (*second.problems, *door_too_late(wish.door_min, minutes.high))
    found = replace(
        answer,
        result=result,
        problems=(*answer.problems, *problems),
        notices=(*answer.notices, *cooled.notices),
        is_possible=answer.is_possible and second.is_possible,
    )
    return found, second


def _own_minutes(ground: BakeGround) -> tuple[float, ...] | None:
    """Minutes of the first tin's draws."""
    batter, tin, oven = ground.batter, ground.tin, ground.oven
    if batter is None or tin is None or oven is None:
        return None
    found = simulate_many(batter, tin, oven, own_draws(batter, tin, oven)).minutes
    return tuple(float(minute) for minute in found)


def tops_of(ground: BakeGround, result: BakeResult) -> tuple[BakeTop, ...]:
    """The top where the likeliest bake comes out at check-from, likely and latest."""
    batter, tin, oven = ground.batter, ground.tin, ground.oven
    if batter is None or tin is None or oven is None or result.rules is None:
        return ()
    likely = likely_min(result)
    at = [("most likely", likely)]
    span = result.minutes
    if span is not None:
        at = [("check from", min(span.low, likely)), *at, ("latest", max(span.high, likely))]
    at = [(which, min(minute, _LONGEST_MIN)) for which, minute in at]
    found = sections(batter, tin, oven, at_min=[minute for _, minute in at])
    return tuple(top_of(which, cut) for (which, _), cut in zip(at, found, strict=True))


def likely_min(result: BakeResult) -> float:
    """The likeliest bake's minutes: when the last of its rules is met."""
    rules = result.rules
    return 0.0 if rules is None else max(rules.core_min, rules.set_min, rules.colour_min)


def top_of(which: str, cut: "Section") -> BakeTop:
    """The top of a cut in words and colours; beyond the path of browning it is its end."""
    delta_e = min(cut.delta_e, crust_steps()[-1].delta_e)
    colour = crust_colour(delta_e)
    return BakeTop(
        which,
        round(cut.time_min, 1),
        round(cut.delta_e, 2),
        crust_word(delta_e),
        round(colour.lightness, 1),
        round(colour.red, 1),
        round(colour.yellow, 1),
        screen_colour(colour).text,
    )
