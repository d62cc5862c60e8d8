"""Servings of a cake as allowed fractions, nearest the reference amount."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.label import own_servings, us_servings
from krume.label.servings import _is_allowed, serving_grams
from tests.agreement import agrees, reads


@pytest.mark.source("us-21-cfr-101-9", "(b)(2)(i): R12")
def test_a_cake_of_1120_g_has_15_slices() -> None:
    found = us_servings(1120.0, reference_g=80.0)
    assert agrees(found.servings_per_container, "15")
    assert agrees(found.serving_g, "74.7")


@pytest.mark.source("us-21-cfr-101-9", "(b)(2)(i): allowed denominators of R12")
def test_the_allowed_denominators_are_the_printed_ones() -> None:
    printed = [2, 3, 4, 5, 6, 8, 9, 10, 12, 15, 16, 18, 20, 24, 27, 30]
    found = [n for n in range(2, 31) if _is_allowed(n)]
    assert agrees(len(found), str(len(printed)))
    assert found == printed


@given(cake=st.floats(100.0, 6000.0), reference=st.sampled_from([55.0, 80.0, 125.0]))
def test_no_allowed_fraction_is_nearer(cake: float, reference: float) -> None:
    found = us_servings(cake, reference_g=reference)
    if cake < 2 * reference:
        assert found.servings_per_container == 1
        return
    allowed = [n for n in range(2, 400) if _is_allowed(n)]
    best = min(abs(cake / n - reference) for n in allowed)
    assert abs(found.serving_g - reference) == pytest.approx(best, abs=1e-9)
    assert found.servings_per_container * found.serving_g == pytest.approx(cake)


@pytest.mark.source("us-21-cfr-101-9", "(b)(6) and (b)(12)(i): 200 and 300 percent")
@pytest.mark.parametrize(
    ("cake", "count", "columns"),
    [
        (159.9, "1", "serving"), (160.0, "2", "serving, container"),
        (200.0, "3", "serving, container"), (240.0, "3", "serving, container"),
        (240.1, "3", "serving"),
    ],
)  # fmt: skip
def test_a_cake_of_two_to_three_reference_amounts_has_a_column_for_the_whole(
    cake: float, count: str, columns: str
) -> None:
    found = us_servings(cake, reference_g=80.0)
    assert agrees(found.servings_per_container, count)
    assert reads("serving" + ", container" * found.needs_container_column, columns)


@pytest.mark.source("us-21-cfr-101-9", "(b)(8): R49, and each exact half")
@pytest.mark.parametrize(
    ("cake", "serving", "text"),
    [
        (180.0, 80.0, "about 2.5 servings per container"),
        (176.0, 80.0, "about 2 servings per container"),
        (140.0, 80.0, "about 2 servings per container"),
        (240.0, 80.0, "3 servings per container"),
        (200.0, 80.0, "2.5 servings per container"),
        (220.0, 80.0, "about 3 servings per container"),
        (432.0, 80.0, "about 5 servings per container"),
        (440.0, 80.0, "about 6 servings per container"),
        (80.0, 80.0, "1 serving per container"),
    ],
)
def test_pieces_are_counted_in_halves_from_2_to_5_and_said_to_be_about(
    cake: float, serving: float, text: str
) -> None:
    assert reads(own_servings(cake, serving_g=serving).count_text, text)


@pytest.mark.parametrize(("cake", "serving"), [(80.0, 0.0), (80.0, -1.0), (80.0, 81.0), (1e9, 1.0)])
def test_a_serving_that_cannot_be_is_refused(cake: float, serving: float) -> None:
    with pytest.raises(OutOfRangeError):
        own_servings(cake, serving_g=serving)


@pytest.mark.source("us-21-cfr-101-9", "(b)(7)(ii): grams of a serving; from memory")
@pytest.mark.parametrize(
    ("grams", "text"),
    [(1.94, "1.9 g"), (1.95, "2 g"), (2.25, "2.5 g"), (4.74, "4.5 g"), (74.5, "75 g")],
)  # fmt: skip
def test_grams_of_a_serving_are_whole_and_finer_below_5(grams: float, text: str) -> None:
    assert reads(serving_grams(grams), text)


def test_the_words_stand_apart_for_a_panel_that_is_drawn() -> None:
    found = us_servings(1000.0, reference_g=125.0, whole="tart")
    assert found.count_text == "8 servings per container"
    assert found.size_text == "1/8 tart (125 g)"
    assert us_servings(90.0, reference_g=80.0).count_text == "1 serving per container"


@pytest.mark.parametrize(
    ("cake", "reference"),
    [(-5.0, 80.0), (float("nan"), 80.0), (0.0, 80.0), (100.0, 0.0), (1e9, 55.0)],
)
def test_masses_that_cannot_be_are_refused(cake: float, reference: float) -> None:
    with pytest.raises(OutOfRangeError):
        us_servings(cake, reference_g=reference)
