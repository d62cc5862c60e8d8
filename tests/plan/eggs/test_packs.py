"""Packs: no fewer eggs over, and then no fewer packs."""

from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from krume.plan import packs_for


def test_seventeen_eggs_in_sixes_and_tens() -> None:
    assert packs_for(17, [6, 10]) == {6: 3}
    assert packs_for(16, [6, 10]) == {6: 1, 10: 1}
    assert packs_for(90, [6, 10]) == {10: 9}


@given(st.integers(1, 40), st.lists(st.integers(4, 30), min_size=1, max_size=2, unique=True))
def test_no_other_packs_leave_fewer_eggs_over(count: int, packs: list[int]) -> None:
    found = packs_for(count, packs)
    held = sum(holds * n for holds, n in found.items())
    every = [
        (sum(n * p for n, p in zip(ns, packs, strict=True)), sum(ns))
        for ns in product(*(range(count // p + 2) for p in packs))
    ]
    best = min((total, number) for total, number in every if total >= count)
    assert (held, sum(found.values())) == best
