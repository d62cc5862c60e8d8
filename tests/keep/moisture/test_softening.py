"""`krume.keep.moisture.softening`: when a base is soft, and what a film buys."""

from dataclasses import replace

import pytest

from krume.keep import SoftBase, moisture_figure
from krume.keep.moisture.slabs import Slab, column_of
from krume.keep.moisture.softening import HoursUntil, soft_base
from tests.agreement import agrees
from tests.keep.moisture.studio import FAMILIES, holds, torte


def slabs() -> tuple[Slab, ...]:
    found = column_of(torte("TART"), holds(), FAMILIES, soak_mm=6.0)
    assert found is not None
    return found.slabs


def base(*changed: Slab, temp_c: float = 5.0) -> SoftBase:
    found = soft_base(changed or slabs(), temp_c)
    assert found is not None
    return found


@pytest.mark.source("katz-labuza-1981", "abstract")
def test_the_bounds_of_crisp_are_the_printed_ones() -> None:
    assert agrees(moisture_figure("crisp-least"), "0.35")
    assert agrees(moisture_figure("crisp-most"), "0.50")


@pytest.mark.source("biquet-labuza-1988", "abstract")
def test_the_film_that_is_compared_is_the_measured_one() -> None:
    assert agrees(base().film_mm, "0.6")


def test_as_planned_the_base_of_the_tart_is_soft_before_it_is_filled() -> None:
    found = base()
    assert found.start_activity > moisture_figure("crisp-most")
    assert found.planned == HoursUntil(0.0, 0.0, 0.0)
    assert 0.9 < found.crisp_share < 1.0


def test_a_crisp_base_loses_its_bite_before_it_is_soft_and_a_film_delays_it() -> None:
    found = base()
    assert found.bite.best is not None and found.crisp.best is not None
    assert found.film.best is not None
    assert 0 < found.bite.best < found.crisp.best < found.film.best
    assert found.closed.best is None or found.closed.best > found.film.best


def test_paces_run_from_fast_to_slow() -> None:
    found = base().crisp
    assert found.low is not None and found.best is not None and found.high is not None
    assert found.low < found.best < found.high


def test_in_the_warm_it_is_soft_sooner() -> None:
    cold, warm = base().crisp.best, base(temp_c=20.0).crisp.best
    assert cold is not None and warm is not None
    assert warm < cold


def test_a_drier_base_begins_crisper() -> None:
    floor, *rest = slabs()
    dry = base(replace(floor, water=floor.water / 3), *rest)
    assert dry.start_activity < moisture_figure("crisp-least")
    assert dry.planned.best is not None and dry.planned.best > 0
    assert dry.crisp_share > 1.0


def test_a_sponge_is_no_base_that_could_go_soft() -> None:
    found = column_of(torte("T1"), holds(), FAMILIES, soak_mm=6.0)
    assert found is not None
    assert soft_base(found.slabs, 5.0) is None
    assert soft_base(slabs()[:1], 5.0) is None
