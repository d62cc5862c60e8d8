"""What the buyer must be told: by market, by day, by the papers of the book."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from itertools import combinations
from pathlib import Path

import pytest

from krume.base import InputError
from krume.store import place_all
from krume.usecases import Asked, LabelResult, LabelWish, label_of
from krume.usecases.book.book import demo_files

COVERS = ("result",)
US, EU = LabelWish(market="us"), LabelWish(market="eu")
ROOM = "room: cleaning record"


@pytest.fixture
def own(tmp_path: Path) -> Asked:
    """A demo book that a test may change."""
    asked = Asked(book=tmp_path / "book")
    place_all(asked.book or Path(), demo_files())
    return asked


def rewrite(asked: Asked, file: str, edit: Callable[[str], str]) -> None:
    """Change a table of a book."""
    assert asked.book is not None
    path = asked.book / file
    before = path.read_text(encoding="utf-8") if path.exists() else ""
    path.write_text(edit(before), encoding="utf-8")


def said(result: LabelResult) -> str:
    """Everything that may be printed."""
    words = [result.ingredients, *result.contains, *result.may_contain]
    for each in result.labels:
        words += [*each.sentences, each.durability.text, each.title]
    return " ".join(words).casefold()


@pytest.mark.parametrize("wish", [US, EU], ids=["us", "eu"])
@pytest.mark.parametrize(
    ("name", "missing"),
    [
        ("T1", {"L-008"}),
        ("T2", {"L-004"}),
        ("T3", set()),
        ("TART", {"L-012", "L-013"}),
        ("F2", {"L-002"}),
        ("F6", {"L-002", "L-011"}),
        ("102", {"L-004", "L-012", "L-013"}),
    ],
)
def test_the_gate_names_what_is_missing_and_no_claim_is_printed(
    demo: Asked, name: str, missing: set[str], wish: LabelWish
) -> None:
    answer = label_of(name, wish, demo)
    gate = answer.result.gluten
    assert answer.exit_code == 0
    assert set(gate.missing) == {*missing, ROOM}
    assert not gate.claim_allowed
    assert gate.sentence is None
    assert "gluten-free" not in said(answer.result)


def test_the_market_is_the_books_own_unless_it_is_asked(demo: Asked, bare: Asked) -> None:
    assert label_of("F4", LabelWish(), demo).result.market == "eu"
    assert label_of("F4", US, demo).result.market == "us"
    with pytest.raises(InputError, match="market"):
        label_of("F4", LabelWish(market="mars"), demo)
    assert bare.book is not None


def test_contains_is_in_the_words_of_the_market(demo: Asked) -> None:
    us, eu = (label_of("T1", wish, demo).result for wish in (US, EU))
    assert us.contains == ("egg", "milk", "tree nut (hazelnut)")
    assert eu.contains == ("egg", "milk", "nuts (hazelnut)")
    assert "Contains: egg, milk, tree nut (hazelnut)" in us.labels[0].sentences
    assert "Contains" not in " ".join(eu.labels[0].sentences)


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART", "C2"])
def test_nothing_ever_says_that_there_are_no_nuts(demo: Asked, name: str) -> None:
    words = said(label_of(name, EU, demo).result)
    assert "nut-free" not in words
    assert "free of nuts" not in words
    assert "no nuts" not in words


def test_the_kitchens_nuts_come_from_the_books_other_formulas(demo: Asked) -> None:
    sentences = label_of("T1", EU, demo).result.labels[0].sentences
    assert "Made where nuts are used: walnut." in sentences


def make_good(asked: Asked, keys: set[str], lost: tuple[str, ...] = (), *, how: str = "") -> None:
    """Give lots a valid test, all but those that are lost in a way: removed or expired."""

    def edit(text: str) -> str:
        lines = []
        for line in text.splitlines():
            key, _, rest = line.partition(",")
            if key in lost and how == "removed":
                continue
            if key in keys:
                name = next(iter(_csv(line)))[1]
                until = "2027-06-01" if key in lost else "2028-01-01"
                line = f'{key},"{name}",lab test,test,<5,2027-01-01,{until},invented'
            assert rest
            lines.append(line)
        return "\n".join(lines) + "\n"

    rewrite(asked, "lots.csv", edit)


def _csv(line: str) -> list[list[str]]:
    import csv

    return list(csv.reader([line]))


def on_the_day(own: Asked) -> Asked:
    """The request as of the day order 101 is handed over."""
    return replace(own, on=date(2027, 6, 12))


T1_LOTS = ("L-001", "L-003", "L-005", "L-006", "L-007", "L-008", "L-016")


@pytest.mark.parametrize("how", ["removed", "expired"])
@pytest.mark.parametrize(
    "lost", [c for n in range(1, len(T1_LOTS) + 1) for c in combinations(T1_LOTS, n)][::9]
)
def test_an_order_with_any_records_lost_prints_no_claim(
    own: Asked, lost: tuple[str, ...], how: str
) -> None:
    rewrite(own, "cleaning.csv", lambda _: "date,cleaned\n2027-06-12,yes\n")
    make_good(own, set(T1_LOTS), lost, how=how)
    result = label_of("101", EU, on_the_day(own)).result
    assert not result.gluten.claim_allowed
    assert "gluten-free" not in said(result)


def test_with_every_record_good_and_the_room_clean_the_order_may_say_it(own: Asked) -> None:
    rewrite(own, "cleaning.csv", lambda _: "date,cleaned\n2027-06-12,yes\n")
    make_good(own, set(T1_LOTS))
    result = label_of("101", EU, on_the_day(own)).result
    assert result.gluten.missing == ()
    assert result.gluten.claim_allowed
    assert "Gluten-free" in result.labels[0].sentences
    assert label_of("T1", EU, own).result.gluten.missing == (ROOM,)


def test_a_day_that_has_not_been_yet_has_not_been_cleaned_for(own: Asked) -> None:
    rewrite(own, "cleaning.csv", lambda _: "date,cleaned\n2027-06-10,yes\n2027-06-12,yes\n")
    make_good(own, set(T1_LOTS))
    gate = label_of("101", EU, own).result.gluten
    assert gate.missing == (ROOM,)
    assert not gate.claim_allowed
    assert any("2027-06-12" in text and "not before" in text for text in gate.opens)


def clean(own: Asked) -> None:
    """The room's record of the book's day."""
    rewrite(own, "cleaning.csv", lambda _: "date,cleaned\n2027-06-09,yes\n2027-06-10,yes\n")


@pytest.mark.parametrize(
    ("day", "lots", "room"),
    [
        ("2027-06-09", False, False),
        ("2027-06-10", False, False),
        ("2027-06-08", False, True),
        ("2027-06-11", False, True),
        ("2026-01-01", True, True),
        ("2028-06-01", True, True),
    ],
)
def test_lots_and_room_must_hold_on_the_day_of_making_too(
    own: Asked, day: str, lots: bool, room: bool
) -> None:
    clean(own)
    result = label_of("T3", replace(EU, made=date.fromisoformat(day)), own).result
    assert ("L-001" in result.gluten.missing) is lots
    assert (ROOM in result.gluten.missing) is room
    assert result.gluten.claim_allowed is not (lots or room)
    assert ("gluten-free" in said(result)) is not (lots or room)


def test_a_result_that_stands_in_the_words_of_its_record_is_said_once(demo: Asked) -> None:
    records = {r.lot: r.text for r in label_of("102", EU, demo).result.gluten.records}
    assert records["L-004"] == "supplier certificate ≤20 mg/kg, valid to 2027-05-31"
    assert records["L-001"] == "lab test of the lot, <5 mg/kg, valid to 2028-03-02"


def test_the_day_decides(demo: Asked) -> None:
    early = label_of("T2", EU, replace(demo, on=date(2027, 5, 31))).result
    assert "L-004" not in early.gluten.missing


def test_a_named_lot_goes_in_and_the_others_do_not(own: Asked) -> None:
    row = "L-019,ground hazelnuts,lab test,test,<5,2027-01-01,2028-01-01,invented\n"
    rewrite(own, "lots.csv", lambda text: text + row)
    both = label_of("T1", EU, own)
    assert "L-008" in both.result.gluten.missing
    assert "several-lots" in [n.code for n in both.notices]
    rewrite(own, "tortes/T1.txt", lambda text: text.replace("Keep:", "Lots: L-019\nKeep:"))
    assert label_of("T1", EU, own).result.gluten.missing == (ROOM,)


def test_the_eu_panel_of_t1_is_open_and_that_of_t3_is_closed_by_name(demo: Asked) -> None:
    open_one = label_of("T1", EU, demo).result.nutrition
    assert open_one is not None
    assert open_one.panel is not None
    assert open_one.panel.is_open
    assert open_one.energy_kj is not None
    closed = label_of("T3", EU, demo).result
    assert closed.nutrition is not None
    assert closed.nutrition.sugars_g is None
    assert any("blackcurrants" in text for text in closed.unknown)


def test_values_per_100_g_are_those_the_panel_prints(demo: Asked) -> None:
    nutrition = label_of("C1", EU, demo).result.nutrition
    assert nutrition is not None
    assert nutrition.panel is not None
    printed = {row.key: row for row in nutrition.panel.rows}
    assert nutrition.fat_g == pytest.approx(printed["fat"].low)
    assert nutrition.salt_g == pytest.approx(printed["salt"].low)
    assert nutrition.energy_kj == pytest.approx(printed["energy-kj"].low)


def test_a_cream_alone_has_no_us_panel_and_says_so(demo: Asked) -> None:
    result = label_of("C1", US, demo).result
    assert result.nutrition is not None
    assert result.nutrition.panel is None
    assert result.nutrition.fat_g is not None
    assert any("reference amount" in text for text in result.unknown)


def test_a_composite_closes_the_label_until_its_lot_lists_its_parts(own: Asked) -> None:
    before = label_of("F1", EU, own).result
    assert not before.can_print
    assert any("L-016" in text for text in before.unknown)

    def edit(text: str) -> str:
        head, *rows = text.splitlines()
        parts = {"L-016": '"alcohol, water"'}
        return "\n".join([f"{head},ingredients", *(
            f"{row},{parts.get(row.partition(',')[0], '')}" for row in rows
        )]) + "\n"  # fmt: skip

    rewrite(own, "lots.csv", edit)
    after = label_of("F1", EU, own).result
    assert after.unknown == ()
    assert after.can_print
    assert "vanilla extract (alcohol, water)" in after.ingredients


def test_a_plain_file_without_a_book_names_the_goods(
    bare: Asked, write: Callable[[str], str]
) -> None:
    text = "Sponge\nTin: round 20 x 5 cm\nFamily: butter\nBaked: 10 mm high, 180 g\n\n"
    answer = label_of(write(f"{text}100 g teff flour\n100 g butter\n"), EU, bare)
    assert set(answer.result.gluten.missing) == {"teff flour", ROOM}


def test_a_fault_in_a_lot_of_the_cake_is_asked(own: Asked) -> None:
    rewrite(own, "lots.csv", lambda text: text.replace("2027-04-04,2028-04-04", ","))
    answer = label_of("F4", EU, own)
    assert answer.exit_code == 3
    assert {p.code for p in answer.problems} == {"lot-date-missing"}
    assert "L-009" in answer.result.gluten.missing
    assert label_of("F1", EU, own).exit_code == 0


def test_several_things_of_an_order_have_a_label_each(demo: Asked) -> None:
    result = label_of("102", EU, demo).result
    assert [each.name for each in result.labels] == ["T2", "T3", "TART"]
    assert result.nutrition is None
    assert {"egg", "milk", "nuts (walnut)", "soybean"} == set(result.contains)


def test_the_use_by_date_is_a_blank_until_the_day_of_making_is_said(demo: Asked) -> None:
    blank = label_of("T1", EU, demo).result.labels[0].durability
    dated = label_of("T1", LabelWish(market="eu", made=date(2027, 6, 11)), demo).result
    assert blank.use_by is None
    assert "____" in blank.text
    assert dated.labels[0].durability.use_by == "2027-06-13"
    assert "13 June 2027" in dated.labels[0].durability.text


def test_alcohol_and_raw_egg_are_said(bare: Asked, write: Callable[[str], str]) -> None:
    text = (
        "Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g rum, 40 %\n"
        "2 egg yolks, EU M\n8 g powdered gelatine\n\nWhip and fold."
    )
    sentences = label_of(write(text), EU, bare).result.labels[0].sentences
    assert "Contains alcohol." in sentences
    assert "Made with raw egg." in sentences


def test_exemptions_are_only_pointed_to(demo: Asked) -> None:
    pointers = label_of("T1", US, demo).result.pointers
    assert any("101.9(j)" in text for text in pointers)
    assert any("cottage-food" in text for text in pointers)


@pytest.mark.parametrize(
    ("market", "contains"),
    [
        ("uk", ("egg", "milk", "nuts (walnut)")),
        ("ca", ("egg", "milk", "walnut")),
        ("au-nz", ("egg", "milk", "walnut")),
    ],
)
def test_every_market_has_its_own_words(demo: Asked, market: str, contains: tuple[str]) -> None:
    result = label_of("T3", LabelWish(market=market), demo).result
    assert result.contains == contains
    has_line = f"Contains: {', '.join(contains)}" in result.labels[0].sentences
    assert has_line is (market in ("ca", "au-nz"))


@pytest.mark.parametrize("market", ["ca", "au-nz"])
def test_a_panel_that_is_not_made_here_holds_the_label_until_it_is_left_out(
    demo: Asked, market: str
) -> None:
    held = label_of("C1", LabelWish(market=market, maker="A, B"), demo).result
    assert not held.can_print
    assert any("none is made here" in text for text in held.unknown)
    assert any("not made here" in text for text in held.pointers)
    out = label_of("C1", LabelWish(market=market, maker="A, B", with_panel=False), demo).result
    assert out.can_print


def test_the_books_own_settings_decide_how_a_list_is_set(own: Asked) -> None:
    rewrite(own, "studio.toml", lambda text: f'{text}\n[label]\nlist = "parts"\n')
    assert len(label_of("T1", EU, own).result.labels[0].parts) == 4
    one = replace(EU, by_part=False)
    assert label_of("T1", one, own).result.labels[0].parts == ()


def test_a_suppliers_sheet_tells_allergens_to_the_label_and_not_to_another_market(
    own: Asked, write: Callable[[str], str]
) -> None:
    text = write("Jam cream\nFamily: set-cream\n\n200 g whipping cream\n50 g orange marmalade\n")
    open_before = label_of(text, EU, own).result.unknown
    assert any("its allergens" in each for each in open_before)
    assert own.book is not None
    (own.book / "suppliers").mkdir()
    sheet = "Name: orange marmalade\nClass: fruit\nAllergens: sulphites\nMay contain: nuts\n"
    (own.book / "suppliers" / "jam.txt").write_text(sheet, encoding="utf-8")
    after = label_of(text, EU, own).result
    assert not any("its allergens" in each for each in after.unknown)
    assert "sulphites" in after.contains
    assert after.may_contain == ("nuts",)
    assert "sulphites" not in label_of(text, US, own).result.contains


def test_what_is_not_food_is_on_no_list_and_is_told(
    bare: Asked, write: Callable[[str], str]
) -> None:
    text = write("Cream\nFamily: set-cream\n\n200 g whipping cream\n12 cake picks\n")
    label = label_of(text, EU, bare).result.labels[0]
    assert label.ingredients == "whipping cream (MILK)"
    assert any("picks" in told for told in label.beside)
    assert not any(item.closes == "label" for item in label.open_items)


@pytest.mark.parametrize("goods", ["gluten-free wheat starch", "wheat starch"])
def test_wheat_starch_is_wheat_whatever_its_gluten(
    bare: Asked, write: Callable[[str], str], goods: str
) -> None:
    text = write(f"Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g {goods}\n")
    us, eu = (label_of(text, wish, bare).result for wish in (US, EU))
    assert us.contains == ("milk", "wheat")
    assert "Contains: milk, wheat" in us.labels[0].sentences
    assert "WHEAT starch" in eu.ingredients
    assert not us.gluten.claim_allowed
