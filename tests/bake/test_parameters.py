"""Every parameter is a row with its papers."""

from dataclasses import replace

import pytest

from krume.bake import figures, simulate, wall, walls
from krume.bake.parameters import doubts, value
from krume.base import STATUSES, NotFoundError
from tests.bake.cases import BUTTER18


def test_every_parameter_says_how_it_is_known() -> None:
    assert len(figures()) > 40
    assert all(f.status in STATUSES and f.source for f in figures().values())


def test_what_was_fitted_is_called_calibrated() -> None:
    fitted = {key for key, f in figures().items() if f.status == "calibrated"}
    assert fitted == {"heat-static", "wet-skin", "colour-pale", "colour-golden", "tin-heat-share"}
    assert value("heat-static") == 5.5


def test_every_tin_material_of_the_contract_has_a_wall() -> None:
    assert {"aluminium", "steel", "dark", "glass", "ceramic", "silicone"} <= walls().keys()


def test_an_unknown_material_is_named_with_those_known() -> None:
    with pytest.raises(NotFoundError, match="aluminium"):
        wall("wood")


def test_every_tin_material_says_how_far_its_heat_may_be_off() -> None:
    assert all(0 < each.ln_spread <= 0.25 for each in walls().values())
    assert walls()["silicone"].ln_spread == max(each.ln_spread for each in walls().values())


def test_every_parameter_is_drawn_or_says_why_not() -> None:
    itself = ("spread-", "discrepancy")
    bare = {
        key
        for key in figures().keys() - doubts().keys()
        if not key.startswith(itself) and not key.endswith(("-low", "-high"))
    }
    assert bare == set()
    for key, doubt in doubts().items():
        assert doubt.startswith("none: ") or doubt in figures(), key


def test_what_was_only_assumed_and_moves_a_bake_is_drawn() -> None:
    drawn = {key for key, doubt in doubts().items() if not doubt.startswith("none: ")}
    assert {"heat-static", "wet-skin", "crust-diffusion", "vapour-conduction", "set-done"} <= drawn


@pytest.mark.parametrize(
    ("key", "other"),
    [
        ("door-dip", 0.0), ("door-dip", 60.0), ("door-recovery", 480.0), ("emissivity-cake", 0.8),
        ("diffusion-air", 2.4e-5), ("lewis", 1.0), ("air-heat", 1000.0), ("tin-heat-share", 0.9),
    ],
)  # fmt: skip
def test_what_is_not_drawn_hardly_moves_a_bake(
    key: str, other: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    own = simulate(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven).minutes
    monkeypatch.setitem(figures(), key, replace(figures()[key], value=other))
    value.cache_clear()
    try:
        moved = simulate(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven).minutes
    finally:
        monkeypatch.undo()
        value.cache_clear()
    assert doubts()[key].startswith("none: ")
    assert moved == pytest.approx(own, rel=0.05)
    assert moved != own
