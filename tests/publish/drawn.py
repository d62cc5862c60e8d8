"""What a finished PDF holds: its words with size and weight, its bars and lines, its page."""

from dataclasses import dataclass

import pymupdf
from PIL import Image

from krume.base import Infeasible

PT_PER_MM = 72 / 25.4
_BOLD = 16


@dataclass(frozen=True, slots=True)
class Words:
    """A run of words on paper: their type in points, their weight, where they stand."""

    text: str
    size_pt: float
    is_bold: bool
    left: float
    right: float
    baseline: float


@dataclass(frozen=True, slots=True)
class Bar:
    """A line or a filled bar that lies flat: its thickness, its ends, its middle."""

    thick_pt: float
    left: float
    right: float
    middle: float


@dataclass(frozen=True, slots=True)
class Frame:
    """The line of a box: its thickness and its four sides."""

    thick_pt: float
    left: float
    top: float
    right: float
    foot: float


@dataclass(frozen=True, slots=True)
class Drawn:
    """The first page of a PDF."""

    width_mm: float
    height_mm: float
    words: tuple[Words, ...]
    bars: tuple[Bar, ...]
    frames: tuple[Frame, ...]

    def word(self, text: str) -> Words:
        """The first run that holds a text."""
        return next(each for each in self.words if text in each.text)


def drawn(data: bytes | Infeasible) -> Drawn:
    """Read the first page of a finished PDF by another program's eyes."""
    assert isinstance(data, bytes), data
    with pymupdf.open(stream=data, filetype="pdf") as document:  # type: ignore[no-untyped-call]
        page = document[0]
        spans = [
            span
            for block in page.get_text("dict")["blocks"]
            for line in block.get("lines", ())
            for span in line["spans"]
        ]
        words = tuple(
            Words(
                span["text"], span["size"], bool(span["flags"] & _BOLD),
                span["bbox"][0], span["bbox"][2], span["origin"][1],
            )
            for span in spans
        )  # fmt: skip
        shapes = [(each["type"], each["rect"], each.get("width")) for each in page.get_drawings()]
        flat = [s for s in shapes if s[1].height < s[1].width and s[1].height < 10]
        bars = tuple(
            Bar(rect.height if kind == "f" else width, rect.x0, rect.x1, (rect.y0 + rect.y1) / 2)
            for kind, rect, width in flat
        )
        frames = tuple(
            Frame(width, rect.x0, rect.y0, rect.x1, rect.y1)
            for kind, rect, width in shapes
            if kind == "s" and rect.height > 20 and rect.width > 20
        )
        mm = (page.rect.width / PT_PER_MM, page.rect.height / PT_PER_MM)
        return Drawn(*mm, words, bars, frames)


def image_of(data: bytes, kind: str = "pdf", dpi: int = 200) -> Image.Image:
    """The first page as a printer of so many dots an inch draws it."""
    with pymupdf.open(stream=data, filetype=kind) as document:  # type: ignore[no-untyped-call]
        pixels = document[0].get_pixmap(dpi=dpi)
        return Image.frombytes("RGB", (pixels.width, pixels.height), pixels.samples)
