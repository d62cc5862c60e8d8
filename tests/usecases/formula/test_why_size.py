"""Where a figure of a sized formula comes from."""

import pytest

from krume.usecases import Asked, Explanation, QuestionError, SizeWish, size_formula


def why(demo: Asked, key: str, tin: str = "round 8in x 3in") -> Explanation:
    found = size_formula("F2", SizeWish((tin,), explain=key), demo).explain
    assert found is not None
    return found


def test_a_depth_rests_on_the_eggs_and_on_the_density(demo: Asked) -> None:
    found = why(demo, "options.1.depth_cm")
    assert found.value == pytest.approx(3.33, abs=0.005)
    assert found.unit == "cm"
    assert found.doubt is not None
    assert "±" in found.doubt
    assert found.sources


def test_a_factor_rests_on_the_tins_alone(demo: Asked) -> None:
    found = why(demo, "by_area")
    assert found.value == pytest.approx(1.0323, abs=5e-5)
    assert (found.inputs, found.doubt) == ((), None)


def test_the_density_has_the_status_of_its_plan(demo: Asked) -> None:
    found = why(demo, "density.value_g_ml")
    assert found.value == pytest.approx(0.48)
    assert found.status in ("common practice", "assumed", "from memory")


def test_make_up_grams_rest_on_the_egg_lines(demo: Asked) -> None:
    assert [each.line for each in why(demo, "options.2.make_up_g").inputs] == [13]


def test_an_unknown_factor_says_that_it_is_not_known(demo: Asked) -> None:
    found = why(demo, "by_volume", "sheet 13x9 in")
    assert found.value is None
    assert found.how.startswith("It is not known.")


def test_a_key_that_is_none_is_asked_back(demo: Asked) -> None:
    with pytest.raises(QuestionError):
        why(demo, "weather")
