"""The order a torte is built in: what waits, what may be made ahead, what is not known."""

from dataclasses import replace

from krume.usecases import Asked, build_torte
from krume.usecases.torte.build import parts_of, torte_of
from krume.usecases.torte.order import build_order


def test_the_demo_torte_waits_for_its_custard_and_its_cold(demo: Asked) -> None:
    order = build_torte("T1", demo).result.order
    assert order is not None
    waits = [step.words for step in order.steps if not step.by_hand]
    assert waits == ["cool", "cool to 20 C", "chill", "cold before it is cut"]
    assert order.waits_min == 30 + 120 + 30 + 240
    assert order.hands_min == 5 + 20 + 8 + 15 + 16 + 12


def test_what_sets_where_it_is_put_is_made_on_the_day(demo: Asked) -> None:
    order = build_torte("T3", demo).result.order
    assert order is not None
    days = {row.name: row.days for row in order.ahead}
    assert days == {"F4": 2.0, "S1": 3.0, "C2": 0.0, "C4": 1.0}
    assert any(line.startswith("On the day it is built: Set yoghurt") for line in order.lines)


def test_how_far_ahead_an_unknown_cream_goes_is_not_known(demo: Asked) -> None:
    made = torte_of("T1", demo)
    parts = parts_of(made.formulas)
    parts = {**parts, "C1": replace(parts["C1"], family=None)}
    order = build_order(made.torte, parts)  # type: ignore[arg-type]
    assert "How far ahead is not known: Vanilla custard cream" in order.lines
