"""krume.design.reader.keyfigures: figures of key lines that can be none are asked, not taken."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.design import Formula, read
from krume.design.reader.keyfigures import density_said
from krume.design.reader.settings import limit

SPONGE = (
    "Sponge\nEggs: EU sizes\nFamily: separated\n{}\n\n"
    "100 g white rice flour\n5 eggs, medium\n120 g caster sugar\n"
)


def codes_of(line: str) -> list[str]:
    return [problem.code for problem in read(SPONGE.format(line)).problems]


def formula_of(line: str) -> Formula:
    found = read(SPONGE.format(line))
    assert found.problems == ()
    return found.value


@pytest.mark.parametrize(
    ("said", "g_ml"),
    [
        ("0.48", 0.48),
        ("0.48 g/ml (plan)", 0.48),
        ("0,48 g/cm³", 0.48),
        ("480 g/l", 0.48),
        ("480 kg/m3", 0.48),
        ("480 kg/m³", 0.48),
        ("48 g/dl", 0.48),
        ("about 0.5 kg/l, measured", 0.5),
        ("113 g per 250 ml", 0.452),
    ],
)
def test_a_density_is_turned_into_grams_per_ml_by_its_unit(said: str, g_ml: float) -> None:
    assert formula_of(f"Density: {said}").density_g_ml == g_ml


@pytest.mark.parametrize(
    "said",
    ["0 g/ml", "-1 g/ml", "−0.5", "nan g/ml", "inf", "480", "480 g/ml", "0.48 oz", "48 %", "0.48 g",
     "30 lb/ft3", "soon"],
)  # fmt: skip
def test_a_density_that_no_batter_has_is_asked_and_never_taken(said: str) -> None:
    found = read(SPONGE.format(f"Density: {said}"))
    assert [(p.code, p.where) for p in found.problems] == [("density-unclear", "line 4")]
    assert found.value.density_g_ml is None
    for option in found.problems[0].options:
        assert codes_of(option.line) == []


def test_a_figure_that_may_be_grams_per_litre_is_offered_as_that() -> None:
    (problem,) = read(SPONGE.format("Density: 480 g/ml (plan)")).problems
    assert [option.line for option in problem.options] == [
        "Density: 0.48 g/ml (plan)",
        "(Density: 480 g/ml (plan), left out)",
    ]


def test_of_two_figures_of_a_density_the_middle_is_taken_and_said() -> None:
    found = density_said("Density: 0.45-0.5 g/ml", "0.45-0.5 g/ml")
    assert found.value == 0.475
    assert [notice.code for notice in found.notices] == ["density-middle"]


def test_a_density_said_to_be_unknown_is_unknown() -> None:
    assert formula_of("Density: not measured").density_g_ml is None


@given(st.floats(0.001, 5000))
def test_no_density_outside_the_limits_is_ever_taken(g_ml: float) -> None:
    found = density_said(f"Density: {g_ml:.4f}", f"{g_ml:.4f}")
    inside = limit("density-least") <= float(f"{g_ml:.4f}") <= limit("density-most")
    assert (found.value is not None) == inside == (not found.problems)


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("Baked: -50 mm high, 482 g", "baked-unclear"),
        ("Baked: 50 mm high, -482 g", "baked-unclear"),
        ("Baked: 50 mm high, 0 g", "baked-unclear"),
        ("Baked: nan mm high", "baked-unclear"),
        ("Baked: 5000 mm high", "baked-unclear"),
        ("Core: -95 C", "core-unclear"),
        ("Core: nan", "core-unclear"),
        ("Core: 0 C", "core-unclear"),
        ("Core: 400 C", "core-unclear"),
        ("Baking time: -30 min", "minutes-unclear"),
    ],
)
def test_a_figure_below_nothing_or_out_of_reach_is_asked(line: str, code: str) -> None:
    found = read(SPONGE.format(line))
    assert [problem.code for problem in found.problems] == [code]
    assert found.problems[0].where == "line 4"
    assert (found.value.core_c, found.value.bake_min) == (None, None)
    assert found.value.baked is None or found.value.baked.mass_g is None
    assert codes_of(found.problems[0].options[0].line) == []


def test_a_dash_between_two_figures_is_no_minus() -> None:
    baked = formula_of("Baked: 50 mm high - 382 g").baked
    assert baked is not None
    assert (baked.height_mm, baked.mass_g) == (50, 382)


def test_a_core_in_two_units_is_one_core() -> None:
    assert formula_of("Core: 93.3 C (200 F)").core_c == 93.3


@pytest.mark.parametrize(
    ("step", "asked"),
    [
        ("Bake to a core of -5 C.", "core of -5 C"),
        ("Bake to a core of 40 C.", "core of 40 C"),
        ("Bake until the core is at least 9.", "core is at least 9"),
        ("Bake to an internal 150 °C.", "internal 150 °C"),
    ],
)
def test_a_core_of_a_step_that_no_cake_is_done_at_is_asked_and_never_taken(
    step: str, asked: str
) -> None:
    found = read(SPONGE.format("") + f"\n{step}\n")
    (problem,) = found.problems
    assert (problem.code, problem.where) == ("core-unclear", "line 10")
    assert problem.ask.startswith(f"'{asked}' is no core of a cake: ")
    assert found.value.core_c is None
    assert read(SPONGE.format("") + f"\n{problem.options[0].line}\n").problems == ()


@pytest.mark.parametrize(
    ("step", "core_c"),
    [
        ("Bake to a core of 95 C. Cool to a core of 30 C.", 95.0),
        ("Cool the first to a core of 70 C. Bake the second to a core of 94 C.", 94.0),
        ("Bake 30 min. Cool until the core is 30 C.", None),
        ("Core 3 apples.", None),
        ("Core 12 apples and bake them.", None),
    ],
)
def test_a_core_that_cools_and_apples_that_are_cored_are_no_core_of_the_bake(
    step: str, core_c: float | None
) -> None:
    found = read(SPONGE.format("") + f"\n{step}\n")
    assert ([p.code for p in found.problems], found.value.core_c) == ([], core_c)
