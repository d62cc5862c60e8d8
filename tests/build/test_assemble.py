"""The demo tortes come out as planned; what is unknown is asked, what cannot be is refused."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.base import Infeasible
from krume.build import build_torte, incomplete
from tests.agreement import agrees
from tests.build.studio import C2, F1, PARTS, built, demo, demo_plan, plan_of, torte_of
from tests.build.studio import without_density as unweighed

SUMS = [
    ("T1", "piece", "384.9"),
    ("T1", "filling", "448.0"),
    ("T1", "syrup", "134.4"),
    ("T1", "coat", "227.6"),
    ("T2", "piece", "330.5"),
    ("T2", "filling", "347.2"),
    ("T2", "syrup", "75.5"),
    ("T3", "piece", "317.8"),
    ("T3", "filling", "824.7"),
    ("T3", "syrup", "103.9"),
    ("T3", "top", "328.4"),
    ("TART", "piece", "214.0"),
    ("TART", "filling", "380.0"),
]


@pytest.mark.source("reference-book", "the demo tortes")
@pytest.mark.parametrize(("name", "role", "printed"), SUMS)
def test_each_part_of_the_demo_tortes_weighs_what_was_worked_out(
    name: str, role: str, printed: str
) -> None:
    assert agrees(demo(name).sum_g(role), printed)


@pytest.mark.source("reference-book", "the demo tortes")
@pytest.mark.parametrize(
    ("name", "mass", "height"),
    [
        ("T1", "1194.9", "66"),
        ("T2", "753.1", "74"),
        ("T3", "1574.8", "60"),
        ("TART", "594.0", "25"),
    ],
)
def test_the_demo_tortes_are_as_heavy_and_as_high_as_worked_out(
    name: str, mass: str, height: str
) -> None:
    torte = demo(name)
    assert agrees(torte.mass_g, mass)
    assert agrees(torte.height_mm, height)


@pytest.mark.source("reference-book", "the demo tortes")
@pytest.mark.parametrize(
    ("name", "index", "count", "printed"),
    [
        ("T1", 0, 12, "99.6"),
        ("T1", 1, 14, "85.3"),
        ("T2", 0, 12, "62.8"),
        ("T3", 0, 14, "112.5"),
        ("T3", 1, 16, "98.4"),
        ("TART", 0, 10, "59.4"),
    ],
)
def test_a_slice_weighs_its_share(name: str, index: int, count: int, printed: str) -> None:
    cut = demo(name).slices[index]
    assert cut.count == count
    assert agrees(cut.mass_g, printed)


@pytest.mark.source("reference-book", "the demo tortes")
@pytest.mark.parametrize(("name", "printed"), [("T1", "97.1"), ("T2", "27.5"), ("T3", "147.2")])
def test_what_is_cut_away_is_told(name: str, printed: str) -> None:
    assert agrees(demo(name).batches[0].over_g, printed)


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART"])
def test_the_masses_of_all_layers_add_up_to_the_torte(name: str) -> None:
    torte = demo(name)
    assert sum(layer.mass_g or 0.0 for layer in torte.layers) == pytest.approx(torte.mass_g)


@settings(max_examples=60)
@given(
    st.integers(1, 5),
    st.floats(2.0, 9.9),
    st.floats(1.0, 20.0),
    st.floats(8.0, 20.0),
    st.floats(0.01, 0.4),
)
def test_heights_and_masses_add_up_for_any_torte(
    layers: int, thick: float, cream: float, across: float, syrup: float
) -> None:
    torte = torte_of(
        f"{layers} layers of F1, {thick:.3f} mm, trimmed to {across:.3f} cm\n"
        f"{syrup:.3f} g/cm2 S1 on each layer\n{cream:.3f} mm C1 on each layer"
    )
    heights = sum(layer.height_mm or 0.0 for layer in torte.layers)
    assert torte.height_mm == pytest.approx(heights)
    assert torte.height_mm == pytest.approx(layers * (round(thick, 3) + round(cream, 3)))
    assert torte.mass_g == pytest.approx(sum(layer.mass_g or 0.0 for layer in torte.layers))


@given(st.floats(4.0, 9.9))
def test_mass_goes_by_the_square_of_the_diameter(across: float) -> None:
    text = "2 layers of F1, 12 mm, trimmed to {:.4f} cm\n10 mm C1 between the layers"
    small, wide = torte_of(text.format(across)), torte_of(text.format(2 * round(across, 4)))
    assert small.mass_g is not None
    assert wide.mass_g == pytest.approx(4 * small.mass_g)


def test_a_cream_of_unknown_density_leaves_the_mass_unknown_and_is_asked() -> None:
    read = build_torte(demo_plan("T3"), {**PARTS, "C2": unweighed(C2)})
    assert not isinstance(read, Infeasible)
    torte = read.value
    assert [(p.code, p.where) for p in read.problems] == [("density-missing", "C2 after line 1")]
    assert torte.mass_g is None
    assert torte.sum_g("filling") is None
    assert torte.height_mm == pytest.approx(60.0)
    assert [each.mass_g for each in torte.slices] == [None, None]


@pytest.mark.parametrize("gone", ["baked_height_mm", "baked_mass_g"])
def test_a_cake_that_does_not_say_how_it_bakes_is_asked(gone: str) -> None:
    flat, weightless = replace(F1, baked_height_mm=None), replace(F1, baked_mass_g=None)
    unknown = flat if gone == "baked_height_mm" else weightless
    read = build_torte(demo_plan("T1"), {**PARTS, "F1": unknown})
    assert not isinstance(read, Infeasible)
    assert [p.code for p in read.problems] == ["baked-missing"]
    assert read.value.mass_g is None


def test_a_component_without_a_formula_leaves_the_whole_unknown() -> None:
    read = build_torte(demo_plan("T1"), {k: v for k, v in PARTS.items() if k != "C5"})
    assert not isinstance(read, Infeasible)
    assert [(p.code, p.where) for p in read.problems] == [("formula-missing", "line 8")]
    assert (read.value.mass_g, read.value.height_mm) == (None, None)
    assert [layer.of for layer in read.value.layers].count("F1") == 3


def test_a_plan_of_creams_alone_asks_what_it_stands_on() -> None:
    read = build_torte(plan_of("Cream\n\n10 mm C1 on top"), PARTS)
    assert not isinstance(read, Infeasible)
    assert [p.code for p in read.problems] == ["no-piece"]
    assert read.value.layers == ()


def test_a_torte_that_is_not_whole_has_no_totals_but_keeps_its_layers() -> None:
    torte = incomplete(demo("T1"))
    assert (torte.mass_g, torte.height_mm) == (None, None)
    assert len(torte.layers) == 9


def test_a_plan_without_slices_is_built_all_the_same_and_says_so() -> None:
    torte = built(replace(demo_plan("T1"), slices=()))
    assert torte.slices == ()
    assert [notice.code for notice in torte.notices] == ["slices-not-written"]


def test_a_tin_whose_walls_lean_is_taken_as_upright_and_that_is_said() -> None:
    assert F1.tin is not None
    flared = replace(F1, tin=replace(F1.tin, top_cm=22.0))
    torte = built(demo_plan("T1"), F1=flared)
    assert [notice.code for notice in torte.notices] == ["walls-taken-upright"]
    assert torte.mass_g == pytest.approx(demo("T1").mass_g)
