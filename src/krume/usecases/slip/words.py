"""What a person says of the bowls: NAME=G, no more of NAME, spoilt whites."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from difflib import SequenceMatcher

from krume.base import InputError, Option, Problem, as_text, read_number, unit_named
from krume.design import Formula, Line, slip_figure
from krume.pantry import find
from krume.usecases.asking.answer import Asked
from krume.usecases.slip.apart import part_named

_AMOUNT = re.compile(r"^(?P<number>[^a-zA-Zµ]+?)\s*(?P<unit>[a-zA-Zµ]*)$")
_LINE = re.compile(r"^line\s+(\d{1,6})$", re.IGNORECASE)
_WORD = re.compile(r"[^\W\d_]+")
_WHOLE = re.compile(r"\d+")
_EGGS = ("egg", "eggs", "each", "x", "ei", "eier")
_SHORT_WORD = 3
_BARE = re.compile(r"^\d{1,2}$")
_MANY_EGGS = 3
"""A bare number of up to this many times the planned eggs may be a number of eggs."""
_NEAR_PLAN_PCT = 1.0


@dataclass(frozen=True, slots=True)
class Named:
    """A line that was named, with the grams said of it; a question where it is not settled."""

    line: int | None
    mass_g: float | None = None
    problem: Problem | None = None


@dataclass(frozen=True, slots=True)
class BowlWords:
    """Reads what is said of a formula's bowls; `most_g` is the most a scale here carries."""

    formula: Formula
    asked: Asked
    step_g: float
    most_g: float

    def weighed(self, text: str, place: str) -> Named:
        """A line and its grams, from NAME=G."""
        answer = self.asked.answer_for(place)
        said = answer or text
        name, sign, amount = said.rpartition("=")
        if not sign or not name.strip() or not amount.strip():
            want = "teff flour=26"
            message = f"'{said}' is no weight. Type the line, =, and grams: {want}"
            raise InputError(message, field="weighed", got=said, want=want, where=place)
        found = self._found(name.strip())
        mass = [self._mass_g(amount.strip(), n, place) for n in found or (None,)]
        near = [
            n for n, m in zip(found, mass, strict=False) if len(found) > 1 and self._is_plan(n, m)
        ]
        if len(near) == 1:
            return Named(near[0], mass[found.index(near[0])])
        if (asks := self._grams_or_eggs(found, amount.strip(), place)) is not None:
            return Named(found[0], None, asks)
        if len(found) != 1:
            tail = f"={amount.strip()}"
            return Named(None, None, self._which(name.strip(), found, place, tail))
        grams = mass[0]
        if (
            answer is None
            and grams is not None
            and (asks := self._too_much(found[0], grams, place))
        ):
            return Named(found[0], None, asks)
        return Named(found[0], grams)

    def line(self, text: str, place: str) -> Named:
        """A line, from NAME alone."""
        said = (self.asked.answer_for(place) or text).strip()
        found = self._found(said)
        if len(found) == 1:
            return Named(found[0])
        return Named(None, None, self._which(said, found, place, ""))

    def whites(self, text: str) -> int:
        """How many whites are spoilt, from `whites of 2 eggs` or `2 whites`."""
        words = text.casefold()
        numbers = _WHOLE.findall(words)
        if "yolk" in words and "white" not in words:
            message = "Yolks with a little white in them do no harm: use them as they are."
            raise InputError(message, field="spoilt", got=text, want="whites of 2 eggs")
        if len(numbers) != 1 or re.search(r"\d[.,/]\d|-\s*\d", words) or int(numbers[0]) < 1:
            message = f"'{text}' says no number of whites. Type it as: whites of 2 eggs"
            raise InputError(message, field="spoilt", got=text, want="whites of 2 eggs")
        most = self._whites_most()
        if int(numbers[0]) > most:
            message = f"The formula has {as_text(most)} whites, not {numbers[0]}."
            raise InputError(message, field="spoilt", got=text, want=f"at most {as_text(most)}")
        return int(numbers[0])

    def _whites_most(self) -> float:
        return sum(
            float(line.amount)
            for line in self.formula.lines
            if line.basis == "egg" and line.part != "yolk" and isinstance(line.amount, float | int)
        )

    def _found(self, name: str) -> tuple[int, ...]:
        """Lines a name can mean: its own words, else some of its words, else the pantry's."""
        for fits in (_is_numbered, _is_called, _is_part, _has_words, _is_same_goods):
            found = tuple(n for n, x in enumerate(self.formula.lines) if fits(name, x))
            plain = tuple(n for n in found if "sweet" not in _words(self.formula.lines[n].name))
            if found:
                return plain if len(plain) == 1 else found
        return ()

    def _mass_g(self, amount: str, line: int | None, place: str) -> float | None:
        match = _AMOUNT.match(amount)
        number = None if match is None else read_number(match["number"].strip())
        if match is None or number is None:
            raise self._no_mass(amount, place)
        unit = match["unit"].casefold() or "g"
        if unit in _EGGS:
            return self._eggs_g(number.value, line, amount, place)
        known = unit_named(unit)
        if known is None or known.kind != "mass" or known.size is None:
            raise self._no_mass(amount, place)
        return number.value * known.size

    def _no_mass(self, amount: str, place: str) -> InputError:
        is_less = amount.startswith(("-", "\N{MINUS SIGN}"))
        why = "less than nothing cannot lie in a bowl" if is_less else "that is no mass"
        message = f"'{amount}': {why}. Type grams of 0 or more, such as 26 or 26.5 g."
        return InputError(message, field="weighed", got=amount, want="grams", where=place)

    def _eggs_g(self, count: float, number: int | None, amount: str, place: str) -> float | None:
        line = None if number is None else self.formula.lines[number]
        if line is None:
            return None
        planned = line.amount
        if line.basis != "egg" or not isinstance(planned, float | int) or not line.mass_g:
            raise self._no_mass(amount, place)
        return count * line.mass_g / planned

    def _grams_or_eggs(self, found: tuple[int, ...], amount: str, place: str) -> Problem | None:
        """A small bare number of an egg line may be meant as eggs: that is asked."""
        if len(found) != 1 or not _BARE.match(amount):
            return None
        line, many = self.formula.lines[found[0]], int(amount)
        count = line.amount if line.basis == "egg" and isinstance(line.amount, float | int) else 0
        if not count or not line.mass_g or not 0 < many <= _MANY_EGGS * count:
            return None
        name, whole = self._name(found[0]), many * line.mass_g / count
        word = {"yolk": "yolk", "white": "white"}.get(line.part or "", "egg")
        said = f"{many} {word}{'' if many == 1 else 's'}"
        options = (
            Option(f"{said}, {as_text(whole, 1)} g", f"{name}={many} eggs"),
            Option(f"{many} g", f"{name}={many} g"),
        )
        return Problem("grams-or-eggs", place, amount, f"{said}, or {many} g?", options)

    def _is_plan(self, line: int, mass_g: float | None) -> bool:
        plan = self.formula.lines[line].mass_g
        if plan is None or mass_g is None:
            return False
        return abs(mass_g - plan) <= max(self.step_g, plan * _NEAR_PLAN_PCT / 100)

    def _too_much(self, line: int, mass_g: float, place: str) -> Problem | None:
        plan, name = self.formula.lines[line].mass_g, self._name(line)
        many = plan is not None and mass_g > slip_figure("times-most") * plan
        if mass_g <= self.most_g and not many:
            return None
        why = (
            f"{as_text(mass_g, 1)} g is more than a scale here carries"
            if mass_g > self.most_g
            else f"{as_text(mass_g, 1)} g is {as_text(mass_g / (plan or 1.0), 0)} times the plan"
        )
        tenths = [mass_g / 10, mass_g / 100]
        likely = [g for g in tenths if plan is not None and plan / 2 <= g <= plan * 2]
        options = [
            Option(f"{as_text(g, 2)} g", f"{name}={as_text(g, 2)}") for g in likely or tenths[:1]
        ]
        yes = Option(f"it is {as_text(mass_g, 1)} g", f"{name}={as_text(mass_g, 2)}")
        ask = f"{self.formula.lines[line].name}: {why}. How much is in the bowl?"
        return Problem("weight-large", place, f"{as_text(mass_g, 2)} g", ask, (*options, yes))

    def _which(self, name: str, found: tuple[int, ...], place: str, tail: str) -> Problem:
        lines = found or tuple(sorted(range(len(self.formula.lines)), key=self._unlike(name)))
        options = tuple(Option(self._shown(n), f"{self._name(n)}{tail}") for n in lines)
        if found:
            ask = f"“{name}” can be {len(found)} lines of the formula. Which one?"
            return Problem("line-twice", place, name, ask, options)
        ask = f"No line of the formula is called “{name}”. Which one is it?"
        return Problem("line-unknown", place, name, ask, options)

    def _unlike(self, name: str) -> Callable[[int], float]:
        """How far a line's likeliest word is from what was typed: the nearest is asked first."""
        typed = name.casefold()

        def far(line: int) -> float:
            words = _WORD.findall(self.formula.lines[line].name.casefold())
            return -max((SequenceMatcher(None, typed, word).ratio() for word in words), default=0.0)

        return far

    def _shown(self, line: int) -> str:
        found = self.formula.lines[line]
        if found.mass_g is None:
            return f"{found.name}, no grams planned"
        return f"{found.name}, planned {as_text(found.mass_g, 2)} g"

    def _name(self, line: int) -> str:
        """What to type for a line: its name where no other line has it, else its number."""
        found = self.formula.lines[line]
        alike = [x for x in self.formula.lines if x.name.casefold() == found.name.casefold()]
        plain = "=" not in found.name and "," not in found.name
        return found.name if len(alike) == 1 and plain else f"line {found.number}"


_Fits = Callable[[str, Line], bool]


def _is_numbered(name: str, line: Line) -> bool:
    match = _LINE.match(name)
    return match is not None and int(match[1]) == line.number


def _is_called(name: str, line: Line) -> bool:
    wanted = " ".join(name.casefold().split())
    return wanted in (line.name.casefold(), line.read.strip().casefold())


def _is_part(name: str, line: Line) -> bool:
    part = part_named(name)
    return part is not None and name.strip().casefold() != "white" and line.part == part


def _has_words(name: str, line: Line) -> bool:
    wanted = _words(name)
    return bool(wanted) and wanted <= _words(f"{line.name} {line.part or ''} {line.note or ''}")


def _words(text: str) -> set[str]:
    """Words of a text, each as if there were one of it."""
    words = _WORD.findall(text.casefold())
    return {w[:-1] if w.endswith("s") and len(w) > _SHORT_WORD else w for w in words}


def _is_same_goods(name: str, line: Line) -> bool:
    found = find(name)
    if line.ingredient is None or found.kind != "known":
        return False
    return line.ingredient == found.key or line.ingredient in found.others
