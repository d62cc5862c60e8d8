"""What the papers of a lot say at the gate: both sides where they speak against one another."""

from dataclasses import replace

import pytest

from krume.label import GateRecord, gluten_gate
from krume.pantry import Lot, LotRecord, read_lots
from tests.label.studio import CLEAN, DAY, good, lots, product

TEST = good(next(lot for lot in lots() if lot.key == "L-009")).records[0]
WARNING = LotRecord("may-contain", notes="wheat, nuts")
DOUBT = LotRecord("doubt", notes="stood open beside the flour")


def walnuts(*records: LotRecord) -> tuple[Lot, ...]:
    """The demo's lots, the walnuts with these papers."""
    first, *more = records
    own = Lot(
        "L-009", "ground walnuts", first.evidence, first.result, first.valid_from,
        first.valid_to, first.notes, method=first.method, more=tuple(more),
    )  # fmt: skip
    return tuple(own if lot.key == "L-009" else lot for lot in lots())


def record_of(papers: tuple[Lot, ...], market: str = "eu") -> tuple[GateRecord, str]:
    """The record of the walnuts, and what opens it."""
    gate = gluten_gate(product("T3"), papers, CLEAN, on=DAY, market=market)
    opens = next((text for text in gate.opens if text.startswith("L-009")), "")
    return next(each for each in gate.records if each.lot == "L-009"), opens


def test_papers_that_contradict_one_another_close_it_and_both_are_said() -> None:
    record, opens = record_of(walnuts(TEST, WARNING))
    assert record.state == "conflict"
    assert "may contain wheat, nuts" in record.text
    assert "while another paper says: lab test, <5 mg/kg, valid to 2028-01-01" in record.text
    assert "another lot, with a valid test or certificate, opens it" in opens


def test_a_doubt_says_that_it_has_to_be_ended() -> None:
    record, opens = record_of(walnuts(TEST, DOUBT))
    assert record.state == "conflict"
    assert "in doubt in this kitchen" in opens
    assert "the day on which the doubt was ended" in opens


def test_each_paper_says_what_it_proves_and_what_it_does_not() -> None:
    record, _ = record_of(walnuts(replace(TEST, method="R5 ELISA"), LotRecord("specification")))
    test, sheet = record.papers
    assert (test.kind, test.state, test.result) == ("lab test", "good", "<5")
    assert test.method == "R5 sandwich ELISA"
    assert "the sample" in test.proves
    assert "what the rest of the lot holds" in test.not_proves
    assert "oats" in test.not_seen
    assert (sheet.kind, sheet.state) == ("specification", "missing")


@pytest.mark.parametrize(("market", "words"), [("us", "below 20 ppm"), ("eu", "20 mg/kg or less")])
def test_what_opens_it_is_said_in_the_words_of_its_market(market: str, words: str) -> None:
    old = replace(TEST, valid_to=DAY.replace(day=9))
    record, opens = record_of(walnuts(old), market)
    assert record.state == "expired"
    assert f"a valid test of the lot ({words}) or a certificate of 20 or less opens it" in opens


def test_a_result_that_shows_nothing_says_why() -> None:
    row = "L-009,ground walnuts,lab test,,<25,2027-01-01,2028-01-01\n"
    head = "lot,ingredient,evidence,text,result_mg_kg,from,valid_to\n"
    (lot,) = read_lots(head + row).value
    papers = tuple(lot if each.key == "L-009" else each for each in lots())
    record, opens = record_of(papers)
    assert record.state == "missing"
    assert "<25 does not show 20 mg/kg or less" in opens
