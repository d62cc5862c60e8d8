"""The hardest limit wins and is named; what is not known promises nothing."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.build import formula_names, read_torte
from krume.design import Formula, read
from krume.keep import Keeping, assess
from krume.label import family_key
from krume.usecases.book.book import demo_files


def formula(name: str) -> Formula:
    """A formula of the demo studio."""
    return read(demo_files()[f"formulas/{name}.txt"].decode("utf-8")).value


def keeping(*names: str) -> Keeping:
    """Keeping of formulas of the demo together."""
    found = {name: formula(name) for name in names}
    return assess(found, {name: family_key(f) for name, f in found.items()})


def typed(text: str) -> Keeping:
    """Keeping of a typed formula."""
    found = read(text, eggs_region="eu").value
    return assess({"X": found}, {"X": family_key(found)})


def of_torte(name: str) -> Keeping:
    """Keeping of a torte of the demo."""
    plan = read_torte(demo_files()[f"tortes/{name}.txt"].decode("utf-8")).value
    return keeping(*formula_names(plan))


@pytest.mark.parametrize(
    ("name", "low", "high", "of"),
    [
        ("T1", 72, 120, {"C1"}),
        ("T2", 72, 120, {"C2"}),
        ("T3", 72, 120, {"C2", "C4"}),
        ("TART", 120, 168, {"C3"}),
    ],
)
def test_the_hardest_limit_of_a_torte_is_named_with_its_component(
    name: str, low: float, high: float, of: set[str]
) -> None:
    kept = of_torte(name)
    assert kept.cold_h is not None
    assert (kept.cold_h.low, kept.cold_h.high) == (low, high)
    papers = {"activity-estimate", "not-measured", "mould-free", "cold-within"}
    assert {r.of for r in kept.reasons if r.of and r.key not in papers} == of


def test_time_without_cooling_is_only_named_with_its_rule_and_its_conditions() -> None:
    kept = of_torte("T1")
    assert kept.room_h is not None
    assert (kept.room_h.low, kept.room_h.high) == (4.0, 6.0)
    said = [r.text for r in kept.reasons if r.key.startswith("room-")]
    assert all("3-501.19" in text and "where your law takes it over" in text for text in said)
    assert any("21 °C" in text for text in said)


EVERY = "F1 F2 F3 F4 F5 F6 F7 C1 C2 C3 C4 C5 S1".split()


@pytest.mark.parametrize("name", EVERY)
def test_nothing_says_that_it_is_safe(name: str) -> None:
    kept = keeping(name)
    words = " ".join([*(r.text for r in kept.reasons), *(c.text for c in kept.cautions)])
    assert "safe" not in words.casefold()
    assert "law" in words


def test_a_component_nobody_knows_promises_nothing_for_the_whole() -> None:
    odd = read("Blue wobble\n\n100 g water\n3 g salt\n").value
    kept = assess({"C1": formula("C1"), "X": odd}, {"C1": "custard-lightened", "X": None})
    assert kept.cold_h is None
    assert kept.room_h is None
    assert kept.least_days is None
    assert [r.of for r in kept.reasons if r.key == "unknown-component"] == ["X"]


CREAM = "Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g sugar\n8 g powdered gelatine\n"


def test_raw_egg_shortens_the_days_and_takes_the_time_without_cooling() -> None:
    raw = typed(f"{CREAM}2 egg yolks, EU M\n\nWhip and fold.")
    cooked = typed(f"{CREAM}2 egg yolks, EU M\n\nBoil the yolks, whip and fold.")
    assert raw.cold_h is not None
    assert cooked.cold_h is not None
    assert raw.cold_h.high < cooked.cold_h.low
    assert raw.room_h is None
    assert any(c.key == "raw-egg" for c in raw.cautions)
    assert any(c.key == "heated-egg" for c in cooked.cautions)


def test_egg_of_unknown_heat_is_treated_as_raw() -> None:
    kept = typed(f"{CREAM}2 egg yolks, EU M\n")
    assert kept.cold_h == typed(f"{CREAM}2 egg yolks, EU M\n\nWhip and fold.").cold_h
    assert any(c.key == "egg-heat-unknown" for c in kept.cautions)


@pytest.mark.parametrize(
    ("lines", "key"),
    [
        ("", "not-measured"),
        ("pH: 4.0\n", "not-measured"),
        ("pH: 5.2\nWater activity: 0.97\n", "assess"),
        ("pH: 4.1\nWater activity: 0.86\n", "need-not"),
        ("pH: 40\nWater activity: 0.9\n", "not-measured"),
        ("pH: 4.1 to 5.2\nWater activity: 0.90 - 0.97\n", "assess"),
        ("pH: 4.1 (measured)\nWater activity: about 0,86\n", "need-not"),
    ],
)
def test_without_both_measured_numbers_it_is_treated_as_needing_the_cold(
    lines: str, key: str
) -> None:
    kept = typed(CREAM.replace("\n\n", f"\n{lines}\n", 1))
    assert key in [r.key for r in kept.reasons]


@pytest.mark.parametrize(
    "line",
    ["pH: 0", "pH: nan", "pH: 40", "Water activity: 0", "Water activity: 93 %",
     "Water activity: inf"],
)  # fmt: skip
def test_a_figure_that_no_food_has_counts_as_not_measured_and_is_named(line: str) -> None:
    other = "Water activity: 0.86" if line.startswith("pH") else "pH: 4.1"
    kept = typed(CREAM.replace("\n\n", f"\n{line}\n{other}\n\n", 1))
    said = {reason.key: reason.text for reason in kept.reasons}
    assert "not-measured" in said
    assert f"'{line}' is no figure" in said["figure-not-counted"]


@given(
    st.lists(st.sampled_from(EVERY), min_size=1, max_size=4, unique=True), st.sampled_from(EVERY)
)
def test_one_more_component_never_lengthens_it(names: list[str], more: str) -> None:
    before, after = keeping(*names), keeping(*names, more)
    assert before.cold_h is not None
    assert after.cold_h is not None
    assert after.cold_h.low <= before.cold_h.low
    assert after.cold_h.high <= max(before.cold_h.high, after.cold_h.high)


def test_nothing_is_promised_beyond_the_date_mark() -> None:
    kept = keeping("S1")
    assert kept.cold_h is not None
    assert kept.cold_h.high == 168.0
    assert kept.least_days == 7


@pytest.mark.parametrize(
    ("lines", "key"),
    [
        ("pH: 4.1 (planned)\nWater activity: 0.86", "figure-not-counted"),
        ("pH: 4.1 plan\nWater activity: 0.86", "figure-not-counted"),
        ("pH: 4.1?\nWater activity: 0.86", "figure-not-counted"),
        ("pH: 4.1\nWater activity: 0.86 (estimate)", "figure-not-counted"),
        ("pH: 4.1\npH: low\nWater activity: 0.86", "figure-not-counted"),
        ("pH: 4.0\npH: 4.2\nWater activity: 0.86", "figure-twice"),
    ],
)
def test_a_figure_that_is_planned_or_said_twice_is_not_measured(lines: str, key: str) -> None:
    kept = typed(CREAM.replace("\n\n", f"\n{lines}\n\n", 1))
    assert {"not-measured", key} <= {reason.key for reason in kept.reasons}


@pytest.mark.parametrize("nuts", ["whole almonds", "ground hazelnuts"])
def test_whipped_cream_with_nuts_is_no_baked_cake(nuts: str) -> None:
    text = "Nut cream\n\n200 g whipping cream\n{}50 g caster sugar\n\nWhip."
    plain, mixed = typed(text.format("")), typed(text.format(f"30 g {nuts}\n"))
    assert plain.cold_h is not None
    assert mixed.cold_h == plain.cold_h
