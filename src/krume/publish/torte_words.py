"""A torte plan as plain data: what a JSON answer holds, and the words paper prints."""

from dataclasses import asdict

from krume.publish.sheet import dated, is_unbaked, made_by
from krume.publish.signs import printable
from krume.publish.torte_plan import Section, TorteSheet


def plan_dict(sheet: TorteSheet) -> dict[str, object]:
    """A torte plan as the JSON of an answer; the drawing for paper stands in the PDF alone."""
    data: dict[str, object] = asdict(sheet)
    section = sheet.section
    data["side"] = None if sheet.side is None else {"paper_scale": sheet.side.scale}
    data["section"] = {
        "svg": section.svg,
        "sentence": section.sentence,
        "heading": section.heading,
        "paper_scale": None if section.paper is None else section.paper.scale,
    }
    return data


def printed_plan(sheet: TorteSheet) -> dict[str, object]:
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
        "eaten": list(sheet.eaten),
        "in-time": list(sheet.in_time),
        "findings": list(sheet.findings),
        "said": {
            "cakes": list(sheet.said.cakes),
            "covers": list(sheet.said.covers),
            "cuts": list(sheet.said.cuts),
            "gels": list(sheet.said.gels),
            "order": list(sheet.order),
            "waste": list(sheet.said.waste),
            "lines": [line for line in (sheet.said.plate, sheet.said.surface) if line],
        },
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
    return {**clean, "section": _section(sheet.section), "side": _side(sheet)}


def _side(sheet: TorteSheet) -> dict[str, object] | None:
    if sheet.side is None:
        return None
    return {
        "svg": printable_drawing(sheet.side.svg),
        "wide": sheet.side.wide_mm,
        "alt": "The torte from the side and from above, with its slices",
        "scale": f"1 : {sheet.side.scale:g}",
    }


def _texts(row: dict[str, object]) -> dict[str, str]:
    return {key: str(value) for key, value in row.items()}


def _section(section: Section) -> dict[str, object] | None:
    if section.paper is None:
        return None
    # The drawing is words and lines made here; a sign no font has is spelled out in it too.
    return {
        "svg": printable_drawing(section.paper.svg),
        "wide": section.paper.wide_mm,
        "alt": printable(section.sentence).text,
        "scale": f"1 : {section.paper.scale:g}",
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
