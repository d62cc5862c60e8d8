"""A label on paper and as a page; what does not fit is named, the type is never made smaller."""

import re
from itertools import groupby
from operator import itemgetter

from krume.base import Clash, Infeasible
from krume.publish.html import page_html
from krume.publish.label_facts import FactsBox, FactsLine, facts_lines, footnote
from krume.publish.label_layout import LabelLayout
from krume.publish.label_qr import qr_drawing
from krume.publish.label_sheet import LabelSheet, printed_label
from krume.publish.pdf import compiled, look

_PIECE = re.compile(r"([^\W\d_]+)")
_EMPHASISED = 3
_OVER = re.compile(r"label-needs ([\d.]+) has ([\d.]+)")


def label_pdf(sheet: LabelSheet, layout: LabelLayout) -> bytes | Infeasible:
    """A sheet of labels as PDF/UA-1, or by how much the words do not fit."""
    from typst import TypstError

    data = {**printed_label(sheet, layout), "look": look()}
    try:
        return compiled("label_sheet.typ", data, sheet.imprint.date)
    except TypstError as error:
        found = _OVER.search(str(error))
        if found is None:
            raise
        return _too_much(sheet, layout, float(found[1]), float(found[2]))


def _too_much(sheet: LabelSheet, layout: LabelLayout, needs_mm: float, has_mm: float) -> Infeasible:
    return Infeasible(
        (
            Clash(
                name=f"the label of {sheet.name}",
                limit=f"{layout.label}; the type is as small as the law lets it be",
                needs=f"{needs_mm:.1f} mm of height",
                has=f"{has_mm:.1f} mm",
            ),
        )
    )


def label_html(sheet: LabelSheet) -> str:
    """A label as a page of its own."""
    facts = sheet.panel if isinstance(sheet.panel, FactsBox) else None
    return page_html(
        "label_sheet.html",
        title=f"{sheet.name} · label",
        imprint=sheet.imprint,
        more_css="label.css",
        sheet=sheet,
        lists=[_said(line) for line in sheet.ingredients.splitlines() if line.strip()],
        table=None if facts is not None else sheet.panel,
        facts=facts,
        groups=_groups(facts),
        footnote=footnote(),
        qr=_drawn(sheet.says),
    )


def _said(line: str) -> tuple[tuple[str, bool], ...]:
    """A list in pieces, those in capitals to be set bold: so the allergens stand out.

    >>> _said("EGG, thick whole-MILK yoghurt")
    (('EGG', True), (', thick whole-', False), ('MILK', True), (' yoghurt', False))
    """
    found = ((piece, _is_emphasised(piece)) for piece in _PIECE.split(line) if piece)
    return tuple(
        ("".join(piece for piece, _ in group), strong)
        for strong, group in groupby(found, key=itemgetter(1))
    )


def _is_emphasised(piece: str) -> bool:
    return piece.isupper() and len(piece) >= _EMPHASISED


def _groups(facts: FactsBox | None) -> tuple[tuple[FactsLine, ...], ...]:
    if facts is None:
        return ()
    return tuple(facts_lines(facts, group) for group in ("main", "vitamin"))


def _drawn(says: str) -> str:
    from markupsafe import Markup

    # A drawing of squares by their places: nothing a person typed is in it.
    return Markup(qr_drawing(says).svg) if says else ""  # noqa: S704
