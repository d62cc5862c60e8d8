"""The weighing order: the reference card exactly, and no gram lost or weighed twice."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.design import BOWLS, Formula, Line, Row, Use, Weighing, read, weigh_out
from krume.evidence import packed_text
from tests.design import studio
from tests.design.studio import eggs, formula, item

ALL = tuple(getattr(studio, name) for name in ("F1", "F3", "F4", "F5", "C1", "C2", "S1"))


def told(weighing: Weighing) -> list[tuple[object, ...]]:
    """Rows as a person reads them."""
    return [
        (row.take,)
        if row.kind == "tare"
        else (row.number, row.take, row.add_g, "weigh" if row.kind == "egg" else row.display_g)
        for row in weighing.rows
    ]


def test_the_hazel_sponge_is_weighed_exactly_as_the_reference_card() -> None:
    assert told(weigh_out(studio.F1)) == [
        ("Dry bowl: set the scale to 0",),
        (1, "buckwheat flour", 50, 50),
        (2, "white rice flour", 12, 62),
        (3, "potato starch", 34, 96),
        (4, "sweet rice flour", 8, 104),
        (5, "ground hazelnuts, toasted", 40, 144),
        ("Yolk bowl: set the scale to 0",),
        (6, "yolks of 5 eggs", 87.5, "weigh"),
        ("Yolk bowl again: set the scale to 0",),
        (7, "caster sugar", 60, 60),
        (8, "vanilla extract", 3, 63),
        ("White bowl: set the scale to 0",),
        (9, "whites of 5 eggs", 167.5, "weigh"),
        ("White bowl again: set the scale to 0",),
        (10, "fine salt", 1, 1),
        (11, "lemon juice", 4, 5),
        ("Sugar cup: set the scale to 0",),
        (12, "caster sugar, for the whites", 75, 75),
    ]


@pytest.mark.parametrize(
    ("made", "total_g"),
    list(zip(ALL, (542.0, 398.0, 522.0, 553.2, 941.5, 853.0, 220.0), strict=True)),
    ids=lambda value: getattr(value, "name", value),
)
def test_the_displays_and_the_eggs_add_up_to_the_batter(made: Formula, total_g: float) -> None:
    weighing = weigh_out(made)
    assert weighing.total_g == pytest.approx(total_g, abs=1e-6)
    assert math.fsum(weighing.parts_g) == pytest.approx(total_g, abs=1e-6)


def test_yolks_and_whites_of_different_counts_keep_their_counts() -> None:
    takes = [row.take for row in weigh_out(studio.F5).rows if row.kind == "egg"]
    assert takes == ["4 egg yolks", "5 egg whites"]


def test_eggs_are_taken_up_after_the_dry_things() -> None:
    for made in ALL:
        rows = weigh_out(made).rows
        dry = [number for number, row in enumerate(rows) if row.bowl in ("dry", "liquid", "fat")]
        from_shell = [number for number, row in enumerate(rows) if row.kind == "egg"]
        assert not dry or not from_shell or max(dry) < min(from_shell)


def test_without_steps_the_bowls_go_by_kind_and_it_is_said() -> None:
    weighing = weigh_out(studio.S1)
    assert [row.display_g for row in weighing.rows] == [None, 100, 200, 220]
    assert [notice.code for notice in weighing.notices] == ["bowls-by-kind"]


def test_an_unknown_mass_is_a_word_and_in_no_sum() -> None:
    made = formula("Pinch", (item(None, "xanthan gum"), item(40, "white rice flour")))
    weighing = weigh_out(made)
    row = weighing.rows[-1]
    assert (row.kind, row.add_g, row.display_g) == ("unknown", None, None)
    assert weighing.unknown == ("xanthan gum",)
    assert weighing.total_g == 40


def test_eggs_without_a_size_are_not_split_by_guess() -> None:
    sizeless = Line("5 eggs", 1, 5.0, "each", None, "egg", "eggs", "egg-whole-fresh")
    made = Formula("Which", (sizeless,), ("Beat the yolks.", "Whisk the whites."))
    weighing = weigh_out(made)
    assert [row.add_g for row in weighing.rows if row.kind == "egg"] == [None]
    assert weighing.unknown == ("eggs",)
    assert weighing.notices[0].code == "egg-split-unknown"


@pytest.mark.parametrize(
    ("mass_g", "scale_g", "marked"),
    [
        (0.25, 0.1, "one step of 0.1 g is 40 % of it"),
        (0.5, 0.1, ""),
        (2.7, 1.0, "0.1 g scale"),
        (5.0, 1.0, ""),
        (0.25, 1.0, "one step of 0.1 g is 40 % of it"),
    ],
)
def test_an_amount_of_few_steps_of_the_scale_is_marked(
    mass_g: float, scale_g: float, marked: str
) -> None:
    made = formula("Small", (item(60, "white rice flour"), item(mass_g, "xanthan gum")))
    assert weigh_out(made, scale_g=scale_g).rows[-1].mark == marked


def test_the_premix_for_a_quarter_gram_holds_a_quarter_gram() -> None:
    text = weigh_out(studio.F3).notices[0].text
    assert "weigh 1 g of it with 19 g white rice flour" in text
    assert "take 5 g of that and 4.75 g less white rice flour" in text


def test_a_bowl_too_heavy_for_the_fine_scale_says_which_scale() -> None:
    made = formula("Heavy", (item(480, "white rice flour"), item(40, "potato starch")))
    assert weigh_out(made).rows[0].mark == "more than 500 g: 1 g scale"
    assert {row.step_g for row in weigh_out(made).rows if row.kind == "add"} == {1.0}
    heavier = formula("Sack", (item(5200, "white rice flour"),))
    assert weigh_out(heavier).rows[0].mark == "more than 5 kg: in parts"


masses = st.floats(0.05, 900).map(lambda value: round(value, 2))
NAMES = (
    *("white rice flour", "potato starch", "caster sugar", "butter", "sunflower oil", "whole milk"),
    *("fine salt", "xanthan gum", "ground hazelnuts", "vanilla extract", "dark chocolate", "water"),
    *("whipping cream", "powdered gelatine", "lemon juice", "no such thing known"),
)
STEPS = (
    "Sift the flours.",
    "Beat the yolks with sugar, then the rest.",
    "Whisk the whites with salt, add the sugar.",
    "Cream butter and sugar.",
    "Boil all of it.",
    "Fold it in.",
    "Soak the gelatine.",
)


@st.composite
def formulas(draw: st.DrawFn) -> Formula:
    """Formulas of any lines, with steps that name any shares of them, sensible or not."""
    lines = [
        item(draw(masses), name) for name in draw(st.lists(st.sampled_from(NAMES), max_size=12))
    ]
    parts = draw(st.lists(st.sampled_from((None, "yolk", "white")), max_size=3))
    lines += [eggs(draw(st.integers(1, 9)), part=part, note="separated") for part in parts]
    steps = tuple(draw(st.lists(st.sampled_from(STEPS), max_size=5)))
    uses: list[Use] = []
    if steps and lines:
        step, line = st.integers(0, len(steps) - 1), st.integers(0, len(lines) - 1)
        share = st.one_of(st.none(), masses)
        uses = draw(st.lists(st.builds(Use, step, line, share), max_size=12))
    return Formula("Any", tuple(lines), steps, tuple(uses), egg_size="eu-m")


def planned(rows: tuple[Row, ...], line: int) -> float:
    return math.fsum(row.add_g or 0.0 for row in rows if row.line == line and row.kind != "tare")


@given(formulas(), st.sampled_from((0.1, 1.0)))
def test_every_gram_of_every_line_is_weighed_exactly_once(made: Formula, scale_g: float) -> None:
    weighing = weigh_out(made, scale_g=scale_g)
    for number, line in enumerate(made.lines):
        assert planned(weighing.rows, number) == pytest.approx(line.mass_g, abs=1e-4)


@given(formulas(), st.sampled_from((0.1, 1.0)))
def test_last_displays_before_each_tare_and_the_eggs_make_the_batter(
    made: Formula, scale_g: float
) -> None:
    weighing = weigh_out(made, scale_g=scale_g)
    last, found = 0.0, 0.0
    for row in (*weighing.rows, Row("tare", "dry", "")):
        if row.kind == "tare":
            found, last = found + last, 0.0
        elif row.kind == "egg":
            found += row.add_g or 0.0
        else:
            assert row.display_g == pytest.approx(last + (row.add_g or 0.0), abs=1e-4)
            last = row.display_g or 0.0
    mass = math.fsum(line.mass_g or 0.0 for line in made.lines)
    assert found == pytest.approx(mass, abs=1e-3)
    assert weighing.total_g == pytest.approx(mass, abs=1e-3)


def _begins(row: Row, before: Row | None) -> bool:
    return before is None or before.bowl != row.bowl


@given(formulas())
def test_a_bowl_is_begun_once_and_with_a_tare(made: Formula) -> None:
    rows = weigh_out(made).rows
    begun = [row for row, before in zip(rows, (None, *rows), strict=False) if _begins(row, before)]
    assert [row.bowl for row in begun] == [bowl for bowl in BOWLS if bowl in {r.bowl for r in rows}]
    assert {row.kind for row in begun} <= {"tare"}
    numbers = [row.number for row in rows if row.kind != "tare"]
    assert numbers == list(range(1, len(numbers) + 1))


def test_no_premix_is_offered_where_the_bowl_has_too_little_flour_to_carry_it() -> None:
    made = formula("Little", (item(4, "white rice flour"), item(0.4, "xanthan gum")))
    small = [n.text for n in weigh_out(made).notices if n.code == "small-amount"]
    assert small == [
        "0.4 g xanthan gum: one step of a 0.1 g scale is 25 % of it. Use a finer scale."
    ]


def test_a_pinch_of_salt_beside_no_flour_is_not_mixed_into_any() -> None:
    made = formula("Salt", (item(60, "caster sugar"), item(0.3, "fine salt")))
    assert "Use a finer scale." in weigh_out(made).notices[-1].text


DEMO = ("F1", "F2", "F3", "F4", "F5", "F6", "F7", "C1", "C2", "C3", "C4", "C5", "S1")
DEMO_G = (542.0, 519.0, 398.0, 522.0, 553.2, 643.7, 431.5, 941.5, 853.0, 380.0, 390.0, 615.0, 220.0)


@pytest.mark.parametrize(("key", "total_g"), list(zip(DEMO, DEMO_G, strict=True)))
def test_each_demo_text_is_weighed_out_whole(key: str, total_g: float) -> None:
    read_back = read(packed_text(f"demo/formulas/{key}.txt")).value
    weighing = weigh_out(read_back)
    assert weighing.total_g == pytest.approx(total_g, abs=1e-6)
    assert weighing.unknown == ()
    assert [n.code for n in weighing.notices if n.code == "share-not-in-steps"] == []


def test_the_text_of_the_hazel_sponge_gives_the_reference_card_too() -> None:
    read_back = read(packed_text("demo/formulas/F1.txt")).value
    assert told(weigh_out(read_back)) == told(weigh_out(studio.F1))
