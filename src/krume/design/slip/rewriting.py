"""The text of a formula with other amounts: each line and each portion in the steps, no more."""

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import InputError, as_text
from krume.design.formula import Formula, Line, Use
from krume.design.reader import read
from krume.design.slip.eggs import egg_lines
from krume.design.slip.state import NOISE_G

_ENDS = re.compile(r"(\r\n|\n|\r)")
_NUMBER = re.compile(r"\d+(?:[.,]\d+)?")
_GRAMS = re.compile(r"(?<![\d.,])\d+(?:[.,]\d+)?(?=\s*(?:g|gr|gram|grams|gramm)\b)", re.IGNORECASE)
_WHOLE = 0.005
_AGREES_G = 0.006
"""A mass is written with three digits at most, and read back with them."""


def rewritten(
    text: str, formula: Formula, masses_g: Sequence[float | None], *, keeps_size: bool
) -> str:
    r"""The text with the lines at other masses; of another size it loses its `Baked:` line.

    What is written is read again and must say the same masses.

    >>> text = "Sponge\n\n40 g white rice flour\n20 g teff flour\n"
    >>> print(rewritten(text, read(text).value, (40.0, 26.0), keeps_size=True).splitlines()[3])
    26 g teff flour
    """
    parts = _ENDS.split(text)
    page = _Page(parts[0::2], [*parts[1::2], ""], formula)
    for n, mass in enumerate(masses_g):
        plan = formula.lines[n].mass_g
        if mass is not None and plan is not None and abs(mass - plan) > NOISE_G:
            page.put(n, mass)
    out = page.text(with_baked=keeps_size)
    _witness(out, formula, masses_g)
    return out


def _witness(text: str, formula: Formula, masses_g: Sequence[float | None]) -> None:
    """Read the text again; it must say what was meant."""
    again = read(text, eggs_region=formula.eggs_region).value.lines
    for n, mass in enumerate(masses_g):
        found = again[n].mass_g if len(again) == len(masses_g) else None
        if mass is not None and (found is None or abs(found - mass) > _AGREES_G):
            line = formula.lines[n]
            message = (
                f"line {line.number} ({line.read.strip()}) cannot be written with another amount. "
                f"Write it as grams first: {as_text(line.mass_g or 0.0, 2)} g {line.name}"
            )
            raise InputError(
                message, field="line", got=line.read.strip(), where=f"line {line.number}"
            )


@dataclass(slots=True)
class _Page:
    """The lines of a text on their way to other amounts."""

    lines: list[str]
    ends: list[str]
    formula: Formula

    def put(self, number: int, mass_g: float) -> None:
        """Write a line's new mass, and its portions in the steps."""
        line = self.formula.lines[number]
        at = line.number - 1
        if 0 <= at < len(self.lines):
            self.lines[at] = self._line(number, line, self.lines[at], mass_g)
        for use, portion in portions(self.formula, number, mass_g):
            self._step(use, portion)

    def _line(self, number: int, line: Line, text: str, mass_g: float) -> str:
        egg = next((each for each in egg_lines(self.formula) if each.line == number), None)
        if egg is not None:
            count = mass_g / egg.each_g
            if abs(count - round(count)) <= _WHOLE * count and round(count) >= 1:
                return _NUMBER.sub(str(round(count)), text, count=1)
            return _NUMBER.sub(f"{as_text(mass_g, 3)} g", text, count=1)
        if line.basis == "weighed" and line.unit == "g" and len(_GRAMS.findall(text)) == 1:
            return _GRAMS.sub(as_text(mass_g, 3), text)
        note = f", {line.note}" if line.note else ""
        return f"{as_text(mass_g, 3)} g {line.name}{note}"

    def _step(self, use: Use, portion_g: float) -> None:
        new = _NUMBER.sub(as_text(portion_g, 3), use.words, count=1)
        steps = [x.number - 1 for x in self.formula.source_lines if x.kind == "step"]
        for at in steps[use.step :]:
            if use.words in self.lines[at]:
                self.lines[at] = self.lines[at].replace(use.words, new, 1)
                return

    def text(self, *, with_baked: bool) -> str:
        """The whole text again, its line ends as they were."""
        return "".join(
            line + end
            for line, end in zip(self.lines, self.ends, strict=True)
            if with_baked or not line.strip().casefold().startswith("baked:")
        )


def portions(formula: Formula, number: int, mass_g: float) -> tuple[tuple[Use, float], ...]:
    """Portions that the steps name of a line, at its new mass; the last one takes the rest."""
    uses = [use for use in formula.uses if use.line == number and use.mass_g is not None]
    plan = formula.lines[number].mass_g
    if not uses or not plan:
        return ()
    factor = mass_g / plan
    whole = abs(math.fsum(use.mass_g or 0.0 for use in uses) - plan) <= _AGREES_G
    new = [round((use.mass_g or 0.0) * factor, 1) for use in uses]
    if whole:
        new[-1] = round(mass_g - math.fsum(new[:-1]), 3)
    return tuple(zip(uses, new, strict=True))
