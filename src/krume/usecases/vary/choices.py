"""What a variation may begin with: lines that can go, for whom it can be made, fats."""

from dataclasses import dataclass

from krume.design import varying
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.read import formula_of


@dataclass(frozen=True, slots=True)
class VaryChoices:
    """Names of a formula's lines, words and labels of the wishes, and what may make up a fat."""

    lines: tuple[str, ...]
    wishes: tuple[tuple[str, str], ...]
    fats: tuple[str, ...]


def choices_of(name: str, asked: Asked) -> VaryChoices:
    """What may be chosen for a variation of a formula."""
    lines = formula_of(name, asked).formula.lines
    return VaryChoices(
        lines=tuple(dict.fromkeys(line.name for line in lines)),
        wishes=tuple((wish.words[-1], wish.label) for wish in varying.diet_wishes()),
        fats=("oil", "butter", "none"),
    )
