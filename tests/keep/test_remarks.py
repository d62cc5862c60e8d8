"""Remarks beside a keeping: each says that it is none of the things it could be taken for."""

from krume.base import Interval
from krume.design import read
from krume.keep.remarks import remarks_on

NONE: frozenset[str] = frozenset()
SPONGE = read("Sponge\n\n100 g rice flour\n5 eggs, EU M\n100 g sugar\n\nBake.\n").value
MOUSSE = read("Mousse\n\n70 g egg yolk\n100 g sugar\n200 g cream\n\nWhisk.\n").value


def test_a_crumb_has_its_water_activity_and_mould_free_days_by_that() -> None:
    found = {
        each.key: each
        for each in remarks_on(
            "F9", SPONGE, "separated", activity=Interval(0.86, 0.88, 0.90), traits=NONE
        )
    }
    assert "about 0.88" in found["activity-estimate"].text
    assert "4 to 8 days at 21 °C" in found["mould-free"].text
    assert "says nothing of other germs" in found["mould-free"].text


def test_a_crumb_wetter_than_the_line_is_promised_no_day() -> None:
    wet = Interval(0.93, 0.95, 0.97)
    found = {
        r.key: r.text for r in remarks_on("F9", SPONGE, "separated", activity=wet, traits=NONE)
    }
    assert "4 days at most at 21 °C" in found["mould-free"]


def test_a_cream_has_no_mould_free_days() -> None:
    keys = [
        each.key
        for each in remarks_on(
            "C9", MOUSSE, "fruit-mousse", activity=Interval(0.9, 0.92, 0.94), traits=NONE
        )
    ]
    assert keys == ["activity-estimate", "cold-within"]


def test_raw_egg_is_told_what_to_take_in_its_place() -> None:
    found, cold = remarks_on(
        "C9", MOUSSE, "fruit-mousse", activity=None, traits=frozenset({"raw-egg"})
    )
    assert "within 4 h of being mixed" in cold.text
    assert "70 g of pasteurised egg yolk" in found.text


def test_alcohol_is_a_range_and_heat_never_takes_all() -> None:
    syrup = read("Syrup\n\n100 g sugar\n100 g water\n40 g rum\n").value
    (found,) = remarks_on("S9", syrup, "syrup", activity=None, traits=NONE)
    assert "70 to 100 %" in found.text
    assert "Heat never takes all" in found.text
