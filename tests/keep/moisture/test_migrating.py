"""`krume.keep.moisture.migrating`: what the demo studio's tortes give and take."""

import math
from dataclasses import replace

import pytest

from krume.keep import Migration, migration
from krume.keep.moisture.migrating import HOURS
from tests.keep.moisture.studio import FAMILIES, holds, torte


def moved(name: str, temp_c: float = 5.0) -> Migration:
    found = migration(torte(name), holds(), FAMILIES, temp_c=temp_c)
    assert found is not None
    return found


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART"])
def test_what_some_layers_give_others_take(name: str) -> None:
    found = moved(name)
    for at in range(len(HOURS)):
        assert abs(math.fsum(each.change_g[at] for each in found.layers)) < 1e-9
    assert found.lost_g < 1e-9


def test_in_t1_the_cream_gives_and_the_sponge_takes() -> None:
    whole = torte("T1")
    by_role = {whole.layers[each.index].role: each for each in moved("T1").layers}
    assert by_role["filling"].day_3_g.high < 0 < by_role["piece"].day_3_g.low
    assert by_role["filling"].start_activity > by_role["piece"].start_activity


def test_every_interval_runs_from_low_to_high_and_is_finite() -> None:
    for each in moved("T3").layers:
        for span in (each.day_1_g, each.day_3_g):
            assert span.low <= span.best <= span.high
            assert math.isfinite(span.low) and math.isfinite(span.high)
        assert 0 < each.start_activity < 1 and 0 < each.end_activity < 1


def test_in_the_warm_more_moves() -> None:
    cold, warm = moved("T1"), moved("T1", 20.0)
    assert abs(warm.layers[1].day_3_g.best) > 1.5 * abs(cold.layers[1].day_3_g.best)


def test_more_moves_in_three_days_than_in_one_and_half_of_it_before_two() -> None:
    found = moved("T1")
    for each in found.layers:
        assert abs(each.day_3_g.best) >= abs(each.day_1_g.best)
    assert 0 < found.half_h.low <= found.half_h.best <= found.half_h.high < 48


def test_layers_of_the_same_make_move_next_to_nothing() -> None:
    same = dict.fromkeys(holds(), holds()["C1"])
    found = migration(torte("T1"), same, FAMILIES, temp_c=5.0)
    assert found is not None
    assert all(abs(each.day_3_g.best) < 0.01 for each in found.layers)


def test_what_is_not_known_is_no_migration() -> None:
    assert migration(torte("T1"), {}, FAMILIES, temp_c=5.0) is None
    whole = torte("T2")
    assert migration(replace(whole, turns=None), holds(), FAMILIES, temp_c=5.0) is None
