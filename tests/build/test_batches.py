"""Batches, slices and eggs: what is made, what is over, what is left."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.build.batches import batches, slices
from tests.agreement import agrees
from tests.build.studio import PARTS, demo


@pytest.mark.source("reference-book", "the demo tortes")
@pytest.mark.parametrize(
    ("torte", "name", "made", "over"),
    [("T1", "C1", "470.8", "22.8"), ("T3", "C2", "853.0", "28.3"), ("TART", "C3", "380.0", "0.0")],
)
def test_creams_are_made_in_halves_and_what_is_over_is_told(
    torte: str, name: str, made: str, over: str
) -> None:
    (batch,) = [each for each in demo(torte).batches if each.name == name]
    assert agrees(batch.made_g, made, within="0.06", why="470.75 is printed as 470.8")
    assert agrees(batch.over_g, over)


def test_batches_come_in_the_order_in_which_they_are_needed() -> None:
    assert [batch.name for batch in demo("T1").batches] == ["F1", "S1", "C1", "C5"]
    assert [batch.name for batch in demo("T3").batches] == ["F4", "S1", "C2", "C4"]


def test_a_cream_that_is_used_twice_is_one_batch() -> None:
    from tests.build.studio import torte_of

    torte = torte_of("2 layers of F1, 14 mm\n10 mm C2 between the layers\n4 mm C2 around")
    (batch,) = [each for each in torte.batches if each.name == "C2"]
    assert batch.needed_g == pytest.approx(
        (torte.sum_g("filling") or 0) + (torte.sum_g("coat") or 0)
    )


def test_half_a_custard_cracks_three_eggs_and_leaves_three_whites() -> None:
    eggs = demo("T1").eggs
    assert eggs.cracked == {"eu-m": 8}
    left = {(x.part, x.count): x.mass_g for x in eggs.left}
    assert left == {("yolk", 0.5): pytest.approx(8.75), ("white", 3.0): pytest.approx(100.5)}


@given(st.integers(1, 60))
def test_slices_weigh_the_torte_together_and_go_once_around(count: int) -> None:
    torte = demo("T3")
    (cut,) = slices(torte, (count,))
    assert cut.mass_g is not None and cut.angle_deg is not None
    assert cut.mass_g * count == pytest.approx(torte.mass_g)
    assert cut.angle_deg * count == pytest.approx(360.0)


@pytest.mark.source("reference-book", "the demo tortes")
@pytest.mark.parametrize(("count", "printed"), [(12, "5.76"), (14, "4.94"), (16, "4.32")])
def test_the_outer_arc_of_a_slice_of_the_ring_torte(count: int, printed: str) -> None:
    (cut,) = slices(demo("T3"), (count,))
    assert agrees(cut.arc_cm, printed)


def test_a_batch_of_unknown_mass_leaves_what_is_made_unknown() -> None:
    from dataclasses import replace

    torte = demo("T1")
    parts = {**PARTS, "C1": replace(PARTS["C1"], total_g=None)}
    (batch,) = [each for each in batches(torte.layers, parts, {"F1": 1}) if each.name == "C1"]
    assert (batch.factor, batch.batches, batch.over_g) == (None, None, None)
    assert batch.needed_g is not None
