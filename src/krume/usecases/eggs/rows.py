"""The rows of the answer of `eggs`, with the sentence each is said in."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta

from krume.base import Interval, as_text
from krume.pantry import egg_size
from krume.plan import (
    Cracking,
    EggStock,
    Filled,
    Liquid,
    Taken,
    UsedUp,
    cold_days,
    each_g,
    packs_for,
    spread_of,
)
from krume.usecases.eggs.result import (
    EggBuy,
    EggCrack,
    EggFilled,
    EggLeft,
    EggPack,
    EggPacks,
    EggPiece,
    EggRow,
    EggSpread,
    EggTaker,
)
from krume.usecases.eggs.wanted import EggsAsked, liquids_wanted

_DUST = 1e-6
_CRUMB_G = 0.05
_WORDS = {"whole": "egg", "yolk": "yolk", "white": "white"}


def parts_said(count: float, part: str) -> str:
    """A number of eggs, yolks or whites.

    >>> parts_said(1, "white"), parts_said(2.5, "yolk"), parts_said(3, "whole")
    ('1 white', '2.5 yolks', '3 eggs')
    """
    return f"{as_text(count, 1)} {_WORDS[part]}{'' if count <= 1 else 's'}"


def grams(mass_g: float) -> str:
    r"""Grams with a thin space at the thousands.

    >>> grams(1005.0), grams(43.75)
    ('1\u2009005 g', '43.8 g')
    """
    whole, point, rest = as_text(mass_g, 1).partition(".")
    head = f"{int(whole):,}".replace(",", "\u2009")
    return f"{head}{point}{rest} g"


def buy_rows(found: Cracking, packs: Sequence[int]) -> tuple[EggBuy, ...]:
    """Eggs to buy by size, in packs where their size is known."""
    rows = []
    for size, count in sorted(found.bought.items()):
        boxes = packs_for(count, packs)
        held = sum(holds * n for holds, n in boxes.items())
        rows.append(
            EggBuy(
                size,
                egg_size(size).label,
                count,
                tuple(EggPacks(holds, n) for holds, n in boxes.items()),
                held - count if boxes else 0,
            )
        )
    return tuple(rows)


def crack_rows(found: Cracking) -> tuple[EggCrack, ...]:
    """Eggs to crack by size, and what becomes of them."""
    rows = []
    for size in found.sizes:
        count, label = found.count_of(size), egg_size(size).label
        used = {part: found.used(size, part) for part in ("whole", "yolk", "white")}
        house = count - found.bought.get(size, 0)
        rows.append(
            EggCrack(
                size, label, count, house, used["whole"], used["yolk"], used["white"],
                _cracked_words(count, size, used),
            )
        )  # fmt: skip
    return tuple(rows)


def _cracked_words(count: int, size: str, used: Mapping[str, float]) -> str:
    """`8 EU M: 5 go in whole, 3 separated for 2.5 yolks`; in grams where part of one goes in."""
    apart = [parts_said(used[part], part) for part in ("yolk", "white") if used[part] > _DUST]
    said = []
    if _is_whole(used["whole"]):
        said += [f"{as_text(used['whole'], 2)} go in whole"] if used["whole"] > _DUST else []
        eggs = as_text(count - used["whole"], 2)
        said += [f"{eggs} separated for {' and '.join(apart)}"] if apart else []
    else:
        said += [f"{grams(used['whole'] * each_g(size, 'whole'))} weighed in whole", *apart]
    return f"{count} {egg_size(size).label}: {', '.join(said)}"


def _is_whole(count: float) -> bool:
    return abs(count - round(count)) <= _DUST


def formula_rows(found: Cracking, asked: EggsAsked, stock: EggStock) -> tuple[EggRow, ...]:
    """What each egg line of each formula is filled from."""
    needs = dict.fromkeys(each.bowl.need for each in found.filled)
    titles = {each.name: each.part.title for each in asked.formulas}
    days = {(each.name, asked.day_number(each.day)): each.day for each in asked.formulas}
    rows = []
    for need in needs:
        ways = [each for each in found.filled if each.bowl.need == need]
        filled = tuple(_filled(each, stock) for each in ways)
        spread, likely_g = _spread(ways, need.part)
        count = None if need.count is None else need.count * need.batches
        rows.append(
            EggRow(
                need.formula, titles.get(need.formula, need.formula), need.part, need.batches,
                count, need.size, need.total_g, spread, likely_g,
                days.get((need.formula, need.day)), filled, _row_words(filled),
            )
        )  # fmt: skip
    return tuple(rows)


def _row_words(filled: Sequence[EggFilled]) -> str:
    if len(filled) == 1 and filled[0].bowls == 1:
        return filled[0].text
    return "; ".join(f"{each.bowls} × {each.text}" for each in filled)


def _spread(ways: Iterable[Filled], part: str) -> tuple[Interval | None, float | None]:
    """All light to all heavy, and the half-width where each egg lies by itself."""
    low = best = high = square = 0.0
    for each in ways:
        for size, count in each.filling.pieces:
            one = spread_of(count * each.times, size, part)
            low, best = low + one.mass_g.low, best + one.mass_g.best
            high, square = high + one.mass_g.high, square + one.likely_half_g**2
    if best <= 0:
        return None, None
    return Interval(round(low, 6), round(best, 6), round(high, 6)), float(round(square**0.5, 6))


def _filled(each: Filled, stock: EggStock) -> EggFilled:
    way, part = each.filling, each.bowl.need.part
    liquid = None if way.liquid is None else stock.liquids[way.liquid]
    off = (way.mass_g - each.bowl.mass_g) / each.bowl.mass_g * 100
    return EggFilled(
        way.kind,
        each.times,
        tuple(EggPiece(size, egg_size(size).label, count) for size, count in way.pieces),
        way.mass_g,
        off,
        None if liquid is None else liquid.name,
        None if liquid is None else liquid.pack_g(way.mass_g),
        None if liquid is None else liquid.sugar_g(way.mass_g),
        _liquid_words(liquid, way.mass_g) if liquid is not None else _egg_words(each, part, off),
    )


def _liquid_words(liquid: Liquid, mass_g: float) -> str:
    said = f"{grams(liquid.pack_g(mass_g))} {liquid.name}"
    if not liquid.sugar_pct:
        return said
    return f"{said}, and {grams(liquid.sugar_g(mass_g))} less sugar in the bowl"


def _egg_words(each: Filled, part: str, off_pct: float) -> str:
    """`5 EU M, 255 g`, `4 EU M + 1 EU L, 264 g (+3.5 %)`, `3 EU L + 24 g of a fourth`."""
    pieces, kind = each.filling.pieces, each.filling.kind
    word = "" if part == "whole" else f" {_WORDS[part]}s"
    if kind == "weighed":
        return _weighed_words(each, part)
    said = " + ".join(f"{as_text(count, 2)} {egg_size(size).label}" for size, count in pieces)
    off = f" ({off_pct:+.1f} %)" if kind == "near" else ""
    how = ", " if all(_is_whole(n) for _, n in pieces) else ": weigh "
    return f"{said}{word}{how}{grams(each.filling.mass_g)}{off}"


def _weighed_words(each: Filled, part: str) -> str:
    """Whole eggs, and grams of one more; only grams where there is no whole one."""
    said, word = [], "" if part == "whole" else f" {_WORDS[part]}"
    for size, count in each.filling.pieces:
        whole, label = int(count + _DUST), egg_size(size).label
        rest_g = (count - whole) * each_g(size, part)
        said += [f"{whole} {label}"] if whole else []
        more = "one more" if said else "one"
        said += [f"{grams(rest_g)} of {more} {label}"] if rest_g > _DUST else []
    weigh = "" if len(said) == 1 else f": weigh {grams(each.filling.mass_g)}"
    return f"{' + '.join(said)}{word}{weigh}"


def pack_rows(
    found: Cracking, asked: EggsAsked, stock: EggStock, taken: Sequence[Taken]
) -> tuple[EggPack, ...]:
    """Egg out of packs: wanted by the formulas as written, and in place of eggs."""
    written = _written(asked)
    rows = []
    for name in dict.fromkeys((*written, *(liquid.name for liquid in stock.liquids))):
        by_formula = dict(written.get(name, {}))
        house_g = 0.0
        for index, liquid in enumerate(stock.liquids):
            if liquid.name == name:
                house_g += liquid.mass_g or 0.0
                _add_filled(by_formula, found, index, liquid)
        mass_g, part = sum(by_formula.values()), _part_of(name)
        is_plain = name.startswith("pasteurised")
        mine = [t for t in taken if is_plain and t.part == part]
        used_g = min(house_g, mass_g)
        if mass_g > _DUST:
            buy_g = max(0.0, mass_g - used_g)
            saved_g = min(buy_g, sum(t.mass_g for t in mine))
            heat_c = next((t.use.heat_c for t in mine if t.use.heat_c is not None), None)
            row = (name, part, mass_g, saved_g, used_g, buy_g, tuple(by_formula), heat_c)
            rows.append(EggPack(*row))
    return tuple(rows)


def _add_filled(into: dict[str, float], found: Cracking, index: int, liquid: Liquid) -> None:
    for each in found.filled:
        if each.filling.liquid == index:
            name = each.bowl.need.formula
            mass_g = each.times * liquid.pack_g(each.filling.mass_g)
            into[name] = into.get(name, 0.0) + mass_g


def _part_of(name: str) -> str:
    return next(part for part in _WORDS if part in name)


def _written(asked: EggsAsked) -> dict[str, dict[str, float]]:
    """Grams out of packs by pack and formula, of the batches made."""
    found: dict[str, dict[str, float]] = {}
    for each in asked.formulas:
        for form, sugar_pct in (("pasteurised", 0.0), ("sugared", 1.0)):
            for part, mass in liquids_wanted(each, form).items():
                mine = found.setdefault(Liquid(part, None, sugar_pct).name, {})
                mine[each.name] = mine.get(each.name, 0.0) + mass * each.batches
    return found


def left_rows(left: Sequence[UsedUp], first: date | None) -> tuple[EggLeft, ...]:
    """What is left of eggs, with the days it keeps from breaking."""
    rows = []
    for each in left:
        loose, days = each.loose, cold_days(each.loose.part)
        day = None if first is None else first + timedelta(days=loose.day)
        text = f"{parts_said(loose.count, loose.part)}, {egg_size(loose.size).label}, "
        text += grams(each.mass_g)
        rows.append(
            EggLeft(
                loose.size, loose.part, loose.count, each.mass_g, each.taken_g, each.left_g,
                days, day, text,
            )
        )  # fmt: skip
    return tuple(rows)


def taker_rows(
    left: Sequence[UsedUp], taken: Sequence[Taken], more: Sequence[Taken]
) -> tuple[EggTaker, ...]:
    """Formulas that take left-over egg, the request's own first."""
    rest = dict.fromkeys(("whole", "yolk", "white"), 0.0)
    for used in left:
        rest[used.loose.part] += used.mass_g
    rows = []
    for each in (*taken, *more):
        rest[each.part] -= each.mass_g
        left_g = max(0.0, rest[each.part])
        rows.append(
            EggTaker(
                each.formula, each.title, each.part, each.mass_g, each.batches, each.more_g,
                left_g, each.use.heat_c, each.is_ordered, each.use.status,
                _taker_words(each, left_g),
            )
        )  # fmt: skip
    return tuple(rows)


def _taker_words(each: Taken, left_g: float) -> str:
    word = _WORDS[each.part]
    then = f" Then {grams(left_g)} {word} left." if left_g > _CRUMB_G else ""
    short = each.more_g > _CRUMB_G
    if each.batches is None:
        wants = f", and wants {grams(each.more_g)} more" if short else ""
        can = f"{each.formula} can take {grams(each.mass_g)} {word} of it, {each.use.treated}"
        return f"{can}, in place of pasteurised{wants}.{then}"
    wants = f" and want {grams(each.more_g)} beside it" if short else ""
    took = f"would take {grams(each.mass_g)} {word}{wants}, {each.use.treated}"
    return f"{_batches(each.batches)} of {each.formula} {took}.{then}"


def _batches(count: float) -> str:
    """More batches, in words.

    >>> _batches(0.5), _batches(1), _batches(3)
    ('Half a batch more', 'One batch more', '3 batches more')
    """
    return {0.5: "Half a batch more", 1.0: "One batch more"}.get(
        count, f"{as_text(count, 2)} batches more"
    )


def spread_rows(found: Cracking) -> tuple[EggSpread, ...]:
    """How far the grams of all eggs of a size may lie, and what makes up for it."""
    rows = []
    for size in found.sizes:
        one = spread_of(found.count_of(size), size)
        label = egg_size(size).label
        text = (
            f"{found.count_of(size)} {label} weigh {grams(one.mass_g.best)} ± "
            f"{grams(one.likely_half_g)} shelled: {_spare_words(one.spare_count, one.sure_count)}"
        )
        rows.append(
            EggSpread(
                size, label, found.count_of(size), one.mass_g, one.likely_half_g,
                one.spare_count, one.sure_count, "derived", text,
            )
        )  # fmt: skip
    return tuple(rows)


def _spare_words(spare: int, sure: int) -> str:
    eggs = f"{spare} spare egg{' makes' if spare == 1 else 's make'} up for light ones"
    return f"{eggs}." if spare == sure else f"{eggs}, {sure} if all of them are light."
