"""A formula against its bands, through the book and through a person's own text."""

from collections.abc import Callable

import pytest

from krume.usecases import Asked, check_formula

STARCHY = """\
Starchy sponge
Family: separated
Eggs: EU M

20 g white rice flour
80 g potato starch
5 eggs
130 g caster sugar
"""


def test_the_demo_lies_inside_its_bands(demo: Asked) -> None:
    answer = check_formula("F2", demo)
    result = answer.result
    assert answer.exit_code == 0, answer.problems
    assert (result.family, result.basis) == ("separated", "flour")
    assert result.total_g == pytest.approx(519.0)
    assert result.flour_g == pytest.approx(105.0)
    assert result.percent["egg"] == pytest.approx(242.857, abs=0.001)
    assert result.findings == ()
    assert {"usda-sr28"} & set(answer.sources) or answer.sources


def test_every_band_of_the_family_stands_beside_its_figure(demo: Asked) -> None:
    bands = {band.key: band for band in check_formula("F2", demo).result.bands}
    assert bands["starch"].value == pytest.approx(34.2857, abs=0.001)
    assert (bands["starch"].low, bands["starch"].high) == (30, 50)
    assert bands["sugar_per_egg"].value == pytest.approx(0.5098, abs=0.0001)
    assert all(band.status and band.source for band in bands.values())


def test_a_figure_outside_its_band_is_a_finding_with_its_code(
    bare: Asked, write: Callable[[str], str]
) -> None:
    answer = check_formula(write(STARCHY), bare)
    assert answer.exit_code == 0, answer.problems
    codes = {finding.code: finding for finding in answer.result.findings}
    assert codes["starch-high"].value == pytest.approx(80.0)
    assert codes["starch-high"].warns
    assert codes["sweet_rice-low"].value == 0


def test_a_nut_sponge_is_judged_on_flour_and_nut(demo: Asked) -> None:
    result = check_formula("F4", demo).result
    assert result.basis == "flour and nut"
    assert result.basis_g == pytest.approx(155.0)
    assert result.percent["egg"] == pytest.approx(154.84, abs=0.01)
    assert not [f for f in result.findings if f.code.startswith("egg")]


def test_what_is_judged_by_habit_says_so(demo: Asked) -> None:
    assert "common-practice" in {notice.code for notice in check_formula("F1", demo).notices}


def test_an_open_question_leaves_what_is_known(bare: Asked, write: Callable[[str], str]) -> None:
    answer = check_formula(write(STARCHY.replace("Eggs: EU M\n", "")), bare)
    assert answer.exit_code == 3
    assert answer.result.percent["egg"] is None
    assert answer.result.percent["sugar"] == pytest.approx(130.0)
    assert answer.result.total_g is None


def test_a_cream_has_figures_in_place_of_percentages(demo: Asked) -> None:
    result = check_formula("C2", demo).result
    assert result.figures["gelatine_g_kg"] == pytest.approx(9.379, abs=0.001)
    assert result.findings == ()


def test_a_figure_can_be_explained(demo: Asked) -> None:
    why = check_formula("F2", demo, explain="egg").explain
    assert why is not None
    assert why.key == "percent.egg"


@pytest.mark.parametrize(
    ("name", "family"),
    [("C1", "custard-lightened"), ("C2", "set-cream"), ("C5", "cooked-white-buttercream"),
     ("C3", "ganache"), ("C4", "jelly"), ("S1", "syrup"), ("F3", "roulade"), ("F7", "tart")],
)  # fmt: skip
def test_every_text_of_the_demo_finds_its_family(demo: Asked, name: str, family: str) -> None:
    assert check_formula(name, demo).result.family == family
