"""A bake as a page shows it: the likeliest at once, its doubt when it is asked for."""

from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache

from krume.bake import Batter, Oven, figures, likeliest, predict
from krume.base import Infeasible, Interval, as_text
from krume.publish import BakeCourse, bake_drawing
from krume.store import book_at, content_stamp_of
from krume.usecases.answer import Answer, Asked
from krume.usecases.bake import BakeGround, BakeWish, bake_formula, bake_ground, barred, with_bake
from krume.usecases.bake_result import BakeResult

_LAST = {
    "core": "Core last: the middle is the last to be ready. Before that it is probably still wet.",
    "set": "Set last: egg and starch are the last to be ready. Press the top, it springs back.",
    "colour": "Colour last: the middle is ready before the top. Brown it, or accept it paler.",
}
_MOST_KEPT = 64


@dataclass(frozen=True, slots=True)
class BakeNarrow:
    """What would narrow the doubt, and the minutes it would leave."""

    key: str
    text: str
    minutes: Interval


@dataclass(frozen=True, slots=True)
class BakePage:
    """A bake on a page. `likely_min` is the likeliest bake's; without it nothing is baked.

    `result.minutes` stays None until the doubt is worked out; `narrows` then holds what would
    narrow it, the most first. `svg` is the drawing, `svg_narrow` the one for a phone.
    """

    result: BakeResult
    likely_min: float | None
    last_text: str
    narrows: tuple[BakeNarrow, ...]
    svg: str | None
    svg_narrow: str | None


_Key = tuple[tuple[float, ...], str, BakeWish, tuple[str, ...], date | None, str]
_worked: dict[_Key, Answer[BakePage]] = {}


def bake_shown(name: str, wish: BakeWish, asked: Asked, *, work: bool = False) -> Answer[BakePage]:
    """The likeliest bake, and with `work` its doubt; what was worked out once is kept in mind.

    A doubt that was worked out for the same book and the same request comes without asking.
    """
    stamp = content_stamp_of(book_at(asked.book))
    key = None if stamp is None else (
        stamp, name, wish, asked.answers, asked.on, str(asked.book)
    )  # fmt: skip
    if key is not None and key in _worked:
        return _worked[key]
    if not work:
        return _likeliest(name, wish, asked) if key is None else _kept(name, wish, asked, key)
    answer = _with_doubt(name, wish, asked)
    if key is not None:
        if len(_worked) >= _MOST_KEPT:
            _worked.clear()
        _worked[key] = answer
    return answer


@lru_cache(maxsize=_MOST_KEPT)
def _kept(name: str, wish: BakeWish, asked: Asked, _: _Key) -> Answer[BakePage]:
    return _likeliest(name, wish, asked)


def _likeliest(name: str, wish: BakeWish, asked: Asked) -> Answer[BakePage]:
    """One bake of every parameter at its row's value."""
    ground = bake_ground(name, wish, asked)
    if ground.batter is None or ground.tin is None or ground.oven is None:
        return _bare(ground.bare)
    bake = likeliest(ground.batter, ground.tin, ground.oven)
    if isinstance(bake, Infeasible):
        return _bare(barred(ground, bake))
    result = with_bake(ground.bare.result, ground.batter, bake)
    notices = (*ground.bare.notices, *ground.notices)
    return _paged(replace(ground.bare, result=result, notices=notices))


def _with_doubt(name: str, wish: BakeWish, asked: Asked) -> Answer[BakePage]:
    answer = bake_formula(name, wish, asked)
    if answer.result.minutes is None:
        return _bare(answer)
    return _paged(answer, _narrows(bake_ground(name, wish, asked)))


def _bare(answer: Answer[BakeResult]) -> Answer[BakePage]:
    page = BakePage(answer.result, None, "", (), None, None)
    return Answer(page, answer.problems, answer.notices, answer.sources, None, answer.is_possible)


def _paged(answer: Answer[BakeResult], narrows: tuple[BakeNarrow, ...] = ()) -> Answer[BakePage]:
    found, bare = answer.result, _bare(answer)
    if found.rules is None or found.curve is None or found.done_by is None:
        return bare
    likely = max(found.rules.core_min, found.rules.set_min, found.rules.colour_min)
    course = BakeCourse(
        found.curve.time_min, found.curve.core_c, found.curve.top_c, likely,
        found.core_c or 0.0, found.done_by, found.minutes,
    )  # fmt: skip
    page = BakePage(
        found,
        likely,
        _LAST[found.done_by],
        narrows,
        bake_drawing(course, ident="bake"),
        bake_drawing(course, ident="bake-narrow", narrow=True),
    )
    return replace(bare, result=page)


def _narrows(ground: BakeGround) -> tuple[BakeNarrow, ...]:
    """What one reading or one more bake would leave of the doubt, the most useful first."""
    batter, tin, oven = ground.batter, ground.tin, ground.oven
    if batter is None or tin is None or oven is None:
        return ()
    found = []
    for key, text, changed, at in _steps(batter, oven):
        answer = predict(changed, tin, at)
        if not isinstance(answer, Infeasible):
            found.append(BakeNarrow(key, text, answer.minutes))
    return tuple(sorted(found, key=lambda each: each.minutes.high - each.minutes.low))


def _steps(batter: Batter, oven: Oven) -> list[tuple[str, str, Batter, Oven]]:
    half = figures()["spread-oven-thermometer"].value
    spread = figures()["spread-heat-one-bake"].value
    steps = []
    if oven.ln_heat_sd > spread:
        at = replace(oven, ln_heat_sd=spread)
        text = "One bake of it in this oven, timed, with its core at the end"
        steps.append(("one-bake", text, batter, at))
    if oven.temp_half_width_c > half:
        at = replace(oven, temp_half_width_c=half)
        text = f"A thermometer in the middle of the oven, so that it is known to {as_text(half)} °C"
        steps.append(("thermometer", text, batter, at))
    if not batter.density_measured:
        text = "A level cup of the batter on the scale, and its density in the formula"
        steps.append(("cup", text, replace(batter, density_measured=True), oven))
    return steps
