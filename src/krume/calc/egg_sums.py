"""Quick sums on eggs."""

import math

from krume.base import InputError, Interval, NotFoundError
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.pantry import EggSize, egg_size, egg_size_named, egg_sizes
from krume.properties import within
from krume.size import nearest_eggs

_PARTS = ("whole", "white", "yolk")
_MOST = 10_000.0


def _eggs_shelled(given: Given) -> Values:
    count = within("count", given.number("count"), 0.0, _MOST)
    mass = _each(given).times(count)
    return {"mass_g": {"low": _tidy(mass.low), "best": _tidy(mass.best), "high": _tidy(mass.high)}}


def _tidy(mass_g: float) -> float:
    return round(mass_g, 9)


def _egg_count(given: Given) -> Values:
    mass = within("mass", given.number("mass"), 0.0, math.inf, "g")
    found = nearest_eggs(mass, each_g=_each(given).best)
    return {"count": found.count, "make_up_g": found.make_up_g}


def _eggs_to_crack(given: Given) -> Values:
    """A yolk and a white that are both wanted come from one egg."""
    whole, yolks, whites = (
        within(name, given.maybe(name) or 0.0, 0.0, _MOST) for name in ("whole", "yolks", "whites")
    )
    if whole == yolks == whites == 0:
        raise given.missing("whole")
    eggs = math.ceil(round(whole + max(yolks, whites), 9))
    left = {"whites": _tidy(eggs - whole - whites), "yolks": _tidy(eggs - whole - yolks)}
    return {
        "eggs": eggs,
        "left_whites": left["whites"],
        "left_yolks": left["yolks"],
        **_left_g(given, left),
    }


def _left_g(given: Given, left: dict[str, float]) -> Values:
    """Grams of what is left, where the size is said."""
    words = given.maybe_text("size")
    if words is None:
        given.note("egg-size-missing", "Without a size the grams left over are not known.")
        return {"left_whites_g": None, "left_yolks_g": None}
    size = _size(words)
    given.cite(size.source)
    return {
        "left_whites_g": _tidy(left["whites"] * size.white_g.best),
        "left_yolks_g": _tidy(left["yolks"] * size.yolk_g.best),
    }


def _each(given: Given) -> Interval:
    size = _size(given.text("size"))
    given.cite(size.source)
    if size.status not in ("published", "law"):
        given.note("egg-status", f"{size.label} shelled: {size.status}.")
    return size.part_g(given.maybe_text("part") or "whole")


def _size(text: str) -> EggSize:
    try:
        return egg_size(text)
    except NotFoundError:
        found = egg_size_named(text)
    if len(found) == 1:
        return found[0]
    keys = [size.key for size in (found or egg_sizes())]
    shown = ", ".join(keys[:12])
    question = f"'{text}' can be more than one size" if found else f"'{text}' is no egg size"
    raise InputError(
        f"{question}. Type one of {shown}.", field="size", got=text, want=" or ".join(keys)
    )


_SIZE = Input("size", "egg size, such as us-large or eu-m", kind="text")
_PART = Input("part", "whole, white or yolk", kind="choice", required=False, choices=_PARTS)

EGG_SUMS = (
    Sum(
        "eggs-shelled",
        "What eggs weigh without their shells.",
        (Input("count", "number of eggs"), _SIZE, _PART),
        (Output("mass_g", "low, best and high"),),
        _eggs_shelled,
        (),
        (("count", "5"), ("size", "eu-m")),
        "Eggs of one size differ; weigh them where it matters.",
    ),
    Sum(
        "egg-count",
        "How many eggs a mass is, and the grams from one more.",
        (Input("mass", "wanted without shells", "g"), _SIZE, _PART),
        (
            Output("count", "nearest whole number; an exact half goes down"),
            Output("make_up_g", "grams from one more egg; negative: weigh that much out"),
        ),
        _egg_count,
        (),
        (("mass", "269.6"), ("size", "eu-m")),
    ),
    Sum(
        "eggs-to-crack",
        "How many eggs give so many whole ones, yolks and whites, and what is left.",
        (
            Input("whole", "eggs that go in whole", required=False),
            Input("yolks", "yolks alone", required=False),
            Input("whites", "whites alone", required=False),
            Input("size", "egg size, for the grams left over", kind="text", required=False),
        ),
        (
            Output("eggs", "eggs to crack: a yolk and a white come from one egg"),
            Output("left_whites", "whites left over"),
            Output("left_yolks", "yolks left over"),
            Output("left_whites_g", "their grams; unknown without a size"),
            Output("left_yolks_g", "their grams; unknown without a size"),
        ),
        _eggs_to_crack,
        ("mathematics",),
        (("whole", "60"), ("yolks", "30"), ("size", "eu-m")),
        "A part of an egg is a whole one cracked.",
    ),
)
