"""The one rule of masses, and the status of what rests on a plan."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import STATUSES
from krume.build import weakest
from krume.build.masses import baked_volume_ml
from tests.agreement import agrees
from tests.build.studio import F1, demo, torte_of


@pytest.mark.source("reference-book", "the demo tortes")
def test_the_baked_volume_is_tin_area_times_baked_height() -> None:
    assert agrees(baked_volume_ml(F1), "1570.8")


def test_the_whole_cake_as_one_layer_weighs_the_whole_cake() -> None:
    assert torte_of("1 layer of F1, 50 mm").mass_g == pytest.approx(482.0)


@given(st.permutations(STATUSES))
def test_the_weakest_status_is_the_last_of_the_list(statuses: list[str]) -> None:
    assert weakest(*statuses) == STATUSES[-1]


def test_each_layer_shows_its_sum_and_how_sure_it_is() -> None:
    sponge, syrup, cream = demo("T1").layers[:3]
    assert sponge.how == "482 g baked × 418.1 ml of the 1570.8 ml of the cake"
    assert (sponge.status, syrup.status, cream.status) == ("assumed", "derived", "assumed")
    assert syrup.how == "0.15 g/cm2 × 298.6 cm2"
