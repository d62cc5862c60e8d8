"""The section of a torte to scale: heights on the left at a rule, grams on the right by leader."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from html import escape

from krume.base import InputError, as_text
from krume.build.adding import apportioned
from krume.build.patterns import GRAIN, defs
from krume.build.section_shapes import Mark, Shapes, body_path, high_mm, shapes, width_mm
from krume.build.spread_labels import spread
from krume.build.torte import Tier, Torte

FONT = "Krume Next, Atkinson Hyperlegible Next, DejaVu Sans, sans-serif"
SCALE_BAR_MM = 50
TYPE_MM = 5.0
"""Size of the type, in millimetres of cake, unless the drawing is made smaller."""
_SMALL = 0.84
"""Size of a lesser word over the type's."""
EM_PER_MM = 0.2
"""On a page a millimetre of cake is this much of the type around it: drawings share one scale."""
_ROW = 1.24
"""Distance of two rows of words over the type's size."""
_ADVANCE = 0.61
"""Mean width of a sign over the size of its type, on the wide side of any font."""
_PACKED_ADVANCE = 0.54
"""The same in the packed font, in which paper is printed."""
_FIGURE_ADVANCE = 0.6
_RULE_X = -4.0
_GAP = 3.0
_LEADER = 6.0
_HEAD = 9.0
_TOTAL = "in all"


@dataclass(frozen=True, slots=True)
class Frame:
    """Room of a drawing [mm of cake]: the widest torte, its margins, its height, its type."""

    wide: float
    left: float
    right: float
    high: float
    above: float
    below: float
    size: float

    @property
    def row(self) -> float:
        """Distance of two rows of words."""
        return _ROW * self.size

    @property
    def whole_wide_mm(self) -> float:
        """Width of the whole drawing."""
        return self.left + self.wide + self.right

    @property
    def whole_high_mm(self) -> float:
        """Height of the whole drawing."""
        return self.above + self.high + self.below


def cross_section(
    torte: Torte,
    *,
    ident: str = "torte",
    type_mm: float = TYPE_MM,
    numbered: bool = False,
    in_packed_font: bool = False,
) -> str:
    """Section of a torte as an SVG drawing, one unit a millimetre of cake.

    `ident` begins the ids in it: two drawings on one page need two. `type_mm` is the size of its
    words in millimetres of cake: a drawing that is made smaller needs larger ones. `numbered`
    writes the layers' numbers from the bottom up for their names, for a phone. `in_packed_font`
    is true on paper, where words are as narrow as the packed font makes them.
    """
    found = shapes(_drawable(torte), ident)
    if numbered:
        found = replace(found, marks=tuple(_numbered(mark, torte) for mark in found.marks))
    total = "" if numbered else _TOTAL
    advance = _PACKED_ADVANCE if in_packed_font else _ADVANCE
    return _drawing(torte, found, _frame(torte, found, type_mm, advance), ident, total)


def _numbered(mark: Mark, torte: Torte) -> Mark:
    return replace(mark, words=str(torte.layers.index(mark.layer) + 1))


def cross_sections(tortes: Sequence[Torte]) -> tuple[str, ...]:
    """Sections of several tortes on one scale and one middle line: equal in width when shown."""
    found = [shapes(_drawable(torte), f"torte-{n}") for n, torte in enumerate(tortes, start=1)]
    own = [_frame(torte, shape, TYPE_MM) for torte, shape in zip(tortes, found, strict=True)]
    wide = max((frame.wide for frame in own), default=0.0)
    left = max((frame.left for frame in own), default=0.0)
    right = max((frame.right for frame in own), default=0.0)
    return tuple(
        _drawing(
            torte, shape, Frame(wide, left, right, f.high, f.above, f.below, f.size), f"torte-{n}"
        )
        for n, (torte, shape, f) in enumerate(zip(tortes, found, own, strict=True), start=1)
    )


def section_size_mm(
    torte: Torte, *, type_mm: float = TYPE_MM, in_packed_font: bool = False
) -> tuple[float, float]:
    """Width and height of the whole drawing, in millimetres of cake."""
    advance = _PACKED_ADVANCE if in_packed_font else _ADVANCE
    frame = _frame(torte, shapes(_drawable(torte), "torte"), type_mm, advance)
    return frame.whole_wide_mm, frame.whole_high_mm


def section_sentence(torte: Torte) -> str:
    """The drawing in one sentence, for who does not see it."""
    wide, high = as_text(width_mm(torte), 0), as_text(torte.height_mm or 0.0, 0)
    name = _clean(torte.name) or "torte"
    if torte.kind == "roll":
        turns = as_text(torte.turns or 0.0, 2)
        return f"Section of {name} to scale, a roll of {wide} mm across and {turns} turns."
    return f"Section of {name} to scale, {wide} mm wide and {high} mm high."


def _drawable(torte: Torte) -> Torte:
    if not torte.can_be_drawn:
        message = "A torte is drawn to scale once every height in it is known."
        raise InputError(message, field="torte", got=torte.name, want="all heights")
    return torte


def _clean(text: str) -> str:
    return " ".join("".join(s if s.isprintable() else " " for s in text).split())


def _frame(torte: Torte, found: Shapes, size: float, advance: float = _ADVANCE) -> Frame:
    label = max((len(mark.words) for mark in found.marks), default=0) * advance * size
    grams = max((len(words) for words in _grams(torte)), default=0) * _FIGURE_ADVANCE * size
    heights = max(
        len(as_text(x, 1)) for x in (torte.height_mm or 0.0, *(s[1] for s in found.spans))
    )
    rows = _rows(found, _ROW * size)
    high = high_mm(torte)
    more = 0.0 if advance == _PACKED_ADVANCE else 0.25 * size
    lowest = max(rows, default=0.0) + 2 * _ROW * size
    return Frame(
        wide=width_mm(torte),
        left=more + max(-_RULE_X + 3.0 + heights * _FIGURE_ADVANCE * size, 4.8 + 1.64 * size),
        right=_GAP + _LEADER + label + size / 2 + grams,
        high=high,
        above=max(
            _HEAD + size / 2, max(_HEAD + size / 2, (_ROW + 1) * size) - min(rows, default=0.0)
        ),
        below=max(_below_mm(size), lowest - high),
        size=size,
    )


def _below_mm(size: float) -> float:
    """Room under the torte for its width and the bar of 50 mm."""
    return 14.0 + 2.6 * size


def _rows(found: Shapes, row: float) -> list[float]:
    return spread([mark.y for mark in found.marks], row)


def _grams(torte: Torte) -> list[str]:
    masses = [*(layer.mass_g for layer in torte.layers), torte.mass_g]
    return ["unknown" if mass is None else _figure(mass) for mass in masses]


def _drawing(torte: Torte, found: Shapes, frame: Frame, ident: str, total: str = _TOTAL) -> str:
    x = (frame.wide - width_mm(torte)) / 2
    view = f"{-frame.left:.2f} {-frame.above:.2f} {frame.whole_wide_mm:.2f} "
    view += f"{frame.whole_high_mm:.2f}"
    names = f"{ident}-name {ident}-what"
    wide, tall = frame.whole_wide_mm * EM_PER_MM, frame.whole_high_mm * EM_PER_MM
    size = f'width="{wide:.2f}em" height="{tall:.2f}em"'
    opening = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{view}" {size} role="img" '
        f'aria-labelledby="{names}" font-family="{FONT}" '
        'fill="currentColor">'
    )
    parts = [
        opening,
        f'<title id="{ident}-name">{escape(section_sentence(torte))}</title>',
        f'<desc id="{ident}-what">{escape(_described(torte))}</desc>',
        defs((*found.materials, "syrup"), ident),
        f'<g transform="translate({x:.2f})">{found.svg}{_frame_line(torte)}</g>',
        *_left(torte, found, frame),
        *_right(torte, found, frame, x, total),
        *_below(torte, frame, x),
        "</svg>",
    ]
    return "".join(parts)


def _described(torte: Torte) -> str:
    said = []
    for layer in torte.layers:
        height = f", {as_text(layer.height_mm or 0.0, 1)} mm" if layer.height_mm else ""
        grams = "mass not known" if layer.mass_g is None else f"{as_text(layer.mass_g, 1)} g"
        said.append(f"{_clean(layer.name)}{height}, {grams}")
    start = "From the outside in" if torte.kind == "roll" else "From the bottom up"
    return f"{start}: {'; '.join(said)}."


def _frame_line(torte: Torte) -> str:
    """The outer edge, and the walls of a ring."""
    wide, high = width_mm(torte), high_mm(torte)
    if torte.kind == "roll":
        return (
            f'<circle cx="{wide / 2:.2f}" cy="{wide / 2:.2f}" r="{wide / 2:.2f}" fill="none" '
            'stroke="currentColor" stroke-width=".8"/>'
        )
    ring = torte.ring_height_mm
    if ring is not None:
        top = high - ring
        return (
            f'<path d="M-1 {top:.2f}V{high:.2f}M{wide + 1:.2f} {top:.2f}V{high:.2f}" {_line(2)}/>'
        )
    if torte.kind == "tart":
        return f'<path d="M0 0V{high:.2f}H{wide:.2f}V0" {_line(0.8)}/>'
    bodies = torte.tiers or (Tier(1, "", torte, 0.0),)
    outer = "".join(_outer(tier, wide, high) for tier in bodies)
    return f'<path d="{outer}" {_line(0.8)}/>'


def _outer(tier: Tier, wide: float, high: float) -> str:
    """Outer edge of a torte, or of one tier."""
    across, tall = width_mm(tier.torte), tier.torte.height_mm or 0.0
    top = high - (tier.bottom_mm or 0.0) - tall
    return body_path((wide - across) / 2, top, across, tall, tier.torte.dome_mm)


def _line(wide: float) -> str:
    return f'fill="none" stroke="currentColor" stroke-width="{wide}"'


def _text(x: float, y: float, words: str, *, size: float, more: str = "") -> str:
    return f'<text x="{x:.2f}" y="{y:.2f}" font-size="{size:g}" {more}>{escape(words)}</text>'


_BOLD = 'font-weight="800"'
_END = 'text-anchor="end"'
_MIDDLE = 'text-anchor="middle"'


def _left(torte: Torte, found: Shapes, frame: Frame) -> Iterator[str]:
    """The mm rule, and beside it the height of each layer."""
    high, size = high_mm(torte), frame.size
    yield _text(_RULE_X - 2, -4.0, "mm", size=_SMALL * size, more=_END)
    yield f'<path d="M{_RULE_X} 0V{high:.2f}" {_line(0.7)}/>'
    yield f'<path d="{"".join(_ticks(high))}" {_line(0.22)}/>'
    edges = {0.0, *(bottom + tall for bottom, tall in found.spans), *(b for b, _ in found.spans)}
    marks = "".join(f"M{_RULE_X - 1.5} {high - z:.2f}h4" for z in sorted(edges))
    yield f'<path d="{marks}" {_line(0.4)}/>'
    middles = [high - bottom - tall / 2 for bottom, tall in reversed(found.spans)]
    words = [as_text(tall, 1) for _, tall in reversed(found.spans)]
    for y, said in zip(spread(middles, size * 0.9), words, strict=True):
        yield _text(_RULE_X - 2.2, y + size * 0.35, said, size=size, more=f"{_BOLD} {_END}")


def _ticks(high: float) -> Iterator[str]:
    for mm in range(int(high) + 1):
        long = 2.6 if mm % 10 == 0 else 1.8 if mm % 5 == 0 else 1.0
        yield f"M{_RULE_X} {high - mm:.2f}h{long}"


def _right(torte: Torte, found: Shapes, frame: Frame, x: float, total: str) -> Iterator[str]:
    """A leader to each layer, its word and its grams; under them their sum."""
    end, start, size = frame.wide + frame.right, frame.wide + _GAP, frame.size
    rows, grams = _rows(found, frame.row), _column(torte)
    above = min(-4.0, *(y - frame.row for y in rows))
    yield _text(end, above, "g", size=_SMALL * size, more=_END)
    for mark, y in zip(found.marks, rows, strict=True):
        yield from _leader(mark, x + mark.x, y, start)
        yield _text(start + _LEADER, y + size * 0.35, _clean(mark.words), size=size)
        said = grams[torte.layers.index(mark.layer)]
        yield _text(end, y + size * 0.35, said, size=size, more=f"{_BOLD} {_END}")
    y = max(rows) + frame.row * 0.6
    yield f'<path d="M{start + _LEADER:.2f} {y:.2f}H{end:.2f}" {_line(0.4)}/>'
    if total:
        yield _text(start + _LEADER, y + size * 1.12, total, size=size)
    yield _text(end, y + size * 1.12, grams[-1], size=size, more=f"{_BOLD} {_END}")


def _leader(mark: Mark, x: float, y: float, start: float) -> Iterator[str]:
    """A line from the layer to its label; inside the torte it is light beneath, for dark marks."""
    leaves = x - mark.x + mark.leaves
    inside = f'd="M{x:.2f} {mark.y:.2f}H{leaves:.2f}" fill="none"'
    yield f'<path {inside} stroke="#fff" stroke-width="1.1" stroke-opacity=".6"/>'
    yield f'<path {inside} stroke="{GRAIN}" stroke-width=".3"/>'
    outside = f"M{leaves:.2f} {mark.y:.2f}H{start:.2f}L{start + 3:.2f} {y:.2f}h2"
    yield f'<path d="{outside}" {_line(0.3)}/>'
    dot = f'cx="{x:.2f}" cy="{mark.y:.2f}" r=".85"'
    yield f'<circle {dot} fill="{GRAIN}" stroke="#fff" stroke-width=".4"/>'


def _column(torte: Torte) -> list[str]:
    """Grams of the layers and of the torte, in tenths that add up as printed."""
    masses = [layer.mass_g for layer in torte.layers]
    known = [mass for mass in masses if mass is not None]
    if len(known) < len(masses) or torte.mass_g is None:
        return _grams(torte)
    shown = apportioned(known, total=torte.mass_g)
    return [_figure(value) for value in (*shown, torte.mass_g)]


def _figure(grams: float) -> str:
    """Grams in tenths, thousands set apart by a narrow space."""
    return f"{grams:,.1f}".replace(",", "\u202f")


def _below(torte: Torte, frame: Frame, x: float) -> Iterator[str]:
    """How wide it is, how high, and a bar of 50 mm."""
    wide, high, size = width_mm(torte), high_mm(torte), frame.size
    y = high + 7.0
    yield f'<path d="M{x:.2f} {y:.2f}h{wide:.2f}m0 -2.5v5M{x:.2f} {y - 2.5:.2f}v5" {_line(0.4)}/>'
    across = _across(torte)
    yield _text(x + wide / 2, y + size * 1.24, across, size=size, more=f"{_BOLD} {_MIDDLE}")
    if torte.kind != "roll":
        said = f"{as_text(torte.height_mm or 0.0, 1)}"
        yield f'<path d="M{_RULE_X - 10} {high + 3:.2f}h8.5" {_line(0.4)}/>'
        below = high + 3.8 + size
        yield _text(_RULE_X - 2.2, below, said, size=size, more=f"{_BOLD} {_END}")
    yield from _bar(x, high + 9.0 + 2 * size, size)


def _across(torte: Torte) -> str:
    outline = torte.outline
    if outline is None:
        return ""
    if outline.diameter_cm is None:
        return f"{as_text(outline.length_cm, 2)} × {as_text(outline.width_cm, 2)} cm"
    ring = "ring " if torte.ring_height_mm is not None else ""
    return f"{ring}Ø {as_text(width_mm(torte), 0)} mm"


def _bar(x: float, y: float, size: float) -> Iterator[str]:
    tens = "".join(f"M{x + mm:.2f} {y - 2:.2f}v2" for mm in range(0, SCALE_BAR_MM + 1, 10))
    yield f'<path d="M{x:.2f} {y:.2f}h{SCALE_BAR_MM}{tens}" {_line(0.5)}/>'
    yield _text(x + SCALE_BAR_MM + 2, y, f"{SCALE_BAR_MM} mm of torte", size=_SMALL * size)
