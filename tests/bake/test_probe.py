"""From a measured core to the wanted one: how long, how sure, and when the model cannot say."""

import math
from dataclasses import replace

import pytest

from krume.bake import Bake, Batter, Oven, ToCore, likeliest, to_core
from krume.base import Infeasible, OutOfRangeError, as_text
from krume.size import Tin, read_tin

# F1 of the model's golden runs.
BATTER = Batter(
    540, 0.48, 0.395, 0.084, 0.094, 0.399, 0.017, 0.011, 0.257, core_c=95.0, density_measured=True
)
TIN = read_tin("round 20 x 7 cm").value
OVEN = Oven(170.0)


def _left(core_c: float, after_min: float | None = None) -> ToCore:
    assert TIN is not None
    found = to_core(BATTER, TIN, OVEN, core_c=core_c, after_min=after_min)
    assert not isinstance(found, Infeasible)
    return found


def test_the_likeliest_curve_is_within_the_answer() -> None:
    assert TIN is not None
    bake = likeliest(BATTER, TIN, OVEN)
    assert not isinstance(bake, Infeasible)
    pairs = zip(bake.curve.time_min, bake.curve.core_c, strict=True)
    minute, core = next((m, c) for m, c in pairs if c >= 80)
    left = bake.rule_minutes[0] - minute
    found = _left(core, minute)
    assert found.minutes.low <= left <= found.minutes.high
    assert found.pace_factor == pytest.approx(1.0, abs=0.25)


def test_nearer_to_the_end_it_is_shorter_and_surer() -> None:
    spans = [_left(core, after).minutes for core, after in ((50, 17), (70, 23), (90, 30))]
    assert spans[0].best > spans[1].best > spans[2].best
    widths = [each.high - each.low for each in spans]
    assert widths[0] > widths[2]


def test_a_slow_oven_has_longer_to_go_from_the_same_core() -> None:
    assert _left(70, 35).minutes.best > 1.3 * _left(70, 23).minutes.best


def test_minutes_so_far_narrow_the_doubt() -> None:
    without, with_them = _left(60).minutes, _left(60, 20).minutes
    assert (with_them.high - with_them.low) < (without.high - without.low)


def test_a_core_that_is_there_has_nothing_left() -> None:
    found = _left(95.0, 33)
    assert found.minutes.high == 0
    assert found.notices[0].code == "core-there"


def test_a_pace_beyond_the_doubt_is_said() -> None:
    assert _left(93, 12).notices[0].code == "pace-far"
    assert _left(93, 30).notices == ()


@pytest.mark.parametrize(("core_c", "name"), [(15.0, "core"), (104.0, "core")])
def test_a_core_that_cannot_be_is_refused_by_name(core_c: float, name: str) -> None:
    assert TIN is not None
    found = to_core(BATTER, TIN, OVEN, core_c=core_c)
    assert isinstance(found, Infeasible)
    assert found.clashes[0].name == name


def test_batter_above_the_rim_has_no_answer() -> None:
    low = read_tin("round 16 x 4 cm").value
    assert low is not None
    assert isinstance(to_core(BATTER, low, OVEN, core_c=60.0), Infeasible)
    assert isinstance(likeliest(BATTER, low, OVEN), Infeasible)


def test_a_core_that_is_never_reached_is_not_promised() -> None:
    assert TIN is not None
    cold = replace(OVEN, temp_c=100.0)
    assert isinstance(to_core(BATTER, TIN, cold, core_c=60.0), Infeasible)


def _said(core_c: float, pan: Tin | None = TIN, oven: Oven = OVEN) -> str:
    assert pan is not None
    found = to_core(BATTER, pan, oven, core_c=core_c)
    assert isinstance(found, Infeasible)
    return found.clashes[0].said


def test_what_a_probe_cannot_have_read_is_told_with_where_to_look() -> None:
    boils = likeliest(BATTER, _tin(), OVEN)
    assert isinstance(boils, Bake)
    assert _said(120.0) == (
        f"A wet crumb does not get hotter than it boils, {boils.boiling_c:.1f} °C; 120 °C were "
        "read. Look where the probe stands."
    )
    assert _said(BATTER.temp_c) == (
        "The core only gets warmer in the oven: the batter goes in at "
        f"{as_text(BATTER.temp_c, 1)} °C, {as_text(BATTER.temp_c, 1)} °C were read. Look where the "
        "probe stands."
    )
    assert _said(60.0, replace(_tin(), height_cm=3.0)) == (
        "540 g stands 3.6 cm deep in a tin of 3 cm; 452 g fit."
    )
    assert _said(60.0, oven=replace(OVEN, temp_c=100.0)) == (
        "More than a tenth of the draws do not get to a core of 95 °C within 200 minutes. No "
        "minutes are given."
    )


def _tin() -> Tin:
    assert TIN is not None
    return TIN


@pytest.mark.parametrize(
    ("core_c", "after_min", "field"),
    [
        (80.0, 0.0, "after_min"), (80.0, -5.0, "after_min"), (80.0, math.nan, "after_min"),
        (80.0, math.inf, "after_min"), (math.nan, 20.0, "core_c"), (math.inf, None, "core_c"),
    ],
)  # fmt: skip
def test_a_reading_that_tells_nothing_is_refused_and_never_nothing_left(
    core_c: float, after_min: float | None, field: str
) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        _left(core_c, after_min)
    assert refused.value.field == field
