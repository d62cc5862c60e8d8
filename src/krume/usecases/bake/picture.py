"""The picture of a bake as a file: curve, cuts, top and a second tin on one drawing."""

from dataclasses import replace
from pathlib import Path

from krume.base import InputError, as_text
from krume.publish import SCREEN_NOTE, Shown, cuts_drawing, drawing_file, stacked_drawing
from krume.store import write_whole
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.bake.bake import BakeGround, bake_formula, bake_ground
from krume.usecases.bake.beside import Beside
from krume.usecases.bake.more import with_more
from krume.usecases.bake.pictures import BakePictures, pictures_of, told_stretch
from krume.usecases.bake.result import BakeResult
from krume.usecases.bake.wish import BakeWish

_COLUMNS = 3


def draw_bake(name: str, wish: BakeWish, asked: Asked, *, to: Path) -> Answer[BakeResult]:
    """A bake with all beside it, and its picture written; nothing is written without an answer."""
    if to.suffix.casefold() != ".svg":
        message = f"A picture is an SVG drawing. End its name in .svg, for example {to.stem}.svg."
        raise InputError(message, field="--picture", got=to.name, want="a name that ends in .svg")
    answer = bake_formula(name, wish, asked)
    if answer.result.minutes is None:
        return answer
    ground = bake_ground(name, wish, asked)
    answer, second = with_more(answer, ground, wish, asked)
    drawn = drawn_bake(ground, answer.result, second)
    if drawn is None or answer.problems:
        return answer
    write_whole(to, drawn.encode(), replace=True)
    return replace(answer, result=replace(answer.result, picture=str(to.resolve())))


def bake_svg(name: str, wish: BakeWish, asked: Asked) -> Answer[str | None]:
    """The same drawing kept nowhere; None where there is no answer to draw."""
    answer = bake_formula(name, wish, asked)
    if answer.result.minutes is None:
        return _with_drawing(answer, None)
    ground = bake_ground(name, wish, asked)
    answer, second = with_more(answer, ground, wish, asked)
    return _with_drawing(answer, drawn_bake(ground, answer.result, second))


def _with_drawing(answer: Answer[BakeResult], drawn: str | None) -> Answer[str | None]:
    """An answer with its drawing in the place of its figures."""
    return Answer(drawn, answer.problems, answer.notices, answer.sources, None, answer.is_possible)


def drawn_bake(ground: BakeGround, result: BakeResult, second: Beside) -> str | None:
    """All pictures of a bake on one drawing that stands by itself; None where it has none."""
    pictures = pictures_of(ground, result, second)
    if pictures is None:
        return None
    title = (
        f"{result.name or 'A formula'} in {result.tin}, oven {as_text(result.oven_c or 0, 0)} °C"
    )
    parts = _parts(pictures)
    return drawing_file(stacked_drawing(parts, title=title, ident="whole"))


def _parts(pictures: BakePictures) -> tuple[Shown, ...]:
    course = Shown("Core and top over the minutes", pictures.course_svg(), pictures.said)
    core = as_text(pictures.course.core_wanted_c, 0)
    how = f"Lines of 40, 60, 80 and {core} °C; pores where it is {core} or more. "
    how += told_stretch((*pictures.cuts, *pictures.pair)) or "Ticks are centimetres."
    cuts = Shown(
        "The cake cut through its middle",
        cuts_drawing(pictures.cuts, ident="cuts", columns=_COLUMNS),
        how,
    )
    top = Shown("The top, in the likeliest bake", pictures.top_svg(), SCREEN_NOTE)
    if not pictures.pair:
        return (course, cuts, top)
    minute = as_text(pictures.pair[0].section.time_min, 0)
    pair = cuts_drawing(pictures.pair, ident="pair", columns=2)
    return (course, Shown(f"Both at {minute} minutes", pair, how), cuts, top)
