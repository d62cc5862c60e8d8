"""A line with its figures blanked: what its words are does not hang on the figures.

A blanked line is as long as its line, so a place found in one is a place in the other. Lines that
differ in figures alone share one, and what is remembered by it need not be worked out again.
"""

import re
from functools import lru_cache

from krume.design.reader.headings import is_sentence, plain

_GRAMS = re.compile(r"(?<![\w.,'’-])\d{1,4}(?:\.\d{1,2})?(?= ?g\b(?!\s*/))", re.ASCII)
_WHOLE = re.compile(r"(?<![\w.,'’-])\d{1,4}(?![\w.,'’-]*\d|\w)", re.ASCII)
_NEEDS_ITS_FIGURES = re.compile(
    r"[/%<&#½¼¾⅐-⅞²³¹⁰-₉]|\d(?:\s+\d|:\d|[eE])|[pP](?:[eE][rR][cC]|[rR][oO][zZ])[eE][nN][tT]"
)
_SEVENS = str.maketrans("0123456789", "7777777777")
_FIGURE = re.compile(r"\d+(?:\.\d+)?", re.ASCII)


def _blanked(match: re.Match[str]) -> str:
    """A figure's blank: `135.20` is `777.77`, `0.25` is `0.77`."""
    figure = match[0]
    blank = figure.translate(_SEVENS)
    return f"0{blank[1:]}" if figure[0] == "0" else blank


@lru_cache(maxsize=8192)
def blanked(source: str) -> str:
    """A line with its grams blanked, and its whole figures too where it is a sentence.

    >>> blanked("135.5 g sugar"), blanked("Beat with 60 g sugar for 5 minutes.")
    ('777.7 g sugar', 'Beat with 77 g sugar for 7 minutes.')
    """
    if source.isalpha() or _NEEDS_ITS_FIGURES.search(source):
        return source
    without_grams = _GRAMS.sub(_blanked, source)
    without = _WHOLE.sub(_blanked, without_grams)
    return without if without != without_grams and _is_told(without) else without_grams


@lru_cache(maxsize=8192)
def _is_told(blank: str) -> bool:
    return is_sentence(plain(blank).text)


def figure_at(source: str, start: int) -> float | None:
    """The plain figure that stands at a place of a line."""
    match = _FIGURE.match(source, start)
    return None if match is None else float(match[0])
