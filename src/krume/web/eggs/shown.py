"""Eggs as a page shows them: packs in words, bowls with their doubt."""

from dataclasses import dataclass

from krume.usecases import EggBuy, EggPack, EggRow, EggsResult
from krume.web.frame.figures import amount


@dataclass(frozen=True, slots=True)
class BuyRow:
    """Eggs of one size to buy, and in which packs."""

    count: str
    label: str
    packs: str


@dataclass(frozen=True, slots=True)
class PackRow:
    """Egg out of a pack: how much, for what, and where it comes from."""

    mass: str
    name: str
    of: str
    comes: str


@dataclass(frozen=True, slots=True)
class BowlRow:
    """One bowl of eggs: whose, when, what goes in, how sure its grams are."""

    formula: str
    title: str
    day: str
    text: str
    doubt: str


def buy_rows(eggs: EggsResult) -> tuple[BuyRow, ...]:
    """What to buy."""
    return tuple(BuyRow(amount(buy.count), buy.label, _packs(buy)) for buy in eggs.buy)


def _packs(buy: EggBuy) -> str:
    said = [f"{p.count} pack{'' if p.count == 1 else 's'} of {p.holds}" for p in buy.packs]
    over = f", {buy.over} over" if buy.over else ""
    return f"{' and '.join(said)}{over}" if said else ""


def pack_rows(eggs: EggsResult) -> tuple[PackRow, ...]:
    """Egg that comes out of a pack."""
    return tuple(
        PackRow(amount(pack.mass_g), pack.name, ", ".join(pack.formulas), _comes(pack))
        for pack in eggs.packs
    )


def _comes(pack: EggPack) -> str:
    """What is there and what to buy; left-over egg is only offered, whose cake it is decides."""
    said = []
    if pack.from_house_g > 0:
        said.append(f"{amount(pack.from_house_g)} g in the house")
    said.append(f"buy {amount(pack.buy_g)} g" if pack.buy_g > 0 else "none to buy")
    if pack.saved_g > 0:
        how = "" if pack.heat_c is None else f", heated to {amount(pack.heat_c)} °C"
        said.append(f"or in its place {amount(pack.saved_g)} g of the left-over {pack.part}{how}")
    return ", ".join(said)


def bowl_rows(eggs: EggsResult) -> tuple[BowlRow, ...]:
    """What goes into which bowl."""
    return tuple(_bowl(row) for row in eggs.formulas)


def _bowl(row: EggRow) -> BowlRow:
    day = "" if row.day is None else f"{row.day:%a} {row.day.day} {row.day:%b}"
    return BowlRow(row.formula, row.title, day, row.text, _doubt(row))


def _doubt(row: EggRow) -> str:
    if row.likely_half_g is None or row.spread_g is None:
        return ""
    return f"{amount(row.spread_g.best)} ± {amount(row.likely_half_g)} g"
