"""Where a figure of a balance comes from: its lines, band, doubt and sources."""

import pytest

from krume.usecases import Asked, QuestionError, check_formula


def lines_of(demo: Asked, key: str, name: str = "F2") -> list[str]:
    why = check_formula(name, demo, explain=key).explain
    assert why is not None
    return [each.read for each in why.inputs]


def test_a_percentage_names_its_grams_its_band_and_its_doubt(demo: Asked) -> None:
    why = check_formula("F2", demo, explain="percent.egg").explain
    assert why is not None
    assert why.value == pytest.approx(242.857, abs=0.001)
    assert why.how == "255 g over 105 g of flour, times 100."
    assert (why.low, why.high, why.status) == (200, 340, "derived")
    assert why.doubt is not None
    assert "line 13" in why.doubt
    assert "common-practice" in {each.key for each in why.sources}


def test_a_figure_stands_on_the_lines_that_move_it_and_no_others(demo: Asked) -> None:
    assert lines_of(demo, "starch") == [
        "40 g white rice flour",
        "20 g teff flour",
        "30 g potato starch",
        "9 g sweet rice flour",
        "6 g maize starch",
    ]
    assert lines_of(demo, "sugar-per-egg") == ["5 eggs, medium, separated", "130 g caster sugar"]


def test_percent_of_starch_is_of_the_flour_even_where_nut_counts_in(demo: Asked) -> None:
    why = check_formula("F4", demo, explain="starch").explain
    assert why is not None
    assert why.how == "16 g over 40 g of flour, times 100."


@pytest.mark.parametrize("key", ["egg", "Egg", "percent.egg", "PERCENT.EGG"])
def test_a_key_may_be_written_short(demo: Asked, key: str) -> None:
    why = check_formula("F2", demo, explain=key).explain
    assert why is not None
    assert why.key == "percent.egg"


def test_an_unknown_key_is_asked_back_with_close_ones(demo: Asked) -> None:
    with pytest.raises(QuestionError, match="No figure of this answer is called strach") as caught:
        check_formula("F2", demo, explain="strach")
    assert [option.line for option in caught.value.problem.options] == ["percent.starch"]


def test_a_figure_that_is_not_known_names_the_lines_without_mass(
    bare: Asked, tmp_path_factory: pytest.TempPathFactory
) -> None:
    path = tmp_path_factory.mktemp("texts") / "a.txt"
    path.write_text("Sponge\n\n100 g white rice flour\n5 eggs\n", encoding="utf-8")
    why = check_formula(str(path), bare, explain="egg").explain
    assert why is not None
    assert why.value is None
    assert [each.read for each in why.inputs] == ["5 eggs"]
    assert why.doubt == "line 4 has no mass"


@pytest.mark.parametrize("key", ["total_g", "flour_g", "basis_g", "per_egg.egg_g", "nut_share_pct"])
def test_every_figure_says_how_it_came_about(demo: Asked, key: str) -> None:
    why = check_formula("F4", demo, explain=key).explain
    assert why is not None
    assert why.how
    assert why.value is not None
