"""A kind of table as its pages know it: its columns with labels, hints and choices."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from krume.base import Problem

Cells = Callable[[Mapping[str, str]], dict[str, str]]
"""Cells of a row from what was typed; raises InputError with the field that is wrong."""


@dataclass(frozen=True, slots=True)
class Field:
    """One column as a field; `codes` are the questions that stand beside it."""

    name: str
    label: str
    hint: str = ""
    choices: tuple[str, ...] = ()
    unit: str = ""
    is_required: bool = False
    codes: tuple[str, ...] = ()

    def with_choice(self, value: str) -> "Field":
        """The same field; a value that is none of its choices stays among them."""
        if not self.choices or not value or value in self.choices:
            return self
        return Field(
            self.name, self.label, self.hint, (*self.choices, value), self.unit,
            self.is_required, self.codes,
        )  # fmt: skip


def as_typed(typed: Mapping[str, str]) -> dict[str, str]:
    """Cells exactly as typed."""
    return dict(typed)


@dataclass(frozen=True, slots=True)
class TableKind:
    """One table in the app: its place in the book, its address, its word, its columns.

    `required` are columns a sent file must have; `extra` are fields that `cells` puts into others;
    `home` is the page its rows are listed on; `offers_words` says that the options of a question
    are words for the field itself, not whole lines.
    """

    place: str
    address: str
    home: str
    section: str
    title: str
    word: str
    fields: tuple[Field, ...]
    required: tuple[str, ...]
    about: str = ""
    extra: tuple[Field, ...] = ()
    cells: Cells = as_typed
    offers_words: bool = False

    @property
    def head(self) -> tuple[str, ...]:
        """Names of its columns."""
        return tuple(each.name for each in self.fields)

    def fields_of(self, head: tuple[str, ...]) -> tuple[Field, ...]:
        """Fields of a table that is there: its own columns, the unknown ones by their name."""
        known = {each.name: each for each in self.fields}
        own = tuple(known.get(name, Field(name, name)) for name in head)
        return own or self.fields

    def field_of(self, problem: Problem) -> str:
        """The field that a question stands beside; the first one where none is named."""
        fits = [each.name for each in self.fields if problem.code in each.codes]
        said = [name for name in fits if f"{name} day" in problem.ask]
        return next(iter((*said, *fits, self.fields[0].name)))

    def said(self, problem: Problem) -> str:
        """A question as it stands beside a field, with what may be typed there."""
        words = [option.line for option in problem.options if self.offers_words and option.line]
        return f"{problem.ask} Type: {'; '.join(words)}." if words else problem.ask
