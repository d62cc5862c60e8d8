"""The gluten gate: every lot a claim needs, its state on the day, and what is still missing."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date

from krume.label.gate_estimate import FINISHED, finished_missing, gate_estimate
from krume.label.gate_records import GateRecord, gate_records, record_opens
from krume.label.gate_room import ROOM, RoomStanding, cleaning_opens, room_standings
from krume.label.product import Product, Used
from krume.pantry import UNREAD, CleaningRecord, Lot, RoomRecord, claim_rule, plain_word


@dataclass(frozen=True, slots=True)
class GlutenGate:
    """Whether the gluten sentence may be printed, and by name what is missing.

    `missing` holds lots by name, or the goods where there is no lot, and the room's records.
    `most_ppm` is the weighted upper estimate of the finished cake, None while anything is open;
    `known_ppm` is what the known goods alone may bring. `room` is the room's list, empty where it
    is not begun; `finished` are the records of the finished cake itself.
    """

    market: str
    on: date
    records: tuple[GateRecord, ...]
    missing: tuple[str, ...]
    most_ppm: float | None
    sentence: str | None
    opens: tuple[str, ...]
    notes: tuple[str, ...]
    known_ppm: float | None = None
    room: tuple[RoomStanding, ...] = ()
    finished: tuple[GateRecord, ...] = ()

    @property
    def claim_allowed(self) -> bool:
        """True only with every record good, the room's too, and the estimate inside the limit."""
        return not self.missing and self.sentence is not None

    @property
    def is_open_on_ingredients(self) -> bool:
        """Whether every record of the goods is there; the room's may still be missing."""
        closed = (record.is_closed for record in self.records)
        against = (_speaks_against(record) for record in self.finished)
        return bool(self.records) and not any(closed) and not any(against)


def gluten_gate(
    product: Product,
    lots: tuple[Lot, ...],
    cleaning: tuple[CleaningRecord, ...],
    *,
    on: date,
    market: str,
    chosen: frozenset[str] = frozenset(),
    made: date | None = None,
    today: date | None = None,
    room: tuple[RoomRecord, ...] = (),
    names: tuple[str, ...] = (),
) -> GlutenGate:
    """Judge a product's records on a day; whatever is unknown closes the gate by name.

    Every record must be good on `on` and on the day of making `made`. `today` is the book's day
    (`on` where it is not said): the room's records after it have not happened yet. A record of the
    finished cake may stand among the lots under each of its names, and others that `names` holds;
    one of a formula in it counts where it speaks against it.
    """
    days = tuple(sorted({on, made or on}))
    records = tuple(
        record for used in product.used for record in gate_records(used, lots, chosen, days, market)
    )
    finished = _finished((product.name, *product.called, *names), lots, days, market)
    own = (name for part in product.parts for name in (part.name, part.title))
    against = (*finished, *_finished(own, lots, days, market))
    estimate = gate_estimate(product, lots, chosen, days, market)
    is_closed = not records or any(record.is_closed for record in records)
    most = None if is_closed else estimate.most_ppm
    listed = room_standings(room, days, today or on)
    open_ends = _each_once(
        (
            *_of_lots((*records, *(r for r in against if _speaks_against(r))), market),
            *([] if is_closed and records else _of_the_whole(records, most, market, finished)),
            *_of_the_rule(market),
            *_of_the_room(cleaning_opens(cleaning, days, today or on), listed),
        )
    )
    return GlutenGate(
        market=market,
        on=on,
        records=records,
        missing=tuple(open_ends),
        most_ppm=most,
        sentence=None if open_ends else claim_rule(market).sentence,
        opens=tuple(open_ends.values()),
        notes=_notes(product, records, market, has_list=bool(listed)),
        known_ppm=estimate.known_ppm,
        room=listed,
        finished=finished,
    )


def _each_once(open_ends: Iterable[tuple[str, str]]) -> dict[str, str]:
    """What is missing by its name, with what opens it; the first word about each counts."""
    found: dict[str, str] = {}
    for name, opens in open_ends:
        found.setdefault(name, opens)
    return found


def _finished(
    names: Iterable[str], lots: tuple[Lot, ...], days: tuple[date, ...], market: str
) -> tuple[GateRecord, ...]:
    """Records of the finished cake itself, which stand among the lots under its own name."""
    wanted = {plain_word(name) for name in names} - {""}
    mine = tuple(x for x in lots if plain_word(x.ingredient) in wanted)
    cakes = {lot.ingredient: Used(lot.ingredient, None, lot.ingredient, "", None) for lot in mine}
    return tuple(
        record
        for cake in cakes.values()
        for record in gate_records(cake, mine, frozenset(), days, market)
    )


def _speaks_against(record: GateRecord) -> bool:
    """Whether a record of what is made here shuts the gate; one that is only missing does not."""
    return record.state == "conflict" or any(p.why.startswith(UNREAD) for p in record.papers)


def _of_lots(records: tuple[GateRecord, ...], market: str) -> Iterator[tuple[str, str]]:
    for record in records:
        if record.is_closed:
            name = record.lot or record.ingredient
            yield name, f"{name}: {record_opens(record, market)}"


def _of_the_whole(
    records: tuple[GateRecord, ...],
    most: float | None,
    market: str,
    finished: tuple[GateRecord, ...],
) -> Iterator[tuple[str, str]]:
    """What the finished cake still lacks while every one of its goods is good."""
    if not records:
        name = f"{FINISHED}nothing is in it"
    else:
        is_tested = any(record.state == "good" for record in finished)
        name = finished_missing(most, market, is_tested=is_tested)
    if name:
        yield name, f"{name} opens it"


def _of_the_rule(market: str) -> Iterator[tuple[str, str]]:
    rule = claim_rule(market)
    if not rule.is_judged:
        name = f"rule: {rule.rule}"
        yield name, f"{name}; {rule.why}"


def _of_the_room(cleaned: str, listed: tuple[RoomStanding, ...]) -> Iterator[tuple[str, str]]:
    if cleaned:
        yield ROOM, cleaned
    for each in listed:
        if not each.is_open:
            end = "" if each.text.endswith("?") else "."
            yield each.missing, f"{each.missing}: {each.text}{end} {each.needs}"


def _notes(
    product: Product, records: tuple[GateRecord, ...], market: str, *, has_list: bool
) -> tuple[str, ...]:
    rule = claim_rule(market)
    said = ["The estimate supports a decision; it does not replace a test of the finished cake."]
    if rule.side == "below" and any("≤20" in r.text or "<=20" in r.text for r in records):
        said.append(
            "A supplier's ≤20 counts as evidence of the ingredient; the finished cake must stay "
            f"{rule.words}."
        )
    if any("oat" in (used.key or "").split("-") or "oats" in used.name for used in product.used):
        said.append(
            "Oats: only specially produced ones of 20 mg/kg or less, and some people with coeliac "
            "disease do not tolerate even those."
        )
    if not has_list:
        said.append(
            "The list of the room (sieve, wooden spoons, oven, wheat days) is not begun: the "
            "cleaning record of the day alone speaks for the room."
        )
    return tuple(said)
