"""Published bakes in the model's interval: each with its place, the misses among them."""

from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from krume.bake import (
    Batter,
    Oven,
    Prediction,
    drawn,
    predict,
    simulate,
    simulate_many,
    wall,
)
from krume.bake.parameters import value
from krume.bake.published import (
    BATTER_COLUMNS,
    KINDS,
    HeatEvidence,
    PublishedBake,
    heat_evidence,
    ln_heat,
    place,
    published_bakes,
)
from krume.bake.surfaces import STEFAN_BOLTZMANN, outside
from krume.evidence import load
from tests.agreement import agrees
from tests.bake.cases import tin

BAKES = {bake.key: bake for bake in published_bakes()}

# Share of 64 draws that are done before the middle of what was written down.
PLACES = {
    "pound-300-150": 0.73, "pound-300-160": 0.83, "pound-300-170": 0.84, "pound-300-180": 0.84,
    "pound-300-190": 0.78, "rice-cupcake": 0.56, "layer-24-min": 0.64, "pound-45": 0.98,
    "layer-test": 0.67, "sponge-in-paper": 0.92, "angel-350-f": 0.91, "angel-325-f": 0.95,
    "shallow-round-6-in": 0.67, "shallow-round-7-in": 0.86, "shallow-round-8-in": 0.86,
    "shallow-round-9-in": 0.83, "shallow-round-10-in": 0.75, "shallow-round-12-in": 0.86,
    "shallow-round-14-in": 0.81, "shallow-round-16-in": 0.78, "shallow-square-6-in": 0.84,
    "shallow-square-8-in": 0.83, "shallow-square-9-in": 0.86, "shallow-square-10-in": 0.81,
    "shallow-square-12-in": 0.83, "shallow-square-14-in": 0.86, "shallow-square-16-in": 0.86,
    "range-round-6-in-350-f": 0.25, "range-round-8-in-350-f": 0.47,
    "range-round-14-in-350-f": 0.83, "range-round-8-in-325-f": 0.55,
    "range-round-12-in-325-f": 0.59, "range-square-6-in": 0.34, "range-square-10-in": 0.53,
    "range-square-16-in": 0.77, "rice-sponge-18-cm": 0.59, "flax-butter-7-in": 0.47,
    "rice-pound-loaf": 0.25, "muffin-still": 0.58, "muffin-fan": 0.48, "chiffon-22-cm": 0.72,
    "chiffon-17-cm": 0.61,
}  # fmt: skip
MISSES = {
    "pound-45": "a study baked 45 g for a fixed 35 minutes, longer than until done",
    "sponge-in-paper": "a study baked for a fixed 45 minutes, in paper, in a loaded reel oven",
    "angel-350-f": "a tube tin: the model is too early in them",
    "angel-325-f": "a tube tin: the model is too early in them, and more so in a cool oven",
}


def _marks(bake: PublishedBake) -> list[pytest.MarkDecorator]:
    cited = [
        pytest.mark.source(bake.source, f"{bake.seen}: {bake.stated} (filled in: {bake.filled_in})")
    ]
    if bake.key in MISSES:
        cited.append(pytest.mark.xfail(strict=True, reason=MISSES[bake.key]))
    return cited


@pytest.mark.parametrize("key", [pytest.param(k, marks=_marks(b), id=k) for k, b in BAKES.items()])
def test_a_published_bake_lies_inside_the_interval(key: str) -> None:
    bake = BAKES[key]
    found = predict(bake.batter, bake.tin, bake.oven, count=64)
    assert isinstance(found, Prediction)
    half = (found.minutes.high - found.minutes.low) / 2
    assert agrees(
        (found.minutes.low + found.minutes.high) / 2,
        f"{(bake.low_min + bake.high_min) / 2:g}",
        within=f"{half:.1f}",
        why="the interval is the claim",
    )


@pytest.mark.pin
@pytest.mark.parametrize("key", BAKES)
def test_the_place_of_a_published_bake_has_not_moved(key: str) -> None:
    assert place(BAKES[key], count=64) == pytest.approx(PLACES[key], abs=0.035)


def test_every_published_bake_has_its_place_and_every_place_its_bake() -> None:
    assert PLACES.keys() == BAKES.keys()


def test_most_hands_bake_inside_the_interval_and_the_others_all_later() -> None:
    outside = {BAKES[key].source for key in MISSES}
    hands = {bake.source for bake in BAKES.values()}
    assert len(hands) == 15 and len(outside) == 3
    assert min(PLACES[key] for key in MISSES) > 0.9
    assert min(PLACES.values()) > 0.1


@cache
def _evidence(*kinds: str) -> HeatEvidence:
    return heat_evidence(
        tuple(b for b in BAKES.values() if b.kind in kinds and b.tin.shape != "tube")
    )


@pytest.mark.pin
def test_hands_that_bake_until_done_do_not_ask_for_another_middle() -> None:
    found = _evidence("timed", "table", "household")
    assert len(found.hands) == 7
    assert found.ln_mean == pytest.approx(-0.08, abs=0.02)
    assert found.ln_mean_error == pytest.approx(0.07, abs=0.02)
    assert abs(found.ln_mean) < 1.5 * found.ln_mean_error


@pytest.mark.pin
def test_hands_that_bake_for_a_fixed_time_bake_longer_than_until_done() -> None:
    found = _evidence("fixed")
    assert len(found.hands) == 5
    assert found.ln_mean == pytest.approx(-0.35, abs=0.02)


def test_all_hands_scatter_about_the_middle_as_the_draws_do() -> None:
    found = _evidence(*KINDS)
    pound = BAKES["pound-300-170"]
    draws = drawn(pound.batter, pound.tin, pound.oven, count=256)
    spread = np.log(simulate_many(pound.batter, pound.tin, pound.oven, draws).minutes[1:]).std()
    hot, cool = (
        simulate(pound.batter, pound.tin, replace(pound.oven, heat=h)).minutes for h in (1.1, 0.9)
    )
    slope = np.log(hot / cool) / np.log(1.1 / 0.9)
    assert found.ln_scatter == pytest.approx(spread / abs(slope), rel=0.15)


def test_one_heat_serves_the_pound_cake_at_five_temperatures() -> None:
    series = [b for b in BAKES.values() if b.source == "pound-gas-oven"]
    heat = float(np.exp(ln_heat(series[2])))
    off = [
        simulate(b.batter, b.tin, replace(b.oven, heat=heat)).minutes / b.middle_min - 1
        for b in series
    ]
    assert np.abs(off).max() < 0.08


def _core_min(batter: Batter, mass_g: float, temp_c: float) -> float:
    made = replace(batter, mass_g=mass_g)
    return simulate(made, tin("round 12 x 6 cm"), Oven(temp_c)).rule_minutes[0]


@pytest.mark.parametrize("temp_c", [150, 160, 170, 180, 190, 200])
def test_the_core_of_a_small_sponge_comes_before_a_large_one_and_that_before_a_pound_cake(
    temp_c: float,
) -> None:
    # Watanabe, Kiyoyoshi and Yamada 1992: 120 and 190 g in rounds of 12 cm; formulas filled in.
    sponge = replace(BAKES["rice-sponge-18-cm"].batter, gluten_free=False)
    pound = BAKES["pound-300-150"].batter
    small, large = _core_min(sponge, 120, temp_c), _core_min(sponge, 190, temp_c)
    assert small < large < _core_min(pound, 190, temp_c)


@pytest.mark.source("mcgee-2004", "cake pans: as much as 20 % faster than a shiny pan")
def test_a_dark_tin_bakes_as_much_faster_as_the_book_says() -> None:
    batter = BAKES["layer-test"].batter
    shiny, dark = (
        simulate(batter, tin(f"{colour}round 20 x 5 cm"), Oven(175)).minutes
        for colour in ("", "dark ")
    )
    assert agrees(
        100 * (1 - dark / shiny), "20", within="3", why="the book gives a round figure, at most"
    )


@pytest.mark.source("muffin-batter-maker", "a fan oven is about 20 % faster")
def test_a_fan_bakes_a_muffin_about_as_much_faster_as_its_maker_says() -> None:
    still, fan = (BAKES[f"muffin-{oven}"] for oven in ("still", "fan"))
    minutes = [simulate(b.batter, b.tin, b.oven).minutes for b in (still, fan)]
    assert agrees(100 * (1 - minutes[1] / minutes[0]), "20", within="6", why="the maker says about")


def _whole(temp_c: float, surface_c: float, film: str = "heat-static") -> tuple[float, float]:
    """Film plus radiation of a cake's top [W/m2K], and the radiation's part."""
    one = np.ones((1, 1))
    glow, surface = value("emissivity-cake") * STEFAN_BOLTZMANN * one, one * (surface_c + 273.15)
    total = float(outside(one * value(film), glow, one * (temp_c + 273.15), surface)[0, 0])
    return total, 1 - value(film) / total


_LOW_RADIATION = "at 186 degrees C two points less is radiation here, at a top of 100 degrees C"


@pytest.mark.source("baik-1999", "abstract: 75 to 80 % of the heat was radiation")
@pytest.mark.parametrize(
    "temp_c",
    [
        pytest.param(186.0, marks=pytest.mark.xfail(strict=True, reason=_LOW_RADIATION)),
        225.0,
    ],
)
def test_in_a_hot_still_oven_most_of_the_heat_is_radiation(temp_c: float) -> None:
    _, radiation = _whole(temp_c, 100.0)
    assert agrees(100 * radiation, "77.5", within="2.5", why="the range of the abstract")


@pytest.mark.source("baik-1999", "abstract: 20 to 48 W/m2K between 186 and 225 degrees C")
@pytest.mark.parametrize("temp_c", [186.0, 225.0])
def test_the_heat_of_a_still_oven_is_at_the_low_end_of_a_tunnel_ovens(temp_c: float) -> None:
    total, _ = _whole(temp_c, 100.0)
    assert agrees(total, "34", within="14", why="the range of the abstract")


def test_heat_rises_with_temperature_and_with_a_fan() -> None:
    # Sakin, Kaymak-Ertekin and Ilicali 2009 found both.
    still = [_whole(t, 60.0)[0] for t in (70.0, 120.0, 170.0, 220.0)]
    assert still == sorted(still)
    assert all(_whole(t, 60.0, "heat-fan")[0] > _whole(t, 60.0)[0] for t in (70.0, 220.0))


@pytest.mark.source("microwave-review", "table 4: a pound cake of 45 g lost 9.8 g of 100")
def test_the_loss_of_a_small_pound_cake_lies_inside_the_range_shown() -> None:
    bake = BAKES["pound-45"]
    found = predict(bake.batter, bake.tin, bake.oven, count=64)
    assert isinstance(found, Prediction)
    middle = (found.loss_pct.low + found.loss_pct.high) / 2
    assert agrees(
        middle, "9.8", within=f"{found.loss_pct.high - middle:.1f}",
        why="the range is the claim; the study baked twice as long as the model",
    )  # fmt: skip


def test_what_a_batter_is_made_of_is_worked_out_and_not_printed_anywhere() -> None:
    found = load("published_batters.csv", BATTER_COLUMNS)
    rows = {row.text("key"): row.text("status") for row in found}
    assert rows["angel"] == rows["rice-cup-sponge"] == "derived"
    assert "published" not in rows.values()


def test_a_published_bake_says_what_was_stated_and_what_was_filled_in() -> None:
    assert len(BAKES) == 42
    for bake in BAKES.values():
        assert bake.seen and bake.stated and bake.filled_in and bake.kind in KINDS, bake.key
        assert 0 < bake.low_min <= bake.high_min, bake.key
        assert bake.tin.material in ("aluminium", "glass") and wall(bake.tin.material)
        assert sum(bake.batter.parts) == pytest.approx(1.0)


@cache
def _page() -> str:
    return (Path(__file__).parents[2] / "docs" / "models" / "bake.md").read_text(encoding="utf-8")


def test_the_page_of_the_model_gives_the_same_places_and_heats() -> None:
    rows = [line.split(" | ") for line in _page().splitlines() if line.count(" | ") == 6]
    printed = {cells[0].removeprefix("| "): (cells[2], cells[5], cells[6]) for cells in rows}
    hands: dict[str, list[PublishedBake]] = {}
    for bake in BAKES.values():
        hands.setdefault(bake.source, []).append(bake)
    for hand, bakes in hands.items():
        places = [PLACES[bake.key] for bake in bakes]
        count, place_of, heat = printed[hand]
        low, high = (float(each) for each in (place_of.split(" to ") * 2)[:2])
        assert int(count) == len(bakes), hand
        assert (low, high) == pytest.approx((min(places), max(places)), abs=0.03), hand
        assert heat == f"{np.mean([ln_heat(bake) for bake in bakes]):+.2f} |", hand


def _pooled(found: HeatEvidence) -> str:
    return f"{found.ln_mean:.2f} ± {found.ln_mean_error:.2f}".replace("-", "−")


def test_the_page_of_the_model_has_the_heat_of_hands_and_ovens_as_it_is() -> None:
    done, fixed = _evidence("timed", "table", "household"), _evidence("fixed")
    whole = _evidence(*KINDS)
    assert f"household) ln heat {_pooled(done)}, seven hands" in _page()
    assert f"for a fixed time {_pooled(fixed)}, five; all {_pooled(whole)}." in _page()
    assert f"scatter about the middle by {whole.ln_scatter:.2f};" in _page()
    low, high = (100 * _whole(temp_c, 100.0)[1] for temp_c in (186.0, 225.0))
    assert f"with {low:.0f} to {high:.0f} % radiation" in _page()
    inside = f"{len(BAKES) - len(MISSES)} of {len(BAKES)} bakes; 12 of 15 hands"
    assert f"Inside the interval: {inside}." in _page()
