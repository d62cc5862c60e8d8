"""What must be bought: everything the planned batches take, less what is in the house, by packs."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class NeededLine:
    """One ingredient of a planned formula, in grams of all batches that are made."""

    name: str
    ingredient: str | None
    mass_g: float | None
    formula: str
    orders: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Pack:
    """How an ingredient is bought: grams a pack, and where; None is not known."""

    mass_g: float | None = None
    where: str | None = None
    stock_g: float | None = None


@dataclass(frozen=True, slots=True)
class ShoppingRow:
    """One thing to buy. `buy_g` is whole packs where a pack is known; None is not known.

    `stops` are the orders that cannot be made without it.
    """

    name: str
    ingredient: str | None
    need_g: float | None
    stock_g: float | None
    pack_g: float | None
    packs: int | None
    buy_g: float | None
    where: str | None
    formulas: tuple[str, ...]
    stops: tuple[str, ...]


def shopping(
    lines: Iterable[NeededLine], packs: Mapping[str, Pack], first_needed: Mapping[str, int]
) -> tuple[ShoppingRow, ...]:
    """The list: by where it is bought, and there first what stops most and is needed soonest.

    `packs` goes by the ingredient's name as written; `first_needed` gives each formula's turn.
    What the house has enough of is not on it.
    """
    by_key: dict[str, list[NeededLine]] = {}
    for line in lines:
        by_key.setdefault(line.ingredient or line.name.casefold(), []).append(line)
    rows = [_row(found, packs) for found in by_key.values()]
    wanted = [row for row in rows if row.buy_g is None or row.buy_g > 0]
    return tuple(sorted(wanted, key=lambda row: _rank(row, first_needed)))


def _row(lines: list[NeededLine], packs: Mapping[str, Pack]) -> ShoppingRow:
    name = lines[0].name
    pack = packs.get(name.casefold(), Pack())
    masses = [line.mass_g for line in lines]
    known = [mass for mass in masses if mass is not None]
    need = sum(known) if len(known) == len(masses) else None
    left = None if need is None else max(0.0, need - (pack.stock_g or 0.0))
    count = None
    if left is not None and pack.mass_g:
        count = math.ceil(left / pack.mass_g - 1e-9)
    return ShoppingRow(
        name=name,
        ingredient=lines[0].ingredient,
        need_g=need,
        stock_g=pack.stock_g,
        pack_g=pack.mass_g,
        packs=count,
        buy_g=left if count is None or pack.mass_g is None else count * pack.mass_g,
        where=pack.where,
        formulas=tuple(dict.fromkeys(line.formula for line in lines)),
        stops=tuple(dict.fromkeys(order for line in lines for order in line.orders)),
    )


def _rank(
    row: ShoppingRow, first_needed: Mapping[str, int]
) -> tuple[bool, str, int, int, float, str]:
    soonest = min((first_needed.get(name, len(first_needed)) for name in row.formulas), default=0)
    return (
        row.where is None,
        row.where or "",
        -len(row.stops),
        soonest,
        -(row.need_g or math.inf),
        row.name,
    )
