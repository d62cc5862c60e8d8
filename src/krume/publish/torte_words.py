"""A torte plan as plain data: what a JSON answer holds, and the words paper prints."""

from dataclasses import asdict

from krume.publish.sheet import dated, is_unbaked, made_by
from krume.publish.signs import printable
from krume.publish.torte_plan import SCALES, Section, TorteSheet

_MOST_HIGH_MM = 105.0
"""What of a sheet's height the section may take, so that the tables stand on the same page."""


def plan_dict(sheet: TorteSheet) -> dict[str, object]:
    """A torte plan as the JSON of an answer."""
    data: dict[str, object] = asdict(sheet)
    return data


def printed_plan(sheet: TorteSheet, *, room_mm: float) -> dict[str, object]:
    """Words of a torte plan for paper; every sign in them is in the packed fonts."""
    said = {
        "title": sheet.name,
        "keywords": ["torte plan", "section to scale"],
        "facts": [asdict(fact) for fact in sheet.facts],
        "heading": sheet.section.heading,
        "rows": [_texts(asdict(row)) for row in sheet.rows],
        "total": _texts(asdict(sheet.total)),
        "needs": [asdict(need) for need in sheet.needs],
        "eggs": sheet.eggs,
        "slices": list(sheet.slices),
        "findings": list(sheet.findings),
        "caution": " ".join(sheet.cautions),
        "plan-notes": list(sheet.notes),
        "hold": None if sheet.hold is None else asdict(sheet.hold),
        "notes": list(sheet.imprint.notes),
        "unbaked": is_unbaked(sheet.imprint),
        "made-by": made_by(sheet.imprint),
        "dated": dated(sheet.imprint),
    }
    clean = _printable(said)
    if not isinstance(clean, dict):
        raise TypeError("a plan's words are a table of names")
    return {**clean, "section": _section(sheet.section, room_mm)}


def _texts(row: dict[str, object]) -> dict[str, str]:
    return {key: str(value) for key, value in row.items()}


def scale_for(section: Section, *, room_mm: float) -> float:
    """The scale, one to this, at which a section fits between the margins.

    >>> scale_for(Section("", 286.0, 104.5, "", ""), room_mm=194.0)
    1.5
    """
    fitting = (
        scale
        for scale in SCALES
        if section.wide_mm / scale <= room_mm and section.high_mm / scale <= _MOST_HIGH_MM
    )
    return next(fitting, SCALES[-1])


def _section(section: Section, room_mm: float) -> dict[str, object] | None:
    if section.svg is None:
        return None
    scale = scale_for(section, room_mm=room_mm)
    # The drawing is words and lines made here; a sign no font has is spelled out in it too.
    return {
        "svg": printable_drawing(section.svg),
        "wide": section.wide_mm / scale,
        "alt": printable(section.sentence).text,
        "scale": f"1 : {scale:g}",
    }


def printable_drawing(svg: str) -> str:
    """A drawing with signs that the packed fonts have."""
    return svg if svg.isascii() else printable(svg).text


def _printable(value: object) -> object:
    if isinstance(value, str):
        return printable(value).text
    if isinstance(value, list):
        return [_printable(item) for item in value]
    if isinstance(value, dict):
        return {key: _printable(item) for key, item in value.items()}
    return value
