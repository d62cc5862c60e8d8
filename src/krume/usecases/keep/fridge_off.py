"""The fridge was off: what is kept of what stood in it, which orders stop, what is made anew."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from krume.base import InputError, KrumeError, Notice, Problem, as_text
from krume.keep import (
    DISCARD,
    KEEP,
    NOT_SHOWN,
    OffEvidence,
    caution,
    judge_off,
    place_rule,
    place_rules,
    spoiling,
    worst_of,
)
from krume.properties import constants
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.clock import now
from krume.usecases.asking.sources import source_keys
from krume.usecases.keep.fridge_result import (
    FridgeOrder,
    FridgePart,
    FridgeRemake,
    FridgeResult,
    FridgeRule,
    FridgeThing,
)
from krume.usecases.keep.keep import keeping_of
from krume.usecases.keep.moments import last_moment, next_moment
from krume.usecases.keep.remake import begin_by, remake_of
from krume.usecases.keep.typed import typed_number
from krume.usecases.plan.kitchen import plan_kitchen
from krume.usecases.sold.product import Sold, SoldRead, families_of, sold_of
from krume.usecases.sold.standing import OrderStanding, orders_of

_MOST_ORDERS = 40


@dataclass(frozen=True, slots=True)
class FridgeWish:
    """What a person says of a fridge that was off, as typed; empty and None is not said.

    `names` are what stood in it: tortes, creams, cakes or orders; none is every order that is
    near. `readings` are readings in the food of one component, `C1=9.5`.
    """

    names: tuple[str, ...] = ()
    since: str = ""
    until: str = ""
    door: str = "unknown"
    product_c: float | None = None
    air_c: float | None = None
    before_c: float | None = None
    readings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Off:
    """The moments and readings, read."""

    now: datetime
    since: datetime | None
    until: datetime | None
    evidence: OffEvidence
    own_c: dict[str, float]


def fridge_off(wish: FridgeWish, asked: Asked) -> Answer[FridgeResult]:
    """Judge all that stood in a fridge that was off, component by component."""
    off = _read(wish, asked)
    rows = _near(off, asked)
    found, orders = _stood(wish, rows, asked)
    components = _components(found, off)
    verdicts = {part.name: part.verdict for part in components}
    missing = tuple(dict.fromkeys(part.opens for part in components if part.opens))
    result = FridgeResult(
        since=off.since,
        until=off.until,
        hours=off.evidence.hours,
        door=off.evidence.door,
        air_c=off.evidence.air_c,
        product_c=off.evidence.product_c,
        before_c=off.evidence.before_c,
        verdict=worst_of(part.verdict for part in components),
        things=tuple(_thing(sold, verdicts) for sold in _once(found)),
        components=components,
        orders=tuple(_order(row, read, verdicts, wish, off, asked) for row, read in orders),
        rules=_rules(),
        missing=missing,
        cautions=(caution("cold-chain").text, *_never(), caution("local-law").text),
    )
    problems = (*_strangers(off, components), *_nothing_known(off, components))
    sources = source_keys(
        (part.why_source for part in components), (rule.source for rule in result.rules)
    )
    return Answer(result, problems, _notices(wish, off), sources)


def _never() -> tuple[str, ...]:
    return (
        "Never taste it to find out: look and smell show nothing.",
        "What was thrown away is written down with the hour and the reading.",
    )


def _read(wish: FridgeWish, asked: Asked) -> _Off:
    moment = now(studio_of(book_at(asked.book)), on=asked.on)
    since = last_moment(wish.since, moment, field="since") if wish.since.strip() else None
    until = None
    if wish.until.strip():
        near = since or moment
        until = next_moment(wish.until, near, field="until") if since else None
        if until is None:
            until = last_moment(wish.until, moment, field="until")
        if until > moment:
            after = "" if since is None else f" after it stopped, {since:%Y-%m-%d %H:%M},"
            text = (
                f"The first “{wish.until}”{after} is later than now, {moment:%Y-%m-%d %H:%M}."
                " Type a moment between, or leave it empty: it is still off."
            )
            raise InputError(text, field="until", got=wish.until, want="a moment that is past")
    hours = None if since is None else ((until or moment) - since).total_seconds() / 3600
    evidence = OffEvidence(hours, wish.door, wish.product_c, wish.air_c, wish.before_c)
    return _Off(moment, since, until, evidence, _own_readings(wish.readings))


def _own_readings(typed: Iterable[str]) -> dict[str, float]:
    """Readings of single components; of one that is read twice the warmest counts."""
    found: dict[str, float] = {}
    for text in typed:
        name, _, words = text.partition("=")
        number = typed_number(words)
        if not name.strip() or number is None:
            ask = f"“{text}” is no reading. Type a name, = and degrees Celsius: C1=9.5"
            raise InputError(ask, field="readings", got=text, want="C1=9.5")
        key = name.strip().casefold()
        found[key] = max(number, found.get(key, number))
    return found


def _near(off: _Off, asked: Asked) -> tuple[OrderStanding, ...]:
    """Orders handed over soon enough that something of them may stand in the fridge."""
    start = (off.since or off.now).date()
    last = start + timedelta(days=constants("keep_off_limits.csv")["near-days"])
    rows = (row for row in orders_of(asked) if row.day is not None)
    return tuple(row for row in rows if row.day and start <= row.day <= last)[:_MOST_ORDERS]


_Orders = list[tuple[OrderStanding, SoldRead]]


def _stood(
    wish: FridgeWish, rows: tuple[OrderStanding, ...], asked: Asked
) -> tuple[list[Sold], _Orders]:
    """What stood in it, and the near orders that have some of it."""
    reads = [(row, read) for row in rows if (read := _order_read(row, asked)) is not None]
    if not wish.names:
        return [sold for _, read in reads for sold in read.sold], reads
    asked_for = [sold_of(name, asked) for name in wish.names]
    named = {name.casefold() for name in wish.names}
    stood = [sold for read in asked_for for sold in read.sold]
    words = named | {sold.name.casefold() for read in asked_for for sold in read.sold}
    touched = [
        (row, read)
        for row, read in reads
        if row.name.casefold() in named or _has_some(read, words, named)
    ]
    return stood, touched


def _order_read(row: OrderStanding, asked: Asked) -> SoldRead | None:
    try:
        return sold_of(f"orders/{row.name}.txt", asked)
    except KrumeError:
        return None


def _has_some(read: SoldRead, words: set[str], named: set[str]) -> bool:
    things = {sold.name.casefold() for sold in read.sold}
    formulas = {name.casefold() for sold in read.sold for name in sold.formulas}
    return bool(things & words or formulas & named)


def _once(found: list[Sold]) -> list[Sold]:
    return list({sold.name.casefold(): sold for sold in found}.values())


def _components(found: list[Sold], off: _Off) -> tuple[FridgePart, ...]:
    """Each formula of what stood there once, the hardest verdict first."""
    things = _once(found)
    if not things:
        return ()
    families = {name: kind for sold in things for name, kind in families_of(sold).items()}
    keeping = keeping_of(*things)
    parts = []
    for part in keeping.components:
        own = off.own_c.get(part.name.casefold())
        evidence = off.evidence if own is None else replace(off.evidence, product_c=own)
        spoils = spoiling(families.get(part.name), part.verdict, part.traits)
        verdict = judge_off(evidence, needs_cold=spoils.needs_cold)
        rule = place_rule(verdict.rule)
        parts.append(
            FridgePart(
                name=part.name,
                title=part.title,
                verdict=verdict.verdict,
                needs_cold=spoils.needs_cold,
                text=verdict.text,
                opens=verdict.opens,
                rule=rule.words,
                whose=rule.whose,
                status=rule.status,
                source=rule.source,
                why=spoils.why,
                why_status=spoils.status,
                why_source=spoils.source,
                stands_in=_tortes_with(part.name, things),
            )
        )
    turn = {DISCARD: 0, NOT_SHOWN: 1, KEEP: 2}
    return tuple(sorted(parts, key=lambda part: turn[part.verdict]))


def _tortes_with(name: str, things: list[Sold]) -> tuple[str, ...]:
    """Tortes that stood there and hold a formula."""
    return tuple(
        sold.name for sold in things if sold.product.kind == "torte" and name in sold.formulas
    )


def _thing(sold: Sold, verdicts: dict[str, str]) -> FridgeThing:
    verdict = worst_of(verdicts[name] for name in sold.formulas)
    by = tuple(name for name in sold.formulas if verdicts[name] == verdict)
    return FridgeThing(sold.name, sold.product.name, sold.product.kind, verdict, by)


def _order(
    row: OrderStanding, read: SoldRead, verdicts: dict[str, str], wish: FridgeWish, off: _Off,
    asked: Asked,
) -> FridgeOrder:  # fmt: skip
    whole = _whole_names(wish, row)
    lost = frozenset(name for name, verdict in verdicts.items() if verdict != KEEP)
    remakes = []
    for sold in read.sold:
        is_whole = whole is None or sold.name.casefold() in whole
        mine = frozenset(sold.formulas) & lost
        if mine:
            remakes.append(remake_of(sold, None if is_whole else mine, asked))
    verdict = worst_of(verdicts.get(name, KEEP) for sold in read.sold for name in sold.formulas)
    ready = _ready(row, read, off)
    kitchen, _ = plan_kitchen(book_at(asked.book))
    begin = None if ready is None else begin_by(tuple(remakes), ready, kitchen)
    is_late = begin is not None and begin < off.now
    return FridgeOrder(
        row.name, row.title, row.customer, ready, verdict, bool(remakes), tuple(remakes), begin,
        is_late, _said(verdict, tuple(remakes), begin, is_late=is_late),
    )  # fmt: skip


def _whole_names(wish: FridgeWish, row: OrderStanding) -> set[str] | None:
    """Names of what stood there whole; None is all of the order."""
    named = {name.casefold() for name in wish.names}
    return None if not named or row.name.casefold() in named else named


def _ready(row: OrderStanding, read: SoldRead, off: _Off) -> datetime | None:
    if row.day is None or row.at is None:
        return None
    moment = datetime.combine(row.day, row.at, off.now.tzinfo)
    hand = read.order.hand_over if read.order is not None else None
    is_driven = hand is not None and hand.way == "delivery" and hand.drive_min is not None
    return moment - timedelta(minutes=(hand.drive_min or 0.0) if is_driven and hand else 0.0)


def _said(
    verdict: str, remakes: tuple[FridgeRemake, ...], begin: datetime | None, *, is_late: bool
) -> str:
    if not remakes:
        return "Nothing of it is lost."
    what = ", ".join(f"{each.count} {each.name}" for each in remakes)
    if verdict == NOT_SHOWN:
        what = f"{what}, unless a reading shows it cold"
    if begin is None:
        return f"Make {what} anew; by when is not known."
    if is_late:
        return (
            f"{what} cannot be made anew in time one thing after another (begin by "
            f"{begin:%A %H:%M}): tell the customer now."
        )
    return f"Make {what} anew; begin by {begin:%A %Y-%m-%d %H:%M} at the latest."


def _rules() -> tuple[FridgeRule, ...]:
    kept = ("us-cold", "us-warm-4", "advice-above", "advice-closed", "uk-cold", "uk-breakdown",
            "eu-cold")  # fmt: skip
    return tuple(
        FridgeRule(rule.place, rule.whose, rule.words, rule.status, rule.source, rule.page)
        for rule in place_rules()
        if rule.key in kept
    )


def _strangers(off: _Off, components: tuple[FridgePart, ...]) -> tuple[Problem, ...]:
    """Readings of something that is not among what stood there."""
    known = {part.name.casefold() for part in components}
    names = ", ".join(part.name for part in components) or "nothing"
    return tuple(
        Problem(
            "reading-of-nothing", "--reading", name.upper(),
            f"There is a reading of {name.upper()}, and it is not in what stood there: {names}. "
            "Correct the name, or say that it stood there.",
        )
        for name in off.own_c
        if name not in known
    )  # fmt: skip


def _nothing_known(off: _Off, components: tuple[FridgePart, ...]) -> tuple[Problem, ...]:
    """Without hours and without any reading there is nothing to judge by."""
    evidence = off.evidence
    is_read = evidence.product_c is not None or evidence.air_c is not None or off.own_c
    if not components or evidence.hours is not None or is_read:
        return ()
    ask = (
        "Since when was it off? Type --since 22:30, or what a thermometer in the food reads: "
        "--food 9.5. Until then nothing is kept."
    )
    return (Problem("fridge-unread", "--since", "", ask),)


def _notices(wish: FridgeWish, off: _Off) -> tuple[Notice, ...]:
    found = []
    if not wish.names:
        days = as_text(constants("keep_off_limits.csv")["near-days"])
        text = (
            f"What stood in it was not said: every order of the next {days} days is judged as if "
            "all of it stood there. Name what stood there, such as T1 or C1."
        )
        found.append(Notice("all-near-orders", text))
    if off.since is not None and off.until is None:
        text = f"It is taken as off until now, {off.now:%Y-%m-%d %H:%M}."
        found.append(Notice("off-until-now", text))
    remade = "Begin-by counts the usual minutes one after another; a plan of the day says better."
    found.append(Notice("begin-by", remade))
    law = "No legal or medical advice: your local law and your licensing authority decide."
    found.append(Notice("local-law", law))
    return tuple(found)
