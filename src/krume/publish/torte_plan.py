"""The torte plan: the section to scale, what is needed in its order, slices, findings, cautions."""

from collections.abc import Mapping
from dataclasses import dataclass

from krume.base import Notice, as_text
from krume.build import (
    Batch,
    EggsNeeded,
    GelUse,
    Layer,
    Said,
    Slice,
    Torte,
    Working,
    apportioned,
    cross_section,
    said_of,
    section_sentence,
    section_size_mm,
    side_size_mm,
    side_view,
    working,
)
from krume.design import Formula
from krume.label import Statement
from krume.publish.card import Hold, Imprint
from krume.publish.caution import torte_cautions
from krume.publish.facts import Fact
from krume.publish.signs import missing_notice, printable
from krume.publish.words import grouped

SCALES = (1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 7.5, 10.0)
"""A section is drawn at the first of these, one to it, that the paper holds."""
ROOM_MM = 194.0
"""Width between the margins of A4, the narrower of the two papers."""
MOST_HIGH_MM = 105.0
"""What of a sheet's height the section may take, so that the tables stand on the same page."""
SIDE_ROOM_MM, SIDE_HIGH_MM = 125.0, 185.0
"""What of the second sheet the view from the side and from above may take, beside words."""
PRINTED_TYPE_MM = 10 / 3
"""Size of the drawing's words on paper: 9.5 points."""


@dataclass(frozen=True, slots=True)
class PlanRow:
    """A layer as printed: its place from the bottom up, its words, its mm and its g."""

    number: int
    name: str
    of: str
    height: str
    grams: str


@dataclass(frozen=True, slots=True)
class NeedRow:
    """What is made of a formula, in the order in which it is needed, with its working window."""

    of: str
    title: str
    needed: str
    batch: str
    make: str
    over: str
    work: str


@dataclass(frozen=True, slots=True)
class PaperDrawing:
    """The section for paper: so many millimetres wide there, at one to `scale`."""

    svg: str
    wide_mm: float
    scale: float


@dataclass(frozen=True, slots=True)
class Section:
    """The drawing for a page and for paper, its one sentence, what its heights add up to.

    The drawings are None while a height is not known.
    """

    svg: str | None
    paper: PaperDrawing | None
    sentence: str
    heading: str


@dataclass(frozen=True, slots=True)
class TorteSheet:
    """All that stands on a torte plan, before it becomes paper or a page."""

    name: str
    facts: tuple[Fact, ...]
    section: Section
    rows: tuple[PlanRow, ...]
    total: PlanRow
    needs: tuple[NeedRow, ...]
    eggs: str
    slices: tuple[str, ...]
    eaten: tuple[str, ...]
    findings: tuple[str, ...]
    cautions: tuple[str, ...]
    notes: tuple[str, ...]
    hold: Hold | None
    imprint: Imprint
    said: Said
    side: PaperDrawing | None = None
    side_svg: str | None = None
    order: tuple[str, ...] = ()
    in_time: tuple[str, ...] = ()


def torte_sheet(
    torte: Torte,
    formulas: dict[str, Formula],
    imprint: Imprint,
    *,
    families: dict[str, str | None],
    keep: str | None = None,
    gelatine: str | None = None,
    gluten: str | None = None,
    declared: Statement | None = None,
    cooled: Mapping[str, str] | None = None,
    eaten: tuple[str, ...] = (),
    in_time: tuple[str, ...] = (),
    gels: tuple[GelUse, ...] = (),
    order: tuple[str, ...] = (),
    notes: tuple[str, ...] = (),
    hold: Hold | None = None,
) -> TorteSheet:
    """Torte plan of a torte; `formulas` and `families` go by the plan's own words.

    `declared` is what the lots in use declare of the whole torte; `cooled` says of a cake, by the
    same words, when the cooling model has it cold; `eaten` is what a slice holds, `in_time` how
    it stands and what is wet by when.
    """
    return TorteSheet(
        name=_name(torte.name),
        facts=_facts(torte),
        section=_section(torte),
        rows=_rows(torte),
        total=PlanRow(0, "in all", "", _across(torte), _g(torte.mass_g)),
        needs=tuple(
            _need(each, families.get(each.name), formulas, (cooled or {}).get(each.name, ""))
            for each in torte.batches
        ),
        eggs=_eggs(torte.eggs),
        slices=tuple(_slice(each) for each in torte.slices),
        eaten=eaten,
        findings=tuple(f"{each.text} ({each.status})" for each in torte.findings),
        cautions=torte_cautions(
            tuple(formulas.values()),
            imprint.market,
            keep=keep,
            gelatine=gelatine,
            gluten=gluten,
            declared=declared,
        ),
        notes=notes,
        hold=hold,
        imprint=imprint,
        said=said_of(torte, gels),
        order=order,
        side=_side(torte) if torte.can_be_drawn else None,
        side_svg=side_view(torte) if torte.can_be_drawn else None,
        in_time=in_time,
    )


def _side(torte: Torte) -> PaperDrawing:
    """The whole torte from the side and from above, at the first scale that stands beside words."""
    for scale in SCALES:
        wide, high = side_size_mm(torte, type_mm=PRINTED_TYPE_MM * scale)
        fits = wide / scale <= SIDE_ROOM_MM and high / scale <= SIDE_HIGH_MM
        if fits or scale == SCALES[-1]:
            break
    svg = side_view(torte, ident="paper-side", type_mm=PRINTED_TYPE_MM * scale)
    return PaperDrawing(svg, wide / scale, scale)


def missing_plan_signs(sheet: TorteSheet) -> tuple[Notice, ...]:
    """Notice that names the signs of a plan no packed font has; empty when all can be printed."""
    rows = (row.name for row in sheet.rows)
    needs = (f"{need.of} {need.title}" for need in sheet.needs)
    texts = (sheet.name, *rows, *needs, *sheet.cautions, *sheet.notes, *sheet.imprint.notes)
    return missing_notice(tuple(sign for text in texts for sign in printable(text).missing))


def _name(text: str) -> str:
    name = " ".join(text.split())
    return name if printable(name).text.strip() else "Torte without a name"


def _g(grams: float | None) -> str:
    return "not known" if grams is None else grouped(f"{grams:.1f}")


def _mm(height_mm: float | None) -> str:
    return "not known" if height_mm is None else as_text(height_mm, 1)


def _facts(torte: Torte) -> tuple[Fact, ...]:
    mass = Fact("mass, planned", _g(torte.mass_g), "" if torte.mass_g is None else "g")
    found = [_size(torte), Fact("height", _mm(torte.height_mm), "mm"), mass]
    if torte.dome_mm:
        found.insert(2, Fact("of it dome", _mm(torte.dome_mm), "mm"))
    if torte.kind == "roll":
        turns = "" if torte.turns is None else as_text(torte.turns, 2)
        found = [Fact("roll", f"Ø {_mm(torte.height_mm)}", "mm"), Fact("turns", turns), mass]
    if torte.slices:
        first = torte.slices[0]
        found.append(Fact("slices", f"{first.count} × {_g(first.mass_g)}", "g"))
    return tuple(fact for fact in found if fact is not None and fact.figure)


def _size(torte: Torte) -> Fact | None:
    outline = torte.outline
    if outline is None:
        return None
    label = "across" if torte.ring_height_mm is None else "ring"
    if outline.diameter_cm is None:
        sides = f"{as_text(outline.length_cm, 2)} × {as_text(outline.width_cm, 2)}"
        return Fact("frame" if label == "ring" else label, sides, "cm")
    return Fact(label, f"Ø {as_text(outline.diameter_cm, 2)}", "cm")


def _across(torte: Torte) -> str:
    high = _mm(torte.height_mm)
    return f"Ø {high}" if torte.kind == "roll" else high


def _section(torte: Torte) -> Section:
    if not torte.can_be_drawn:
        return Section(None, None, "", "No section yet: a height is not known.")
    sentence, heading = section_sentence(torte), _heading(torte)
    return Section(cross_section(torte), _on_paper(torte), sentence, heading)


def _on_paper(torte: Torte) -> PaperDrawing:
    """The section at the first scale that fits, its words as large on paper at any scale."""
    for scale in SCALES:
        type_mm = PRINTED_TYPE_MM * scale
        wide, high = section_size_mm(torte, type_mm=type_mm, in_packed_font=True)
        fits = wide / scale <= ROOM_MM and high / scale <= MOST_HIGH_MM
        if fits or scale == SCALES[-1]:
            break
    svg = cross_section(torte, ident="paper", type_mm=type_mm, in_packed_font=True)
    return PaperDrawing(svg, wide / scale, scale)


def _heading(torte: Torte) -> str:
    high = _mm(torte.height_mm)
    if torte.ring_spare_mm is not None and torte.ring_height_mm is not None:
        ring = _mm(torte.ring_height_mm)
        if torte.ring_spare_mm < 0.05:
            return f"Ring is full: {high} of {ring} mm"
        return f"{high} of {ring} mm in the ring, {_mm(torte.ring_spare_mm)} to spare"
    return f"Roll, {high} mm across" if torte.kind == "roll" else f"Heights add to {high} mm"


def _rows(torte: Torte) -> tuple[PlanRow, ...]:
    grams = _grams(torte)
    return tuple(
        PlanRow(number, layer.name, layer.of, _height(layer), said)
        for number, (layer, said) in enumerate(zip(torte.layers, grams, strict=True), start=1)
    )


def _grams(torte: Torte) -> list[str]:
    """Grams in tenths that add up as printed, where all of them are known."""
    masses = [layer.mass_g for layer in torte.layers]
    known = [mass for mass in masses if mass is not None]
    if torte.mass_g is None or len(known) < len(masses):
        return [_g(mass) for mass in masses]
    return [_g(mass) for mass in apportioned(known, total=torte.mass_g)]


def _height(layer: Layer) -> str:
    if layer.role == "decoration":
        return "on it" if layer.over_mm is None else f"on it, {_mm(layer.over_mm)}"
    return "in it" if layer.role == "syrup" else _mm(layer.height_mm)


def _need(batch: Batch, family: str | None, formulas: dict[str, Formula], cooled: str) -> NeedRow:
    if batch.kind == "goods":
        needed = _g(batch.needed_g)
        return NeedRow(batch.name, batch.title, needed, "as bought", "weigh it out", "", "")
    over = "cut away" if batch.kind == "cake" else "over"
    formula = formulas.get(batch.name)
    return NeedRow(
        of=batch.name,
        title=batch.title,
        needed=_g(batch.needed_g),
        batch=_g(batch.batch_g),
        make=_made(batch),
        over="not known" if batch.over_g is None else f"{_g(batch.over_g)} g {over}",
        work=_work(working(family) if family else None, formula, cooled),
    )


def _made(batch: Batch) -> str:
    if batch.batches is None:
        return "not known"
    thing = "cake" if batch.kind == "cake" else "batch"
    plural = "" if batch.batches <= 1 else "s" if thing == "cake" else "es"
    return "half a batch" if batch.batches == 0.5 else f"{as_text(batch.batches)} {thing}{plural}"


def _work(found: Working | None, formula: Formula | None, cooled: str) -> str:
    """When it can be worked, in a few words with the status; and that its density is a plan."""
    if cooled:
        return f"{cooled[:1].lower()}{cooled[1:]} (cooling model, compared with no cake)"
    said = [] if found is None else _window(found)
    if said and found is not None:
        said[-1] += f" ({found.status})"
    if formula is not None and formula.density_g_ml is not None:
        said.append(f"planned at {as_text(formula.density_g_ml, 3)} g/ml: weigh it")
    return "; ".join(said)


def _window(found: Working) -> list[str]:
    said = []
    if found.use_low_c is not None and found.use_high_c is not None:
        use = "fold in" if found.family == "custard-lightened" else "use"
        said.append(f"{use} at {as_text(found.use_low_c)}–{as_text(found.use_high_c)} °C")
    if found.use_min is not None:
        said.append(f"use within {as_text(found.use_min)} min")
    if found.set_h is not None:
        said.append(f"{as_text(found.set_h)} h cold before cutting")
    return said


def _eggs(needed: EggsNeeded) -> str:
    if not needed.cracked:
        return ""
    counts = ", ".join(f"{count} {_egg_size(size)}" for size, count in needed.cracked.items())
    left = [
        f"{as_text(x.count, 2)} {x.part}{'' if x.count <= 1 else 's'} ({_g(x.mass_g)} g)"
        for x in needed.left
    ]
    over = f" Left over: {', '.join(left)}." if left else ""
    return f"Eggs to crack: {counts}.{over}"


def _egg_size(key: str) -> str:
    region, _, size = key.partition("-")
    return f"{region.upper()} {size.upper() if len(size) == 1 else size.title()}"


def _slice(each: Slice) -> str:
    said = f"{each.count} slices of {_g(each.mass_g)} g"
    if each.width_mm is not None:
        return f"{said}, {as_text(each.width_mm, 1)} mm wide"
    if each.arc_cm is not None and each.angle_deg is not None:
        angle = as_text(each.angle_deg, 1)
        return f"{said}, {as_text(each.arc_cm, 2)} cm outside ({angle}°)"
    return said
