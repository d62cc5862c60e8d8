"""The ways out of a slip, best first."""

from dataclasses import dataclass

from krume.design.balance import Balance
from krume.design.slip.blend_ways import follow, hold, hold_in_band, jar, leave, second
from krume.design.slip.bowl import Bowl, bowls_of
from krume.design.slip.finish import Case, finish
from krume.design.slip.judging import judge_of
from krume.design.slip.saying import told
from krume.design.slip.settled import settled_g
from krume.design.slip.size_ways import down, fresh, scale, scale_exact, without_spoilt
from krume.design.slip.state import Slip, figure
from krume.design.slip.way import Declined, Draft, Way

_VARIANTS = ("hold-in-band", "follow")
"""Ways that another one already names: they come after it."""


@dataclass(frozen=True, slots=True)
class Rescue:
    """What lies where, and the ways out: at most three first, best first, and the rest.

    `over` and `short` are the lines of the slip; `bowl` is the blend it lies in, None where it
    lies in none; `alone` are lines over their plan with nothing else in their cup, which can be
    taken out again. `declined` are ways that do not exist here, each with its reason.
    """

    slip: Slip
    plan: Balance
    over: tuple[int, ...]
    short: tuple[int, ...]
    bowl: Bowl | None
    alone: tuple[int, ...]
    options: tuple[Way, ...]
    more: tuple[Way, ...]
    declined: tuple[Declined, ...]

    @property
    def ways(self) -> tuple[Way, ...]:
        """All ways, best first."""
        return (*self.options, *self.more)


def rescue(slip: Slip, *, holds_total: bool = False) -> Rescue:
    """Ways out of a slip; with `holds_total` only those that keep this cake's total.

    Pure: the same slip gives the same ways. First what stays inside every band, keeps the size,
    needs no part egg and leaves nothing over; then the smallest worst shift.
    """
    case = Case(slip, bowls_of(slip), judge_of(slip))
    found = [each for each in _drafts(case) if each is not None]
    declined = tuple(each for each in found if isinstance(each, Declined))
    ways = [finish(case, each) for each in found if isinstance(each, Draft)]
    ways = _worth_showing(ways)
    if holds_total:
        ways = [way for way in ways if way.kind in ("jar", "hold", "hold-in-band", "add")]
    options, more = _ranked(told(case, ways))
    return Rescue(
        slip=slip,
        plan=case.judge.plan,
        over=slip.over,
        short=slip.short,
        bowl=case.bowls.slip,
        alone=tuple(n for n in slip.over if case.bowls.alone(n)),
        options=options,
        more=more,
        declined=declined,
    )


def _drafts(case: Case) -> list[Draft | Declined | None]:
    slip, bowl = case.slip, case.bowls.slip
    if slip.spoilt_whites:
        without = without_spoilt(slip)
        return [fresh(slip), down(without, bowls_of(without)) if without.short else None]
    if not slip.over and not slip.short:
        card = settled_g(slip)
        return [Draft("add", 1.0, card, card)]
    found: list[Draft | Declined | None] = [leave(slip, bowl)]
    if bowl is not None:
        found += [jar(slip, bowl), hold(slip, bowl), hold_in_band(slip, bowl, case.judge)]
        found += [follow(slip, bowl), second(slip, bowl)]
    if slip.short:
        return [*found, down(slip, case.bowls)]
    return [*found, scale(slip, case.bowls), scale_exact(slip, case.bowls)]


def _worth_showing(ways: list[Way]) -> list[Way]:
    """A way outside a band where it was solved to be inside is none; nor is one given twice."""
    by_kind = {way.kind: way for way in ways}
    whole, exact = by_kind.get("scale"), by_kind.get("scale-exact")
    twice = whole is not None and exact is not None and whole.card_g == exact.card_g
    held = by_kind.get("hold")
    held_inside = held is not None and held.in_band
    return [
        way
        for way in ways
        if not (way.kind == "hold-in-band" and (not way.in_band or held_inside))
        and not (way.kind == "scale-exact" and twice)
        and not (way.kind == "jar" and way.jar is None)
    ]


def _ranked(ways: tuple[Way, ...]) -> tuple[tuple[Way, ...], tuple[Way, ...]]:
    """At most three first, those that keep this cake's size before the others; then the rest."""
    most = int(figure("options-first"))
    ordered = sorted(ways, key=rank)
    first = [way for way in ordered if way.keeps_size and way.kind not in _VARIANTS][:most]
    others = [way for way in ordered if way not in first]
    plain = sorted(others, key=lambda way: (way.kind in _VARIANTS, rank(way)))
    first += plain[: most - len(first)]
    rest = [way for way in ordered if way not in first]
    return tuple(sorted(first, key=rank)), tuple(rest)


def rank(way: Way) -> tuple[bool, bool, bool, bool, bool, float, str]:
    """Place of a way: smaller is better, ties go by name."""
    return (
        not way.in_band,
        not way.keeps_size,
        way.is_overfull,
        way.has_part_egg,
        way.waste_g > 0,
        round(way.worst_shift_pct, 6),
        way.kind,
    )
