"""Mixing of known compositions, against worked mass balances with their printed proofs."""

import pytest

from krume.base import Infeasible
from krume.design import BlendFit, BlendLimit, BlendTask, solve_blend
from tests.agreement import agrees

# Fat, milk solids without fat, sugar, total solids; the serum of milk and cream holds 9 % solids.
MIX_5 = {
    "cream": (30.0, 6.3, 0.0, 36.3),
    "milk": (4.0, 8.64, 0.0, 12.64),
    "condensed whole milk": (8.0, 20.0, 42.0, 70.0),
    "sucrose": (0.0, 0.0, 100.0, 100.0),
    "stabilizer": (0.0, 0.0, 0.0, 100.0),
}
MIX_4 = {
    "cream": (32.0, 6.12, 0.0, 38.12),
    "milk": (3.5, 8.685, 0.0, 12.185),
    "condensed skim milk": (0.0, 28.0, 40.0, 68.0),
    "sucrose": (0.0, 0.0, 100.0, 100.0),
    "stabilizer": (0.0, 0.0, 0.0, 100.0),
}
MASSES_5 = ("35.69", "35.13", "23.58", "5.10", "0.50")
MASSES_4 = ("39.93", "34.87", "16.17", "8.53", "0.50")
TOTALS = ("14.00", "10.00", "15.00", "39.50")
EXAMPLES = [(MIX_4, MASSES_4), (MIX_5, MASSES_5)]


def mixed(task: BlendTask) -> BlendFit:
    found = solve_blend(task)
    assert not isinstance(found, Infeasible)
    assert found.proven
    return found


def two(
    first_pct: float, second_pct: float, wanted_pct: float, total: float, step: float
) -> BlendFit:
    rows = ((first_pct,), (second_pct,))
    return mixed(BlendTask(("first", "second"), rows, ("fat",), (wanted_pct,), total, step))


@pytest.mark.source("uoguelph-dairy", "standardization problems 1 and 2")
@pytest.mark.parametrize(
    ("fats", "total", "printed"),
    [((40.0, 0.0, 32.0), 200.0, ("160", "40")), ((35.0, 4.0, 10.0), 620.0, ("120", "500"))],
)
def test_the_square_of_two_creams_gives_the_printed_masses(
    fats: tuple[float, float, float], total: float, printed: tuple[str, str]
) -> None:
    found = two(*fats, total, 1.0)
    assert found.distance == pytest.approx(0, abs=1e-9)
    for mass, expected in zip(found.masses_g, printed, strict=True):
        assert agrees(mass, expected)


@pytest.mark.source("reference-book", "R66, cream and milk to 500 g at 20 % fat")
def test_cream_and_milk_are_mixed_as_in_the_book() -> None:
    cream, milk = two(35.0, 3.5, 20.0, 500.0, 0.1).masses_g
    assert agrees(cream, "261.9")
    assert agrees(milk, "238.1")


@pytest.mark.source("uoguelph-dairy", "ice cream mix problems 4 and 5, proof")
@pytest.mark.parametrize(("parts", "masses"), EXAMPLES)
def test_the_printed_masses_make_the_printed_composition(
    parts: dict[str, tuple[float, ...]], masses: tuple[str, ...]
) -> None:
    shares = [float(mass) for mass in masses]
    found = mixed(
        BlendTask(
            names=tuple(parts),
            composition=tuple(parts.values()),
            properties=("fat", "milk solids", "sugar", "solids"),
            target=tuple(map(float, TOTALS)),
            total_g=100.0,
            step_g=0.01,
            limits=tuple(BlendLimit(f"{at}", (at,), m, m) for at, m in enumerate(shares)),
        )
    )
    assert found.masses_g == pytest.approx(shares)
    for got, printed in zip(found.got, TOTALS, strict=True):
        assert agrees(got, printed)


@pytest.mark.source("uoguelph-dairy", "ice cream mix problems 4 and 5, masses")
@pytest.mark.parametrize(("parts", "masses"), EXAMPLES)
def test_the_wanted_composition_leads_to_the_printed_masses(
    parts: dict[str, tuple[float, ...]], masses: tuple[str, ...]
) -> None:
    found = mixed(
        BlendTask(
            names=tuple(parts),
            composition=tuple(row[:3] for row in parts.values()),
            properties=("fat", "milk solids", "sugar"),
            target=(14.0, 10.0, 15.0),
            total_g=100.0,
            step_g=0.1,
            limits=(BlendLimit("stabilizer", (4,), 0.5, 0.5),),
        )
    )
    for mass, printed in zip(found.masses_g, masses, strict=True):
        assert agrees(mass, printed, within="0.05", why="found in steps of 0.1")
