"""The person's own oven as it is known: what it is off its dial, how strong it is, how sure."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from krume.bake import Oven, figures
from krume.base import Option, Problem
from krume.design import Formula
from krume.learn import (
    FinishedBake,
    Flag,
    OffsetLearnt,
    Prior,
    Reading,
    offset_said,
    oven_figure,
)
from krume.properties import constants
from krume.store import Studio, book_at, studio_of, trials_of
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.remembering import Remembered
from krume.usecases.own_oven.gathered import NO_NAME, Gathered, Written, gathered

if TYPE_CHECKING:
    from krume.learn import OvenLearnt


@dataclass(frozen=True, slots=True)
class KnownOven:
    """One oven with or without its fan, on one shelf; `offset_c` is None where it is not known.

    `offset_c`, `offset_sd_c` and `temp_half_width_c` are at `at_c`, a true temperature. `heat` is
    over a usual oven's; `bakes` and `readings` are how many count; `statuses` those of its bakes.
    """

    name: str
    offset_c: float | None
    offset_sd_c: float | None
    heat: float
    ln_heat_sd: float
    temp_half_width_c: float
    bakes: int
    readings: int
    flagged: tuple[Flag, ...]
    fan: bool
    rack: str
    at_c: float
    is_said: bool
    statuses: tuple[str, ...]
    learnt: "OvenLearnt"
    prior: Prior

    def at(self, true_c: float) -> "KnownOven":
        """The same oven at another true temperature."""
        offset = self.learnt.offset
        if offset is None:
            return replace(self, at_c=true_c)
        dial = offset.dial_for(true_c)
        sd = offset.sd_c(dial)
        return replace(
            self, at_c=true_c, offset_c=offset.at(dial), offset_sd_c=sd, temp_half_width_c=sd
        )

    def oven(self, oven: Oven) -> Oven:
        """An oven of a bake with what is known of this one in it."""
        known = self.at(oven.temp_c)
        at_dial = replace(oven, temp_half_width_c=known.temp_half_width_c)
        return self.learnt.oven(at_dial, self.prior)


_MOST = 60
"""The newest bakes and trials that are learnt from."""

_known: Remembered[KnownOven] = Remembered(32)
_gathered: Remembered[Gathered] = Remembered(8)


def prior_of() -> Prior:
    """What is known of ovens before anything is learnt of this one: rows of the bake's table."""
    rows = figures()
    mean = rows.get("heat-usual")
    return Prior(
        ln_heat=0.0 if mean is None else math.log(mean.value),
        ln_heat_sd=rows["spread-heat"].value,
        offset_sd_c=rows["spread-oven"].value,
        thermometer_sd_c=rows["spread-oven-thermometer"].value,
    )


def gathered_now(asked: Asked) -> Gathered:
    """Records of a book's ovens, kept in mind until a text, a table or a trial changes."""
    book = book_at(asked.book)
    return _gathered.of(book, ("gathered", trials_of(book, most=_MOST)), lambda: gathered(asked))


def oven_named(name: str | None, asked: Asked) -> str | None:
    """The book's own spelling of an oven's name, the studio's own where none is given.

    None where the book has no such oven.
    """
    found = gathered_now(asked)
    if name is None or not name.strip():
        return found.own
    wanted = " ".join(name.split()).casefold()
    return next((each for each in found.names if each.casefold() == wanted), None)


def oven_names(asked: Asked) -> tuple[str, ...]:
    """Names of all ovens a book knows, one's own first."""
    return gathered_now(asked).names


def oven_unknown(name: str, asked: Asked) -> Problem:
    """An oven the book does not know, with those it does."""
    names = [each for each in oven_names(asked) if each != NO_NAME]
    many = "one" if len(names) == 1 else str(len(names))
    there = f"The book has {many}: {', '.join(names)}." if names else "The book names none."
    ask = f"No oven is called {name}. {there} Leave --oven-name out, or name that one."
    options = tuple(Option(each, each) for each in names)
    return Problem("oven-unknown", "--oven-name", name, ask, options)


def known_oven(
    asked: Asked, name: str | None = None, *, fan: bool = False, rack: str = "middle"
) -> KnownOven:
    """What is known of an oven with or without its fan, on one shelf.

    An oven the book does not know is the usual one, with all its doubt.
    """
    own = oven_named(name, asked) or " ".join((name or "").split())
    book = book_at(asked.book)
    key = ("known", own, fan, rack, trials_of(book, most=_MOST))
    return _known.of(book, key, lambda: _learn(own, asked, fan=fan, rack=rack))


def own_dial_c(formula: Formula, asked: Asked) -> float | None:
    """Dial for the temperature a formula wants; None where the offset is not known for its fan."""
    line = formula.oven
    if line is None or line.temp_c is None:
        return None
    known = known_oven(asked, fan=bool(line.fan)).at(line.temp_c)
    offset = known.learnt.offset
    is_here = offset is not None and not offset.place_sd_c
    return line.temp_c - known.offset_c if is_here and known.offset_c is not None else None


def _learn(name: str, asked: Asked, *, fan: bool, rack: str) -> KnownOven:
    found, prior = gathered_now(asked), prior_of()
    studio = studio_of(book_at(asked.book))
    readings = [r for r in records(found.readings, name) if isinstance(r, Reading)]
    all_bakes = [b for b in records(found.bakes, name) if isinstance(b, FinishedBake)]
    bakes, stood_back = _real(all_bakes)
    said = _said(studio, prior) if name == found.own else None
    if said is not None and fan != bool(studio.bakes_with_fan):
        said = replace(said, place_sd_c=oven_figure("other-place"))
    learnt = _learnt(tuple(readings), tuple(bakes), prior, said, fan=fan, rack=rack)
    usual = constants("pantry_page.csv")["dial-shown"]
    known = KnownOven(
        name=name, offset_c=None, offset_sd_c=None, heat=math.exp(learnt.ln_heat),
        ln_heat_sd=learnt.ln_heat_sd, temp_half_width_c=prior.offset_sd_c, bakes=learnt.bakes,
        readings=0 if learnt.offset is None else learnt.offset.readings,
        flagged=(*_asked_first(found, name), *learnt.flagged, *stood_back), fan=fan, rack=rack,
        at_c=usual,
        is_said=said is not None and learnt.offset == said,
        statuses=_statuses(bakes, learnt), learnt=learnt, prior=prior,
    )  # fmt: skip
    return known.at(usual)


@lru_cache(maxsize=32)
def _learnt(
    readings: tuple[Reading, ...],
    bakes: tuple[FinishedBake, ...],
    prior: Prior,
    said: OffsetLearnt | None,
    *,
    fan: bool,
    rack: str,
) -> "OvenLearnt":
    """The same records teach the same: an edit elsewhere in the book learns nothing anew."""
    from krume.learn import learn_oven

    return learn_oven(readings, bakes, prior, fan=fan, shelf=rack, said=said)


def _real(bakes: list[FinishedBake]) -> tuple[list[FinishedBake], tuple[Flag, ...]]:
    """Invented bakes stand in for a demo's real ones, and stand back once there is one."""
    real = [bake for bake in bakes if bake.status != "invented"][-_MOST:]
    if not real:
        return bakes[-_MOST:], ()
    said = "it is invented, and real bakes count in its place"
    return real, tuple(Flag(b.key, "bake-invented", said) for b in bakes if b.status == "invented")


def records(written: Iterable[Written], name: str) -> list[Reading | FinishedBake]:
    """Records of one oven in which nothing is asked."""
    mine = (each.record for each in written if each.record.oven == name)
    return [record.value for record in mine if record.value is not None]


def _asked_first(found: Gathered, name: str) -> tuple[Flag, ...]:
    """Records that cannot count before something in them is answered."""
    mine = (w.record for w in (*found.readings, *found.bakes) if w.record.oven == name)
    return tuple(Flag(r.key, r.faults[0].code, r.faults[0].ask) for r in mine if r.faults)


def _said(studio: Studio, prior: Prior) -> OffsetLearnt | None:
    """The offset of a studio that wrote down only what its readings came to."""
    if studio.oven_offset_c is None:
        return None
    spread = studio.oven_spread_c
    usual = constants("pantry_page.csv")["dial-shown"] - studio.oven_offset_c
    return offset_said(
        studio.oven_offset_c,
        at_dial_c=usual if studio.oven_dial_c is None else studio.oven_dial_c,
        readings=max(studio.oven_readings or 0, 0),
        spread_c=oven_figure("swing") if spread is None else abs(spread),
        prior=prior,
    )


def _statuses(bakes: Iterable[FinishedBake], learnt: "OvenLearnt") -> tuple[str, ...]:
    counted = () if learnt.heat is None else learnt.heat.counted
    return tuple(sorted({bake.status for bake in bakes if bake.key in counted}))
