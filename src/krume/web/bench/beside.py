"""What stands beside a weighing: its clocks, what occupies the oven, its cup; as plain values."""

import json
from typing import Any

from krume.usecases import (
    Asked,
    Bench,
    BenchClock,
    ClockSaid,
    CupSaid,
    EndSaid,
    clocks_beside,
    cup_at_bench,
)
from krume.web.bench.showing import state_of


def whole_state(bench: Bench, asked: Asked) -> dict[str, object]:
    """All that a page of the bench goes on from when the network is gone."""
    return state_of(bench) | _beside(bench, asked)


def small_state(bench: Bench, asked: Asked) -> str:
    """What the pages of the clock, the cup and the end go on from, as JSON."""
    small = {"key": bench.key, "state": bench.state, "now": bench.now_utc}
    return json.dumps(small | _beside(bench, asked), ensure_ascii=False, separators=(",", ":"))


def _beside(bench: Bench, asked: Asked) -> dict[str, object]:
    found, cup = clocks_beside(bench, asked), cup_at_bench(bench, asked)
    is_mine = found.busy is not None and found.busy.weighing == bench.key
    return {
        "clocks": [_clock(each) for each in found.clocks],
        "busy": None if found.busy is None or is_mine else _clock(found.busy),
        "cup": {
            "empty_g": cup.empty_g, "water_g": cup.water_g, "batter_g": cup.batter_g, "sg": cup.sg
        },
    }  # fmt: skip


def _clock(clock: BenchClock) -> dict[str, object]:
    return {
        "id": clock.client_id, "kind": clock.kind, "started": clock.started_at,
        "stopped": clock.stopped_at, "reason": clock.reason,
    }  # fmt: skip


def said_beside(each: dict[str, Any]) -> CupSaid | ClockSaid | EndSaid | None:
    """A cup, a clock or an end as the script says it; None for any other thing."""
    kind, client_id = each["kind"], str(each["id"])
    if kind == "cup":
        empty, water, batter = (float(each[n]) for n in ("empty_g", "water_g", "batter_g"))
        return CupSaid(client_id, empty, water, batter)
    if kind in ("clock-start", "clock-stop"):
        return ClockSaid(
            client_id,
            kind=str(each["clock"]),
            is_start=kind == "clock-start",
            at=str(each.get("at") or ""),
            reason=str(each.get("reason") or ""),
            is_late=bool(each.get("late")),
        )
    if kind == "end":
        typed = each["typed"]
        return EndSaid(client_id, {str(name): str(value) for name, value in typed.items()})
    return None
