"""What the book knows of the flours of a blend: gluten records, allergens, prices, stock."""

from collections.abc import Iterable, Sequence
from decimal import ROUND_HALF_UP, Decimal

from krume.base import Notice, Option, Problem
from krume.design import decode_text
from krume.label import GateRecord, Product, Used, statement
from krume.pantry import (
    PriceList,
    find,
    ingredient,
    lots_of,
    price_of,
    read_prices,
    record_state,
)
from krume.store import Studio, book_at, prices_of, studio_of
from krume.usecases.asking.answer import Asked
from krume.usecases.blend.flours import Flour
from krume.usecases.blend.match import Match
from krume.usecases.blend.result import (
    BlendAllergens,
    BlendGluten,
    BlendLine,
    BlendPrice,
    BlendRecord,
)
from krume.usecases.plan.kitchen import packs_of
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.papers import Papers

_CENT = Decimal("0.01")
_ROLES = ("flour", "starch")
_GLUTEN = "cereals containing gluten"
Words = tuple[str, ...]
"""Allergens, in the words of a market."""


def flours_in_house(papers: Papers) -> tuple[str, ...]:
    """Names of the flours and starches that the book has lots of, in the order of the lots."""
    found: dict[str, str] = {}
    for lot in papers.lots:
        known = find(lot.ingredient)
        if known.key is not None and _is_flour(known.key):
            found.setdefault(known.key, lot.ingredient)
    return tuple(found.values())


def _is_flour(key: str) -> bool:
    return ingredient(key).role in _ROLES


def ran_out(name: str, papers: Papers) -> bool:
    """Whether every lot of a flour has a record that is no longer in force."""
    key = find(name).key
    lots = lots_of(name, key, papers.lots)
    states = [record_state(lot, on=papers.today, key=key) for lot in lots]
    return bool(states) and all(state == "expired" for state in states)


def records_of(
    flours: Sequence[Flour], used: frozenset[str], papers: Papers, market: str
) -> tuple[BlendRecord, ...]:
    """How each flour's record stands on the day, if any lots are kept at all."""
    if not papers.lots:
        return ()
    return tuple(
        BlendRecord(flour.key, flour.name, record.lot, record.state, record.text, flour.key in used)
        for flour in flours
        for record in _records(flour, papers, market)
    )


def _records(flour: Flour, papers: Papers, market: str) -> tuple[GateRecord, ...]:
    product = _product(((flour, 1.0),))
    gate = gate_of(product, papers, on=papers.today, market=market)
    return gate.records


def _product(parts: Iterable[tuple[Flour, float]]) -> Product:
    used = tuple(
        Used(flour.name, flour.key, flour.row.label_name, flour.row.role, mass)
        for flour, mass in parts
    )
    return Product("blend", "formula", used, None, "unknown", {})


def gluten_grains(
    flours: Sequence[Flour], used: frozenset[str], papers: Papers
) -> tuple[BlendGluten, ...]:
    """Flours at hand that are gluten grains by the words of the law, whatever their lots say."""
    found = []
    for flour in flours:
        contains = statement(_product(((flour, 1.0),)), papers.lots, market="eu").contains
        grain = next((word for word in contains if word.startswith(_GLUTEN)), None)
        if grain is not None:
            text = (
                f"{flour.name} is a gluten grain ({grain}): no blend with it is for guests with "
                "coeliac disease, in however small a share."
            )
            found.append(BlendGluten(flour.key, flour.name, grain, flour.key in used, text))
    return tuple(found)


def gained_with(parts: Iterable[Flour], match: Match | None, papers: Papers, market: str) -> Words:
    """Allergens that flours bring beyond those of the blend they replace, or all of them."""
    now = statement(_product((flour, 1.0) for flour in parts), papers.lots, market=market).contains
    had = () if match is None else _had(match, papers, market)
    return tuple(word for word in now if word not in had)


def _had(match: Match, papers: Papers, market: str) -> Words:
    of = ((part.flour, part.mass_g) for part in match.parts)
    return statement(_product(of), papers.lots, market=market).contains


def allergens_of_blend(
    parts: Iterable[tuple[Flour, float]], match: Match | None, papers: Papers, market: str
) -> BlendAllergens:
    """Allergens of a blend; what it gains and loses against the blend it replaces."""
    now = statement(_product(parts), papers.lots, market=market)
    before = () if match is None else _had(match, papers, market)
    return BlendAllergens(
        market,
        now.contains,
        tuple(word for word in now.contains if word not in before) if match is not None else (),
        tuple(word for word in before if word not in now.contains),
        now.may_contain,
        tuple(dict.fromkeys(each.of for each in now.unknown if each.closes == "label")),
    )


def market_of(asked: Asked) -> str:
    """Whose words allergens are told in: the studio's market."""
    return studio_of(book_at(asked.book)).market or "eu"


def prices_at_hand(asked: Asked) -> PriceList:
    """The book's price list, empty where it has none."""
    book = book_at(asked.book)
    text = decode_text(prices_of(book) or b"").value
    if not text.strip():
        return PriceList()
    return read_prices(text, eggs_region=studio_of(book).eggs_region).value


def prices_per_kg(flours: Iterable[Flour], prices: PriceList) -> dict[str, Decimal]:
    """Price of a kilogram of each flour that the list has, by key."""
    found = {flour.key: price_of(prices, flour.name, flour.key) for flour in flours}
    return {
        key: each.price.amount
        for key, each in found.items()
        if each is not None and each.price.per == "kg"
    }


def price_of_blend(
    parts: Sequence[BlendLine], match: Match | None, prices: PriceList, studio: Studio
) -> BlendPrice | None:
    """Price of a kilogram of a blend, and of the one it replaces; None where no list is kept."""
    if not prices.prices:
        return None
    per_kg = _named(((line.name, line.ingredient) for line in parts), prices)
    before = None
    if match is not None:
        was = [(part.flour.name, part.flour.key, part.mass_g) for part in match.parts]
        priced = _named(((name, key) for name, key, _ in was), prices)
        before = _mean([(priced.get(key), mass) for _, key, mass in was])
    return BlendPrice(
        _mean([(per_kg.get(line.ingredient), line.mass_g) for line in parts]),
        before,
        studio.cost.currency or prices.currency,
        tuple(line.name for line in parts if line.ingredient not in per_kg),
    )


def _named(names: Iterable[tuple[str, str]], prices: PriceList) -> dict[str, Decimal]:
    found = {key: price_of(prices, name, key) for name, key in names}
    return {k: f.price.amount for k, f in found.items() if f is not None and f.price.per == "kg"}


def _mean(parts: Sequence[tuple[Decimal | None, float]]) -> Decimal | None:
    known = [(price, Decimal(repr(mass))) for price, mass in parts if price is not None]
    if len(known) < len(parts) or not parts:
        return None
    paid = sum((price * mass for price, mass in known), Decimal(0))
    whole = sum((mass for _, mass in known), Decimal(0))
    return (paid / whole).quantize(_CENT, rounding=ROUND_HALF_UP)


def stock_g(flours: Iterable[Flour], asked: Asked) -> tuple[dict[str, float], tuple[Notice, ...]]:
    """Grams in the house by key, from the book's table of packs; what it does not say is told."""
    packs = packs_of(book_at(asked.book))
    kept: dict[str, float] = {}
    silent: list[str] = []
    by_key = {find(name).key: pack for name, pack in packs.items()}
    for flour in flours:
        pack = packs.get(flour.name.casefold()) or by_key.get(flour.key)
        if pack is None or pack.stock_g is None:
            silent.append(flour.name)
        else:
            kept[flour.key] = pack.stock_g
    if not silent:
        return kept, ()
    text = (
        f"How much is in the house is not written for {', '.join(silent)} (packs.csv, column "
        "stock_g): no limit is set on it."
    )
    return kept, (Notice("stock-not-written", text, "--stock"),)


def unpriced(flours: Iterable[Flour], per_kg: dict[str, Decimal]) -> tuple[Problem, ...]:
    """Questions for flours without a price, where a price is to be kept."""
    found = []
    for flour in flours:
        if flour.key not in per_kg:
            ask = (
                f"{flour.name} has no price per kg in prices.csv, and unknown is not 0. Add its "
                f"line, such as {flour.name},4.00,kg,declared; or leave it out."
            )
            options = (Option(f"leave {flour.name} out", flour.name),)
            found.append(Problem("flour-unpriced", "--without", flour.name, ask, options))
    return tuple(found)
