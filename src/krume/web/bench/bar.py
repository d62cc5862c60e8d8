"""The running bar of a bowl: what is in, what goes in now, what is still to come, on one rule."""

from dataclasses import dataclass

from krume.base import as_text

_WIDTH, _START, _GAP = 326.0, 1.0, 1.4
_LABEL = 34.0
_MOST_TICKS = 16
_LONG = 5


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of the bar: `in`, `now` or `open`, with its name where there is room."""

    kind: str
    x: float
    width: float
    text: str = ""


@dataclass(frozen=True, slots=True)
class Label:
    """A number under the rule."""

    x: float
    anchor: str
    text: str


@dataclass(frozen=True, slots=True)
class Bar:
    """A bowl on its rule; `mark` is where the display must stop, None where nothing goes in."""

    pieces: tuple[Piece, ...]
    ticks: tuple[tuple[float, bool], ...]
    labels: tuple[Label, ...]
    mark: float | None
    words: str


@dataclass(frozen=True, slots=True)
class Part:
    """One row of the bowl: grams in, grams it comes to, and whether it is the one to weigh."""

    got_g: float
    target_g: float
    is_now: bool


def bar_of(parts: tuple[Part, ...]) -> Bar | None:
    """The bar of a bowl; None where nothing in it has grams."""
    total = sum(max(p.target_g, p.got_g) for p in parts)
    if total <= 0:
        return None
    scale = _WIDTH / total
    pieces: list[Piece] = []
    mark, at = None, _START
    for part in parts:
        if part.got_g > 0:
            pieces.append(_piece("in", at, part.got_g * scale))
        rest = max(0.0, part.target_g - part.got_g)
        if rest > 0:
            kind = "now" if part.is_now else "open"
            pieces.append(_piece(kind, at + part.got_g * scale, rest * scale))
        at += max(part.target_g, part.got_g) * scale
        mark = round(at, 1) if part.is_now else mark
    return Bar(tuple(pieces), *_rule(total, scale), mark, _words(parts, total))


def _piece(kind: str, x: float, width: float) -> Piece:
    return Piece(kind, round(x + _GAP / 2, 1), round(max(0.5, width - _GAP), 1))


def _rule(total: float, scale: float) -> tuple[tuple[tuple[float, bool], ...], tuple[Label, ...]]:
    """Ticks at a round step, every fifth a long one; the first long one and the ends are named."""
    step = next(s for s in _steps() if total / s <= _MOST_TICKS)
    count = int(total / step + 1e-9)
    ticks = tuple((round(_START + n * step * scale, 1), n % _LONG == 0) for n in range(count + 1))
    labels = [Label(_START, "start", "0")]
    middle = _START + _LONG * step * scale
    if middle < _WIDTH - 2 * _LABEL:
        labels.append(Label(round(middle, 1), "middle", as_text(_LONG * step, 1)))
    labels.append(Label(_START + _WIDTH, "end", as_text(total, 1)))
    return ticks, tuple(labels)


def _steps() -> tuple[float, ...]:
    return tuple(m * 10.0**power for power in range(-1, 6) for m in (1, 2, 5))


def _words(parts: tuple[Part, ...], total: float) -> str:
    held = sum(p.got_g for p in parts)
    now = next((p for p in parts if p.is_now), None)
    stop = "" if now is None else f", {as_text(now.target_g - now.got_g, 1)} go in now"
    return f"{as_text(held, 1)} of {as_text(total, 1)} grams are in the bowl{stop}"
