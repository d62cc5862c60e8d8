"""What every table's pages share: its fields, the field a question stands beside."""

from dataclasses import replace

from krume.base import Option, Problem
from krume.web.tables.kinds import Field, TableKind
from krume.web.tables.pages import table_routes

COVERS = ["kinds", "files"]
KIND = TableKind(
    place="things.csv",
    address="/things",
    home="/things",
    section="things",
    title="Things",
    word="thing",
    fields=(
        Field("item", "What", is_required=True),
        Field("from", "From", codes=("day-missing",)),
        Field("to", "To", codes=("day-missing", "days-swapped")),
        Field("kind", "Kind", choices=("", "one", "two")),
    ),
    required=("item",),
)


def test_a_question_stands_beside_the_field_it_names() -> None:
    asked = {"day-missing": "It needs its to day.", "days-swapped": "Which holds?", "odd": "What?"}
    found = {
        code: KIND.field_of(Problem(code, "things.csv line 2", "", ask))
        for code, ask in asked.items()
    }
    assert found == {"day-missing": "to", "days-swapped": "to", "odd": "item"}


def test_a_table_shows_its_own_columns_the_unknown_ones_too() -> None:
    fields = KIND.fields_of(("to", "colour"))
    assert [each.label for each in fields] == ["To", "colour"]
    assert KIND.fields_of(()) == KIND.fields


def test_a_value_that_is_none_of_the_choices_is_not_lost() -> None:
    kind = KIND.fields[3]
    assert kind.with_choice("three").choices == ("", "one", "two", "three")
    assert kind.with_choice("one") == kind
    assert KIND.fields[0].with_choice("three").choices == ()


def test_a_row_is_changed_by_post_alone() -> None:
    methods: dict[str, set[str]] = {route.path: set() for route in table_routes(KIND)}
    for route in table_routes(KIND):
        methods[route.path] |= set(route.methods or ())
    assert methods["/things/{key:int}/delete"] == {"POST"}
    assert methods["/things/file/keep"] == {"POST"}
    assert "/things" in methods
    assert "/things" not in {route.path for route in table_routes(KIND, is_listed=False)}


def test_words_for_a_field_are_offered_beside_its_question() -> None:
    asked = Problem("odd", "things.csv line 2", "8in", "Round?", (Option("round", "round 8 in"),))
    assert replace(KIND, offers_words=True).said(asked) == "Round? Type: round 8 in."
    assert KIND.said(asked) == "Round?"
