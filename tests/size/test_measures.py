"""Numbers of a tin text: chains, labels, capacity and count."""

import pytest

from krume.size.measures import has_water, measures, plain


def chains(text: str) -> list[tuple[list[float], str]]:
    return [([n.value for n in c.numbers], c.joints) for c in measures(text).chains]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("13x9x1 in", [([13.0, 9.0, 1.0], "xx")]),
        ("25/23 x 9", [([25.0, 23.0, 9.0], "/x")]),
        ("23x13/20x10 x 7", [([23.0, 13.0, 20.0, 10.0, 7.0], "x/xx")]),
        ("20 by 5", [([20.0, 5.0], "x")]),
        ("8inx3in", [([8.0, 3.0], "x")]),
        ("20 cm ring 6", [([20.0], ""), ([6.0], "")]),
        ("8 1/2 inch", [([8.5], "")]),
        ("-20 cm", [([-20.0], "")]),
        ("9-inch", [([9.0], "")]),
    ],
)
def test_numbers_are_joined_as_written(text: str, expected: list[tuple[list[float], str]]) -> None:
    assert chains(text) == expected


@pytest.mark.parametrize(
    ("text", "labels"),
    [
        ("20 cm diameter 5 cm height", {"diameter": 20.0, "height": 5.0}),
        ("round 20 height 5", {"height": 5.0}),
        ("24 hole 10 cm", {"hole": 10.0}),
        ("25 at the rim, 23 at the bottom", {"top": 25.0, "bottom": 23.0}),
        ("1 in high", {"height": 1.0}),
        ("height: 5 cm", {"height": 5.0}),
    ],
)
def test_a_number_takes_the_word_beside_it(text: str, labels: dict[str, float]) -> None:
    assert {k: v[0].value for k, v in measures(text).labelled.items()} == labels


def test_masses_and_volumes_are_capacity_and_no_length() -> None:
    found = measures("round 20 cm, 2186 g water")
    assert [n.value for n in found.capacity] == [2186.0]
    assert [n.value for n in found.lengths()] == [20.0]
    assert has_water(found) and not has_water(measures("2 lb loaf"))


@pytest.mark.parametrize(
    ("text", "count"), [("2 x round 20 cm", 2), ("two 8-inch tins", 2), ("8-inch tin", None),
                        ("13x9 in", None), ("2 x 20cm rounds", 2), ("8 x 2 inch rounds", None),
                        ("2 x 20 cm round", None)]
)  # fmt: skip
def test_a_count_stands_in_front(text: str, count: int | None) -> None:
    assert measures(text).count == count


def test_a_numeral_that_is_none_is_kept_for_the_question() -> None:
    assert measures("sheet 1e9 cm").unreadable == ["1e9"]


def test_plain_text_has_decimals_and_one_word_per_phrase() -> None:
    assert plain("Ring Mould 8½") == "ring-mould 8.500000"
    assert plain("25/23") == "25/23"
