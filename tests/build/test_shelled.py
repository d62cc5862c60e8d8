"""Tarts: the shell whole, its hollow, and how high the filling stands."""

import math
from dataclasses import replace

import pytest

from krume.base import Infeasible
from krume.build import build_torte
from krume.build.shelled import filled_to_mm, inside_of
from tests.agreement import agrees
from tests.build.studio import F7, PARTS, demo, demo_plan, torte_of


@pytest.mark.source("reference-book", "the demo tortes")
def test_the_ganache_stands_as_deep_as_worked_out() -> None:
    assert agrees(demo("TART").layers[1].height_mm, "7.7")


def test_the_hollow_is_the_ring_less_its_wall() -> None:
    hollow = inside_of(F7)
    assert hollow is not None
    assert hollow.area_cm2 == pytest.approx(math.pi / 4 * 23.4**2)


def test_fillings_stand_one_on_the_other_and_add_no_height() -> None:
    tart = torte_of("1 shell of F7\n5 mm C4 in the shell\n8 mm C2 in the shell")
    assert [layer.bottom_mm for layer in tart.layers] == [0.0, 3.0, 8.0]
    assert tart.height_mm == 25.0
    assert filled_to_mm(tart) == pytest.approx(16.0)


def test_a_shell_of_unknown_thickness_is_asked() -> None:
    read = build_torte(demo_plan("TART"), {**PARTS, "F7": replace(F7, baked_thickness_mm=None)})
    assert not isinstance(read, Infeasible)
    assert [(p.code, p.where) for p in read.problems] == [("baked-missing", "F7 after line 1")]


def test_layers_are_not_cut_from_a_shell() -> None:
    from tests.build.studio import plan_of

    read = build_torte(plan_of("A\n\n1 layer of F7, 3 mm"), PARTS)
    assert not isinstance(read, Infeasible)
    (problem,) = read.problems
    assert (problem.code, problem.options[0].line) == ("piece-is-shell", "1 shell of F7")
