"""A cover: as wide as the way over the torte, and what is cut away is paid for."""

import math
from dataclasses import replace

import pytest

from krume.base import Infeasible
from krume.build import ComponentFormula, build_torte
from tests.build.studio import PARTS, plan_of, torte_of

M1 = ComponentFormula("M1", "Marzipan", None, 1000.0, density_g_ml=1.3)
CAKE = "3 layers of F1, 14 mm\n"


def test_a_cover_is_rolled_out_over_top_and_both_sides_with_some_to_spare() -> None:
    torte = torte_of(f"{CAKE}3 mm M1 around and on top, rolled out", M1=M1)
    (cover,) = torte.covers
    assert cover.across_cm == pytest.approx(20 + 2 * 4.2 + 2 * 1.5)
    rolled = math.pi / 4 * cover.across_cm**2 * 0.3 * 1.3
    layer = torte.layers[-1]
    assert cover.rolled_g == pytest.approx(rolled)
    assert cover.cut_away_g == pytest.approx(rolled - (layer.mass_g or 0))
    assert (layer.word, layer.material) == ("cover", "cover")


def test_what_is_cut_away_of_a_cover_is_made_and_not_in_the_torte() -> None:
    torte = torte_of(f"{CAKE}3 mm M1 around and on top, rolled out to 40 cm", M1=M1)
    batch = next(b for b in torte.batches if b.name == "M1")
    assert batch.waste_g == pytest.approx(torte.covers[0].cut_away_g)
    assert batch.made_g == pytest.approx(
        (batch.needed_g or 0) + batch.waste_g + (batch.over_g or 0)
    )
    assert torte.mass_g == pytest.approx(sum(x.mass_g or 0 for x in torte.layers))


def test_a_cover_rolled_out_too_small_is_refused_with_the_size_it_wants() -> None:
    text = f"A\n\n{CAKE}3 mm M1 around and on top, rolled out to 28 cm"
    answer = build_torte(plan_of(text), {**PARTS, "M1": M1})
    assert isinstance(answer, Infeasible)
    assert "rolled out to 29 cm" in answer.clashes[0].said
    again = build_torte(plan_of(text.replace("28", "29")), {**PARTS, "M1": M1})
    assert not isinstance(again, Infeasible)


def test_a_strip_around_is_as_long_as_the_torte_is_round() -> None:
    torte = torte_of(f"{CAKE}2 mm M1 around, rolled out", M1=M1)
    (strip,) = torte.covers
    assert strip.across_cm == pytest.approx(math.pi * 20)
    assert strip.second_cm == pytest.approx(4.2)


def test_a_cover_that_nobody_weighed_has_no_grams() -> None:
    bare = replace(M1, density_g_ml=None)
    plan = plan_of(f"A\n\n{CAKE}3 mm M1 around and on top, rolled out")
    read = build_torte(plan, {**PARTS, "M1": bare})
    assert not isinstance(read, Infeasible)
    assert read.value.covers[0].rolled_g is None
    assert read.value.mass_g is None
