"""A result is read as papers print it, and what says no figure has none."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.pantry import gluten_result
from tests.agreement import agrees


@pytest.mark.parametrize(
    ("printed", "most", "below"),
    [
        ("8", 8.0, False),
        ("8,5", 8.5, False),
        ("<5", 5.0, True),
        ("< 5 mg/kg", 5.0, True),
        ("below 10", 10.0, True),
        ("less than 10 ppm gluten", 10.0, True),
        ("≤20", 20.0, False),
        ("<=20", 20.0, False),
        ("at most 20 mg/kg", 20.0, False),
        ("max. 20", 20.0, False),
        ("5-8", 8.0, False),
        ("n. d. (<5)", 5.0, True),
        ("n.d. <5 mg/kg", 5.0, True),
        ("not detected (10 ppm)", 10.0, True),
        ("< LOQ 5", 5.0, True),
        (">80", 1_000_000.0, False),
        ("20.0", 20.0, False),
    ],
)
def test_what_papers_print_is_read(printed: str, most: float, below: bool) -> None:
    found = gluten_result(printed)
    assert found is not None
    assert (found.most_ppm, found.is_below) == (most, below)
    assert found.printed == printed


@pytest.mark.parametrize(
    "printed",
    ["", "n. d.", "nd", "not detected", "< LOD", "0", "<0", "-5", "nan", "inf", "none", "negative",
     "5 mg/100 g", "8 µg/kg", "about 8", "n. d. perhaps", "<", "≤"],
)  # fmt: skip
def test_what_says_no_figure_has_none(printed: str) -> None:
    assert gluten_result(printed) is None


@pytest.mark.source("codex-118", "5, from memory: gluten is twice the prolamin")
@pytest.mark.parametrize("word", ["gliadin", "prolamin"])
def test_gliadin_counts_twice_as_gluten(word: str) -> None:
    found = gluten_result(f"<5 mg/kg {word}")
    assert found is not None
    assert agrees(found.most_ppm, "10")


def test_not_detected_lies_below_the_limit_of_its_method() -> None:
    found = gluten_result("n. d.", limit_ppm=10.0)
    assert found is not None
    assert (found.most_ppm, found.is_below) == (10.0, True)


@given(st.floats(0.1, 1000), st.floats(0.1, 100))
def test_no_figure_counts_as_less_than_its_method_can_read(figure: float, limit: float) -> None:
    found = gluten_result(f"{figure:.2f}", limit_ppm=limit)
    assert found is not None
    assert found.most_ppm == pytest.approx(max(limit, round(figure, 2)))


@given(st.text(max_size=20))
def test_no_words_raise_and_no_result_is_nothing(printed: str) -> None:
    found = gluten_result(printed)
    assert found is None or found.most_ppm > 0


@pytest.mark.parametrize("printed", ["1,000", "1.000", "<12.000", "5-1,000", "n. d. (<1,000)"])
def test_a_thousand_that_may_be_one_is_no_figure(printed: str) -> None:
    assert gluten_result(printed) is None
    plain = gluten_result("1000")
    assert plain is not None
    assert plain.most_ppm == 1000.0
