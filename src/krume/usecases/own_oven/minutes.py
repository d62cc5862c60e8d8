"""What an oven's own bakes do to the minutes: the same cake again, and how much they narrow."""

import math

from krume.bake import Around, Batter, Oven, Prediction, predict
from krume.base import Infeasible, Interval, Notice, as_text
from krume.learn import Again, same_cake
from krume.size import Tin
from krume.usecases.own_oven.own_oven import KnownOven

_FEW = 64


def own_minutes(
    known: KnownOven, cake: str, batter: Batter, oven: Oven, found: Prediction
) -> Again | None:
    """Minutes of a cake this oven has baked before; None is another.

    A cake its colour decides is another one, and so is one with something else round its tin.
    """
    is_plain = oven.around == Around(rack=oven.around.rack)
    if known.learnt.heat is None or found.done_by == "colour" or not is_plain:
        return None
    return same_cake(
        known.learnt, cake, batter_g=batter.mass_g, oven_c=oven.temp_c,
        model_min=found.bake.minutes,
    )  # fmt: skip


def oven_notices(
    known: KnownOven,
    own: Again | None,
    found: Prediction,
    ground: tuple[Batter, Tin, Oven],
) -> tuple[Notice, ...]:
    """How much of the interval comes from how many bakes of this oven; nothing where from none."""
    notices = (*_offset_said(known, ground[2]), *_left_out(known))
    if not known.bakes:
        return notices
    before = _before(known, ground)
    minutes = found.minutes if own is None else own.minutes
    whose = _whose(known, own)
    text = f"From {whose}: {_span(minutes)} min"
    text += "." if before is None else f"; before any bake in it {_span(before)}."
    return (Notice("oven-learnt", text, "--oven-name"), *notices)


def _whose(known: KnownOven, own: Again | None) -> str:
    """`3 bakes in deck (2 of this cake, all invented)`."""
    bakes = f"{known.bakes} bake{'' if known.bakes == 1 else 's'} in {known.name}"
    words = [] if own is None else [f"{own.bakes} of this cake"]
    if known.statuses not in ((), ("measured",)):
        words.append(" and ".join(known.statuses))
    return f"{bakes} ({', '.join(words)})" if words else bakes


def _before(known: KnownOven, ground: tuple[Batter, Tin, Oven]) -> Interval | None:
    """The minutes of a usual oven with the same dial."""
    batter, tin, oven = ground
    usual = Oven(
        temp_c=oven.temp_c, fan=oven.fan, altitude_m=oven.altitude_m,
        heat=math.exp(known.prior.ln_heat), ln_heat_sd=known.prior.ln_heat_sd,
        temp_half_width_c=known.at(oven.temp_c).temp_half_width_c, around=oven.around,
    )  # fmt: skip
    found = predict(batter, tin, usual, count=_FEW)
    return None if isinstance(found, Infeasible) else found.minutes


def _span(span: Interval) -> str:
    return f"{as_text(span.low, 0)}–{as_text(span.high, 0)}"


def _offset_said(known: KnownOven, oven: Oven) -> tuple[Notice, ...]:
    """Said where the oven is not as far off at every dial setting, or far from those read."""
    offset = known.learnt.offset
    if offset is None:
        return ()
    at = known.at(oven.temp_c)
    dial, off = as_text(oven.temp_c - (at.offset_c or 0.0), 0), as_text(at.offset_c or 0.0, 0)
    sd = as_text(at.offset_sd_c or 0.0, 0)
    if offset.differs:
        read = ", ".join(f"{as_text(offset.at(d), 0)} at {as_text(d, 0)}" for d in offset.dials_c)
        text = (
            f"{known.name} is not off its dial by the same everywhere ({read} °C): "
            f"at dial {dial} by {off} °C, give or take {sd}."
        )
        return (Notice("oven-offset", text, "--oven-name"),)
    return ()


def _left_out(known: KnownOven) -> tuple[Notice, ...]:
    """Said where records of this oven do not count."""
    flagged = [flag for flag in known.flagged if flag.code != "bake-invented"]
    if not flagged:
        return ()
    first, more = flagged[0], len(flagged) - 1
    also = f" {more} more: `krume oven` names them." if more else ""
    text = f"Not counted in {known.name}: {first.key}, {first.reason.rstrip('.')}.{also}"
    return (Notice("oven-flagged", text, "--oven-name"),)
