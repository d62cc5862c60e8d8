"""What an address says of a blend, as a wish; and an answer put into the field it is for."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from krume.base import read_number
from krume.usecases import BlendHand, BlendWish
from krume.web.frame.asking import Pairs, answered
from krume.web.frame.forms import Form

_MOST_CAKES = 1000
_MOST_FLOURS = 99
_NUMBERS = {
    "total": "Grams of the blend",
    "step": "The smallest step of your scale",
    "least": "The least of each flour",
    "price": "The price",
}
_FIELDS = {
    "--total": "total",
    "--least": "least",
    "--most-flours": "most",
    "--most-price": "price",
    "--want": "want",
    "--scale": "step",
}


@dataclass(frozen=True, slots=True)
class Wished:
    """A wish read from a form, or the form with what is wrong in it."""

    wish: BlendWish
    form: Form


def wished(form: Form, flours: Sequence[str], match: str | None) -> Wished:
    """The wish of a form, each number of it checked."""
    numbers, form = _numbers(form)
    most, form = _count(form, "most", _MOST_FLOURS)
    cakes, form = _count(form, "cakes", _MOST_CAKES)
    names = _names(flours, form)
    wish = BlendWish(
        flours=", ".join(names) if names or form.get("ask") else None,
        match=match,
        want=form.get("want").strip() or None,
        without=_said(form.get("without")),
        limits=_lines(form.get("limits")),
        total_g=numbers["total"],
        step_g=numbers["step"] or 1.0,
        least_g=numbers["least"] or 0.0,
        most_flours=most,
        most_price_per_kg=numbers["price"],
        by_stock=form.get("stock") == "on",
        cakes=cakes,
    )
    return Wished(wish, form)


def _names(ticked: Sequence[str], form: Form) -> tuple[str, ...]:
    return tuple(dict.fromkeys((*ticked, *_said(form.get("more")))))


def _said(text: str) -> tuple[str, ...]:
    return tuple(part.strip() for part in text.replace("\n", ",").split(",") if part.strip())


def _lines(text: str) -> tuple[str, ...]:
    return tuple(line.strip() for line in text.splitlines() if line.strip())


def _numbers(form: Form) -> tuple[dict[str, float | None], Form]:
    found: dict[str, float | None] = {}
    for name, words in _NUMBERS.items():
        typed = form.get(name).strip().removesuffix("g").strip()
        number = read_number(typed) if typed else None
        found[name] = None if number is None else number.value
        if typed and (number is None or number.value <= 0):
            form = form.with_wrong(name, f"{words} is a number over 0, such as 1 or 0.5.")
    return found, form


def _count(form: Form, name: str, most: int) -> tuple[int | None, Form]:
    typed = form.get(name).strip()
    if not typed:
        return None, form
    number = form.whole(name)
    if number is None or not 1 <= number <= most:
        return None, form.with_wrong(name, f"Type a whole number from 1 to {most}.")
    return number, form


def ticked(hand: Sequence[BlendHand], chosen: Sequence[str], *, is_sent: bool) -> frozenset[str]:
    """Names that are ticked: those chosen, else those taken where nobody names any."""
    if is_sent:
        return frozenset(chosen)
    return frozenset(row.name for row in hand if row.is_taken)


def answered_in(names: Sequence[str], limits: Sequence[str], without: Sequence[str]) -> "Puts":
    """How an answer changes the address: in its own field where it has one."""

    def puts(pairs: Pairs, where: str, line: str) -> Pairs:
        place, _, number = where.rpartition(" ")
        place, at = (place, int(number) - 1) if number.isdigit() else (where, 0)
        if place in _FIELDS:
            return _with(pairs, _FIELDS[place], line)
        if place == "--limit":
            return _with(pairs, "limits", "\n".join(_put(limits, at, line)))
        if place == "--without":
            words = _put(without, at, line) if number.isdigit() else (*without, line)
            return _with(pairs, "without", ", ".join(word for word in words if word))
        if place == "--from":
            words = _put(names, at, line)
            return _with(_bare(pairs), "more", ", ".join(word for word in words if word))
        return answered(pairs, where, line)

    return puts


Puts = Callable[[Pairs, str, str], Pairs]
"""An answer put into an address."""


def _put(words: Sequence[str], at: int, line: str) -> tuple[str, ...]:
    return tuple(line if here == at else word for here, word in enumerate(words))


def _bare(pairs: Pairs) -> Pairs:
    """Without the ticks: the whole list stands in the field of names then."""
    return tuple(pair for pair in pairs if pair[0] != "flour")


def _with(pairs: Pairs, name: str, value: str) -> Pairs:
    kept = tuple(pair for pair in pairs if pair[0] != name)
    return (*kept, (name, value))
