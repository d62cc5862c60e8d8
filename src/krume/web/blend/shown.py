"""The answer of a blend as a page shows it: grams before and now, records, what is beside it."""

from dataclasses import dataclass

from krume.usecases import BlendLine, BlendRecord, BlendResult
from krume.web.frame.figures import amount

_STATES = {
    "good": ("open", "good", "a record in force"),
    "not-needed": ("open", "good", "no record needed"),
    "expired": ("shut", "stop", "its record ran out"),
    "missing": ("shut", "stop", "no record"),
    "conflict": ("clash", "stop", "it speaks against it"),
    "not-yet-valid": ("shut", "stop", "its record is not in force yet"),
}


@dataclass(frozen=True, slots=True)
class GramRow:
    """One flour: grams before and now, and its share now."""

    name: str
    before: str
    now: str
    share: str


@dataclass(frozen=True, slots=True)
class HeldRow:
    """What 100 g hold of a property: wanted and got."""

    name: str
    wanted: str
    got: str


@dataclass(frozen=True, slots=True)
class RecordRow:
    """How the gluten record of one flour stands: glyph, kind of state, words."""

    name: str
    lot: str
    glyph: str
    kind: str
    state: str
    text: str


@dataclass(frozen=True, slots=True)
class NearRow:
    """A near blend: how far, how it differs, its grams, what it breaks or brings."""

    distance: str
    words: str
    grams: str
    breaks: str
    gained: str


def gram_rows(blend: BlendResult) -> tuple[GramRow, ...]:
    """Every flour of the formula and of the blend."""
    now = {part.ingredient: part for part in blend.parts}
    before = {} if blend.match is None else {part.ingredient: part for part in blend.match.parts}
    keys = dict.fromkeys((*before, *now))
    return tuple(_grams(now.get(key), before.get(key)) for key in keys)


def _grams(now: BlendLine | None, before: BlendLine | None) -> GramRow:
    named = now or before
    return GramRow(
        "" if named is None else named.name,
        "–" if before is None else amount(before.mass_g, 2),
        "–" if now is None else amount(now.mass_g, 2),
        "" if now is None else amount(now.share_pct),
    )


def held_rows(blend: BlendResult) -> tuple[HeldRow, ...]:
    """What 100 g hold, wanted and got."""
    return tuple(
        HeldRow(name, amount(wanted, 2), amount(blend.got.get(name), 2))
        for name, wanted in blend.target.items()
    )


def nearness(blend: BlendResult) -> str:
    """The distance in words, and whether any blend could be nearer."""
    said = f"Distance {amount(blend.distance, 3)}"
    if blend.proven:
        return f"{said}: no blend within these limits is nearer."
    return f"{said}: the search was stopped; none is nearer than {amount(blend.bound, 3)}."


def record_rows(blend: BlendResult) -> tuple[RecordRow, ...]:
    """Records of the flours that go in, the ones that shut the gate first."""
    used = [record for record in blend.evidence if record.is_used]
    rows = (_record(record) for record in used)
    return tuple(sorted(rows, key=lambda row: row.kind == "good"))


def _record(record: BlendRecord) -> RecordRow:
    glyph, kind, words = _STATES.get(record.state, ("ask", "ask", record.state))
    return RecordRow(record.name, record.lot or "no lot", glyph, kind, words, record.text)


def near_rows(blend: BlendResult) -> tuple[NearRow, ...]:
    """Other flours, nearest first."""
    return tuple(
        NearRow(
            amount(other.distance, 3),
            _differs(other.without, other.also),
            short(other.parts),
            "",
            ", ".join(other.gained),
        )
        for other in blend.alternatives
    )


def swap_rows(blend: BlendResult) -> tuple[NearRow, ...]:
    """One flour for what is missing, nearest first."""
    return tuple(
        NearRow(
            amount(swap.distance, 3),
            swap.name,
            short(swap.parts),
            ", ".join(swap.breaks),
            ", ".join(swap.gained),
        )
        for swap in blend.one_for_one
    )


def _differs(without: tuple[str, ...], also: tuple[str, ...]) -> str:
    gone = f"without {', '.join(without)}" if without else ""
    new = f"with {', '.join(also)}" if also else ""
    return ", ".join(part for part in (gone, new) if part) or "other grams"


def short(parts: tuple[BlendLine, ...]) -> str:
    """Grams in a line."""
    return " · ".join(f"{part.name} {amount(part.mass_g, 2)}" for part in parts)
