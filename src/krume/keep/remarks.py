"""Remarks that stand beside a keeping: water activity, mould, raw egg, alcohol. Never evidence."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from krume.base import Interval, as_text
from krume.design import Formula, family
from krume.keep.mould import TEMPS_C, mould_free_span
from krume.keep.traits import is_cooked
from krume.keep.treated import alcohol_kept, raw_egg
from krume.properties import constants


@dataclass(frozen=True, slots=True)
class Remark:
    """One remark with its papers; `key` says what it is about."""

    key: str
    text: str
    status: str
    source: str


def remarks_on(
    name: str,
    formula: Formula,
    kind: str | None,
    *,
    activity: Interval | None,
    traits: frozenset[str],
) -> Iterator[Remark]:
    """All remarks on one formula."""
    if activity is not None:
        yield _activity(name, activity)
        if kind is not None and family(kind).kind == "batter":
            yield _mould(name, activity)
    if traits & {"raw-egg", "egg-heat-unknown"}:
        yield _instead(name, formula)
    yield from _fresh(name, formula, kind)
    yield from _alcohol(name, formula, kind)


def _fresh(name: str, formula: Formula, kind: str | None) -> Iterator[Remark]:
    """A cream that no step cooks: how soon it must be cold."""
    is_cream = kind is not None and family(kind).kind == "cream"
    if not is_cream or not formula.steps or is_cooked(formula):
        return
    limit = constants("keeping.csv")
    text = (
        f"{name}: no step cooks it. Made of things at room temperature it is at "
        f"{as_text(limit['cooling-end'])} °C or below within {as_text(limit['cooling-fresh-h'])} h "
        "of being mixed (FDA Food Code 3-501.14(B), where it is adopted)."
    )
    yield Remark("cold-within", text, "law", "fda-food-code-2022")


def _activity(name: str, activity: Interval) -> Remark:
    doubt = constants("keep_limits.csv")["activity-doubt"]
    text = (
        f"{name}: water activity about {as_text(activity.best, 2)} by its sugar and water, "
        f"± {as_text(doubt)} or more. A remark, no measurement."
    )
    return Remark("activity-estimate", text, "derived", "norrish-1966")


def _mould(name: str, activity: Interval) -> Remark:
    spans = (f"{_days(activity, temp_c)} at {as_text(temp_c)} °C" for temp_c in TEMPS_C)
    text = (
        f"{name} plain and wrapped, by that: mould-free {', '.join(spans)}. By a line for wheat "
        "cakes, of mould alone; it says nothing of other germs."
    )
    return Remark("mould-free", text, "derived", "fmbra-150")


def _days(activity: Interval, temp_c: float) -> str:
    least, most = mould_free_span(activity, temp_c=temp_c)
    if least is None:
        return f"{_whole(most)} days at most"
    if math.isinf(most):
        return f"{_whole(least)} days or more"
    low, high = _whole(least), _whole(most)
    return f"{low} days" if low == high else f"{low} to {high} days"


def _whole(days: float) -> str:
    return str(max(math.floor(days), 0))


def _instead(name: str, formula: Formula) -> Remark:
    eggs = ", ".join(egg.instead for egg in raw_egg(formula))
    text = (
        f"{name}: its egg is not heated, or nobody says so. Take {eggs} in its place; what it "
        "whips to is to be tried."
    )
    return Remark("pasteurised-instead", text, "common practice", "common-practice")


def _alcohol(name: str, formula: Formula, kind: str | None) -> Iterator[Remark]:
    kept = alcohol_kept(formula, kind)
    if kept is None:
        return
    share = f"{as_text(kept.kept_pct.low)} to {as_text(kept.kept_pct.high)} %"
    grams = "grams not known"
    if kept.kept_g is not None:
        grams = f"{as_text(kept.kept_g.low, 1)} to {as_text(kept.kept_g.high, 1)} g in a batch"
    text = f"{name}: {share} of its alcohol is kept ({kept.words}): {grams}. Heat never takes all."
    yield Remark("alcohol-kept", text, kept.status, kept.source)
