"""What is typed for a label: kept as typed, said beside its field where it cannot be used."""

import pytest
from starlette.requests import Request

from krume.web.labels.asking import typed_in

LAYOUTS = ("single-100x150", "roll-62")


def request(query: str) -> Request:
    """A request with a query."""
    return Request({"type": "http", "query_string": query.encode(), "headers": []})


def test_everything_typed_becomes_a_wish() -> None:
    query = "market=us&made=2027-06-11&labels=roll-62&net=465 g&area=60&code=9&maker=A&panel=no"
    typed = typed_in(request(query.replace(" ", "+")), LAYOUTS)
    assert typed.form.wrong == {}
    assert (typed.wish.market, str(typed.wish.made), typed.wish.with_panel) == (
        "us", "2027-06-11", False,
    )  # fmt: skip
    assert (typed.more.net_g, typed.more.area_cm2, typed.more.code) == (465.0, 60.0, "9")
    assert (typed.layout, typed.wish.maker) == ("roll-62", "A")


@pytest.mark.parametrize(
    ("query", "by_part", "by_number"),
    [("", None, None), ("list=parts&additives=names", True, False), ("list=one", False, None),
     ("additives=numbers", None, True)],
)  # fmt: skip
def test_how_the_list_is_set_is_a_wish_or_as_the_book_has_it(
    query: str,
    by_part: bool | None,
    by_number: bool | None,
) -> None:
    wish = typed_in(request(query), LAYOUTS).wish
    assert (wish.by_part, wish.by_number) == (by_part, by_number)


def test_nothing_typed_is_the_books_own() -> None:
    typed = typed_in(request(""), LAYOUTS)
    assert typed.form.wrong == {}
    assert (typed.wish.market, typed.more.net_g, typed.layout) == (None, None, "single-100x150")
    assert typed.wish.with_panel


@pytest.mark.parametrize(
    ("field", "text"),
    [("made", "soon"), ("made", "2027-13-01"), ("net", "heavy"), ("net", "0"), ("net", "-5"),
     ("net", "9e9"), ("area", "wide"), ("labels", "napkin"), ("market", "moon"),
     ("list", "three"), ("additives", "colours")],
)  # fmt: skip
def test_what_cannot_be_used_is_said_beside_its_field_and_kept(field: str, text: str) -> None:
    typed = typed_in(request(f"{field}={text}"), LAYOUTS)
    assert set(typed.form.wrong) == {field}
    assert text in typed.form.wrong[field]
    assert typed.form.get(field) == text
