"""The gluten gate: every lot a claim needs, its state on the day, and what is still missing."""

import math
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from krume.label.gluten import GlutenPart, gluten_mix
from krume.label.parts import lots_in_use
from krume.label.product import Product, Used
from krume.pantry import CleaningRecord, Lot, record_need, record_state

ROOM = "room: cleaning record"
FINISHED = "finished cake: "
_WORST = ("conflict", "missing", "not-yet-valid", "expired", "good", "not-needed")


@dataclass(frozen=True, slots=True)
class GateRecord:
    """How the record of one lot stands; `lot` is None where the house has no lot of the goods.

    `day` is the judged day it stands worst on.
    """

    lot: str | None
    ingredient: str
    state: str
    text: str
    of: tuple[str, ...]
    day: date | None = None

    @property
    def is_closed(self) -> bool:
        """Whether it keeps the gate closed."""
        return self.state not in ("good", "not-needed")


@dataclass(frozen=True, slots=True)
class GlutenGate:
    """Whether the gluten sentence may be printed, and by name what is missing.

    `missing` holds lots by name, or the goods where there is no lot, and the room's record.
    `most_ppm` is the weighted upper estimate of the finished cake, None while anything is open.
    """

    market: str
    on: date
    records: tuple[GateRecord, ...]
    missing: tuple[str, ...]
    most_ppm: float | None
    sentence: str | None
    opens: tuple[str, ...]
    notes: tuple[str, ...]

    @property
    def claim_allowed(self) -> bool:
        """True only with every record good, the room's too, and the estimate inside the limit."""
        return not self.missing and self.sentence is not None

    @property
    def is_open_on_ingredients(self) -> bool:
        """Whether every record of the goods is there; the room's may still be missing."""
        return bool(self.records) and not any(record.is_closed for record in self.records)


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
) -> GlutenGate:
    """Judge a product's records on a day; whatever is unknown closes the gate by name.

    Every record must be good on `on` and on the day of making `made`. `today` is the book's day
    (`on` where it is not said): the room's records after it have not happened yet.
    """
    days = tuple(sorted({on, made or on}))
    records = tuple(
        record for used in product.used for record in _records(used, lots, chosen, days, market)
    )
    closed = [record for record in records if record.is_closed]
    missing = [record.lot or record.ingredient for record in closed]
    opens = [f"{r.lot or r.ingredient}: {_opens(r, market)}" for r in closed]
    most = None if closed or not records else _most_ppm(product, lots, chosen, days, market)
    if not closed:
        over = _finished_missing(most, market, records)
        missing += [over] if over else []
        opens += [f"{over} opens it"] if over else []
    room = _room_opens(cleaning, days, today or on)
    if room:
        missing.append(ROOM)
        opens.append(room)
    return GlutenGate(
        market=market,
        on=on,
        records=records,
        missing=tuple(dict.fromkeys(missing)),
        most_ppm=most,
        sentence=None if missing else "Gluten-free",
        opens=tuple(dict.fromkeys(opens)),
        notes=_notes(product, records, market),
    )


def _records(
    used: Used,
    lots: tuple[Lot, ...],
    chosen: frozenset[str],
    days: tuple[date, ...],
    market: str,
) -> list[GateRecord]:
    in_use = lots_in_use(used, lots, chosen)
    if not in_use:
        need = record_need(used.name, used.key)
        state = "missing" if need.is_needed else "not-needed"
        text = f"no lot in the house; {need.why}" if need.is_needed else need.why
        return [GateRecord(None, used.name, state, text, used.of)]
    return [_record(lot, used, days, market) for lot in in_use]


def _record(lot: Lot, used: Used, days: tuple[date, ...], market: str) -> GateRecord:
    state, day = _worst(lot, used, days, market)
    name = lot.key or f"line {lot.line} of the lots"
    return GateRecord(
        name, lot.ingredient or used.name, state, _record_text(lot, used), used.of, day
    )


def _worst(lot: Lot, used: Used, days: tuple[date, ...], market: str) -> tuple[str, date]:
    """The worst state of a lot's record over the judged days, with the first day it has it."""
    states = [(record_state(lot, on=day, market=market, key=used.key), day) for day in days]
    return min(states, key=lambda each: _WORST.index(each[0]))


def _record_text(lot: Lot, used: Used) -> str:
    need = record_need(used.name, used.key, lot=lot)
    if not need.is_needed:
        return need.why
    said = lot.notes or lot.evidence
    until = "" if lot.valid_to is None else f", valid to {lot.valid_to.isoformat()}"
    return f"{said}{_result(said, lot)}{until}"


def _result(said: str, lot: Lot) -> str:
    """The result behind a record's own words, which may end with it already."""
    if lot.result is None or said.endswith(f" {lot.result.printed} mg/kg"):
        return ""
    is_said = said.split()[-1:] == [lot.result.printed]
    return " mg/kg" if is_said else f", {lot.result.printed} mg/kg"


def _opens(record: GateRecord, market: str) -> str:
    limit = "below 20 ppm" if market == "us" else "20 mg/kg or less"
    words = f"a valid test of the lot ({limit}) or a certificate of 20 or less opens it"
    day = "" if record.day is None else f"on {record.day.isoformat()} "
    why = {
        "conflict": f"{record.text}; its own words speak against it",
        "expired": f"{record.text}; {day}it has run out",
        "not-yet-valid": f"{day}it is not in force yet",
        "missing": record.text,
    }
    return f"{why[record.state]}; {words}"


def _room_opens(cleaning: tuple[CleaningRecord, ...], days: tuple[date, ...], today: date) -> str:
    """What the room still needs, empty when it is clean: a yes of each judged day, and no no.

    A yes dated after today is none: that day has not been cleaned for yet. A no counts on the
    judged days and on every day from today to the last of them, when the work is done.
    """
    last = max(days)
    yes = {r.day for r in cleaning if r.is_cleaned and r.day <= today}
    no = {r.day for r in cleaning if not r.is_cleaned}
    noes = sorted(day for day in no if day in days or today <= day <= last)
    if noes:
        return f"{ROOM}: cleaning.csv says no for {_listed(noes)}"
    open_days = [day for day in days if day not in yes]
    if not open_days:
        return ""
    when = "" if max(open_days) <= today else ", on the day itself and not before"
    return f"{ROOM} of {_listed(open_days)}: write it into cleaning.csv{when}"


def _listed(days: list[date]) -> str:
    return " and ".join(day.isoformat() for day in days)


def _most_ppm(
    product: Product,
    lots: tuple[Lot, ...],
    chosen: frozenset[str],
    days: tuple[date, ...],
    market: str,
) -> float | None:
    """Gluten of the finished cake at most: each record at its own upper figure, water baked out."""
    finished = product.finished_g
    if finished is None or not 0 < finished < math.inf:
        return None
    micrograms = Fraction(0)
    for used in product.used:
        most = _most_of(used, lots_in_use(used, lots, chosen), days, market)
        if used.mass_g is None or most is None:
            return None
        micrograms += Fraction(used.mass_g) * Fraction(most)
    mass = Fraction(finished)
    return gluten_mix([GlutenPart(mass, micrograms / mass)]).gluten_ppm


def _most_of(
    used: Used, in_use: tuple[Lot, ...], days: tuple[date, ...], market: str
) -> float | None:
    """Highest figure of the records of these goods; goods that need none count as none."""
    needed = [x for x in in_use if record_need(used.name, used.key, lot=x).is_needed]
    if not needed:
        return None if not in_use and record_need(used.name, used.key).is_needed else 0.0
    good = [
        lot.result.most_ppm
        for lot in needed
        if lot.result is not None and _worst(lot, used, days, market)[0] == "good"
    ]
    return max(good) if len(good) == len(needed) else None


def _finished_missing(most: float | None, market: str, records: tuple[GateRecord, ...]) -> str:
    """What the finished cake still needs; empty when the estimate lies inside the limit."""
    if not records:
        return f"{FINISHED}nothing is in it"
    if most is None:
        return f"{FINISHED}its baked mass"
    mixed = gluten_mix([GlutenPart(Fraction(1), Fraction(most))])
    is_inside = mixed.us_gluten_free if market == "us" else mixed.eu_gluten_free
    return "" if is_inside else f"{FINISHED}a test of it, the estimate is {most:.1f} mg/kg"


def _notes(product: Product, records: tuple[GateRecord, ...], market: str) -> tuple[str, ...]:
    said = ["The estimate supports a decision; it does not replace a test of the finished cake."]
    if market == "us" and any("≤20" in r.text or "<=20" in r.text for r in records):
        said.append(
            "A supplier's ≤20 counts as evidence of the ingredient; the finished cake must stay "
            "below 20 ppm."
        )
    if any("oat" in (used.key or "").split("-") or "oats" in used.name for used in product.used):
        said.append(
            "Oats: only specially produced ones of 20 mg/kg or less, and some people with coeliac "
            "disease do not tolerate even those."
        )
    return tuple(said)
