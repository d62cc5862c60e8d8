"""Findings, in words and grams."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval
from krume.design.bands import Band, band
from krume.design.findings import Finding, finding, near_edge
from krume.design.ratios import Value, basis_of, percent, ratio
from krume.design.shares import Sums, sums
from tests.design import planned as p


def usual(family: str, quantity: str) -> Band:
    found = band(family, quantity)
    assert found is not None
    return found


def judged(family: str, quantity: str, value: Value) -> Finding | None:
    return finding(usual(family, quantity), value, sums=Sums(), basis=None)


def test_a_figure_below_its_band_is_said_in_plain_words() -> None:
    found = judged("separated", "starch", 100 * 31.2 / 105)
    assert found is not None
    assert (found.code, found.low, found.high) == ("starch-low", 30, 50)
    assert found.status == "common practice"
    assert found.text == "Starch 29.7 %; usual is 30 to 50."


@pytest.mark.parametrize("value", [30.0, 50.0, 40.0, 30.0 - 1e-12, None])
def test_an_edge_is_inside_and_unknown_finds_nothing(value: float | None) -> None:
    assert judged("separated", "starch", value) is None


def test_a_figure_just_outside_is_not_printed_as_the_edge() -> None:
    found = judged("separated", "starch", 29.98)
    assert found is not None
    assert found.text.startswith("Starch 29.98 %")


def test_above_sixty_percent_starch_the_finding_says_what_happens() -> None:
    modest, heavy = judged("separated", "starch", 55.0), judged("separated", "starch", 61.0)
    assert modest is not None
    assert heavy is not None
    assert (modest.warns, heavy.warns) == (False, True)
    assert "gummy" in heavy.text


def test_none_is_the_word_where_the_usual_is_nothing() -> None:
    found = judged("angel", "added_fat", 5.0)
    assert found is not None
    assert found.text == "Added fat 5 %; usual is none."


def test_an_interval_is_judged_by_its_best_value_and_shown_whole() -> None:
    found = judged("separated", "egg", Interval(150.0, 180.0, 210.0))
    assert found is not None
    assert found.text == "Egg 150 to 210 %; usual is 200 to 340."
    assert judged("separated", "egg", Interval(190.0, 220.0, 250.0)) is None


def test_a_doubt_that_crosses_an_edge_is_remarked() -> None:
    remark = near_edge(usual("separated", "egg"), Interval(190.0, 270.0, 280.0))
    assert remark is not None
    assert remark.code == "egg-near-low"


@pytest.mark.parametrize(
    ("value", "code"),
    [(31.4, "starch-near-low"), (49.0, "starch-near-high"), (40.0, None), (33.0, None)],
)
def test_near_an_edge_is_within_a_share_of_the_band(value: float, code: str | None) -> None:
    remark = near_edge(usual("separated", "starch"), value)
    assert (remark.code if remark else None) == code


def test_an_edge_of_nothing_is_no_edge() -> None:
    assert near_edge(usual("separated", "added_fat"), 0.0) is None


def outside(family: str, quantity: str, added: Sums) -> Finding | None:
    basis = basis_of(added, "flour", ("flour",))
    value = (
        ratio(added, "sugar", "egg")
        if quantity == "sugar_per_egg"
        else percent(added, quantity, basis)
    )
    return finding(usual(family, quantity), value, sums=added, basis=basis)


def test_the_way_back_inside_is_said_in_grams() -> None:
    added = sums([p.line(3, p.RICE, 73.8), p.line(4, p.POTATO, 31.2)])
    found = outside("separated", "starch", added)
    assert found is not None
    assert found.change_g == pytest.approx(0.3 / 0.7, abs=1e-9)
    assert found.text.endswith("0.43 g more starch, the rest as it is, comes back inside.")


@given(rice=st.floats(20.0, 200.0), sugar=st.floats(1.0, 600.0), egg=st.floats(1.0, 900.0),
       starch=st.floats(1.0, 400.0))  # fmt: skip
def test_the_grams_of_a_finding_do_lead_back_inside(
    rice: float, sugar: float, egg: float, starch: float
) -> None:
    masses = {p.RICE: rice, p.SUGAR: sugar, p.EGG: egg, p.POTATO: starch}
    moved = {"egg": p.EGG, "sugar": p.SUGAR, "starch": p.POTATO, "sugar_per_egg": p.SUGAR}
    for quantity, key in moved.items():
        found = outside("separated", quantity, sums([p.line(3, k, g) for k, g in masses.items()]))
        if found is None:
            continue
        assert found.change_g is not None
        after = masses | {key: masses[key] + found.change_g}
        back = outside("separated", quantity, sums([p.line(3, k, g) for k, g in after.items()]))
        assert back is None
