"""The inputs of one sum as given: looked up by name, typed, with what is missing named."""

from dataclasses import dataclass, field

from krume.base import InputError, Notice
from krume.calc.declaring import Declared, Input
from krume.calc.naming import matched, nearest
from krume.calc.values import Quantity, is_unknown, items, number, quantity, yes_no


@dataclass(slots=True)
class Given:
    """The typed inputs of a sum, and the notices and sources its work adds."""

    declared: Declared
    raw: dict[str, object]
    notices: list[Notice] = field(default_factory=list)
    sources: list[str] = field(default_factory=list)

    def has(self, name: str) -> bool:
        """Whether an input was given at all."""
        return name in self.raw

    def number(self, name: str) -> float:
        """A number that must be there."""
        found = self.maybe(name)
        if found is None:
            raise self.missing(name)
        return found

    def maybe(self, name: str) -> float | None:
        """A number, or None when it was not given or is said to be unknown."""
        declared = self._input(name)
        if name not in self.raw or is_unknown(self.raw[name]):
            return None
        return self._number(declared, self.raw[name])

    def or_zero(self, name: str) -> float:
        """A number whose absence means none of it."""
        found = self.maybe(name)
        return 0.0 if found is None else found

    def count(self, name: str) -> int | None:
        """A whole number, or None when it was not given."""
        found = self.maybe(name)
        if found is None:
            return None
        if found != int(found):
            raise InputError(
                f"{name} is {found:g}; type a whole number.",
                field=name, got=f"{found:g}", want="a whole number",
            )  # fmt: skip
        return int(found)

    def numbers(self, name: str) -> list[float]:
        """A list of numbers that must be there."""
        if name not in self.raw:
            raise self.missing(name)
        declared = self._input(name)
        return [self._number(declared, item) for item in items(self.raw[name], field=name)]

    def quantity(self, name: str) -> Quantity:
        """A number that keeps its own unit."""
        if name not in self.raw:
            raise self.missing(name)
        return quantity(self.raw[name], field=name)

    def text(self, name: str) -> str:
        """A text that must be there; for a choice, one of its words."""
        found = self.maybe_text(name)
        if found is None:
            raise self.missing(name)
        return found

    def maybe_text(self, name: str) -> str | None:
        """A text, or None when it was not given."""
        declared = self._input(name)
        if name not in self.raw:
            return None
        text = str(self.raw[name]).strip()
        return _chosen(declared, text) if declared.kind == "choice" else text

    def texts(self, name: str, *, marks: str = ",;") -> list[str]:
        """A list of texts that must be there."""
        return [str(item).strip() for item in self.items(name, marks=marks)]

    def items(self, name: str, *, marks: str = ",;") -> list[object]:
        """A list as it was given, that must be there."""
        if name not in self.raw:
            raise self.missing(name)
        return items(self.raw[name], field=name, marks=marks)

    def yes(self, name: str, *, default: bool) -> bool:
        """Yes or no."""
        return yes_no(self.raw[name], field=name) if name in self.raw else default

    def note(self, code: str, text: str) -> None:
        """Say something with the answer."""
        self.notices.append(Notice(code, text))

    def cite(self, source: str) -> None:
        """Name a source beside the sum's own."""
        if source and source not in self.sources:
            self.sources.append(source)

    def missing(self, *names: str, either: bool = False) -> InputError:
        """The refusal when inputs are not there: all of them, or one of them."""
        wanted = [self._input(name) for name in names]
        joint = " or " if either else " and "
        told = joint.join(f"{w.name} ({_told(w)})" for w in wanted)
        example = " ".join(f"{key}={value}" for key, value in self.declared.example)
        return InputError(
            f"{self.declared.name} needs {told}. For example: {self.declared.name} {example}",
            field=names[0],
            got="nothing",
            want=told,
        )

    def _input(self, name: str) -> Input:
        return next(item for item in self.declared.inputs if item.name == name)

    def _number(self, declared: Input, raw: object) -> float:
        return number(raw, field=declared.name, unit=declared.unit, difference=declared.difference)


def told_unit(declared: Input) -> str:
    """What an input is, with the unit of a bare number."""
    return f"{declared.meaning}, {declared.unit}" if declared.unit else declared.meaning


def _told(declared: Input) -> str:
    """What to type for an input: one of its words, or what it is with its unit."""
    words = declared.choices
    return f"{', '.join(words[:-1])} or {words[-1]}" if len(words) > 1 else told_unit(declared)


def _chosen(declared: Input, text: str) -> str:
    word = text.casefold().replace("_", "-").replace(" ", "-")
    if word in declared.choices:
        return word
    close = nearest(word, declared.choices)
    hint = f" Did you mean {close[0]}?" if close else ""
    raise InputError(
        f"{declared.name} is '{text}'; it is one of {', '.join(declared.choices)}.{hint}",
        field=declared.name,
        got=text,
        want=", ".join(declared.choices),
    )


def given(declared: Declared, inputs: dict[str, object]) -> Given:
    """Match what was typed to the inputs of a sum; missing ones are named all at once."""
    raw = matched(declared, inputs)
    found = Given(declared, raw)
    absent = [i.name for i in declared.inputs if i.required and i.name not in raw]
    if absent:
        raise found.missing(*absent)
    unknown = [
        i.name for i in declared.inputs
        if i.required and not i.may_be_unknown and is_unknown(raw[i.name])
    ]  # fmt: skip
    if unknown:
        raise found.missing(*unknown)
    return found
