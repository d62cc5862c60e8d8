"""The answer of build keeps the contract's words and never turns unknown into nothing."""

from dataclasses import replace

import pytest

from krume.usecases.asking.as_json import plain
from krume.usecases.torte.result import build_result, torte_status
from tests.build.studio import demo, demo_plan


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART"])
def test_the_contract_keys_are_there(name: str) -> None:
    result = plain(build_result(demo_plan(name), demo(name)))
    assert isinstance(result, dict)
    assert {"height_mm", "mass_g", "layers", "cream_g", "syrup_g", "slices"} <= set(result)
    layers = result["layers"]
    assert isinstance(layers, list)
    assert all({"name", "height_mm", "mass_g"} <= set(layer) for layer in layers)  # type: ignore[arg-type]


def test_syrup_has_no_height_of_its_own_and_adds_none() -> None:
    layers = build_result(demo_plan("T1"), demo("T1")).layers
    assert {layer.height_mm for layer in layers if layer.role == "syrup"} == {0.0}
    heights = [layer.height_mm for layer in layers]
    assert sum(height or 0.0 for height in heights) == pytest.approx(66.0)


def test_a_torte_with_an_unknown_mass_has_no_sums_at_all() -> None:
    torte = demo("T1")
    first = replace(torte.layers[0], mass_g=None)
    unknown = replace(torte, layers=(first, *torte.layers[1:]), mass_g=None)
    result = build_result(demo_plan("T1"), unknown)
    sums = (result.sponge_g, result.cream_g, result.syrup_g, result.coat_g, result.top_g)
    assert sums == (None,) * 5
    assert result.status == "unknown"
    assert result.layers[0].status == "unknown"


def test_without_a_torte_only_the_plan_speaks() -> None:
    result = build_result(demo_plan("T3"), None)
    assert (result.name, result.keep, result.mass_g) == ("Net-loft ring torte", "cold", None)
    assert result.ring is not None and result.ring.diameter_cm == 22.0


def test_a_torte_is_as_sure_as_its_weakest_layer() -> None:
    torte = demo("T1")
    assert torte_status(torte) == "assumed"
    syrup = tuple(layer for layer in torte.layers if layer.role == "syrup")
    assert torte_status(replace(torte, layers=syrup)) == "derived"
    assert torte_status(replace(torte, layers=())) == "derived"


def test_a_roll_tells_its_turns_and_a_ring_its_room() -> None:
    roll = build_result(demo_plan("T2"), demo("T2"))
    assert roll.roll is not None and roll.roll.turns == pytest.approx(1.957, abs=0.001)
    ring = build_result(demo_plan("T3"), demo("T3"))
    assert ring.ring is not None and ring.ring.spare_mm == pytest.approx(0.0)
