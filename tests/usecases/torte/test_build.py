"""A torte by name or file: built, asked about at the right place, or refused with its limits."""

from collections.abc import Callable
from pathlib import Path

import pytest

from krume.base import Infeasible
from krume.usecases import Asked, LabelWish, QuestionError, build_torte, label_of
from krume.usecases.asking.read import formula_of
from krume.usecases.torte.build import component, torte_of
from tests.agreement import agrees

DEMO = ["T1", "T2", "T3", "TART"]
SPONGE = """\
Plain sponge
Tin: round 20 x 7 cm
Baked: 50 mm high, 420 g
Eggs: EU sizes

100 g white rice flour
5 eggs, medium
120 g caster sugar

Bake 30 minutes.
"""


@pytest.mark.parametrize("name", DEMO)
def test_a_demo_torte_is_answered_and_its_masses_add_up(demo: Asked, name: str) -> None:
    answer = build_torte(name, demo)
    assert answer.exit_code == 0
    result = answer.result
    assert result.mass_g is not None
    assert sum(layer.mass_g or 0.0 for layer in result.layers) == pytest.approx(result.mass_g)
    parts = (result.sponge_g, result.cream_g, result.syrup_g, result.coat_g, result.top_g)
    assert sum(part or 0.0 for part in parts) == pytest.approx(result.mass_g)
    assert result.svg is not None and result.svg.startswith("<svg")


@pytest.mark.source("reference-book", "the demo tortes")
def test_the_texts_of_the_studio_come_to_the_worked_figures(demo: Asked) -> None:
    result = build_torte("T1", demo).result
    assert agrees(result.mass_g, "1194.9")
    assert agrees(result.cream_g, "448.0")
    assert agrees(result.trimmed_g, "97.1")
    assert agrees(result.diameter_cm, "20.3")


def test_a_torte_is_found_by_its_own_name_too(demo: Asked) -> None:
    assert build_torte("Orl hazel torte", demo).result.name == "Orl hazel torte"


def test_a_torte_in_a_file_takes_the_formulas_of_the_book(
    demo: Asked, write: Callable[[str], str]
) -> None:
    path = write("Mine\nSlices: 8\n\n2 layers of F1, 14 mm\n10 mm C1 between the layers")
    result = build_torte(path, demo).result
    assert [each.count for each in result.slices] == [8]
    assert [layer.of for layer in result.layers] == ["F1", "C1", "F1"]


def test_a_torte_in_a_file_takes_the_formulas_beside_it(bare: Asked, tmp_path: Path) -> None:
    (tmp_path / "Plain.txt").write_text(SPONGE, encoding="utf-8")
    plan = tmp_path / "torte.txt"
    plan.write_text("Mine\n\n2 layers of Plain, 14 mm", encoding="utf-8")
    answer = build_torte(str(plan), bare)
    assert answer.problems == ()
    assert answer.result.mass_g == pytest.approx(420 * 28 / 50)


def test_an_unknown_density_is_asked_in_the_cream_and_its_answer_answers_it(
    bare: Asked, tmp_path: Path
) -> None:
    (tmp_path / "Plain.txt").write_text(SPONGE, encoding="utf-8")
    cream = "Plain cream\n\n300 g whipping cream, 35 % fat\n30 g caster sugar\n"
    (tmp_path / "Cream.txt").write_text(cream, encoding="utf-8")
    plan = tmp_path / "torte.txt"
    text = "Mine\n\n1 layer of Plain, 14 mm\n10 mm Cream on the layer"
    plan.write_text(text, encoding="utf-8")
    open_ = build_torte(str(plan), bare)
    assert open_.exit_code == 3
    assert open_.result.mass_g is None
    assert open_.result.cream_g is None
    assert open_.result.status == "unknown"
    (problem,) = open_.problems
    answered = Asked(book=bare.book, answers=(f"{problem.where}=Density: 0.5 g/ml",))
    result = build_torte(str(plan), answered).result
    assert result.cream_g == pytest.approx(314.159 * 0.5, rel=1e-5)


def test_what_cannot_be_is_exit_4_with_its_limits(demo: Asked, write: Callable[[str], str]) -> None:
    answer = build_torte(write("High\n\n3 layers of F1, 20 mm"), demo)
    assert answer.exit_code == 4
    assert "50 mm of height" in answer.problems[0].ask
    assert "60 mm" in answer.problems[0].ask
    assert (answer.result.mass_g, answer.result.svg, answer.result.layers) == (None, None, ())


def test_a_line_that_is_not_understood_leaves_the_totals_unknown(
    demo: Asked, write: Callable[[str], str]
) -> None:
    answer = build_torte(write("Odd\n\n2 layers of F1, 14 mm\nsome fruit in the middle"), demo)
    assert answer.exit_code == 3
    assert [p.code for p in answer.problems] == ["torte-line-unread"]
    assert answer.result.mass_g is None
    assert answer.result.height_mm is None
    assert len(answer.result.layers) == 2


def test_a_component_nobody_has_is_asked_at_its_line(
    demo: Asked, write: Callable[[str], str]
) -> None:
    answer = build_torte(write("Odd\n\n2 layers of F99, 14 mm"), demo)
    assert [(p.code, p.where) for p in answer.problems] == [
        ("formula-missing", "line 3"),
        ("no-piece", "line 1"),
    ]


@pytest.mark.parametrize(("name", "options"), [("F1", []), ("102", ["T2", "T3", "TART"])])
def test_what_is_no_torte_is_said_and_an_order_offers_its_tortes(
    demo: Asked, name: str, options: list[str]
) -> None:
    with pytest.raises(QuestionError) as caught:
        build_torte(name, demo)
    assert caught.value.problem.code == "no-torte"
    assert [option.line for option in caught.value.problem.options] == options


def test_a_plain_formula_in_a_file_is_no_torte(demo: Asked, write: Callable[[str], str]) -> None:
    with pytest.raises(QuestionError):
        build_torte(write(SPONGE), demo)


@pytest.mark.parametrize(
    ("name", "family"),
    [
        ("C1", "custard-lightened"),
        ("C2", "set-cream"),
        ("C5", "cooked-white-buttercream"),
        ("S1", "syrup"),
        ("F4", "nut"),
    ],
)
def test_a_component_knows_its_family(demo: Asked, name: str, family: str) -> None:
    assert component(name, formula_of(name, demo).formula).family == family


def test_a_planned_density_is_an_assumption_and_a_plain_one_is_declared(
    demo: Asked, bare: Asked, write: Callable[[str], str]
) -> None:
    planned = component("C2", formula_of("C2", demo).formula)
    plain = component("X", formula_of(write("X\nDensity: 0.7 g/ml\n\n100 g butter"), bare).formula)
    assert (planned.density_status, plain.density_status) == ("assumed", "declared")


def test_the_clashes_of_a_torte_reach_who_asks_for_it(
    demo: Asked, write: Callable[[str], str]
) -> None:
    made = torte_of(write("Wide\n\n1 layer of F1, 14 mm, trimmed to 30 cm"), demo)
    assert isinstance(made.torte, Infeasible)


DOME = """\
Dome
Slices: 10
Waste: 5 %

2 discs of F1, 20 mm, trimmed to 16 cm
12 mm C1 between the layers
100 g raspberries on each layer, 8 mm
40 mm C1 on top, domed
3 mm C5 around and on top
8 x 6 g C5 on top, piped
12 x 3 g walnut halves on top, 12 mm high
"""


def test_fruit_and_nuts_are_taken_as_they_are_bought(
    demo: Asked, write: Callable[[str], str]
) -> None:
    made = torte_of(write(DOME), demo)
    result = build_torte(write(DOME), demo).result
    assert {"raspberries", "walnut halves"} <= set(made.formulas)
    assert sum(x.mass_g or 0.0 for x in result.layers) == pytest.approx(result.mass_g, abs=0.1)
    goods = {b.name: b.needed_g for b in result.batches if b.kind == "goods"}
    assert goods == {"raspberries": 200.0, "walnut halves": 36.0}
    assert result.decoration_g == pytest.approx(8 * 6 + 36)


def test_a_decoration_is_declared_like_any_other_part(
    demo: Asked, write: Callable[[str], str]
) -> None:
    said = label_of(write(DOME), LabelWish(market="eu"), demo).result
    assert "walnut" in " ".join(said.contains).casefold()


def test_a_name_that_neither_book_nor_pantry_has_is_asked(
    demo: Asked, write: Callable[[str], str]
) -> None:
    text = "A\n\n2 layers of F1, 14 mm\n12 x 3 g zwaggle on top"
    assert "formula-missing" in [p.code for p in build_torte(write(text), demo).problems]


def test_tortes_of_the_book_stand_as_tiers(demo: Asked, tmp_path: Path) -> None:
    (tmp_path / "Small.txt").write_text(
        "Small\n\n2 discs of F1, 14 mm, trimmed to 14 cm\n8 mm C1 between the layers",
        encoding="utf-8",
    )
    plan = tmp_path / "tiers.txt"
    plan.write_text("Two of them\n\n1 tier of T3\n1 tier of Small", encoding="utf-8")
    answer = build_torte(str(plan), demo)
    assert answer.problems == ()
    result = answer.result
    assert [tier.title for tier in result.tiers] == ["Net-loft ring torte", "Small"]
    assert result.height_mm == pytest.approx(60 + 3 + 36)
    assert result.mass_g == pytest.approx(sum(x.mass_g or 0.0 for x in result.layers))


def test_a_torte_is_no_tier_of_itself(demo: Asked, tmp_path: Path) -> None:
    plan = tmp_path / "tiers.txt"
    plan.write_text("Loop\n\n1 tier of T3\n1 tier of tiers", encoding="utf-8")
    codes = [p.code for p in build_torte(str(plan), demo).problems]
    assert "tier-missing" in codes


def test_a_tier_that_cannot_be_is_refused_with_its_name(demo: Asked, tmp_path: Path) -> None:
    (tmp_path / "High.txt").write_text("High\n\n4 layers of F1, 20 mm", encoding="utf-8")
    plan = tmp_path / "tiers.txt"
    plan.write_text("Two\n\n1 tier of T3\n1 tier of High", encoding="utf-8")
    answer = build_torte(str(plan), demo)
    assert answer.exit_code == 4
    assert answer.problems[0].ask.startswith("High: ")
