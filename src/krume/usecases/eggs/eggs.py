"""Eggs of orders, tortes and formulas: the fewest to buy, what to crack, what takes the rest."""

import re
from dataclasses import dataclass, replace

from krume.base import Notice, Option, Problem
from krume.pantry import egg_size
from krume.plan import (
    Cracking,
    EggNeed,
    EggStock,
    Taken,
    UsedUp,
    crack,
    egg_cautions,
    left_over,
    missing_eggs,
    near_enough_fraction,
    offers,
    read_house,
    read_shop,
    use_up,
)
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.sources import practice_notice
from krume.usecases.eggs.result import EggsResult, no_eggs
from krume.usecases.eggs.rows import (
    buy_rows,
    crack_rows,
    formula_rows,
    left_rows,
    pack_rows,
    spread_rows,
    taker_rows,
)
from krume.usecases.eggs.wanted import (
    EggsAsked,
    book_takers,
    egg_needs,
    eggs_asked,
    own_takers,
    ranges_taken,
    size_in_play,
    unsized,
)

_PERCENT = 100
_TWO = 2
_EGG = re.compile(r"egg|yolk|white", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class EggsWish:
    """What is there: eggs and packs in the house, what the shop has, eggs a pack.

    `tolerance_pct` is how far whole eggs of other sizes may weigh from what a bowl wants, and
    `sugared_pct` the sugar in sugared yolk by its pack; None is the row of the table.
    """

    have: tuple[str, ...] = ()
    shop: tuple[str, ...] = ()
    packs: tuple[int, ...] = ()
    tolerance_pct: float | None = None
    sugared_pct: float | None = None


def eggs_of(names: tuple[str, ...], wish: EggsWish, asked: Asked) -> Answer[EggsResult]:
    """Eggs of one or more orders, tortes or formulas, `F1*12` twelve times."""
    wanted = eggs_asked(names, asked)
    stock = _stock(wish, asked)
    problems = (*wanted.problems, *(unsized(wanted) if not wanted.problems else ()))
    stock = _any_size_named(wanted, stock)
    size = size_in_play(wanted, asked) if stock[0].is_plain else None
    needs = egg_needs(wanted, size)
    problems = (*problems, *stock[1], *(_sizeless(needs) if stock[0].is_plain else ()))
    bare = Answer(
        no_eggs(wanted.titles), tuple(dict.fromkeys(problems)), _of_eggs(wanted), wanted.sources,
        is_possible=wanted.is_possible,
    )  # fmt: skip
    if problems or not wanted.is_possible:
        return bare
    found = crack(needs, stock[0])
    if found is None:
        return replace(bare, problems=_short(needs, stock[0]), is_possible=False)
    return _answered(bare, wanted, found, (stock[0], wish), asked)


def _any_size_named(
    wanted: EggsAsked, stock: tuple[EggStock, tuple[Problem, ...]]
) -> tuple[EggStock, tuple[Problem, ...]]:
    """Eggs in grams may come from any size that is cracked: no egg is broken beside a left-over."""
    needs = egg_needs(wanted, None)
    sizes = tuple(sorted({need.size for need in needs if need.size is not None}))
    in_grams = any(need.size is None for need in needs)
    if not stock[0].is_plain or not in_grams or len(sizes) < _TWO:
        return stock
    return replace(stock[0], shop=sizes), stock[1]


def _within(needs: tuple[EggNeed, ...], stock: EggStock) -> str:
    """Within what the number is the fewest: eggs of another size are not bought for a bowl."""
    shop = stock.shop
    own = {need.size for need in needs if need.size is not None}
    bought = own if shop is None else own & set(shop)
    return "each bowl from eggs of its own size" if len(bought) >= _TWO else ""


def _of_eggs(wanted: EggsAsked) -> tuple[Notice, ...]:
    """What was taken as read about eggs; the rest of a formula does not matter here."""
    return tuple(n for n in wanted.notices if _EGG.search(f"{n.code} {n.text}"))


def _answered(
    bare: Answer[EggsResult],
    wanted: EggsAsked,
    found: Cracking,
    given: tuple[EggStock, EggsWish],
    asked: Asked,
) -> Answer[EggsResult]:
    stock, wish = given
    own = own_takers(wanted)
    left, taken = use_up(left_over(found), own)
    more = offers(left, (*own, *book_takers((f.name for f in wanted.formulas), asked)))
    crumbs = all(each.left_g <= 0 for each in left)
    result = EggsResult(
        of=wanted.titles,
        buy=buy_rows(found, wish.packs),
        crack=crack_rows(found),
        formulas=formula_rows(found, wanted, stock),
        packs=pack_rows(found, wanted, stock, taken),
        left=left_rows(left, wanted.first_day),
        takers=taker_rows(left, taken, () if crumbs else more),
        spread=spread_rows(found),
        when_weighed=egg_cautions()["weigh"] if found.cracked else "",
        cautions=_cautions(found, left, taken, stock),
        proven=found.proven,
        within=_within(tuple(each.bowl.need for each in found.filled), stock),
    )
    notices = (*bare.notices, *ranges_taken(wanted), *_papers(found))
    return replace(bare, result=result, notices=tuple(dict.fromkeys(notices)))


def _papers(found: Cracking) -> tuple[Notice, ...]:
    statuses = [egg_size(size).status for size in found.sizes]
    soft = practice_notice(statuses)
    if not soft:
        return ()
    text = "Shelled grams by egg size are planning masses; weigh yours where it matters."
    return (Notice("egg-status", text),)


def _cautions(
    found: Cracking, left: tuple[UsedUp, ...], taken: tuple[Taken, ...], stock: EggStock
) -> tuple[str, ...]:
    """Sentences that go with this answer, each once."""
    parts = {each.loose.part for each in left if each.left_g > 0 and each.loose.count >= 1}
    told = {
        "loose": bool(left),
        "freeze-white": "white" in parts,
        "freeze-yolk": "yolk" in parts,
        "raw": any(each.use.heat_c is not None for each in taken) or bool(left),
        "foam": any(pack.part == "white" for pack in stock.liquids),
        "opened": any(mass > 0 for mass in found.liquid_g),
    }
    return tuple(text for key, text in egg_cautions().items() if told.get(key))


def _stock(wish: EggsWish, asked: Asked) -> tuple[EggStock, tuple[Problem, ...]]:
    """Eggs of the house and the shop; the second answer's place is `--have 2`."""
    region = studio_of(book_at(asked.book)).eggs_region
    near = near_enough_fraction()
    stock = EggStock(
        near_enough_fraction=near if wish.tolerance_pct is None else wish.tolerance_pct / _PERCENT
    )
    problems = []
    for option, texts, read in (
        ("--have", wish.have, read_house),
        ("--shop", wish.shop, read_shop),
    ):
        for number, text in enumerate(texts, start=1):
            place = option if number == 1 else f"{option} {number}"
            said = asked.answer_for(place) or text
            one = read(said, where=place, region=region, sugar_pct=wish.sugared_pct)
            if isinstance(one, Problem):
                problems.append(one)
            else:
                stock = _with(stock, one)
    return stock, tuple(problems)


def _with(stock: EggStock, more: EggStock) -> EggStock:
    shop = stock.shop if more.shop is None else (*(stock.shop or ()), *more.shop)
    return replace(
        stock,
        house=(*stock.house, *more.house),
        shop=None if shop is None else tuple(dict.fromkeys(shop)),
        liquids=(*stock.liquids, *more.liquids),
    )


def _sizeless(needs: tuple[EggNeed, ...]) -> tuple[Problem, ...]:
    """Egg written in grams, with no size anywhere to crack it from."""
    names = [f"{need.formula} ({need.mass_g:g} g {need.part})" for need in needs if not need.size]
    if not names:
        return ()
    ask = (
        f"Which eggs are {', '.join(dict.fromkeys(names))} taken from? Say what the shop has, "
        "such as --shop 'EU M'."
    )
    options = tuple(Option(label, label) for label in ("EU M", "EU L", "US Large"))
    return (Problem("egg-size-missing", "--shop", "", ask, options),)


def _short(needs: tuple[EggNeed, ...], stock: EggStock) -> tuple[Problem, ...]:
    """How many eggs are missing, and that there is nothing to buy."""
    short = missing_eggs(needs, stock)
    lines = ", ".join(f"{n} {egg_size(size).label}" for size, n in short.items())
    house = ", ".join(f"{n} {egg_size(size).label}" for size, n in stock.house) or "none"
    shop = ", ".join(egg_size(size).label for size in stock.shop or ()) or "none"
    missing = f"{lines} more are wanted" if lines else "no eggs of a known size are to be had"
    ask = (
        f"The eggs are not enough: {missing}. In the house: {house}; in the shop: {shop}. "
        "Buy them, make less, or add what the shop has with --shop."
    )
    options = tuple(Option(egg_size(size).label, egg_size(size).label) for size in short)
    return (Problem("eggs-short", "--shop", shop, ask, options),)
