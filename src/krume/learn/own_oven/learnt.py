"""What is learnt of one oven: what it is off its dial, how strong it is, what does not count."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from krume.bake import Oven
from krume.base import as_text
from krume.learn.own_oven.heat import HeatLearnt, learn_heat
from krume.learn.own_oven.judging import timed_bakes
from krume.learn.own_oven.model_times import Timed
from krume.learn.own_oven.offset import OffsetLearnt, learn_offset
from krume.learn.own_oven.records import FinishedBake, Flag, Prior, Reading, figure


@dataclass(frozen=True, slots=True)
class OvenLearnt:
    """One oven with or without its fan, on one shelf; None is not known.

    `carried` says that nothing was recorded at this very place and another's stands for it.
    """

    offset: OffsetLearnt | None
    heat: HeatLearnt | None
    ln_heat: float
    ln_heat_sd: float
    flagged: tuple[Flag, ...]
    carried: tuple[str, ...] = ()

    @property
    def bakes(self) -> int:
        """How many bakes count."""
        return 0 if self.heat is None else len(self.heat.counted)

    def temp_sd_c(self, dial_c: float, prior: Prior) -> float:
        """Doubt about the true temperature at a dial setting."""
        return prior.offset_sd_c if self.offset is None else self.offset.sd_c(dial_c)

    def oven(self, oven: Oven, prior: Prior) -> Oven:
        """An oven of a bake with what bakes told, `oven` being as well known as its dial.

        A bake cannot tell a hot oven from a strong one: it knows both as one heat. What is left
        of the doubt of the heat is left of the temperature's too, or it would count twice; only
        at another temperature than those of the bakes it may be off otherwise.
        """
        half = oven.temp_half_width_c
        if self.heat is not None and self.heat.counted and prior.ln_heat_sd:
            temps = [temp for cake in self.heat.cakes for temp in cake.oven_c]
            away = min(abs(oven.temp_c - temp) for temp in temps)
            left = half * self.ln_heat_sd / prior.ln_heat_sd
            half = min(half, math.hypot(left, figure("offset-slope") * away))
        return replace(
            oven,
            heat=math.exp(self.ln_heat),
            ln_heat_sd=self.ln_heat_sd,
            temp_half_width_c=half,
        )


def learn_oven(
    readings: Sequence[Reading],
    bakes: Sequence[FinishedBake],
    prior: Prior,
    *,
    fan: bool = False,
    shelf: str = "middle",
    said: OffsetLearnt | None = None,
) -> OvenLearnt:
    """Offset and heat of one oven at one place from its readings and finished bakes.

    `said` is the offset of somebody who has no single readings. Readings of the other fan setting
    or another shelf stand in where there are none, wider; bakes of another shelf likewise, those
    of the other fan setting never.
    """
    offset, off_flags, off_carried = _offset(readings, prior, fan=fan, shelf=shelf)
    offset = said if offset is None else offset
    mine = [bake for bake in bakes if bake.fan == fan]
    here = [bake for bake in mine if bake.shelf == shelf]
    timed, flags = timed_bakes(here or mine, offset, prior)
    flagged = (*off_flags, *flags)
    if not timed:
        return OvenLearnt(offset, None, prior.ln_heat, prior.ln_heat_sd, flagged, off_carried)
    heat = learn_heat(timed, prior)
    is_carried = not here
    sd = math.hypot(heat.ln_heat_sd, figure("other-shelf")) if is_carried else heat.ln_heat_sd
    carried = (f"its heat from bakes on the {mine[0].shelf} shelf",) if is_carried else ()
    return OvenLearnt(
        offset=offset,
        heat=heat,
        ln_heat=heat.ln_heat,
        ln_heat_sd=min(sd, prior.ln_heat_sd),
        flagged=(*flagged, *(_odd(t, heat) for t in timed if t.bake.key in heat.odd)),
        carried=(*off_carried, *carried),
    )


def _offset(
    readings: Sequence[Reading], prior: Prior, *, fan: bool, shelf: str
) -> tuple[OffsetLearnt | None, tuple[Flag, ...], tuple[str, ...]]:
    """Offset at this place, else of the other places together."""
    once, twice = _once(readings)
    here = [r for r in once if r.fan == fan and r.shelf == shelf]
    others = [r for r in once if r not in here]
    found, flags = learn_offset(here, prior)
    there, more = learn_offset(others, prior)
    flagged = (*twice, *flags, *more)
    if found is not None or there is None:
        return found, flagged, ()
    words = "its offset from readings with the other fan setting or on another shelf"
    return replace(there, place_sd_c=figure("other-place")), flagged, (words,)


def _once(readings: Sequence[Reading]) -> tuple[list[Reading], list[Flag]]:
    first: dict[Reading, Reading] = {}
    twice = []
    for reading in readings:
        plain = replace(reading, key="", status="", is_sure=False)
        there = first.setdefault(plain, reading)
        if there is not reading:
            said = f"the same reading as {there.key}, written down twice: it counts once"
            twice.append(Flag(reading.key, "reading-twice", said))
    return list(first.values()), twice


def _odd(each: Timed, heat: HeatLearnt) -> Flag:
    """An odd bake in words: against the others, the only other one, or the usual oven."""
    off, others = heat.odd[each.bake.key], "what the others say"
    if not heat.counted:
        is_lone = len(heat.odd) == 1
        others = "in the usual oven" if is_lone else "what the other one says, and neither counts"
        off = math.log(each.most_min) - each.ln_min[len(each.ln_min) // 2] if is_lone else off
    side = "longer" if off > 0 else "shorter"
    reason = (
        f"{as_text(each.most_min, 0)} min is {as_text(100 * abs(math.expm1(off)), 0)} % {side} "
        f"than {others} (about {as_text(each.most_min / math.exp(off), 0)} min). Is it the same "
        "cake, dial and core? Correct it, or say that you are sure of it"
    )
    return Flag(each.bake.key, "bake-odd", reason)
