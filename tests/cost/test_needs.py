"""What is paid for: whole batches of a formula, the batches of a torte, creams made together."""

from hypothesis import given
from hypothesis import strategies as st

from krume.build import Batch, Torte
from krume.cost import Need, Part, formula_need, is_baked, together, torte_needs
from krume.size import Tin
from tests.cost.lists import formula, weighed

CREAM = formula(weighed(100, "caster sugar"), weighed(50, "whole milk"))
CAKE = formula(weighed(100, "caster sugar"), tin=Tin("round 20 x 7 cm", "round", diameter_cm=20.0))


def need(name: str, grams: float | None, kind: str = "cream") -> Need:
    return Need(name, name, kind, (), 1.0, grams, 100.0)


def batch(name: str, kind: str, needed_g: float | None) -> Batch:
    return Batch(name, name, kind, needed_g, 100.0, None, 1.0, 100.0, None)


def test_a_formula_with_a_tin_is_baked_and_a_cream_is_not() -> None:
    assert is_baked(CAKE)
    assert not is_baked(CREAM)


def test_a_formula_alone_is_paid_by_whole_batches() -> None:
    found = formula_need(Part("C", CREAM), count=3)
    assert (found.kind, found.batches, found.needed_g, found.batch_g) == ("cream", 3, 450, 150)
    assert formula_need(Part("F", CAKE)).kind == "cake"
    assert formula_need(Part("N", formula())).batch_g is None


def test_a_torte_needs_its_batches_as_often_as_it_is_made() -> None:
    torte = Torte(
        "T", "stacked", (), None, None, None,
        batches=(batch("F", "cake", 60.0), batch("C", "cream", 40.0), batch("X", "cream", 1.0)),
    )  # fmt: skip
    parts = {"F": Part("F1", CAKE, "eu-m"), "C": Part("C1", CREAM)}
    found = torte_needs(torte, parts, count=2)
    assert [(n.name, n.kind, n.batches, n.needed_g) for n in found] == [
        *(("F1", "cake", 2.0, 120.0), ("C1", "cream", 2.0, 80.0))
    ]
    assert found[0].usual_egg == "eu-m"


def test_what_is_needed_of_one_formula_is_one_need() -> None:
    found = together([need("C", 30.0), need("D", 5.0), need("C", 20.0)])
    assert [(n.name, n.needed_g, n.batches) for n in found] == [("C", 50.0, 2.0), ("D", 5.0, 1.0)]


def test_an_unknown_need_stays_unknown_together_with_a_known_one() -> None:
    assert together([need("C", 30.0), need("C", None)])[0].needed_g is None


def test_a_formula_that_is_baked_here_and_spread_there_is_two_needs() -> None:
    assert len(together([need("C", 30.0), need("C", 30.0, "cake")])) == 2


@given(st.lists(st.tuples(st.sampled_from("ABC"), st.integers(0, 999)), max_size=8))
def test_nothing_is_lost_by_making_it_together(needs: list[tuple[str, int]]) -> None:
    found = together(need(name, float(grams)) for name, grams in needs)
    assert len({n.name for n in found}) == len(found)
    assert sum(n.needed_g or 0 for n in found) == sum(grams for _, grams in needs)
