"""How brown the top is: the path of browning as a strip, and the top at chosen minutes on it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape
from itertools import pairwise

from krume.bake import CrustStep, crust_colour, crust_steps, crust_word
from krume.base import as_text
from krume.properties import screen_colour

_WIDE = 328.0
_TYPE, _SMALL = 15.0, 13.0
_TOP, _SWATCH, _LEAD, _STRIP = 40.0, 44.0, 22.0, 26.0
_BETWEEN = 12.0
_PARTS = 8
_BELOW = 30.0
SCREEN_NOTE = "A screen is not a calibrated print, and the path of browning is assumed."


@dataclass(frozen=True, slots=True)
class TopAt:
    """The top at a minute of the likeliest bake; `words` say which minute it is."""

    at_min: float
    delta_e: float
    words: str


def top_colour(delta_e: float) -> str:
    """A top's colour as a screen shows it, as a drawing names it; beyond the path it is its end."""
    return screen_colour(crust_colour(min(delta_e, crust_steps()[-1].delta_e))).text


def swatch_drawing(tops: Sequence[TopAt], *, wanted: str, ident: str) -> str:
    """Tops at up to three minutes over the path of browning; `wanted` is the word baked for."""
    steps = _steps(tops)
    strip = _TOP + _SWATCH + _LEAD
    high = strip + _STRIP + _BELOW
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDE:g} {high:g}" role="img" '
        f'aria-labelledby="{ident}-name {ident}-what">',
        f'<title id="{ident}-name">{escape(swatch_sentence(tops, wanted=wanted))}</title>',
        f'<desc id="{ident}-what">{escape(_described(steps))} {SCREEN_NOTE}</desc>',
        *_ramp(steps, strip),
        *_words(steps, strip, wanted),
        *_tops(tops, steps, strip),
        "</svg>",
    ]
    return "".join(parts)


def swatch_sentence(tops: Sequence[TopAt], *, wanted: str) -> str:
    """The drawing in one sentence."""
    said = ", ".join(
        f"{crust_word(top.delta_e)} at {as_text(top.at_min, 0)} minutes" for top in tops
    )
    return f"Colour of the top: {said}. It is baked for {wanted}."


def _described(steps: Sequence[CrustStep]) -> str:
    return f"The path from left to right: {', '.join(step.word for step in steps)}."


def _steps(tops: Sequence[TopAt]) -> tuple[CrustStep, ...]:
    """The path as far as it is needed: to one word beyond the brownest top, to dark at least."""
    path = crust_steps()
    most = max((top.delta_e for top in tops), default=0.0)
    beyond = next((k for k, step in enumerate(path) if step.delta_e >= most), len(path) - 1)
    return path[: max(beyond, 4) + 1]


def _x(steps: Sequence[CrustStep], delta_e: float) -> float:
    """Place on the strip: the words stand evenly, straight between them."""
    each = _WIDE / (len(steps) - 1)
    for k, (one, other) in enumerate(pairwise(steps)):
        if delta_e <= other.delta_e:
            return each * (k + (delta_e - one.delta_e) / (other.delta_e - one.delta_e))
    return _WIDE


def _ramp(steps: Sequence[CrustStep], y: float) -> Iterator[str]:
    wide = _WIDE / (len(steps) - 1) / _PARTS
    for k, (one, other) in enumerate(pairwise(steps)):
        for part in range(_PARTS):
            delta_e = one.delta_e + (other.delta_e - one.delta_e) * (part + 0.5) / _PARTS
            x = (k * _PARTS + part) * wide
            yield (
                f'<rect x="{x:.1f}" y="{y:g}" width="{wide + 0.5:.1f}" height="{_STRIP:g}" '
                f'fill="{top_colour(delta_e)}"/>'
            )
    frame = f'x="0.5" y="{y + 0.5:g}" width="{_WIDE - 1:g}" height="{_STRIP - 1:g}"'
    yield f'<rect class="d-line" stroke-width="1" {frame}/>'


def _words(steps: Sequence[CrustStep], y: float, wanted: str) -> Iterator[str]:
    bottom = y + _STRIP
    for k, step in enumerate(steps):
        x = _x(steps, step.delta_e)
        anchor = "start" if k == 0 else "end" if k == len(steps) - 1 else "middle"
        look = "d-text d-bold" if step.key == wanted else "d-text-2"
        yield f'<path class="d-line" stroke-width="1" d="M{x:.1f} {bottom:g}v6"/>'
        yield _text(x, bottom + 21, _short(step), look, size=_SMALL, anchor=anchor)


def _short(step: CrustStep) -> str:
    return {"batter": "batter", "dark": "dark", "very-dark": "darker"}.get(step.key, step.word)


def _tops(tops: Sequence[TopAt], steps: Sequence[CrustStep], strip: float) -> Iterator[str]:
    """A square for each minute in its colour, and a line to its place on the strip."""
    count = max(len(tops), 1)
    wide = (_WIDE - _BETWEEN * (count - 1)) / count if count > 1 else _WIDE
    for k, top in enumerate(tops):
        x, to = k * (wide + _BETWEEN), _x(steps, top.delta_e)
        yield _text(x, 14, f"{as_text(top.at_min, 0)} min", "d-text d-bold", size=_TYPE)
        yield _text(x, 32, f"{top.words}, {crust_word(top.delta_e)}" if count == 1 else top.words,
                    "d-text-2", size=_SMALL)  # fmt: skip
        shape = f'x="{x:.1f}" y="{_TOP:g}" width="{wide:.1f}" height="{_SWATCH:g}"'
        yield f'<rect fill="{top_colour(top.delta_e)}" {shape}/>'
        yield f'<rect class="d-line" stroke-width="1" {shape}/>'
        begin, bend = x + wide / 2, _TOP + _SWATCH
        path = f"M{begin:.1f} {bend:g}v6L{to:.1f} {strip - 8:g}v8"
        yield f'<path class="d-line" stroke-width="1.5" d="{path}"/>'
        yield f'<path class="d-ink" d="M{to - 5:.1f} {strip - 8:g}h10l-5 8z"/>'


def _text(x: float, y: float, words: str, look: str, *, size: float, anchor: str = "start") -> str:
    shape = f'x="{x:.1f}" y="{y:.1f}" font-size="{size:g}" text-anchor="{anchor}"'
    return f'<text {shape} class="{look}">{escape(words)}</text>'
