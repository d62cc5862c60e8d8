"""Can somebody with coeliac disease eat it: one true sentence, and what it rests on."""

import re
from datetime import date

import pytest

from krume.base import InputError
from krume.usecases import Asked, GlutenResult, GlutenWish, gluten_of
from krume.usecases.label.gluten_said import VERDICTS

COVERS = ["gluten_said", "gluten_result"]
CLAIM = re.compile(r"gluten[\s-]*free|free (?:from|of) gluten", re.IGNORECASE)


def found(name: str, asked: Asked, market: str | None = None) -> GlutenResult:
    """The answer about a name."""
    return gluten_of(name, GlutenWish(market=market), asked).result


def words_of(result: GlutenResult) -> str:
    """Everything a result says."""
    return repr(result)


def clean(asked: Asked, *rows: str) -> Asked:
    """The same book with these lines in cleaning.csv."""
    assert asked.book is not None
    (asked.book / "cleaning.csv").write_text("\n".join(("date,cleaned", *rows)) + "\n")
    return asked


def add_lots(asked: Asked, *rows: str) -> Asked:
    """The same book with more papers of its lots."""
    assert asked.book is not None
    path = asked.book / "lots.csv"
    path.write_text(path.read_text(encoding="utf-8") + "".join(f"{r}\n" for r in rows), "utf-8")
    return asked


@pytest.mark.parametrize(
    ("name", "verdict", "reason"),
    [
        ("T1", "no", "the ground hazelnuts may contain wheat"),
        ("T2", "no", "the record of the millet flour has run out"),
        ("TART", "no", "no certificate that counts of the dark chocolate, 60 % and icing sugar"),
        ("T3", "not yet", "the room's cleaning record of the day is not there"),
        ("101", "no", "the ground hazelnuts may contain wheat"),
    ],
)
def test_the_first_sentence_is_true_and_names_why(
    demo: Asked, name: str, verdict: str, reason: str
) -> None:
    result = found(name, demo)
    assert result.verdict == verdict
    assert reason in result.aloud
    assert result.aloud.startswith("No" if verdict == "no" else "Not yet")
    assert not result.claim_allowed


@pytest.mark.parametrize("name", ["T3", "F6", "102"])
@pytest.mark.parametrize("market", ["us", "eu", "uk", "ca", "au-nz"])
def test_while_it_is_shut_the_words_of_the_claim_stand_nowhere(
    demo: Asked, name: str, market: str
) -> None:
    result = found(name, demo, market)
    assert not CLAIM.search(words_of(result))
    assert result.sentence is None
    assert "may not be printed yet" in result.printed
    assert "safe" not in words_of(result).casefold()


@pytest.mark.parametrize(("market", "words"), [("us", "below 20 ppm"), ("eu", "20 mg/kg or less")])
def test_an_open_gate_is_a_yes_in_the_words_of_its_market(
    own_demo: Asked, market: str, words: str
) -> None:
    result = found("T3", clean(own_demo, "2027-06-10,yes"), market)
    assert result.verdict == "yes"
    assert result.claim_allowed
    assert f"gluten-free by the rule, {words}" in result.aloud
    assert "The cake itself was not tested" in result.aloud
    assert result.printed == "The label may print: Gluten-free."


def test_where_the_rule_is_not_judged_it_stays_a_no(own_demo: Asked) -> None:
    result = found("T3", clean(own_demo, "2027-06-10,yes"), "au-nz")
    assert result.verdict == "no"
    assert "rule: Food Standards Code 1.2.7" in result.missing
    assert "no gluten that can be found" in result.limit


def test_the_sum_is_a_warning_and_never_a_figure_of_the_cake_while_a_lot_is_open(
    demo: Asked,
) -> None:
    (piece,) = found("T1", demo).pieces
    assert piece.most_ppm is None
    assert piece.known_ppm is not None
    assert piece.warning.startswith("Warning, for the kitchen only")
    assert "there is no figure of the cake" in piece.warning
    (open_one,) = found("T3", demo).pieces
    assert open_one.most_ppm == open_one.known_ppm
    assert "is never said of the cake and stands on no label" in open_one.warning


def test_contradictory_papers_are_both_shown(own_demo: Asked) -> None:
    row = "L-008,ground hazelnuts,lab test,,<5,2027-05-01,2028-05-01,invented"
    result = found("T1", clean(add_lots(own_demo, row), "2027-06-10,yes"))
    nuts = next(lot for lot in result.pieces[0].lots if lot.lot == "L-008")
    assert result.verdict == "no"
    assert "may contain wheat, while another paper says" in nuts.text
    assert [(paper.kind, paper.state) for paper in nuts.papers] == [
        ("specification", "conflict"), ("lab test", "good"),
    ]  # fmt: skip
    assert "another lot, with a valid test or certificate, opens it" in nuts.opens


def test_what_contains_a_gluten_grain_says_so_first(write, own_demo: Asked) -> None:  # type: ignore[no-untyped-def]
    text = write("Plain\nFamily: butter\nBaked: 20 mm high, 180 g\nTin: round 18 x 5 cm\n\n"
                 "100 g wheat flour\n100 g butter\n")  # fmt: skip
    result = found(text, clean(own_demo, "2027-06-10,yes"))
    assert result.verdict == "contains"
    assert result.aloud == "No. Plain is not for anybody with coeliac disease: it contains wheat."


def test_what_it_does_not_prove_is_always_said(demo: Asked) -> None:
    for name in ("T1", "T3"):
        said = " ".join(found(name, demo).not_proven)
        assert "the rule allows 20 mg/kg or less" in said
        assert "the records are of its ingredients as they came" in said
        assert "with their doctor" in said
        assert "allergic to wheat" in said


def test_a_test_of_the_finished_cake_is_shown_as_one_of_another_cake(own_demo: Asked) -> None:
    row = "C-1,T3,lab test,,<5,2027-06-01,2027-07-01,invented"
    result = found("T3", clean(add_lots(own_demo, row), "2027-06-10,yes"))
    assert "has a test of its own" in result.aloud
    assert "was of another one" in " ".join(result.not_proven)
    bad = "C-2,T3,lab test,,25,2027-06-01,2027-07-01,invented"
    result = found("T3", add_lots(own_demo, bad))
    assert result.verdict == "no"
    assert "C-2" in result.missing


def test_an_empty_book_knows_nothing_and_says_no(bare: Asked, write) -> None:  # type: ignore[no-untyped-def]
    result = found(write("Sponge\n\n100 g white rice flour\n"), bare)
    assert result.verdict == "no"
    assert "there is no lot with a record of the white rice flour" in result.aloud


def test_the_day_of_making_is_judged_too(own_demo: Asked) -> None:
    asked = clean(own_demo, "2027-06-10,yes")
    wish = GlutenWish(made=date(2027, 6, 9))
    assert gluten_of("T3", wish, asked).result.verdict == "not yet"


def test_a_market_nobody_knows_is_refused(demo: Asked) -> None:
    with pytest.raises(InputError, match="Type one of"):
        found("T3", demo, "mars")


def test_every_verdict_is_one_of_the_words(demo: Asked) -> None:
    assert {found(name, demo).verdict for name in ("T1", "T3", "102")} <= set(VERDICTS)


def test_a_doubt_is_told_as_one(own_demo: Asked) -> None:
    row = "L-009,ground walnuts,doubt,bag torn,,2027-06-09,,invented"
    said = found("T3", clean(add_lots(own_demo, row), "2027-06-10,yes")).aloud
    assert said.endswith("the bag of ground walnuts is in doubt in this kitchen (bag torn).")
