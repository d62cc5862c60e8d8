"""The tables of usual durations and routes: every family has a route, every row its status."""

import pytest

from krume.design import families
from krume.plan import is_cut_into_layers, usual, usual_min
from krume.plan.usual import cake_route, cream_route, torte_route


def test_every_family_has_a_route_that_begins_by_hand() -> None:
    for each in families():
        steps = cream_route(each.key) if each.kind == "cream" else cake_route(each.key)
        assert steps, each.key
        assert steps[0].by_hand, each.key
        baked = sum(step.uses == "oven" for step in steps)
        assert baked == (0 if each.kind == "cream" else 1), each.key


@pytest.mark.parametrize("kind", ["stacked", "ring", "roll", "tart"])
def test_every_kind_of_torte_is_built_by_hand(kind: str) -> None:
    assert [step for step in torte_route(kind) if step.by_hand]


def test_what_is_handed_over_as_baked_is_not_built() -> None:
    assert torte_route("plain") == ()
    assert not is_cut_into_layers("plain") and is_cut_into_layers("stacked")


def test_the_only_minutes_without_a_row_are_those_of_the_oven() -> None:
    for family in ("separated", "roulade", "butter", "tart"):
        for step in cake_route(family):
            assert (step.minutes is None) == (step.uses == "oven")


def test_hands_of_a_stacked_torte_are_28_minutes() -> None:
    hands = [step.minutes for step in torte_route("stacked") if step.by_hand]
    assert sum(minutes or 0.0 for minutes in hands) == 28.0


def test_hours_become_minutes() -> None:
    assert usual("evening").unit == "h"
    assert usual_min("evening") == 18 * 60
