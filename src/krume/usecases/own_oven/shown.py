"""What a book knows of its ovens: each place with its offset and heat, each record in the list."""

import math
from dataclasses import dataclass, replace

from krume.base import Interval, as_text
from krume.learn import FinishedBake, Reading
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.own_oven.cells import BAKES, READINGS
from krume.usecases.own_oven.gathered import Written, bench_trial, habit_of
from krume.usecases.own_oven.keep import (
    Said,
    end_oven,
    forget,
    keep_said,
    numbered,
    said_bake,
    said_reading,
)
from krume.usecases.own_oven.own_oven import (
    KnownOven,
    gathered_now,
    known_oven,
    oven_named,
    oven_unknown,
)
from krume.usecases.own_oven.result import (
    OvenAtDial,
    OvenFlag,
    OvenRecordShown,
    OvenResult,
    OvenShown,
)

_TENTH = 1.2815515655446004
"""The standard deviations of a normal chance that leave a tenth on each side."""

_SAME_PCT = 2
_READING, _BAKE = "--reading", "--bake"


@dataclass(frozen=True, slots=True)
class OvenWish:
    """What is to be written down or taken out; `name` picks an oven, None shows all."""

    readings: tuple[str, ...] = ()
    bakes: tuple[str, ...] = ()
    forget: int | None = None
    until: str | None = None
    name: str | None = None


def ovens_of(wish: OvenWish, asked: Asked) -> Answer[OvenResult]:
    """Write down what is said of an oven, then tell what is known of every one."""
    name = asked.answer_for("--oven-name") or wish.name
    lines = [
        *(
            said_reading(t, asked, oven=name or "", where=_READING)
            for t in _lines(_READING, wish.readings, asked)
        ),
        *(
            said_bake(t, asked, oven=name or "", where=_BAKE)
            for t in _lines(_BAKE, wish.bakes, asked)
        ),
    ]
    problems = tuple(problem for line in lines for problem in line.problems)
    if name is not None and not lines and oven_named(name, asked) is None:
        problems = (oven_unknown(name, asked),)
    done = [] if problems else [_kept(line, asked) for line in lines]
    if wish.forget is not None:
        done.append(f"Taken out: {forget(wish.forget, asked).record.line}")
    if wish.until is not None:
        end_oven(wish.until, asked, oven=name or "")
        done.append(f"What was written down until {wish.until} is of the old oven now")
    shown = ovens_shown(asked)
    wanted = None if name is None else oven_named(name, asked)
    ovens = tuple(o for o in shown if wanted is None or o.name == wanted)
    result = OvenResult(ovens, records_shown(asked), ". ".join(done))
    return Answer(result, problems)


def _lines(place: str, typed: tuple[str, ...], asked: Asked) -> tuple[str, ...]:
    """What was said, the last of it as it was answered."""
    answer = asked.answer_for(place)
    return typed if answer is None else (*typed[:-1], answer)


def _kept(line: Said, asked: Asked) -> str:
    keep_said(line, asked)
    words = {READINGS: "the reading", BAKES: "the bake"}
    return f"Written down: {words[line.place]} of {line.cells['day']}"


def ovens_shown(asked: Asked) -> tuple[OvenShown, ...]:
    """Every oven at every place something was written down of, one's own first."""
    return tuple(oven_shown(each) for each in places_known(asked))


def places_known(asked: Asked) -> tuple[KnownOven, ...]:
    """What is known of every oven at every place of it."""
    found = gathered_now(asked)
    usual = habit_of(studio_of(book_at(asked.book)))
    known = []
    for name in found.names:
        mine = (w.record for w in (*found.readings, *found.bakes) if w.record.oven == name)
        places = {(r.value.fan, r.value.shelf) for r in mine if r.value is not None}
        if not places or name == found.own:
            places |= {(usual.fan, "middle")}
        ordered = sorted(places, key=lambda p: (p != (usual.fan, "middle"), p))
        known += [known_oven(asked, name, fan=fan, rack=shelf) for fan, shelf in ordered]
    return tuple(known)


def oven_shown(known: KnownOven) -> OvenShown:
    """One oven at one place."""
    offset = known.learnt.offset
    dials = () if offset is None else offset.dials_c
    source = None if offset is None else "studio.toml" if known.is_said else "readings"
    dial_c = None if offset is None else offset.dial_for(known.at_c)
    shown = OvenShown(
        name=known.name,
        fan=known.fan,
        shelf=known.rack,
        at_c=known.at_c,
        offset_c=_rounded(known.offset_c),
        offset_sd_c=_rounded(known.offset_sd_c),
        offset_from=source,
        dial_c=_rounded(dial_c),
        dial_f=None if dial_c is None else round(dial_c * 1.8 + 32, 1),
        dials=tuple(
            OvenAtDial(round(d, 1), round(offset.at(d), 1), round(offset.sd_c(d), 1))
            for d in dials
            if offset is not None
        ),
        differs=offset is not None and offset.differs,
        swing_c=None if offset is None else _rounded(offset.swing_c),
        drift_c=None if offset is None else _rounded(offset.drift_c),
        readings=known.readings,
        temp_half_width_c=round(known.temp_half_width_c, 1),
        heat=_heat(math.log(known.heat), known.ln_heat_sd),
        prior_heat=_heat(known.prior.ln_heat, known.prior.ln_heat_sd),
        bakes=known.bakes,
        statuses=known.statuses,
        flagged=tuple(OvenFlag(f.key, f.code, f.reason) for f in known.flagged),
        offset_text="",
        heat_text="",
    )
    carried = "".join(f"; {words}" for words in known.learnt.carried)
    return replace(
        shown, offset_text=_offset_text(shown), heat_text=f"{_heat_text(shown)}{carried}."
    )


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, 1)


def _heat(ln_heat: float, sd: float) -> Interval:
    ends = (math.exp(ln_heat + k * _TENTH * sd) for k in (-1, 0, 1))
    return Interval(*(round(end, 3) for end in ends))


def _offset_text(shown: OvenShown) -> str:
    """`reads low: true is 12 °C below the dial, give or take 3, from 6 looks`."""
    if shown.offset_c is None or shown.offset_sd_c is None:
        return "Its offset is not known: look at a thermometer in it a few times."
    looks = f"{shown.readings} look{'' if shown.readings == 1 else 's'}"
    sd = as_text(shown.offset_sd_c, 0)
    if abs(shown.offset_c) < 0.5:
        return f"Reads true, give or take {sd} °C, from {looks}."
    side, way = ("low", "below") if shown.offset_c < 0 else ("high", "above")
    off = as_text(abs(shown.offset_c), 0)
    at = f" at {as_text(shown.at_c, 0)} °C" if shown.differs else ""
    return f"Reads {side}: true is {off} °C {way} the dial{at}, give or take {sd}, from {looks}."


def _heat_text(shown: OvenShown) -> str:
    """`6 % stronger than the usual oven (15 weaker to 31 stronger), from 4 bakes`."""
    low, high = _percent(shown.heat.low), _percent(shown.heat.high)
    if not shown.bakes:
        return f"How strong it is nobody knows: from {low} to {high} of the usual oven"
    best = 100 * (shown.heat.best - 1)
    side = "stronger" if best > 0 else "weaker"
    off = f"{as_text(abs(best), 0)} % {side} than the usual oven"
    if abs(best) < _SAME_PCT:
        off = "As strong as the usual oven"
    bakes = f"{shown.bakes} bake{'' if shown.bakes == 1 else 's'}"
    status = "" if shown.statuses == ("measured",) else f" ({' and '.join(shown.statuses)})"
    return f"{off} ({low} to {high} of it), from {bakes}{status}"


def _percent(heat: float) -> str:
    return f"{as_text(100 * heat, 0)} %"


def records_shown(asked: Asked) -> tuple[OvenRecordShown, ...]:
    """Every record with its number, whether it counts, and why not."""
    reasons, residuals = _judged(asked)
    return tuple(
        _record(number, each, reasons, residuals)
        for number, each in enumerate(numbered(asked), start=1)
    )


def trial_counts(key: str, asked: Asked) -> str:
    """What a trial of the bench does for the oven it stood in, in one sentence."""
    named = bench_trial(key)
    found = next((each for each in records_shown(asked) if each.key == named), None)
    if found is None:
        return (
            "It tells nothing of the oven: for that it wants minutes, a core, and its load in the "
            "oven's list."
        )
    if found.counts:
        return f"It counts for the oven {found.oven}."
    return f"It does not count for the oven {found.oven}: {found.reason.rstrip('.')}."


def _judged(asked: Asked) -> tuple[dict[str, str], dict[str, float]]:
    """Reasons of what does not count, and residuals of the bakes that do, by key."""
    reasons: dict[str, str] = {}
    residuals: dict[str, float] = {}
    for known in places_known(asked):
        reasons |= {flag.key: flag.reason for flag in known.flagged}
        heat = known.learnt.heat
        if heat is not None and not known.learnt.carried:
            residuals |= dict(heat.residuals)
    return reasons, residuals


def _record(
    number: int, each: Written, reasons: dict[str, str], residuals: dict[str, float]
) -> OvenRecordShown:
    record, value = each.record, each.record.value
    kind = {READINGS: "reading", BAKES: "bake", "loads.csv": "load"}.get(each.place, "trial")
    reason = reasons.get(record.key, "")
    off = residuals.get(record.key)
    is_known = isinstance(value, Reading | FinishedBake)
    return OvenRecordShown(
        number=number, oven=record.oven, kind=kind, key=record.key, text=record.line,
        day=record.day, status=value.status if value is not None else "",
        counts=is_known and not reason,
        reason=reason, row=each.row,
        off_pct=None if off is None else round(100 * math.expm1(off), 1),
    )  # fmt: skip
