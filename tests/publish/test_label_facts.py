"""The US nutrition box: measured from the finished PDF against the rule's own dimensions."""

from dataclasses import replace
from itertools import pairwise

import pytest

from krume.base import OutOfRangeError
from krume.properties import constants
from krume.publish import FactsBox, LabelSheet, NetWords, label_layout, label_pdf
from krume.publish.label_facts import arrangements_let, facts_lines, footnote
from tests.agreement import agrees
from tests.publish.drawn import Drawn, drawn
from tests.publish.labels import facts_box, label, us_label

MAIN = (
    "Total Fat", "Saturated Fat", "Trans Fat", "Cholesterol", "Sodium", "Total Carbohydrate",
    "Dietary Fiber", "Total Sugars", "Added Sugars", "Protein",
)  # fmt: skip
SLACK_PT = 0.01
VITAMINS = ("Vitamin D", "Calcium", "Iron", "Potassium")
WIDE = replace(
    label_layout("roll-100x100"), page_width_mm=180.0, label_width_mm=180.0, column_pitch_mm=180.0
)


@pytest.fixture(scope="module")
def vertical() -> Drawn:
    """The box on an A4 page, where nothing presses on it."""
    return drawn(label_pdf(us_label(), label_layout("a4-1")))


def small(area_cm2: float | None = 200.0) -> LabelSheet:
    """A label of few words on a small package."""
    bare = replace(label(market="us", ingredients="sugar"), sentences=(), panel=facts_box())
    net = NetWords(("NET WT", "3 OZ", "(85 g)"), 1.6)
    return replace(bare, net=net, area_cm2=area_cm2, imprint=replace(bare.imprint, notes=()))


@pytest.fixture(scope="module")
def tabular() -> Drawn:
    """The box of a package of 200 cm2 on a wide and low label."""
    low = replace(WIDE, page_height_mm=75.0, label_height_mm=75.0)
    return drawn(label_pdf(small(), low))


@pytest.fixture(scope="module")
def linear() -> Drawn:
    """The box of the same package on a slim label."""
    slim = replace(label_layout("roll-62x100"), page_height_mm=97.0, label_height_mm=97.0)
    return drawn(label_pdf(small(), slim))


@pytest.mark.source("us-21-cfr-101-9", "(d)(1)(iii), (d)(3): least sizes of type")
@pytest.mark.parametrize(
    ("words", "printed"),
    [
        ("servings per container", "10"), ("Serving size", "10"), ("Calories", "16"),
        ("230", "22"), ("Total Fat", "8"), ("Saturated Fat", "8"), ("160mg", "8"),
        ("Vitamin D", "8"), ("Potassium", "8"), ("daily diet", "6"),
    ],
)  # fmt: skip
def test_words_of_the_vertical_box_have_the_rules_least_type(
    vertical: Drawn, words: str, printed: str
) -> None:
    size_pt = vertical.word(words).size_pt
    assert agrees(size_pt, printed)
    assert size_pt >= float(printed) - SLACK_PT


@pytest.mark.source("fda-label-guide", "L2: rules of 7, 3 and one quarter point, box of one half")
@pytest.mark.parametrize(
    ("printed", "above", "below"),
    [
        ("7", "Serving size", "Amount per serving"), ("3", "Calories", "% Daily Value"),
        ("7", "Protein", "Vitamin D"), ("3", "Potassium", "The % Daily Value"),
        ("0.25", "Nutrition Facts", "servings per container"), ("0.25", "Total Fat", "Saturated"),
        ("0.25", "Vitamin D", "Calcium"),
    ],
)  # fmt: skip
def test_bars_of_the_box_are_as_thick_as_the_illustration_says(
    vertical: Drawn, printed: str, above: str, below: str
) -> None:
    top, foot = vertical.word(above).baseline, vertical.word(below).baseline
    between = [bar for bar in vertical.bars if top < bar.middle < foot]
    assert len(between) == 1
    assert agrees(between[0].thick_pt, printed)
    assert between[0].thick_pt == pytest.approx(float(printed), abs=SLACK_PT)


@pytest.mark.source("fda-label-guide", "L2: the box lies within 3 points of the words")
def test_the_box_is_a_thin_line_within_three_points_of_its_words(vertical: Drawn) -> None:
    frame = vertical.frames[0]
    assert agrees(frame.thick_pt, "0.5")
    assert vertical.word("Total Fat").left - frame.left <= 3.01
    assert frame.right - vertical.word("10%").right <= 3.01


def test_the_heading_is_as_wide_as_the_box_and_larger_than_all_but_the_calories(
    vertical: Drawn,
) -> None:
    heading, bar = vertical.word("Nutrition Facts"), vertical.bars[1]
    assert heading.left == pytest.approx(bar.left, abs=0.5)
    assert heading.right == pytest.approx(bar.right, abs=0.5)
    frame = vertical.frames[0]
    inside = [each for each in vertical.words if frame.top < each.baseline < frame.foot]
    others = [w.size_pt for w in inside if w.text not in ("Nutrition Facts", "230")]
    assert heading.size_pt >= max(others)


def test_nutrients_have_four_points_of_leading_and_a_hairline_in_their_middle(
    vertical: Drawn,
) -> None:
    baselines = [vertical.word(name).baseline for name in MAIN]
    for above, below in pairwise(baselines):
        assert below - above == pytest.approx(8 + 4, abs=0.01)
    lines = [bar for bar in vertical.bars if baselines[0] < bar.middle < baselines[-1]]
    assert len(lines) == len(MAIN) - 1
    # Of a line of 8 points 6.4 lie above the baseline and 1.6 below it.
    for line, (above, below) in zip(lines, pairwise(baselines), strict=True):
        assert line.middle - (above + 1.6) == pytest.approx((below - 6.4) - line.middle, abs=0.3)


def test_the_line_above_what_the_sugars_include_begins_at_its_words(vertical: Drawn) -> None:
    words = vertical.word("Added Sugars")
    line = max(
        (bar for bar in vertical.bars if bar.middle < words.baseline), key=lambda bar: bar.middle
    )
    assert line.left == pytest.approx(words.left, abs=0.1)
    assert words.text == "Includes 10g Added Sugars"


def test_only_what_the_rule_names_is_set_bold(vertical: Drawn) -> None:
    frame = vertical.frames[0]
    inside = [w for w in vertical.words if frame.top < w.baseline < frame.foot]
    bold = {w.text.strip() for w in inside if w.is_bold}
    named = {
        "Nutrition Facts", "Serving size", "1/15 cake (75g)", "Amount per serving", "Calories",
        "230", "% Daily Value*", "Total Fat", "Cholesterol", "Sodium", "Total Carbohydrate",
        "Protein", "10%", "15%", "1%", "7%", "13%", "14%", "20%",
    }  # fmt: skip
    assert bold == named
    vitamins = [w for w in inside if w.baseline > vertical.word("Vitamin D").baseline - 1]
    assert not any(w.is_bold for w in vitamins)


def test_rows_stand_in_the_order_of_the_rule(vertical: Drawn) -> None:
    baselines = [vertical.word(name).baseline for name in (*MAIN, *VITAMINS)]
    assert baselines == sorted(baselines)


def test_what_is_inside_another_stands_deeper(vertical: Drawn) -> None:
    left = vertical.word("Total Fat").left
    step = constants("facts_box.csv")["inset-pt"]
    assert vertical.word("Saturated Fat").left == pytest.approx(left + step, abs=0.1)
    assert vertical.word("Added Sugars").left == pytest.approx(left + 2 * step, abs=0.1)


@pytest.mark.source("us-21-cfr-101-9", "(d)(1)(iii), (d)(3): tabular, small package")
@pytest.mark.parametrize(
    ("words", "printed"),
    [("servings per container", "9"), ("Serving size", "9"), ("Calories", "10"), ("230", "14"),
     ("Total Fat", "8"), ("Vitamin D", "8"), ("%DV", "6")],
)  # fmt: skip
def test_the_tabular_arrangement_of_a_small_package_has_its_own_least_type(
    tabular: Drawn, words: str, printed: str
) -> None:
    size_pt = tabular.word(words).size_pt
    assert agrees(size_pt, printed)
    assert size_pt >= float(printed) - SLACK_PT


def test_the_tabular_arrangement_has_its_nutrients_in_two_columns(tabular: Drawn) -> None:
    first, second = tabular.word("Total Fat"), tabular.word("Total Carbohydrate")
    assert first.baseline == pytest.approx(second.baseline, abs=0.1)
    assert second.left > first.right


@pytest.mark.source("us-21-cfr-101-9", "(d)(1)(iii), (d)(3): linear, small package")
@pytest.mark.parametrize(
    ("words", "printed"),
    [("servings per", "9"), ("Serving size", "9"), ("Calories", "10"), ("230", "14"),
     ("Total Fat", "8"), ("%DV", "6")],
)  # fmt: skip
def test_the_linear_arrangement_has_its_own_least_type(
    linear: Drawn, words: str, printed: str
) -> None:
    size_pt = linear.word(words).size_pt
    assert agrees(size_pt, printed)
    assert size_pt >= float(printed) - SLACK_PT


def test_a_large_tabular_box_keeps_the_large_figure_and_the_whole_footnote() -> None:
    low = replace(WIDE, page_height_mm=76.0, label_height_mm=76.0)
    page = drawn(label_pdf(small(None), low))
    assert page.word("230").size_pt == pytest.approx(22)
    assert page.word("Calories").size_pt == pytest.approx(10)
    assert page.word("servings per container").size_pt == pytest.approx(10)
    assert page.word("daily diet").size_pt == pytest.approx(6)


def test_two_columns_are_parted_by_upright_lines_and_each_has_its_head() -> None:
    page = drawn(label_pdf(us_label(columns=2), label_layout("a4-1")))
    first, second = page.word("Per serving"), page.word("Per container")
    assert first.right < second.left
    assert sum(w.text == "230" for w in page.words) == 2
    assert page.word("Calories").size_pt == pytest.approx(16)
    assert page.word("Added Sugars").text == "Includes Added Sugars"


@pytest.mark.parametrize(
    ("height_mm", "area_cm2", "let"),
    [
        (76.2, None, ("vertical",)), (76.1, None, ("vertical", "tabular")),
        (150.0, 258.064, ("vertical", "tabular", "linear")), (150.0, 258.1, ("vertical",)),
        (None, None, ("vertical",)),
    ],
)  # fmt: skip
def test_a_arrangement_is_let_by_height_or_by_the_packages_area(
    height_mm: float | None, area_cm2: float | None, let: tuple[str, ...]
) -> None:
    assert arrangements_let(height_mm, area_cm2) == let


def test_an_amount_stands_close_to_its_unit() -> None:
    lines = facts_lines(facts_box(), "main")
    assert [line.amounts for line in lines if line.key == "cholesterol"] == [("less than 5mg",)]
    assert facts_lines(facts_box(), "vitamin")[0].key == "vitamin-d"


def test_the_footnote_is_the_rules_own_and_short_on_a_small_package() -> None:
    assert footnote().startswith("* The % Daily Value (DV) tells you")
    assert "2,000 calories a day" in footnote()
    assert footnote(is_small=True) == "* %DV = %Daily Value"


def test_a_row_with_too_few_columns_is_refused() -> None:
    box = facts_box()
    with pytest.raises(OutOfRangeError, match="fat has 1 amounts"):
        FactsBox(box.servings, box.serving_size, (*box.columns, *box.columns), box.rows)
