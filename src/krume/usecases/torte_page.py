"""A torte as a page shows it: the section, sums that add, what to make, how it keeps, the gate."""

from dataclasses import dataclass

from krume.base import Infeasible, as_text
from krume.build import (
    GelUse,
    Layer,
    Torte,
    apportioned,
    cross_section,
    gels,
    section_sentence,
    side_view,
)
from krume.label import statement
from krume.properties import LeafSwap
from krume.publish import Imprint, NeedRow, TorteSheet, torte_sheet
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Answer, Asked, clash_problems
from krume.usecases.asking.clock import today
from krume.usecases.asking.goods import is_goods
from krume.usecases.asking.remembering import Remembered
from krume.usecases.asking.text import book_text
from krume.usecases.keep.custard_way import custards_among
from krume.usecases.keep.keep import keep_of_read
from krume.usecases.label.slices import slice_lines
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.gluten_words import gate_words
from krume.usecases.sold.papers import papers_of
from krume.usecases.sold.product import families_of, sold_of
from krume.usecases.torte.build import TorteMade, parts_of, torte_of
from krume.usecases.torte.order import build_order
from krume.usecases.torte.result import BuildResult, build_result

_LEAST_TYPE_MM, _TYPES_WIDE, _SIDE_WIDE = 5.0, 20.0, 27.0
"""Words of the phone's drawing: as large there as the words around it, one to so many widths."""


@dataclass(frozen=True, slots=True)
class TorteRow:
    """One layer, or the same layers together: count, what it adds to the height, its grams.

    `height` is “in it” where it adds none. `grams` add up as printed.
    """

    number: int
    name: str
    height: str
    grams: str


@dataclass(frozen=True, slots=True)
class TorteUse:
    """A formula of a torte by its name in the book, where the book has it."""

    of: str
    title: str
    name: str | None


@dataclass(frozen=True, slots=True)
class TorteSaid:
    """What may be said of a torte: how it keeps and why, its gluten gate, what is missing.

    `eaten` is what a slice holds, for those who dose by it, the caution last.
    """

    keeps: str
    keeps_why: str
    use_by: str | None
    gate_open: bool
    gate_text: str
    opens: tuple[str, ...]
    contains: tuple[str, ...]
    not_known: tuple[str, ...]
    custards: tuple[str, ...] = ()
    eaten: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LeafRow:
    """Leaves of one grade in place of a gelatine, as printed: by the root and the ratio rule."""

    words: str
    root_leaves: str
    root_g: str
    ratio_leaves: str
    ratio_g: str


@dataclass(frozen=True, slots=True)
class GelPart:
    """What sets one cream, in words, and leaves instead."""

    title: str
    words: str
    steps: str
    status: str
    leaves: tuple[LeafRow, ...]


@dataclass(frozen=True, slots=True)
class TortePage:
    """A torte on a page. Drawings and heading are empty while a height is not known.

    `sums` are its layers of one kind together, `rows` each layer from the bottom up, `total` their
    sum; `said` is None while it cannot stand.
    """

    build: BuildResult
    heading: str
    sentence: str
    svg: str | None
    svg_narrow: str | None
    side_svg: str | None
    side_narrow: str | None
    sums: tuple[TorteRow, ...]
    rows: tuple[TorteRow, ...]
    total: TorteRow
    needs: tuple[NeedRow, ...]
    eggs: str
    slices: tuple[str, ...]
    uses: tuple[TorteUse, ...]
    said: TorteSaid | None
    is_unbaked: bool
    gels: tuple[GelPart, ...] = ()


_PAGES: Remembered[Answer[TortePage]] = Remembered(64)


def torte_shown(name: str, asked: Asked) -> Answer[TortePage]:
    """A torte of the book for its page; what it rests on did not change since."""
    return _PAGES.of(book_at(asked.book), (name, asked), lambda: _shown(name, asked))


def _shown(name: str, asked: Asked) -> Answer[TortePage]:
    made = torte_of(name, asked)
    uses = _uses(made, asked)
    if isinstance(made.torte, Infeasible):
        page = _nothing(build_result(made.plan, None), uses)
        problems = (*made.problems, *clash_problems(made.torte, "FILE"))
        return Answer(page, problems, made.notices, is_possible=False)
    torte, sheet = made.torte, _sheet(made, made.torte, asked)
    drawn = torte.can_be_drawn
    page = TortePage(
        build=build_result(made.plan, torte, parts_of(made.formulas)),
        heading=sheet.section.heading,
        sentence=section_sentence(torte) if drawn else "",
        svg=sheet.section.svg,
        svg_narrow=_narrow(torte) if drawn else None,
        side_svg=_side(torte, "desk-side", _SIDE_WIDE) if drawn else None,
        side_narrow=_side(torte, "phone-side", _TYPES_WIDE) if drawn else None,
        sums=_sums(torte),
        rows=tuple(TorteRow(r.number, r.name, r.height, r.grams) for r in sheet.rows),
        total=TorteRow(0, "torte", sheet.total.height, sheet.total.grams),
        needs=sheet.needs,
        eggs=sheet.eggs,
        slices=sheet.slices,
        uses=uses,
        said=_said(name, asked),
        is_unbaked=torte.mass_g is not None and _is_planned(torte),
        gels=tuple(_gel(use) for use in gels(torte.batches, parts_of(made.formulas))),
    )
    return Answer(page, made.problems, made.notices)


def _gel(use: GelUse) -> GelPart:
    return GelPart(
        title=use.title,
        words=f"{as_text(use.mass_g, 2)} g {use.label}, {use.strong}",
        steps=use.steps,
        status=use.status,
        leaves=tuple(_leaf(swap) for swap in use.leaves),
    )


def _leaf(swap: LeafSwap) -> LeafRow:
    leaf = swap.leaf
    return LeafRow(
        words=f"{leaf.label}, {as_text(leaf.strength_bloom)} bloom, {as_text(leaf.leaf_g)} g",
        root_leaves=f"{swap.by_root_count:.1f}",
        root_g=f"{swap.by_root_g:.2f}",
        ratio_leaves=f"{swap.by_ratio_count:.1f}",
        ratio_g=f"{swap.by_ratio_g:.2f}",
    )


def _nothing(build: BuildResult, uses: tuple[TorteUse, ...]) -> TortePage:
    total = TorteRow(0, "torte", "not known", "not known")
    return TortePage(
        build,
        "",
        "",
        None,
        None,
        None,
        None,
        (),
        (),
        total,
        (),
        "",
        (),
        uses,
        None,
        is_unbaked=False,
    )


def _is_planned(torte: Torte) -> bool:
    """Whether no mass in it was measured."""
    return all(layer.status != "measured" for layer in torte.layers)


def _narrow(torte: Torte) -> str:
    wide_mm = 0.0 if torte.outline is None else torte.outline.across_cm * 10
    type_mm = max(_LEAST_TYPE_MM, wide_mm / _TYPES_WIDE)
    return cross_section(torte, ident="phone", type_mm=type_mm, numbered=True)


def _side(torte: Torte, ident: str, types: float) -> str:
    """The side view with words as large as those around it, one to so many widths."""
    long_cm = 0.0 if torte.outline is None else torte.outline.across_cm
    if torte.kind == "roll":
        long_cm = torte.roll_width_cm or long_cm
    return side_view(torte, ident=ident, type_mm=max(_LEAST_TYPE_MM, long_cm * 10 / types))


def _sheet(made: TorteMade, torte: Torte, asked: Asked) -> TorteSheet:
    """The torte plan's own words, so that page and paper say the same."""
    day = today(book_at(asked.book), on=asked.on).isoformat()
    parts = parts_of(made.formulas)
    return torte_sheet(
        torte,
        {what: read.formula for what, read in made.formulas.items()},
        Imprint(date=day, program="", data=""),
        families={what: part.family for what, part in parts.items()},
        gels=gels(torte.batches, parts),
        order=build_order(torte, parts).lines,
    )


def _sums(torte: Torte) -> tuple[TorteRow, ...]:
    """Layers of one formula in one role together; grams in tenths that add up to the torte's."""
    groups: dict[tuple[str, str], list[Layer]] = {}
    for layer in torte.layers:
        groups.setdefault((layer.of, layer.role), []).append(layer)
    ordered = sorted(groups.values(), key=lambda each: each[0].role == "syrup")
    masses = [_added([layer.mass_g for layer in each]) for each in ordered]
    known = [mass for mass in masses if mass is not None]
    if torte.mass_g is not None and len(known) == len(masses):
        masses = list(apportioned(known, total=torte.mass_g))
    pairs = zip(ordered, masses, strict=True)
    return tuple(_sum(each, mass, torte) for each, mass in pairs)


def _sum(layers: list[Layer], mass_g: float | None, torte: Torte) -> TorteRow:
    first = layers[0]
    name = first.word.rstrip(" 0123456789")
    several = f"{len(layers)} \N{MULTIPLICATION SIGN} {name}" if len(layers) > 1 else name
    adds = _added([layer.adds_mm for layer in layers])
    soaks = first.role == "syrup" or (adds == 0.0 and torte.kind in ("roll", "tart"))
    if first.role == "decoration":
        return TorteRow(
            len(layers), several, "on it", "not known" if mass_g is None else f"{mass_g:.1f}"
        )
    height = "in it" if soaks else "not known" if adds is None else f"{adds:.1f}".removesuffix(".0")
    return TorteRow(
        len(layers), several, height, "not known" if mass_g is None else f"{mass_g:.1f}"
    )


def _grams(mass_g: float | None) -> str:
    return "not known" if mass_g is None else f"{mass_g:,.1f}".replace(",", "\u202f")


def _added(values: list[float | None]) -> float | None:
    known = [value for value in values if value is not None]
    return sum(known) if len(known) == len(values) else None


def _uses(made: TorteMade, asked: Asked) -> tuple[TorteUse, ...]:
    book = book_at(asked.book)
    found = []
    for what, read in made.formulas.items():
        if is_goods(read):
            continue
        text = book_text(what, book)
        in_book = text is not None and text.kind == "formula"
        title = " ".join((read.formula.name or what).split())
        found.append(TorteUse(what, title, text.name if text and in_book else None))
    return tuple(found)


def _said(name: str, asked: Asked) -> TorteSaid | None:
    """How it keeps, and how its gate stands by the lots of the day."""
    read = sold_of(name, asked)
    kept = keep_of_read(read, asked).result
    if not read.sold:
        return None
    sold, papers = read.sold[0], papers_of(asked)
    market = studio_of(book_at(asked.book)).market or "eu"
    gate = gate_of(sold.product, papers, on=read.on, market=market, chosen=sold.chosen)
    said = statement(sold.product, papers.lots, market=market, chosen=sold.chosen)
    return TorteSaid(
        keeps=kept.limits[0] if kept.limits else "Not known.",
        keeps_why=next((why.text for why in kept.why if why.of), ""),
        use_by=kept.use_by,
        gate_open=gate.claim_allowed,
        gate_text=gate_words(gate),
        opens=gate.opens,
        contains=said.contains,
        not_known=tuple(dict.fromkeys(each.text for each in said.unknown)),
        custards=custards_among(families_of(sold)),
        eaten=slice_lines(sold.product, papers, market),
    )
