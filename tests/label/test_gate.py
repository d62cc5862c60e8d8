"""The gluten gate opens only when every record is good on the day, and says what is missing."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.label import ROOM, GlutenPart, gluten_gate, gluten_mix
from krume.pantry import CleaningRecord, GlutenResult, Lot
from tests.agreement import agrees
from tests.label.studio import CLEAN, DAY, good, lots, of, product

TABLE = {
    "F1": "L-008", "F2": "L-002", "F3": "L-004", "F4": "", "F5": "L-004 L-011",
    "F6": "L-002 L-011", "F7": "L-013", "C1": "", "C2": "", "C3": "L-012", "C4": "", "C5": "",
    "S1": "", "T1": "L-008", "T2": "L-004", "T3": "", "TART": "L-012 L-013",
}  # fmt: skip


@pytest.mark.parametrize("market", ["us", "eu"])
@pytest.mark.parametrize(("name", "missing"), TABLE.items())
def test_the_gate_of_everything_in_the_demo_is_as_its_table_says(
    name: str, missing: str, market: str
) -> None:
    gate = gluten_gate(product(name), lots(), (), on=DAY, market=market)
    assert set(gate.missing) == {*missing.split(), ROOM}
    assert gate.is_open_on_ingredients is (not missing)
    assert not gate.claim_allowed
    assert gate.sentence is None


@pytest.mark.parametrize("market", ["us", "eu"])
def test_the_rooms_record_of_the_day_opens_what_is_open_on_ingredients(market: str) -> None:
    gate = gluten_gate(product("T3"), lots(), CLEAN, on=DAY, market=market)
    assert gate.claim_allowed
    assert gate.missing == ()
    assert gate.sentence == "Gluten-free"


@pytest.mark.parametrize(
    "cleaning",
    [
        (),
        (CleaningRecord(date(2027, 6, 9), is_cleaned=True),),
        (CleaningRecord(DAY, is_cleaned=False),),
        (*CLEAN, CleaningRecord(DAY, is_cleaned=False)),
    ],
)
def test_another_day_or_a_no_leaves_the_rooms_record_missing(
    cleaning: tuple[CleaningRecord, ...],
) -> None:
    gate = gluten_gate(product("T3"), lots(), cleaning, on=DAY, market="eu")
    assert gate.missing == (ROOM,)
    assert not gate.claim_allowed


LATER = date(2027, 6, 12)
YES = CleaningRecord(LATER, is_cleaned=True)


@pytest.mark.parametrize("no", [10, 11, 12])
def test_a_no_from_today_to_the_day_asked_closes_the_gate(no: int) -> None:
    records = (YES, CleaningRecord(date(2027, 6, no), is_cleaned=False))
    gate = gluten_gate(product("T3"), lots(), records, on=LATER, market="eu", today=DAY)
    assert gate.missing == (ROOM,)
    assert f"no for 2027-06-{no}" in gate.opens[0]


def test_a_no_of_a_day_before_the_work_does_not_count() -> None:
    records = (*CLEAN, CleaningRecord(date(2027, 6, 9), is_cleaned=False))
    assert gluten_gate(product("T3"), lots(), records, on=DAY, market="eu").claim_allowed


def test_a_yes_counts_once_its_day_has_come_and_not_before() -> None:
    for today, allowed in ((DAY, False), (date(2027, 6, 11), False), (LATER, True)):
        gate = gluten_gate(product("T3"), lots(), (YES,), on=LATER, market="eu", today=today)
        assert gate.claim_allowed is allowed


@given(st.sets(st.sampled_from([8, 10])), st.sampled_from([8, 10]))
def test_the_room_wants_a_yes_of_the_day_of_making_and_of_the_day_asked(
    cleaned: set[int], made: int
) -> None:
    records = tuple(CleaningRecord(date(2027, 6, day), is_cleaned=True) for day in cleaned)
    gate = gluten_gate(
        product("T3"), lots(), records, on=DAY, market="eu", made=date(2027, 6, made)
    )
    assert gate.claim_allowed is ({made, 10} <= cleaned)


def test_a_record_that_runs_out_before_the_making_is_named_with_the_day() -> None:
    made = date(2028, 3, 10)
    records = (*CLEAN, CleaningRecord(made, is_cleaned=True))
    gate = gluten_gate(product("T3"), lots(), records, on=DAY, market="eu", made=made, today=made)
    assert "L-001" in gate.missing and ROOM not in gate.missing
    assert any("on 2028-03-10 it has run out" in text for text in gate.opens)
    assert gate.most_ppm is None


def needed(name: str) -> list[str]:
    """Lots that a claim on a product needs."""
    gate = gluten_gate(product(name), lots(), (), on=DAY, market="eu")
    return [r.lot for r in gate.records if r.lot is not None and r.state != "not-needed"]


def opened(name: str) -> tuple[Lot, ...]:
    """The demo's lots with every record a product needs made good."""
    wanted = set(needed(name))
    return tuple(good(lot) if lot.key in wanted else lot for lot in lots())


def subsets(keys: list[str]) -> Iterator[tuple[str, ...]]:
    """Every way to lose at least one record."""
    for count in range(1, len(keys) + 1):
        yield from combinations(keys, count)


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART"])
def test_with_any_records_removed_or_expired_no_claim_is_made(name: str) -> None:
    whole = opened(name)
    keys = needed(name)
    assert gluten_gate(product(name), whole, CLEAN, on=DAY, market="eu").claim_allowed
    for lost in subsets(keys):
        gone = tuple(lot for lot in whole if lot.key not in lost)
        old = tuple(
            replace(lot, valid_to=date(2027, 6, 9)) if lot.key in lost else lot for lot in whole
        )
        for state in (gone, old):
            gate = gluten_gate(product(name), state, CLEAN, on=DAY, market="eu")
            assert not gate.claim_allowed, lost
            assert gate.sentence is None
            assert len(gate.missing) >= len(lost)
        assert set(gate.missing) == set(lost)


def test_goods_without_a_lot_are_named_by_their_own_name() -> None:
    gate = gluten_gate(product("F4"), (), (), on=DAY, market="eu")
    assert "white rice flour" in gate.missing
    assert "eggs" not in gate.missing


def test_a_record_holds_on_its_last_day_and_no_longer() -> None:
    millet = product("F3")
    on_last = gluten_gate(millet, lots(), CLEAN, on=date(2027, 5, 31), market="eu")
    after = gluten_gate(millet, lots(), CLEAN, on=date(2027, 6, 1), market="eu")
    assert "L-004" not in on_last.missing
    assert "L-004" in after.missing


def test_all_lots_of_the_same_goods_count_until_one_is_named() -> None:
    tested = replace(good(next(x for x in lots() if x.key == "L-008")), key="L-019")
    both = (*lots(), tested)
    every = gluten_gate(product("F1"), both, CLEAN, on=DAY, market="eu")
    named = gluten_gate(
        product("F1"), both, CLEAN, on=DAY, market="eu", chosen=frozenset({"L-019"})
    )
    assert every.missing == ("L-008",)
    assert named.missing == ()
    assert named.claim_allowed


def test_the_estimate_is_the_mass_balance_over_the_baked_cake() -> None:
    tested = tuple(good(lot) if lot.key == "L-008" else lot for lot in lots())
    gate = gluten_gate(product("F1"), tested, CLEAN, on=DAY, market="eu")
    parts = [(50, 8), (12 + 34 + 8 + 40, 5), (3, 20)]
    whole = gluten_mix(
        [GlutenPart(Fraction(m), Fraction(c)) for m, c in parts]
        + [GlutenPart(Fraction(482 - sum(m for m, _ in parts)), Fraction(0))]
    )
    assert gate.most_ppm == pytest.approx(whole.gluten_ppm, rel=1e-12)


def flour(grams: int, baked: int, result: str) -> tuple[str, tuple[Lot, ...]]:
    """A cake of one flour that loses much of its water, and the lot of that flour."""
    text = f"Cake\nBaked: 10 mm high, {baked} g\nTin: round 20 x 5 cm\n\n{grams} g teff flour\n"
    lot = replace(good(Lot("L", "teff flour", "")), key="L")
    return text + "100 g water\n", (replace(lot, result=GlutenResult(result, float(result))),)


@pytest.mark.parametrize(
    ("market", "baked", "allowed"),
    [("eu", 190, True), ("eu", 189, False), ("us", 191, True), ("us", 190, False)],
)
def test_water_baked_out_can_close_a_gate_that_each_record_leaves_open(
    market: str, baked: int, allowed: bool
) -> None:
    text, papers = flour(200, baked, "19")
    gate = gluten_gate(of(text), papers, CLEAN, on=DAY, market=market)
    assert gate.claim_allowed is allowed
    assert any("finished cake" in m for m in gate.missing) is not allowed


def test_without_a_baked_mass_no_claim_is_made() -> None:
    text = "Cake\nTin: round 20 x 5 cm\nOven: 170 C\nFamily: butter\n\n100 g potato starch\n"
    gate = gluten_gate(of(text + "100 g butter\n"), lots(), CLEAN, on=DAY, market="eu")
    assert not gate.claim_allowed
    assert gate.missing == ("finished cake: its baked mass",)


@given(st.sampled_from(["moon dust", "wheat flour", "oats", "barley malt", "soy sauce"]))
def test_adding_goods_that_are_not_known_or_hold_gluten_never_opens_a_gate(word: str) -> None:
    text = "Cream\nFamily: set-cream\n\n100 g whipping cream\n10 g sugar\n"
    before = gluten_gate(of(text), lots(), CLEAN, on=DAY, market="eu")
    after = gluten_gate(of(f"{text}5 g {word}\n"), lots(), CLEAN, on=DAY, market="eu")
    assert before.claim_allowed
    assert not after.claim_allowed


def test_nothing_at_all_makes_no_claim() -> None:
    nothing = replace(product("F4"), used=())
    assert not gluten_gate(nothing, lots(), CLEAN, on=DAY, market="eu").claim_allowed


def test_a_certificate_of_20_is_said_to_be_of_the_ingredient_in_the_us() -> None:
    gate = gluten_gate(product("C1"), lots(), CLEAN, on=DAY, market="us")
    assert any("below 20 ppm" in note for note in gate.notes)


def test_each_closed_record_says_what_opens_it() -> None:
    gate = gluten_gate(product("TART"), lots(), (), on=DAY, market="eu")
    assert len(gate.opens) == len(gate.missing)
    assert all(name in text for name, text in zip(gate.missing, gate.opens, strict=True))


def test_of_several_lots_in_use_the_highest_figure_counts() -> None:
    low = next(lot for lot in lots() if lot.key == "L-009")
    high = replace(low, key="L-029", result=GlutenResult("15", 15.0))
    one = gluten_gate(product("F4"), lots(), CLEAN, on=DAY, market="eu").most_ppm
    both = gluten_gate(product("F4"), (*lots(), high), CLEAN, on=DAY, market="eu").most_ppm
    assert one is not None
    assert both is not None
    assert both - one == pytest.approx(115 * (15 - 5) / 465)


@pytest.mark.source("reference-book", "R17b: concentration by bake loss")
def test_a_batter_at_the_limit_leaves_the_oven_above_it() -> None:
    text = (
        "Loaf\nFamily: butter\nTin: round 20 x 5 cm\nBaked: 10 mm high, 88 g\n\n100 g teff flour\n"
    )
    lot = replace(good(Lot("L", "teff flour", "")), result=GlutenResult("≤20", 20.0))
    gate = gluten_gate(of(text), (lot,), CLEAN, on=DAY, market="eu")
    assert agrees(gate.most_ppm, "22.7")
    assert not gate.claim_allowed
