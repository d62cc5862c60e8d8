"""Foams solid, loads open, on one line with where it is now."""

from datetime import UTC, datetime

from krume.usecases import PlanTask
from krume.web.today.strip import WIDTH, day_strip

_NOW = datetime(2027, 6, 10, 8, 38, tzinfo=UTC)


def _task(step: str, start: tuple[int, int], end: tuple[int, int]) -> PlanTask:
    first, last = (_NOW.replace(hour=h, minute=m) for h, m in (start, end))
    return PlanTask(
        step, first, last, "Oda", (), step, "F1", None, None,
        cannot_move=True, slack_min=0, status="assumed",
    )  # fmt: skip


def test_a_foam_goes_before_its_load_and_now_before_both() -> None:
    tasks = (_task("foam", (8, 50), (9, 9)), _task("bake", (9, 11), (9, 49)))
    found = day_strip((*tasks, _task("kit", (7, 30), (8, 42))), _NOW)
    assert found is not None
    foam, load = found.bars
    assert (foam.is_foam, load.is_foam) == (True, False)
    assert 0 < found.now_x < foam.x < foam.x + foam.wide < load.x < WIDTH
    assert abs(load.wide - 2 * foam.wide) < 0.2
    assert "Foams, solid: 1. Oven loads, open: 1. From 08:50 to 09:49" in found.sentence


def test_hours_are_said_at_their_own_tick_and_few_of_them() -> None:
    found = day_strip((_task("foam", (8, 50), (18, 9)),), _NOW)
    assert found is not None
    said = [tick.label for tick in found.ticks if tick.label]
    assert said == ["9:00", "12:00", "15:00", "18:00"]


def test_a_day_without_foam_and_load_has_no_strip() -> None:
    assert day_strip((_task("kit", (8, 50), (9, 9)),), _NOW) is None
