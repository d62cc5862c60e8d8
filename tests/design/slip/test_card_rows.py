"""A corrected card is followed row by row from the bowls as they stand."""

import pytest

from krume.design import Weighing, weigh_out
from krume.design.slip.card_rows import ALREADY, TAKE_OUT, corrected_rows
from krume.design.slip.judging import at_masses
from tests.design.slip.demo import F2_SLIP, formula, rescued, way

WEIGHED = {"white rice": 40.0, "teff": 20.0, "potato": 30.0, "sweet": 9.0, "maize": 6.0}


def _rows(name: str, weighed: dict[str, float], kind: str, **more: object) -> Weighing:
    found = rescued(name, weighed, **more)
    chosen = way(found, kind)
    return corrected_rows(weigh_out(at_masses(formula(name), chosen.card_g)), found, chosen)


def test_a_jar_is_weighed_on_from_what_the_display_shows() -> None:
    rows = _rows("F2", F2_SLIP, "jar").rows[:7]
    assert rows[0].take == "Dry bowl: leave the scale as it is, the display shows 66"
    assert [row.add_g for row in rows[1:]] == pytest.approx([66, 12, 39, 11.7, 7.8, -31.5])
    assert [row.display_g for row in rows[1:]] == pytest.approx([66, 78, 117, 128.7, 136.5, 105])
    assert (rows[1].mark, rows[6].mark) == (ALREADY, TAKE_OUT)
    assert rows[6].take == "Mix it well, then take out into the labelled jar"


def test_with_the_total_held_the_last_display_is_the_planned_one() -> None:
    rows = _rows("F2", F2_SLIP, "hold").rows[:5]
    assert [row.display_g for row in rows[1:]] == pytest.approx([66, 92, 99.8, 105])


@pytest.mark.parametrize("kind", ["jar", "leave", "hold", "scale", "scale-exact"])
def test_the_displays_add_up_to_this_cake(kind: str) -> None:
    found = rescued("F2", F2_SLIP)
    cake = sum(mass or 0.0 for mass in way(found, kind).card_g)
    assert _rows("F2", F2_SLIP, kind).total_g == pytest.approx(cake)


def test_whole_eggs_already_broken_are_in_both_bowls() -> None:
    found = _rows("F2", {**WEIGHED, "eggs": 204.0}, "down", closed=("eggs",))
    eggs = [row for row in found.rows if row.kind == "egg"]
    assert [(row.add_g, row.mark) for row in eggs] == [(70.0, ALREADY), (134.0, ALREADY)]
    outs = [row.add_g for row in found.rows if row.mark == TAKE_OUT]
    assert outs == pytest.approx([-21.0])
    assert found.total_g == pytest.approx(519 * 0.8)


def test_what_two_bowls_share_is_not_said_to_lie_in_one_of_them() -> None:
    rows = _rows("F2", {"sugar": 140.0}, "scale").rows
    assert all(row.mark != ALREADY for row in rows)
    assert sum(row.add_g or 0.0 for row in rows if row.take.startswith("caster sugar")) == 156.0


def test_where_nothing_is_weighed_the_rows_are_the_plans() -> None:
    found = rescued("F2", {})
    plain = weigh_out(formula("F2"))
    assert corrected_rows(plain, found, way(found, "add")).rows == plain.rows


def test_rows_are_numbered_through() -> None:
    rows = [row for row in _rows("F2", F2_SLIP, "jar").rows if row.kind != "tare"]
    assert [row.number for row in rows] == list(range(1, len(rows) + 1))
