"""The sum over the papers: a warning that is worked out exactly, and never stands for one."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.label import gluten_gate
from krume.label.gate_estimate import finished_missing, gate_estimate
from krume.pantry import GlutenResult, Lot, read_lots
from tests.label.studio import CLEAN, DAY, good, lots, of, product

HEAD = "lot,ingredient,evidence,text,result_mg_kg,from,valid_to\n"


def with_good(name: str) -> tuple[Lot, ...]:
    """The demo's lots, one of them with a good test."""
    return tuple(good(lot) if lot.key == name else lot for lot in lots())


def test_the_estimate_of_the_demo_with_tested_hazelnuts_is_its_mass_balance() -> None:
    found = gate_estimate(product("F1"), with_good("L-008"), frozenset(), (DAY,), "eu")
    parts = [(50, 8), (12 + 34 + 8 + 40, 5), (3, 20)]
    want = Fraction(sum(mass * most for mass, most in parts), 482)
    assert found.most_ppm == pytest.approx(float(want), rel=1e-12)


def test_while_a_lot_is_not_known_there_is_no_figure_of_the_cake_only_of_the_known() -> None:
    found = gate_estimate(product("F1"), lots(), frozenset(), (DAY,), "eu")
    whole = gate_estimate(product("F1"), with_good("L-008"), frozenset(), (DAY,), "eu")
    assert found.most_ppm is None
    assert found.known_ppm is not None
    assert whole.most_ppm is not None
    assert whole.most_ppm - found.known_ppm == pytest.approx(40 * 5 / 482)


def test_the_highest_paper_of_a_lot_counts() -> None:
    walnut = next(lot for lot in lots() if lot.key == "L-009")
    second = replace(walnut.records[0], result=GlutenResult("15", 15.0))
    both = tuple(replace(x, more=(second,)) if x.key == "L-009" else x for x in lots())
    one = gate_estimate(product("F4"), lots(), frozenset(), (DAY,), "eu").most_ppm
    two = gate_estimate(product("F4"), both, frozenset(), (DAY,), "eu").most_ppm
    assert one is not None
    assert two is not None
    assert two - one == pytest.approx(115 * (15 - 5) / 465)


@given(st.integers(1, 20), st.integers(260, 400))
def test_it_is_mass_times_figure_over_the_baked_mass(figure: int, baked: int) -> None:
    text = f"Cake\nBaked: 10 mm high, {baked} g\nTin: round 20 x 5 cm\n\n200 g teff flour\n"
    row = f"L,teff flour,lab test,,{figure},2027-01-01,2028-01-01\n"
    found = gate_estimate(
        of(text + "220 g water\n"), read_lots(HEAD + row).value, frozenset(), (DAY,), "eu"
    )
    assert found.most_ppm == pytest.approx(float(Fraction(200 * figure, baked)), rel=1e-12)


@pytest.mark.parametrize(
    ("most", "market", "is_open"),
    [(20.0, "eu", True), (20.0, "uk", True), (20.0, "ca", True), (20.0, "us", False),
     (19.999, "us", True), (20.001, "eu", False)],
)  # fmt: skip
def test_exactly_20_is_each_markets_own(most: float, market: str, is_open: bool) -> None:
    assert (finished_missing(most, market, is_tested=False) == "") is is_open


def cake(baked: int, result: str, kind: str = "lab test") -> tuple[str, tuple[Lot, ...]]:
    """A cake of one flour at 19 mg/kg, with a record of the finished cake beside."""
    text = f"Plain cake\nBaked: 10 mm high, {baked} g\nTin: round 20 x 5 cm\n\n200 g teff flour\n"
    rows = "L,teff flour,lab test,,19,2027-01-01,2028-01-01\n"
    rows += f"C-1,plain cake,{kind},,{result},2027-06-01,2027-07-01\n" if result else ""
    return text + "100 g water\n", read_lots(HEAD + rows).value


@pytest.mark.parametrize(
    ("baked", "result", "kind", "allowed"),
    [
        (189, "", "", False),
        (189, "<5", "lab test", True),
        (189, "25", "lab test", False),
        (250, "25", "lab test", False),
        (250, "<5", "lab test", True),
        (189, "", "words on the bag", False),
    ],
)
def test_a_test_of_the_finished_cake_stands_for_the_sum_and_one_above_the_limit_closes(
    baked: int, result: str, kind: str, allowed: bool
) -> None:
    text, papers = cake(baked, result, kind)
    gate = gluten_gate(of(text), papers, CLEAN, on=DAY, market="eu", names=("Plain cake",))
    assert gate.claim_allowed is allowed
    assert bool(gate.finished) is bool(result)
