"""A torte's own sums."""

from dataclasses import replace

import pytest

from krume.build import Torte
from tests.build.studio import demo


def test_a_role_with_an_unknown_layer_has_no_sum_and_one_without_layers_is_nothing() -> None:
    torte = demo("T1")
    first = replace(torte.layers[0], mass_g=None)
    unknown = replace(torte, layers=(first, *torte.layers[1:]))
    assert unknown.sum_g("piece") is None
    assert unknown.sum_g("syrup") == pytest.approx(134.39, abs=0.01)
    assert torte.sum_g("top") == 0.0


def test_a_torte_is_drawn_only_when_every_height_is_known() -> None:
    torte = demo("T1")
    assert torte.can_be_drawn
    flat = replace(torte.layers[0], height_mm=None)
    assert not replace(torte, layers=(flat, *torte.layers[1:])).can_be_drawn
    assert not Torte("", "stacked", (), None, None, None).can_be_drawn
