"""Keep, discard or not shown: one component in a fridge that was off, by what is known of it.

What is not shown is not kept. A reading proves cold only where it was taken before the fridge was
cold again; hours count only from food that was cold when it stopped.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from krume.base import OutOfRangeError, as_text
from krume.keep.off.places import place_rule
from krume.properties import constants

KEEP, NOT_SHOWN, DISCARD = "keep", "not-shown", "discard"
DOORS = ("shut", "opened", "unknown")
_ORDER = (KEEP, NOT_SHOWN, DISCARD)
_PROBE = "Probe its warmest place now"


@dataclass(frozen=True, slots=True)
class OffEvidence:
    """What is known of a fridge that was off; None is not known.

    `hours` run from the moment it stopped until it was cold again, or until now. `product_c` is
    the highest reading in the food itself, `air_c` the highest of the air, both taken before it
    was cold again. `before_c` is the last reading before it stopped.
    """

    hours: float | None = None
    door: str = "unknown"
    product_c: float | None = None
    air_c: float | None = None
    before_c: float | None = None

    def __post_init__(self) -> None:
        """Refuse figures that are none of a fridge."""
        limits = constants("keep_off_limits.csv")
        for field in ("product_c", "air_c", "before_c"):
            _check(field, getattr(self, field), limits["coldest-read"], limits["warmest-read"], "C")
        _check("hours", self.hours, 0.0, 24 * limits["longest-days"], "h")


def _check(field: str, amount: float | None, low: float, high: float, unit: str) -> None:
    if amount is None or (math.isfinite(amount) and low <= amount <= high):
        return
    want = f"{as_text(low)} to {as_text(high)} {unit}"
    text = f"{amount:g} {unit} is no figure of a fridge that was off. Type one from {want}."
    raise OutOfRangeError(text, field=field, got=f"{amount:g}", want=want)


@dataclass(frozen=True, slots=True)
class OffVerdict:
    """What is done with a component, by which rule, and what would settle it where it is open."""

    verdict: str
    rule: str
    text: str
    opens: str = ""


def judge_off(evidence: OffEvidence, *, needs_cold: bool) -> OffVerdict:
    """Judge one component; what needs no cold is kept.

    >>> warm = OffEvidence(hours=3.0, product_c=9.5, before_c=4.0)
    >>> judge_off(warm, needs_cold=True).verdict
    'discard'
    """
    if not needs_cold:
        return OffVerdict(KEEP, "advice-above", "It need not be kept cold for this.")
    if evidence.product_c is not None:
        return _by_product(evidence, evidence.product_c)
    if evidence.air_c is not None and evidence.air_c <= _cold_c():
        return _by_cold_air(evidence, evidence.air_c)
    return _by_hours(evidence)


def worst_of(verdicts: Iterable[str]) -> str:
    """The hardest of several; of none it is not shown.

    >>> worst_of(["keep", "discard", "not-shown"]), worst_of([])
    ('discard', 'not-shown')
    """
    found = [_ORDER.index(verdict) for verdict in verdicts]
    return _ORDER[max(found)] if found else NOT_SHOWN


def _cold_c() -> float:
    limit = place_rule("us-cold").most_c
    return math.inf if limit is None else limit


def _by_product(evidence: OffEvidence, product_c: float) -> OffVerdict:
    read = f"{as_text(product_c, 2)} °C at most in the food"
    before = evidence.before_c
    if product_c <= _cold_c() and before is not None and before > _cold_c():
        text = f"{read}, and {as_text(before, 2)} °C before it stopped: one of the two is wrong."
        return OffVerdict(NOT_SHOWN, "us-cold", text, _settles())
    if product_c <= _cold_c():
        return OffVerdict(KEEP, "us-cold", f"{read}: it stayed at {_limit()} or below.")
    hours = evidence.hours
    if hours is None:
        return OffVerdict(
            NOT_SHOWN, "advice-above", f"{read}, and how long it was warm is not known.",
            "Type when the fridge stopped.",
        )  # fmt: skip
    if not place_rule("advice-above").holds_for_hours(hours):
        text = f"{read}, off for {as_text(hours, 2)} h: over 2 h above {_limit()}."
        return OffVerdict(DISCARD, "advice-above", text)
    return _if_it_was_cold(
        evidence, f"{read}, off for {as_text(hours, 2)} h: not over 2 h above {_limit()}."
    )


def _by_cold_air(evidence: OffEvidence, air_c: float) -> OffVerdict:
    return _if_it_was_cold(
        evidence, f"{as_text(air_c, 2)} °C at most in the air: it stayed at {_limit()} or below.",
        rule="us-cold",
    )  # fmt: skip


def _by_hours(evidence: OffEvidence) -> OffVerdict:
    """Without a reading of the food, by the hours: two, then four with the door shut."""
    hours, air = evidence.hours, ""
    if evidence.air_c is not None:
        air = f"{as_text(evidence.air_c, 2)} °C in the air and no reading of the food. "
    if evidence.before_c is not None and evidence.before_c > _cold_c():
        return _if_it_was_cold(evidence, air)
    if hours is None:
        text = f"{air}How long it was off is not known."
        return OffVerdict(NOT_SHOWN, "us-cold", text, _settles())
    if place_rule("advice-above").holds_for_hours(hours):
        text = f"{air}{_hours(hours)}: it was not over 2 h above {_limit()}."
        return _if_it_was_cold(evidence, text)
    if not place_rule("advice-closed").holds_for_hours(hours):
        text = f"{air}{_hours(hours)}: longer than even a shut fridge keeps its food cold."
        return OffVerdict(DISCARD, "advice-closed", text)
    door = {"shut": "A shut fridge may still be cold", "opened": "The door was opened"}
    said = door.get(evidence.door, "Whether the door was opened is not known")
    text = f"{air}{_hours(hours)}. {said}; the food was not read."
    return OffVerdict(NOT_SHOWN, "advice-closed", text, _settles())


def _if_it_was_cold(evidence: OffEvidence, text: str, *, rule: str = "advice-above") -> OffVerdict:
    """Kept only where it is known that it was cold when the fridge stopped."""
    before = evidence.before_c
    if before is None:
        opens = f"Type its last reading before it stopped: {_limit()} or below keeps it."
        unsaid = f"{text} That it was cold before is not known."
        return OffVerdict(NOT_SHOWN, rule, unsaid, opens)
    if before > _cold_c():
        said = f"It was {as_text(before, 2)} °C before it stopped, and since when is not shown."
        return OffVerdict(DISCARD, "us-cold", said)
    return OffVerdict(KEEP, rule, f"{text} Into the cold at once; the warm time stays counted.")


def _settles() -> str:
    return (
        f"{_PROBE}, before the fridge is cold again: {_limit()} or below keeps it, "
        "above throws it away."
    )


def _limit() -> str:
    return f"{as_text(_cold_c(), 1)} °C"


def _hours(hours: float) -> str:
    return f"Off for {as_text(hours, 2)} h"
