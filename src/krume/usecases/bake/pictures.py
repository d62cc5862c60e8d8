"""The pictures of a bake: its curve, its cuts, its top, and a second tin beside it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from krume.bake import depth_cm, sections
from krume.base import as_text
from krume.publish import (
    BakeCourse,
    CakeCut,
    NamedCourse,
    TopAt,
    at_minute,
    bake_drawing,
    beside_drawing,
    cuts_drawing,
    cuts_stretch,
    swatch_drawing,
    top_colour,
)
from krume.size import Tin, tin_text
from krume.usecases.bake.beside import Beside
from krume.usecases.bake.more import likely_min
from krume.usecases.bake.result import BakeBeside, BakeResult

if TYPE_CHECKING:
    from krume.bake import Batter, Oven, Section
    from krume.usecases.bake.bake import BakeGround

_ON_THE_WAY = (0.15, 0.30, 0.45, 0.60, 0.80)
"""Shares of the likeliest minutes at which the cake is cut; the last cut is at its end."""


@dataclass(frozen=True, slots=True)
class BakePictures:
    """What is drawn of a bake, before it is drawn; `pair` are both tins cut at one minute."""

    course: BakeCourse
    cuts: tuple[CakeCut, ...]
    tops: tuple[TopAt, ...]
    wanted: str
    beside: tuple[NamedCourse, NamedCourse] | None = None
    pair: tuple[CakeCut, ...] = ()
    said: str = ""

    @property
    def stretch(self) -> int:
        """How many times as high as it is wide a cut is drawn."""
        return cuts_stretch((*self.cuts, *self.pair))

    def course_svg(self, *, narrow: bool = False) -> str:
        """Core and top over the minutes, of both tins where there are two."""
        ident = "bake-narrow" if narrow else "bake"
        if self.beside is not None:
            return beside_drawing(*self.beside, self.said, ident=ident, narrow=narrow)
        return bake_drawing(self.course, ident=ident, narrow=narrow)

    def cut_svgs(self) -> tuple[str, ...]:
        """Each cut by itself, all to one scale."""
        return tuple(_drawn(cut, f"cut-{k}", self.cuts) for k, cut in enumerate(self.cuts))

    def pair_svgs(self) -> tuple[str, ...]:
        """Both tins cut at one minute, to one scale."""
        return tuple(_drawn(cut, f"pair-{k}", self.pair) for k, cut in enumerate(self.pair))

    def top_svg(self) -> str:
        """The colour of the top."""
        return swatch_drawing(self.tops, wanted=self.wanted, ident="top")


@lru_cache(maxsize=64)
def _cut_at(
    batter: "Batter", tin: Tin, oven: "Oven", at_min: tuple[float, ...]
) -> "tuple[Section, ...]":
    """The same batter in the same tin and oven looks within as it did."""
    return sections(batter, tin, oven, at_min=at_min)


@lru_cache(maxsize=64)
def _drawn(cut: CakeCut, ident: str, like: tuple[CakeCut, ...]) -> str:
    """A cut as it is drawn: the same bake looks the same, whatever else was kept in the book."""
    return cuts_drawing([cut], ident=ident, like=like)


def pictures_of(
    ground: "BakeGround", result: BakeResult, second: Beside | None = None
) -> BakePictures | None:
    """All pictures of a bake that has an answer; None where it has none."""
    batter, tin, oven = ground.batter, ground.tin, ground.oven
    if batter is None or tin is None or oven is None or result.curve is None:
        return None
    course = _course(result, batter)
    other = None if second is None else second.result
    at = minutes_of(course.likely_min)
    both = () if other is None else (min(course.likely_min, _likely(other)),)
    found = _cut_at(batter, tin, oven, (*at, *both))
    cuts = [_cut(each, tin, course, (batter, oven)) for each in found]
    tops = tuple(TopAt(top.minute, top.delta_e, top.which) for top in result.tops)
    end = found[len(at) - 1]
    plain = BakePictures(
        course=course,
        cuts=tuple(cuts[: len(at)]),
        tops=tops or (TopAt(end.time_min, end.delta_e, "most likely"),),
        wanted=batter.colour,
    )
    if second is None or other is None or second.ground is None:
        return plain
    return _with_other(plain, cuts[-1], second, other)


def minutes_of(likely: float) -> tuple[float, ...]:
    """Whole minutes on the way, each once, and the end."""
    on_the_way = dict.fromkeys(float(max(1, round(share * likely))) for share in _ON_THE_WAY)
    return (*(minute for minute in on_the_way if minute < likely), likely)


def _course(result: BakeResult, batter: "Batter") -> BakeCourse:
    rules, curve = result.rules, result.curve
    named = () if rules is None else (
        ("core", rules.core_min), ("set", rules.set_min), (batter.colour, rules.colour_min)
    )  # fmt: skip
    return BakeCourse(
        () if curve is None else curve.time_min,
        () if curve is None else curve.core_c,
        () if curve is None else curve.top_c,
        likely_min(result),
        result.core_c or 0.0,
        result.done_by or "",
        result.minutes,
        named,
    )


def _likely(other: BakeBeside) -> float:
    return max(other.rules.core_min, other.rules.set_min, other.rules.colour_min)


def _other_course(other: BakeBeside) -> BakeCourse:
    return BakeCourse(
        other.curve.time_min, other.curve.core_c, other.curve.top_c, _likely(other),
        other.core_c, other.done_by, other.minutes,
    )  # fmt: skip


def _cut(
    section: "Section", tin: Tin, course: BakeCourse, of: tuple["Batter", "Oven"], words: str = ""
) -> CakeCut:
    batter, oven = of
    return CakeCut(
        section=section,
        tin=tin,
        start_cm=depth_cm(batter, tin),
        core_c=at_minute(section.time_min, course.time_min, course.core_c),
        wanted_c=course.core_wanted_c,
        colour=top_colour(section.delta_e),
        words=words,
        around=oven.around,
    )


def _with_other(
    plain: BakePictures, own: CakeCut, second: Beside, other: BakeBeside
) -> BakePictures:
    """Both bakes on one line of minutes, and cut at the minute the first of them is ready."""
    ground = second.ground
    if ground is None or ground.batter is None or ground.tin is None or ground.oven is None:
        return plain
    course, of = _other_course(other), (ground.batter, ground.oven)
    (cut,) = sections(of[0], ground.tin, of[1], at_min=(own.section.time_min,))
    first = tin_text(own.tin)
    return replace(
        plain,
        beside=(
            NamedCourse(first, plain.course),
            NamedCourse(second.label, course, is_pearled=True),
        ),
        pair=(replace(own, words=first), _cut(cut, ground.tin, course, of, second.label)),
        said=other.text,
    )


def told_stretch(cuts: Sequence[CakeCut]) -> str:
    """How the cuts are drawn, where it is not as high as they are wide."""
    times = cuts_stretch(cuts)
    return "" if times == 1 else f"Heights are drawn {as_text(times)} times as high."
