"""What a variation changes on paper: allergens, facts of its lines, gluten records, its price."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from krume.base import NotFoundError
from krume.cost import line_cost
from krume.design import Formula, Line, varying
from krume.label import (
    ROOM,
    Product,
    Statement,
    product_of_formula,
    statement,
)
from krume.pantry import (
    Ingredient,
    PriceList,
    allergens,
    find,
    ingredient,
    is_tree_nut,
    lots_of,
    market_list,
)
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Asked
from krume.usecases.cost.prices import cost_book
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.kitchen_nuts import kitchen_nuts
from krume.usecases.sold.papers import Papers, papers_of
from krume.usecases.sold.product import lots_named_in
from krume.usecases.vary.result import VaryAllergens, VaryGluten, VaryPrice, VaryWords

_MARKETS = ("eu", "us")
_NAMED = 3
_ALLERGENS = "allergens"
_FACTS = (
    ("vegetarian by its lines", ("gelatine",)),
    ("vegan by its lines", ("milk", "egg", "gelatine", "honey")),
    ("dairy-free by its lines", ("milk",)),
    ("egg-free by its lines", ("egg",)),
)


@dataclass(frozen=True, slots=True)
class VaryBook:
    """What a variation needs of the book, read once: papers, market, prices, the kitchen's nuts."""

    papers: Papers
    market: str
    prices: PriceList
    currency: str
    usual_egg: str | None
    nuts: tuple[str, ...]
    own: tuple[Ingredient, ...]

    @property
    def today(self) -> date:
        """The day papers are judged on."""
        return self.papers.today


def vary_book(asked: Asked, market: str | None, beside: Path | None) -> VaryBook:
    """The book of a request; what is not there is empty, and what needs it is not known."""
    papers = papers_of(asked)
    cost = cost_book(Asked(book=asked.book, on=asked.on), beside)
    chosen = market or studio_of(book_at(asked.book)).market or "eu"
    return VaryBook(
        papers=papers,
        market=chosen,
        prices=cost.prices,
        currency=cost.currency,
        usual_egg=cost.usual_egg,
        nuts=_kitchen(papers, asked, chosen),
        own=own_sheets(papers),
    )


def own_sheets(papers: Papers) -> tuple[Ingredient, ...]:
    """Goods with a supplier's figures: where they are whole, or where the pantry has none."""
    found = (_with_sheet(key, sheet) for key, sheet in papers.sheets.items())
    return tuple(item for item in found if item is not None)


def _with_sheet(key: str, sheet: Ingredient) -> Ingredient | None:
    try:
        packed = ingredient(key)
    except NotFoundError:
        return replace(sheet, key=key)
    if not (sheet.composition.is_complete or varying.is_blank(packed)):
        return None
    return replace(
        packed,
        composition=sheet.composition,
        status=sheet.status,
        source=sheet.source,
        contains=sheet.contains,
        may_contain=sheet.may_contain,
    )


def _kitchen(papers: Papers, asked: Asked, market: str) -> tuple[str, ...]:
    """Nuts the house holds, by its lots; without lots, by the book's formulas."""
    held = [key for lot in papers.lots if (key := find(lot.ingredient).key) is not None]
    words = {word for key in held for word in _nut_words(key, market)}
    return tuple(sorted(words or kitchen_nuts(asked, market)))


def _nut_words(key: str | None, market: str) -> tuple[str, ...]:
    nuts = () if key is None else tuple(a for a in allergens(key) if is_tree_nut(a.allergen))
    return tuple(word for nut in nuts for word in nut.words(market))


@dataclass(frozen=True, slots=True)
class Papered:
    """What the papers say of a formula before and after."""

    allergens: VaryAllergens
    claims: VaryWords
    gluten: VaryGluten
    kitchen: str | None
    unknown: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Side:
    """One formula on paper: its statement in each market, what its gate misses, facts of it."""

    lines: tuple[Line, ...]
    said: dict[str, Statement]
    missing: tuple[str, ...]
    facts: tuple[str, ...]


def side_of(name: str, formula: Formula, book: VaryBook) -> Side:
    """What the papers say of a formula by itself."""
    product = product_of_formula(name, formula)
    lots, chosen = book.papers.lots, lots_named_in(formula)
    return Side(
        lines=formula.lines,
        said={
            market: statement(product, lots, market=market, chosen=chosen)
            for market in _markets(book)
        },
        missing=_missing(product, book, chosen),
        facts=_facts(formula, book),
    )


def _markets(book: VaryBook) -> tuple[str, ...]:
    """The two markets every variation is told in, and the book's own where it is another."""
    return tuple(dict.fromkeys((*_MARKETS, book.market)))


def papered(before: Side, after: Side, book: VaryBook) -> Papered:
    """Hold a child's papers against its parent's."""
    own = before.said[book.market], after.said[book.market]
    silent = _silent(*own)
    words = {
        market: _words(before.said[market], after.said[market], is_open=bool(silent))
        for market in _markets(book)
    }
    hoped = _not_in(own[0].contains, own[1].contains)
    held = {line.ingredient for line in before.lines}
    new = [line for line in after.lines if line.ingredient not in held]
    gone = _not_in(own[0].may_contain, own[1].may_contain)
    open_lines = _without_word(after.lines, book)
    unknown = (
        *_loss_open(hoped, silent),
        *_opened(*own),
        *traces_open(gone, open_lines),
        *_without_lot(new, book),
        *_kitchen_open(own, book),
    )
    return Papered(
        allergens=VaryAllergens(
            market=book.market,
            gained=words[book.market].gained,
            lost=words[book.market].lost,
            traces_gained=_not_in(own[1].may_contain, own[0].may_contain),
            traces_lost=() if open_lines else gone,
            eu=words["eu"],
            us=words["us"],
            open=silent,
        ),
        claims=VaryWords(_not_in(after.facts, before.facts), _not_in(before.facts, after.facts)),
        gluten=_gluten(before.missing, after.missing, book),
        kitchen=_kitchen_line(own, book),
        unknown=tuple(dict.fromkeys(unknown)),
    )


def _words(before: Statement, after: Statement, *, is_open: bool) -> VaryWords:
    """Words gained and lost; while something new has unknown allergens nothing counts as lost."""
    return VaryWords(
        gained=_not_in(after.contains, before.contains),
        lost=() if is_open else _not_in(before.contains, after.contains),
    )


def _silent(before: Statement, after: Statement) -> tuple[str, ...]:
    """What came in and nobody has said the allergens of."""
    known = {u.text for u in before.unknown}
    found = (u.of for u in after.unknown if _ALLERGENS in u.what and u.text not in known)
    return tuple(dict.fromkeys(found))


def _loss_open(lost: tuple[str, ...], silent: tuple[str, ...]) -> tuple[str, ...]:
    if not lost or not silent:
        return ()
    goods = " and ".join(silent)
    return (f"Whether {', '.join(lost)} is gone is not known: {goods} may hold it.",)


def _not_in(ones: Iterable[str], others: Iterable[str]) -> tuple[str, ...]:
    taken = set(others)
    return tuple(one for one in ones if one not in taken)


def _opened(before: Statement, after: Statement) -> tuple[str, ...]:
    """What the label would not know of the child that it knew of the parent."""
    return _not_in((u.text for u in after.unknown), (u.text for u in before.unknown))


def _without_word(lines: tuple[Line, ...], book: VaryBook) -> tuple[str, ...]:
    """Lines of the child whose bag nobody has read: no lot is no word that there are no traces."""
    return tuple(
        line.name
        for line in lines
        if line.ingredient != varying.WATER
        and not lots_of(line.name, line.ingredient, book.papers.lots)
    )


def traces_open(gone: tuple[str, ...], open_lines: tuple[str, ...]) -> tuple[str, ...]:
    """That traces a bag told of may still be there; they are lost only where every bag is read."""
    if not gone or not open_lines:
        return ()
    names = ", ".join(open_lines[:_NAMED])
    more = f" and {len(open_lines) - _NAMED} more" if len(open_lines) > _NAMED else ""
    return (
        f"Whether traces of {', '.join(gone)} are gone is not known: there is no lot of "
        f"{names}{more}.",
    )


def _without_lot(new: list[Line], book: VaryBook) -> tuple[str, ...]:
    """New goods without a lot: nobody has said what their bag may hold."""
    if not book.papers.lots:
        return ()
    return tuple(
        f"There is no lot of {line.name} in the book: what its bag says of traces is not known."
        for line in new
        if not lots_of(line.name, line.ingredient, book.papers.lots)
        and line.ingredient not in (varying.WATER, None)
    )


def _kitchen_line(said: tuple[Statement, Statement], book: VaryBook) -> str | None:
    """The sentence of a kitchen that uses nuts; never that there are none."""
    mine = {word for each in said for word in each.contains if _is_nut(word, book)}
    nuts = sorted({_noun(word) for word in (*book.nuts, *mine)})
    return f"Made where nuts are used: {', '.join(nuts)}." if nuts else None


def _is_nut(word: str, book: VaryBook) -> bool:
    return any(word in found.words for name, found in market_list(book.market) if is_tree_nut(name))


def _noun(word: str) -> str:
    return word.partition("(")[2].rstrip(")") or word


def _kitchen_open(said: tuple[Statement, Statement], book: VaryBook) -> tuple[str, ...]:
    lost = [word for word in said[0].contains if _is_nut(word, book)]
    if book.nuts or not lost:
        return ()
    return ("Which nuts this kitchen uses besides is not known: the book has no lots.",)


def _facts(formula: Formula, book: VaryBook) -> tuple[str, ...]:
    """Facts that every line bears out; never one about nuts."""
    held = [
        (words, [varying.avoided(line, words, book.own) for line in formula.lines])
        for _, words in _FACTS
    ]
    return tuple(
        label
        for (label, _), (_, found) in zip(_FACTS, held, strict=True)
        if found and all(each == () for each in found)
    )


def _missing(product: Product, book: VaryBook, chosen: frozenset[str]) -> tuple[str, ...]:
    """What stands in the way of a gluten claim, but for the room's own record."""
    papers, day = book.papers, book.today
    gate = gate_of(product, papers, on=day, market=book.market, chosen=chosen)
    return tuple(word for word in gate.missing if word != ROOM)


def _gluten(before: tuple[str, ...], after: tuple[str, ...], book: VaryBook) -> VaryGluten:
    return VaryGluten(book.today.isoformat(), before, after, _gluten_text(before, after))


def _gluten_text(before: tuple[str, ...], after: tuple[str, ...]) -> str:
    new, gone = _not_in(after, before), _not_in(before, after)
    parts = [
        f"no longer in the way: {', '.join(gone)}" if gone else "",
        f"now in the way: {', '.join(new)}" if new else "",
    ]
    told = "; ".join(part for part in parts if part)
    if not told:
        return "Gluten records: the same as the parent's."
    return f"Gluten records: {told}. The label decides, with the room's record."


def price_row(lines: tuple[varying.VariedLine, ...], book: VaryBook) -> VaryPrice | None:
    """What the changed lines cost before and after; None where the book has no prices."""
    if not book.prices.prices:
        return None
    changed = [each for each in lines if each.is_changed]
    before, without = _cost([x.before for x in changed if x.before is not None], book)
    after, lacking = _cost([x.line for x in changed if x.line is not None], book)
    known = before is not None and after is not None
    return VaryPrice(
        currency=book.currency,
        before=before,
        after=after,
        difference=round((after or 0.0) - (before or 0.0), 2) if known else None,
        missing=tuple(dict.fromkeys((*without, *lacking))),
    )


def _cost(lines: list[Line], book: VaryBook) -> tuple[float | None, tuple[str, ...]]:
    """Cost rounded to the cent, and the names without a price; water is not bought."""
    total, missing = Fraction(0), []
    for line in lines:
        if line.ingredient == varying.WATER:
            continue
        cost = line_cost(line, book.prices, usual_egg=book.usual_egg).line.cost
        if cost is None:
            missing.append(line.name)
        else:
            total += cost
    cents = Decimal(total.numerator) / Decimal(total.denominator)
    return (None if missing else round(float(cents), 2)), tuple(missing)
