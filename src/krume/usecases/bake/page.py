"""A bake as a page shows it: the likeliest at once, its doubt when it is asked for."""

from dataclasses import dataclass, replace
from functools import lru_cache

from krume.bake import Bake, Batter, Oven, core_notices, likeliest
from krume.base import Infeasible, as_text
from krume.publish import SCREEN_NOTE
from krume.size import Tin
from krume.store import book_at
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.remembering import Remembered
from krume.usecases.bake.around import door_too_late
from krume.usecases.bake.bake import BakeGround, bake_formula, bake_ground, barred, with_bake
from krume.usecases.bake.beside import Beside, beside_of
from krume.usecases.bake.more import likely_min, with_more
from krume.usecases.bake.other import other_of
from krume.usecases.bake.pictures import BakePictures, pictures_of, told_stretch
from krume.usecases.bake.result import BakeResult
from krume.usecases.bake.wish import BakeWish

_LAST = {
    "core": "Core last: the middle is the last to be ready. Before that it is probably still wet.",
    "set": "Set last: egg and starch are the last to be ready. Press the top, it springs back.",
    "colour": "Colour last: the middle is ready before the top. Brown it, or accept it paler.",
}
_MOST_KEPT = 64


@dataclass(frozen=True, slots=True)
class BakePage:
    """A bake on a page. `likely_min` is the likeliest bake's; without it nothing is baked.

    `result.minutes` stays None until the doubt is worked out; `result.unknowns` then says what
    makes it, with the minutes each would leave where it is known better. `svg` is the curve,
    `svg_narrow` the one for a phone; `cuts` the cake at its minutes, `pair` both tins at one.
    """

    result: BakeResult
    likely_min: float | None
    last_text: str
    svg: str | None = None
    svg_narrow: str | None = None
    cuts: tuple[str, ...] = ()
    pair: tuple[str, ...] = ()
    pair_min: float | None = None
    other_likely_min: float | None = None
    other_label: str = ""
    top: str | None = None
    top_text: str = ""
    cut_text: str = ""


_worked: Remembered[Answer[BakePage]] = Remembered(_MOST_KEPT)
_likely: Remembered[Answer[BakePage]] = Remembered(_MOST_KEPT)


def bake_shown(name: str, wish: BakeWish, asked: Asked, *, work: bool = False) -> Answer[BakePage]:
    """The likeliest bake, and with `work` its doubt; what was worked out once is kept in mind.

    A doubt that was worked out for the same book and the same request comes without asking.
    """
    book, key = book_at(asked.book), (name, wish, asked.answers, asked.on)
    found = _worked.get(book, key)
    if found is not None:
        return found
    if work:
        return _worked.of(book, key, lambda: _with_doubt(name, wish, asked))
    return _likely.of(book, key, lambda: _likeliest(name, wish, asked))


@lru_cache(maxsize=_MOST_KEPT)
def _baked(batter: Batter, tin: Tin, oven: Oven) -> Bake | Infeasible:
    """The same batter in the same tin and oven bakes as it did."""
    return likeliest(batter, tin, oven)


def _likeliest(name: str, wish: BakeWish, asked: Asked) -> Answer[BakePage]:
    """One bake of every parameter at its row's value, in each tin."""
    ground = bake_ground(name, wish, asked)
    if ground.batter is None or ground.tin is None or ground.oven is None:
        return _bare(ground.bare)
    bake = _baked(ground.batter, ground.tin, ground.oven)
    if isinstance(bake, Infeasible):
        return _bare(barred(ground, bake))
    second = beside_of(ground, other_of(ground, wish, asked))
    result = with_bake(ground.bare.result, ground.batter, bake)
    core, boils = bake.core_c, bake.boiling_c
    moved = core_notices(ground.batter, ground.oven, core_c=core, boiling_c=boils)
    notices = (*ground.bare.notices, *ground.notices, *moved)
    answer = replace(
        ground.bare,
        result=replace(result, beside=second.result),
        problems=(*second.problems, *door_too_late(wish.door_min, bake.minutes)),
        notices=notices,
        is_possible=second.is_possible,
    )
    return _paged(answer, ground, second)


def _with_doubt(name: str, wish: BakeWish, asked: Asked) -> Answer[BakePage]:
    answer = bake_formula(name, wish, asked)
    if answer.result.minutes is None:
        return _bare(answer)
    ground = bake_ground(name, wish, asked)
    answer, second = with_more(answer, ground, replace(wish, doubt=True, cooling=True), asked)
    return _paged(answer, ground, second)


def _bare(answer: Answer[BakeResult]) -> Answer[BakePage]:
    page = BakePage(answer.result, None, "")
    return Answer(page, answer.problems, answer.notices, answer.sources, None, answer.is_possible)


def _paged(answer: Answer[BakeResult], ground: BakeGround, second: Beside) -> Answer[BakePage]:
    found, bare = answer.result, _bare(answer)
    pictures = pictures_of(ground, found, second)
    if pictures is None or found.done_by is None:
        return bare
    page = BakePage(
        found,
        likely_min(found),
        _LAST[found.done_by],
        svg=pictures.course_svg(),
        svg_narrow=pictures.course_svg(narrow=True),
        cuts=pictures.cut_svgs(),
        pair=pictures.pair_svgs(),
        pair_min=pictures.pair[0].section.time_min if pictures.pair else None,
        other_likely_min=pictures.beside[1].course.likely_min if pictures.beside else None,
        other_label=second.label,
        top=pictures.top_svg(),
        top_text=SCREEN_NOTE,
        cut_text=_cut_text(pictures),
    )
    return replace(bare, result=page)


def _cut_text(pictures: BakePictures) -> str:
    """How the cuts are read."""
    core = as_text(pictures.course.core_wanted_c, 0)
    said = (
        f"Lines of 40, 60, 80 and {core} °C; pores where it is {core} or more. The wedge stands "
        "where the batter stood at the door, the ticks are centimetres, and the dry top has its "
        "colour. The height is the model's own, no promise."
    )
    return f"{said} {told_stretch((*pictures.cuts, *pictures.pair))}".strip()
