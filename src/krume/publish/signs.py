"""Which signs the fonts of a sheet have, and what is printed for one they lack."""

import unicodedata
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from krume.base import Notice

_SPACES = dict.fromkeys(map(ord, "\t\n\r\v\f\u2028\u2029"), " ")


@dataclass(frozen=True, slots=True)
class Printable:
    """A text every sign of which can be printed, and the signs that were spelled out for it."""

    text: str
    missing: tuple[str, ...] = ()


@cache
def covered() -> frozenset[int]:
    """Code points that every weight of one of the packed font families has."""
    text = files("krume.publish").joinpath("fonts", "signs.txt").read_text(encoding="ascii")
    found: set[int] = set()
    for line in text.split():
        low, _, high = line.partition("-")
        found.update(range(int(low, 16), int(high or low, 16) + 1))
    return frozenset(found)


def printable(text: str) -> Printable:
    """Text for the fonts at hand: a sign they lack is spelled out in brackets, never a box.

    Signs without a shape (controls, joiners, marks of direction) are left out.

    >>> printable("85 g 🥜 flour")
    Printable(text='85 g [peanuts] flour', missing=('🥜',))
    >>> printable("שלום Ő ½").missing
    ()
    """
    plain = unicodedata.normalize("NFC", text).translate(_SPACES)
    if plain.isascii() and plain.isprintable():
        return Printable(plain)
    out: list[str] = []
    missing: list[str] = []
    for sign in plain:
        if unicodedata.category(sign) in ("Cc", "Cf", "Cs") or "\ufe00" <= sign <= "\ufe0f":
            continue
        if ord(sign) not in covered():
            missing.append(sign)
        out.append(sign if ord(sign) in covered() else _spelled(sign))
    return Printable("".join(out), tuple(dict.fromkeys(missing)))


def _spelled(sign: str) -> str:
    name = unicodedata.name(sign, "")
    if unicodedata.category(sign) in ("So", "Sk", "Sm", "Sc") and name:
        return f"[{name.lower()}]"
    return f"[U+{ord(sign):04X}]"


def missing_notice(missing: tuple[str, ...]) -> tuple[Notice, ...]:
    """One notice that names the signs no packed font has, or none."""
    signs = tuple(dict.fromkeys(missing))
    if not signs:
        return ()
    names = ", ".join(f"{sign} (U+{ord(sign):04X})" for sign in signs)
    text = f"the fonts of the sheet do not have {names}: spelled out in brackets in the PDF"
    return (Notice("sign-not-in-font", text),)
