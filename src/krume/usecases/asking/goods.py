"""What a torte takes as it is bought: a fruit, a nut, a sprinkle; read as a formula of one line."""

from krume.base import as_text
from krume.build import TortePlan
from krume.pantry import find
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.read import FormulaRead, read_text
from krume.usecases.asking.text import Text

KIND = "goods"
"""Kind of the text such a line is read from: it stands in no book."""


def goods_grams(plan: TortePlan) -> dict[str, float]:
    """Grams of what a plan takes by its mass alone, by the plan's own words."""
    found: dict[str, float] = {}
    for each in plan.components:
        if each.piece is None and each.mass_g is not None:
            found[each.what] = found.get(each.what, 0.0) + each.mass_g * (each.count or 1)
    return found


def goods_of(what: str, grams: float, asked: Asked) -> FormulaRead | None:
    """A thing of the pantry as a formula of one line; None where the pantry has no such name."""
    if find(what).kind == "unknown":
        return None
    text = f"{what}\n\n{as_text(grams, 3)} g {what}\n"
    return read_text(Text(text, what, KIND), asked)


def is_goods(read: FormulaRead) -> bool:
    """Whether a formula is a thing that is used as it is bought."""
    return read.source.kind == KIND
