"""Limits as bakers type them: read by what they mean, or asked with an example."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.design import LIMIT_EXAMPLES, AtHand, TypedLimit, read_limits

HAND = (
    AtHand("white rice flour", "flour-rice-white", "flour"),
    AtHand("buckwheat flour", "flour-buckwheat-whole", "flour"),
    AtHand("potato starch", "starch-potato-ciqual", "starch"),
    AtHand("maize starch", "starch-corn", "starch"),
    AtHand("sweet rice flour", "flour-rice-sweet-shiratama", "flour", is_sweet_rice=True),
)


def one(text: str) -> TypedLimit:
    """The one limit a text is read as."""
    read = read_limits([text], HAND)
    assert read.problems == ()
    (limit,) = read.value
    return limit


@pytest.mark.parametrize(
    "text",
    [
        "starch 30..50",
        "starch 30-50 %",
        "starch 30–50%",
        "starch: 30 to 50",
        "starch between 30 and 50",
        "30..50 % starch",
        "pure starches 30..50",
        "Stärke 30 bis 50",
        "potato starch + maize starch 30..50",
    ],
)
def test_a_range_is_percent_of_the_blend_where_no_unit_stands(text: str) -> None:
    limit = one(text)
    assert (limit.kind, limit.unit, limit.members) == ("share", "%", (2, 3))
    assert (limit.low, limit.high) == (30.0, 50.0)


@pytest.mark.parametrize(
    ("text", "member", "low", "high"),
    [
        ("rice >= 25 g", 0, 25.0, None),
        ("rice at least 25 g", 0, 25.0, None),
        ("at least 25 g of rice", 0, 25.0, None),
        ("rice 25 g or more", 0, 25.0, None),
        ("buckwheat <= 16 g", 1, None, 16.0),
        ("buckwheat ≤16g", 1, None, 16.0),
        ("at most 16 g buckwheat", 1, None, 16.0),
        ("buckwheat no more than 16 grams", 1, None, 16.0),
        ("sweet rice 9 g", 4, 9.0, 9.0),
        ("9 g sweet rice", 4, 9.0, 9.0),
        ("sweet rice exactly 9 g", 4, 9.0, 9.0),
        ("potato starch 24..40 g", 2, 24.0, 40.0),
        ("maize starch 4–8 g", 3, 4.0, 8.0),
        ("starch-corn 4..8 g", 3, 4.0, 8.0),
        ("corn starch 4 g to 8 g", 3, 4.0, 8.0),
        ("buckwheat 0.02 kg", 1, 20.0, 20.0),
        ("buckwheat 7,5..8,5 g", 1, 7.5, 8.5),
    ],
)
def test_grams_of_one_flour_are_read_with_their_ends(
    text: str, member: int, low: float | None, high: float | None
) -> None:
    limit = one(text)
    assert (limit.members, limit.low, limit.high, limit.unit) == ((member,), low, high, "g")


def test_an_end_that_is_left_open_is_no_end() -> None:
    assert (one("starch 30..").low, one("starch 30..").high) == (30.0, None)
    assert (one("starch ..50").low, one("starch ..50").high) == (None, 50.0)


@pytest.mark.parametrize("text", ["at most 4 flours", "4 flours at most", "flours <= 4"])
def test_a_count_of_flours_is_no_share(text: str) -> None:
    limit = one(text)
    assert (limit.kind, limit.high, limit.unit) == ("parts", 4.0, "flours")


def test_a_flour_may_be_left_out_and_one_that_is_not_there_is_told() -> None:
    assert one("no buckwheat").members == (1,)
    read = read_limits(["no tapioca"], HAND)
    assert read.value[0].members == ()
    assert [notice.code for notice in read.notices] == ["limit-without-flour"]


def test_a_property_is_limited_in_grams_of_a_hundred() -> None:
    limit = one("protein >= 6")
    assert (limit.kind, limit.name, limit.low) == ("property", "protein", 6.0)
    assert one("fiber 2..3").name == "fibre"
    assert one("price <= 4.20").kind == "price"


def test_the_word_starch_is_the_class_and_not_a_property() -> None:
    assert one("starch >= 30").kind == "share"


def test_plain_rice_is_not_sweet_rice() -> None:
    assert one("rice >= 25 g").members == (0,)
    assert one("sweet rice >= 5 g").members == (4,)


def test_a_word_for_two_flours_is_asked_with_a_line_for_each() -> None:
    hand = (*HAND, AtHand("brown rice flour", "flour-rice-brown", "flour"))
    (problem,) = read_limits(["rice >= 25 g"], hand).problems
    assert problem.code == "limit-which-flour"
    lines = [option.line for option in problem.options]
    assert lines[0] == "white rice flour >= 25 g"
    for line in lines:
        assert read_limits([line], hand).problems == ()


def test_several_limits_stand_in_one_text_and_decimals_keep_their_comma() -> None:
    read = read_limits(["starch 30,5..50; rice >= 25 g, no buckwheat"], HAND)
    assert [limit.kind for limit in read.value] == ["share", "share", "leave-out"]
    assert read.value[0].low == 30.5


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("starch", "limit-unread"),
        ("30..50", "limit-unread"),
        ("rice -5 g", "limit-unread"),
        ("rice NaN", "limit-unread"),
        ("rice 5 cups", "limit-unread"),
        ("starch 30 %..50 g", "limit-unread"),
        ("<script>alert(1)</script>", "limit-unread"),
        ("starch 30..500", "limit-over-100"),
        ("rice < 16 g", "limit-strict"),
        ("blarg 30..50", "limit-no-flour"),
        ("no blarg", "limit-no-flour"),
    ],
)
def test_what_is_not_read_is_asked_and_never_guessed(text: str, code: str) -> None:
    read = read_limits([text], HAND)
    assert read.value == ()
    assert [problem.code for problem in read.problems] == [code]
    assert read.problems[0].ask


def test_an_empty_text_limits_nothing() -> None:
    assert read_limits(["", "blarg"], HAND).problems[0].where == "--limit 2"


def test_the_second_text_has_a_place_of_its_own() -> None:
    read = read_limits(["starch 30..50", "blarg 1..2"], HAND)
    assert read.value[0].where == "--limit"
    assert read.problems[0].where == "--limit 2"


def test_every_example_that_is_offered_is_read() -> None:
    assert read_limits(LIMIT_EXAMPLES, HAND).problems == ()


def test_percent_that_may_have_meant_grams_is_told() -> None:
    notices = read_limits(["sweet rice 9"], HAND).notices
    assert "limit-in-percent" in [notice.code for notice in notices]


@given(st.text(max_size=60))
def test_any_text_is_read_or_asked(text: str) -> None:
    read = read_limits([text], HAND)
    assert read.value or read.problems or not text.strip(" ,;\n\r\t")


@given(low=st.integers(0, 100), more=st.integers(0, 100))
def test_a_range_keeps_the_numbers_that_were_typed(low: int, more: int) -> None:
    high = min(low + more, 100)
    limit = one(f"starch {low}..{high}")
    assert (limit.low, limit.high) == (low, high)
