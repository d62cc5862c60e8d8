"""One cell at a time: what each kind of column lets through, and what it asks for instead."""

import pytest

from krume.base import InputError
from krume.evidence.columns import Column, column, optional, read_cell

SOURCES = frozenset({"usda-sr28"})


def read(kind: str, text: str, *allowed: str) -> object:
    return read_cell(column("x", kind, *allowed), text, SOURCES)


@pytest.mark.parametrize(
    ("kind", "text", "value"),
    [
        ("text", "Rice flour", "Rice flour"),
        ("key", "flour-rice-white", "flour-rice-white"),
        ("number", "0.250", 0.25),
        ("number", "-1.5", -1.5),
        ("number", ".5", 0.5),
        ("number", "1e-3", 0.001),
        ("count", "26", 26.0),
        ("printed", "0.820", "0.820"),
        ("flag", "yes", True),
        ("flag", "", False),
        ("status", "published", "published"),
        ("source", "usda-sr28", "usda-sr28"),
        ("unit", "tbsp", "tbsp"),
        ("unit", "g/100g", "g/100g"),
    ],
)
def test_a_fitting_cell_is_read_as_its_kind(kind: str, text: str, value: object) -> None:
    assert read(kind, text) == value


@pytest.mark.parametrize(
    ("kind", "text", "want"),
    [
        ("key", "Flour Rice", "small letters"),
        ("key", "flour--rice", "small letters"),
        ("number", "12,5", "a number"),
        ("number", "nan", "a number"),
        ("number", "inf", "a number"),
        ("number", "1_000", "a number"),
        ("number", " 12", "a number"),
        ("count", "2.0", "a whole number"),
        ("count", "-2", "a whole number"),
        ("printed", "about 3", "as its source prints it"),
        ("flag", "no", "yes or nothing"),
        ("status", "guessed", "one of law, published"),
        ("source", "hearsay", "a key of sources.csv"),
        ("unit", "smidgen", "a unit this program knows"),
        ("text", "", "a value"),
        ("number", "", "a value"),
    ],
)
def test_a_cell_that_does_not_fit_says_what_is_wanted(kind: str, text: str, want: str) -> None:
    with pytest.raises(InputError) as caught:
        read(kind, text)
    assert want in caught.value.want
    assert caught.value.got == text


def test_one_of_names_all_that_is_allowed() -> None:
    with pytest.raises(InputError) as caught:
        read("one of", "tin", "flour", "starch")
    assert caught.value.want == "one of flour, starch"


@pytest.mark.parametrize(("kind", "blank"), [("text", ""), ("number", None), ("count", None)])
def test_a_blank_is_unknown_and_never_zero_where_it_is_allowed(kind: str, blank: object) -> None:
    assert read_cell(optional("x", kind), "", SOURCES) == blank


def test_a_declared_column_carries_what_it_allows() -> None:
    assert column("role", "one of", "flour", "nut") == Column(
        "role", "one of", required=True, allowed=("flour", "nut")
    )
