"""The whole torte: from the side to scale, under it from above with the slices it is cut into."""

from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

from krume.base import InputError, as_text
from krume.build.from_above import deep_mm, from_above
from krume.build.from_side import from_side, long_mm
from krume.build.materials import materials
from krume.build.patterns import GRAIN, defs, fill
from krume.build.section import EM_PER_MM, FONT, TYPE_MM
from krume.build.section_shapes import high_mm, width_mm
from krume.build.torte import Layer, Torte

_BOLD = 'font-weight="800"'
_MIDDLE = 'text-anchor="middle"'
_END = 'text-anchor="end"'
_ADVANCE = 0.56
_SLACK_MM = 1e-6
_GAP = 3.4
"""Room between the two views, in sizes of the type."""


@dataclass(frozen=True, slots=True)
class _Frame:
    """Room of the drawing [mm of cake]: the widest view, its margins, both heights, its type."""

    wide: float
    left: float
    right: float
    high: float
    deep: float
    size: float
    legend: tuple[str, ...]

    @property
    def above_at(self) -> float:
        """Where the view from above begins."""
        return self.high + _GAP * self.size

    @property
    def bottom(self) -> float:
        """Where the views end."""
        return self.above_at + self.deep if self.deep else self.high

    @property
    def rows(self) -> list[list[str]]:
        """The legend in rows that fit."""
        rows: list[list[str]] = [[]]
        reached = 0.0
        for key in self.legend:
            need = _legend_wide(key, self.size)
            if rows[-1] and reached + need > self.left + self.wide + self.right:
                rows.append([])
                reached = 0.0
            rows[-1].append(key)
            reached += need
        return [row for row in rows if row]

    @property
    def whole_high(self) -> float:
        """Height of the whole drawing, its head and its legend in it."""
        return 1.2 * self.size + self.bottom + (3.2 + 1.5 * len(self.rows)) * self.size


def side_view(torte: Torte, *, ident: str = "side", type_mm: float = TYPE_MM) -> str:
    """The whole torte as an SVG drawing, one unit a millimetre of cake.

    `ident` begins the ids in it: two drawings on one page need two. `type_mm` is the size of its
    words in millimetres of cake.
    """
    if not torte.can_be_drawn:
        message = "A torte is drawn to scale once every height in it is known."
        raise InputError(message, field="torte", got=torte.name, want="all heights")
    frame = _frame(torte, type_mm)
    wide = frame.left + frame.wide + frame.right
    view = f"{-frame.left:.2f} {-1.2 * type_mm:.2f} {wide:.2f} {frame.whole_high:.2f}"
    size = f'width="{wide * EM_PER_MM:.2f}em" height="{frame.whole_high * EM_PER_MM:.2f}em"'
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{view}" {size} role="img" '
        f'aria-labelledby="{ident}-name {ident}-what" font-family="{FONT}" fill="currentColor">',
        f'<title id="{ident}-name">{escape(side_sentence(torte))}</title>',
        f'<desc id="{ident}-what">{escape(_described(torte))}</desc>',
        defs(frame.legend, ident),
        *from_side(torte, ident),
        *_height(torte, frame),
        *_above(torte, frame, ident),
        *_legend(frame, ident),
        "</svg>",
    ]
    return "".join(parts)


def side_size_mm(torte: Torte, *, type_mm: float = TYPE_MM) -> tuple[float, float]:
    """Width and height of the whole drawing, in millimetres of cake."""
    frame = _frame(torte, type_mm)
    return frame.left + frame.wide + frame.right, frame.whole_high


def side_sentence(torte: Torte) -> str:
    """The drawing in one sentence, for who does not see it."""
    name = " ".join(torte.name.split()) or "torte"
    cut = f", cut into {torte.slices[0].count}" if torte.slices else ""
    if torte.kind == "roll":
        return f"{name} from the side to scale, {as_text(long_mm(torte), 0)} mm long{cut}."
    return f"{name} from the side and from above, to scale{cut}."


def _described(torte: Torte) -> str:
    size = f"{as_text(width_mm(torte), 0)} mm wide, {as_text(torte.height_mm or 0.0, 0)} mm high"
    if torte.kind == "roll":
        size = f"{as_text(long_mm(torte), 0)} mm long, {as_text(width_mm(torte), 0)} mm across"
    worn = "; ".join(x.name for x in torte.decorations)
    tiers = "; ".join(f"tier {t.number}: {' '.join(t.torte.name.split())}" for t in torte.tiers)
    cuts = [_slice_words(torte)] if torte.slices else ["no slices written"]
    said = [size, tiers, f"on it {worn}" if worn else "", *cuts]
    return f"{'; '.join(part for part in said if part)}."


def _frame(torte: Torte, size: float) -> _Frame:
    wide = long_mm(torte)
    legend = tuple(dict.fromkeys(_seen(torte)))
    side = (1.6 + 0.62 * max(2, len(as_text(torte.plate_mm or 0.0, 0)))) * size
    words = len(_slice_words(torte)) * _ADVANCE * size
    spare = max(0.0, (words - wide - side) / 2)
    right = max(size, spare)
    return _Frame(wide, side + spare, right, high_mm(torte), deep_mm(torte), size, legend)


def _seen(torte: Torte) -> Iterator[str]:
    """Materials that are seen from outside, in the order of the table."""
    bodies = [tier.torte for tier in torte.tiers] or [torte]
    found: set[str] = set()
    for body in bodies:
        coats = [x.material for x in body.layers if x.role == "coat" and x.height_mm]
        tops = [x.material for x in body.layers if x.role == "top"]
        bare = [x.material for x in body.layers if _shows(x, body)]
        if body.kind == "roll":
            found.update(coats[-1:] or bare[:1])
        else:
            found.update([coats[-1], *tops] if coats else [*bare, *tops])
    found.update(x.material for x in torte.decorations)
    return (key for key in materials() if key in found)


def _shows(layer: Layer, torte: Torte) -> bool:
    """Whether a naked torte shows a layer at its side: cream in the gap hides a piece."""
    if torte.kind == "tart":
        return layer.role in ("piece", "filling")
    if layer.role == "filling" or layer.outline is None or torte.outline is None:
        return layer.role == "filling"
    hidden = any(
        x.fills_from_mm is not None and x.fills_from_mm <= (layer.bottom_mm or 0.0) + _SLACK_MM
        for x in torte.layers
    )
    is_narrow = layer.outline.across_cm < torte.outline.across_cm - _SLACK_MM
    return layer.role == "piece" and not (hidden and is_narrow)


def _height(torte: Torte, frame: _Frame) -> Iterator[str]:
    """Its height beside it, and its width between the two views."""
    high, size = frame.high, frame.size
    top = high - (torte.plate_mm or 0.0)
    x = -0.7 * size
    line = f"M{x:.2f} {top:.2f}V{high:.2f}M{x - 1.5:.2f} {top:.2f}h3M{x - 1.5:.2f} {high:.2f}h3"
    yield f'<path d="{line}" fill="none" stroke="currentColor" stroke-width=".4"/>'
    said = as_text(torte.plate_mm or 0.0, 0)
    yield _text(x - 0.4 * size, (top + high) / 2 + 0.35 * size, said, size, f"{_BOLD} {_END}")
    yield _text(x - 0.4 * size, top - 0.35 * size, "mm", 0.84 * size, _END)
    y = high + 0.9 * size
    ends = f"M0 {y:.2f}h{frame.wide:.2f}M0 {y - 1.5:.2f}v3M{frame.wide:.2f} {y - 1.5:.2f}v3"
    yield f'<path d="{ends}" fill="none" stroke="currentColor" stroke-width=".4"/>'
    across = f"{as_text(frame.wide, 0)} mm"
    round_ = torte.outline is not None and torte.outline.diameter_cm is not None
    across = f"Ø {across}" if round_ and torte.kind != "roll" else across
    yield _text(frame.wide / 2, y + 1.25 * size, across, size, f"{_BOLD} {_MIDDLE}")


def _above(torte: Torte, frame: _Frame, ident: str) -> Iterator[str]:
    """The view from above, and under it what a slice weighs."""
    if frame.deep:
        middle = f"{frame.wide / 2:.2f} {frame.above_at + frame.deep / 2:.2f}"
        yield f'<g transform="translate({middle})">{"".join(from_above(torte, ident))}</g>'
    y = frame.bottom + (1.7 if frame.deep else 3.4) * frame.size
    said = _slice_words(torte)
    if said:
        yield _text(frame.wide / 2, y, said, frame.size, f"{_BOLD} {_MIDDLE}")


def _slice_words(torte: Torte) -> str:
    """The slices of the drawing: how many, how heavy, how wide outside."""
    if not torte.slices:
        return ""
    if torte.tiers:
        return " and ".join(f"{x.count} slices" for x in torte.slices)
    first = torte.slices[0]
    grams = "mass not known" if first.mass_g is None else f"{as_text(first.mass_g, 1)} g"
    wide = ""
    if first.width_mm is not None:
        wide = f", {as_text(first.width_mm, 1)} mm wide"
    elif first.arc_cm is not None:
        wide = f", {as_text(first.arc_cm, 2)} cm outside"
    return f"{first.count} × {grams}{wide}"


def _legend_wide(key: str, size: float) -> float:
    return (1.9 + len(materials()[key].label) * _ADVANCE + 1.1) * size


def _legend(frame: _Frame, ident: str) -> Iterator[str]:
    """A swatch and a word for each mark that is seen."""
    size = frame.size
    y = frame.whole_high - 1.2 * size - (1.5 * len(frame.rows) - 0.6) * size
    for row in frame.rows:
        x = -frame.left + 0.3 * size
        for key in row:
            place = f'x="{x:.2f}" y="{y - 0.8 * size:.2f}" width="{1.5 * size:.2f}" '
            edge = f'height="{size:.2f}" {fill(key, ident)} stroke="{GRAIN}" stroke-width=".3"'
            yield f"<rect {place}{edge}/>"
            yield _text(x + 1.9 * size, y, materials()[key].label, 0.84 * size)
            x += _legend_wide(key, size)
        y += 1.5 * size


def _text(x: float, y: float, words: str, size: float, more: str = "") -> str:
    return f'<text x="{x:.2f}" y="{y:.2f}" font-size="{size:g}" {more}>{escape(words)}</text>'
