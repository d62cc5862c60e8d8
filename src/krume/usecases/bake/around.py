"""What stands round the tin and what the oven does meanwhile: as wished, and what cannot be."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches

from krume.bake import JACKETS, RACKS, UNDERS, Around
from krume.base import NotFoundError, Notice, Option, Problem, as_text
from krume.design import family
from krume.size import Tin
from krume.usecases.bake.wish import BakeWish

_MOST_DOORS = 12
_LONGEST_MIN = 200.0
_COLDEST_C = -10.0
_WHOLE_EGG = "genoise"
_COLD = re.compile(
    r"\bcold[- ]?start\w*|\bcold (?:\w+ )?oven\b|\bkalte\w* (?:back)?ofen\b|\bkaltstart\b",
    re.IGNORECASE,
)
_COLD_UNSAID = Notice(
    "cold-start-unsaid",
    "The text speaks of a cold oven, and these minutes are of one that is hot when the tin goes "
    "in. For a cold one bake with --cold-start 20.",
)
_WORDS = {
    ("jacket", "wrapped"): "a wet strip round the wall",
    ("jacket", "water"): "the tin in water",
    ("under", "tray"): "on a tray",
    ("under", "insulated"): "on a double tray",
    ("under", "stone"): "on a hot stone",
    ("rack", "low"): "low in the oven",
    ("rack", "high"): "high in the oven",
}


@dataclass(frozen=True, slots=True)
class BakeAround:
    """What stands round the tin, as it was taken; `text` says it in words, empty where usual."""

    jacket: str
    under: str
    rack: str
    cold_start_c: float | None
    door_min: tuple[float, ...]
    text: str


def around_of(wish: BakeWish) -> Around:
    """As the model takes it."""
    return Around(
        jacket=wish.jacket,
        under=wish.under,
        rack=wish.rack,
        warming_from_c=wish.cold_start_c,
        door_min=tuple(sorted(wish.door_min)),
    )


def told_around(wish: BakeWish) -> BakeAround:
    """As an answer says it."""
    return BakeAround(
        wish.jacket, wish.under, wish.rack, wish.cold_start_c,
        tuple(sorted(wish.door_min)), _text(wish),
    )  # fmt: skip


def around_problems(wish: BakeWish, tin: Tin | None, oven_c: float | None) -> tuple[Problem, ...]:
    """What is asked about it: words nobody knows, and what does not go together."""
    return (*_words(wish), *_together(wish, tin), *_cold_start(wish, oven_c), *_doors(wish))


def around_notices(wish: BakeWish, key: str | None, said: Iterable[str] = ()) -> tuple[Notice, ...]:
    """What a baker should know of it; `key` is the family's, `said` the oven and the steps."""
    if wish.cold_start_c is None:
        return (_COLD_UNSAID,) if any(_COLD.search(text) for text in said) else ()
    if not _is_foam(key):
        return ()
    text = (
        "A whipped batter loses air while the oven warms (common practice): the model lets it "
        "rise all the same."
    )
    return (Notice("cold-start-foam", text),)


def _is_foam(key: str | None) -> bool:
    """Whether a batter is lifted by whipped egg alone: whites by themselves, or whole eggs."""
    try:
        return key == _WHOLE_EGG or (key is not None and family(key).whites_min is not None)
    except NotFoundError:
        return False


def door_too_late(door_min: tuple[float, ...], latest_min: float) -> tuple[Problem, ...]:
    """A door that is opened when the bake is over changes nothing: it was meant otherwise."""
    late = [minute for minute in door_min if minute > latest_min]
    if not late:
        return ()
    ask = (
        f"The door at {as_text(late[-1], 1)} min: the bake is over by {as_text(latest_min, 0)}. "
        "Name a minute before that, or leave it out."
    )
    return (Problem("door-after-the-bake", "--door", as_text(late[-1], 1), ask),)


def _words(wish: BakeWish) -> tuple[Problem, ...]:
    told: tuple[tuple[str, str, tuple[str, ...]], ...] = (
        ("jacket", wish.jacket, JACKETS),
        ("under", wish.under, UNDERS),
        ("rack", wish.rack, RACKS),
    )
    return tuple(_unknown(key, word, known) for key, word, known in told if word not in known)


def _unknown(key: str, word: str, known: tuple[str, ...]) -> Problem:
    near = get_close_matches(word.casefold(), known)
    options = tuple(Option(each, each) for each in (*near, *(k for k in known if k not in near)))
    ask = f"'{word}' is not known here. Type one of: {', '.join(known)}."
    return Problem(f"{key}-unknown", f"--{key}", word, ask, options)


def _together(wish: BakeWish, tin: Tin | None) -> tuple[Problem, ...]:
    if wish.jacket != "water":
        return ()
    if tin is not None and tin.shape == "ring":
        ask = "A ring has no floor: the water runs in. Take a tin with a floor, or a wet strip."
        return (Problem("water-and-ring", "--jacket", "water", ask, _OUT_OF_WATER),)
    if wish.under != "rack":
        ask = (
            f"The tin cannot stand in water and on {_UNDER_WORDS.get(wish.under, wish.under)}: "
            "the water heats its floor. Leave --under out, or take the tin out of the water."
        )
        return (Problem("water-and-under", "--under", wish.under, ask, (Option("rack", "rack"),)),)
    return ()


_UNDER_WORDS = {"tray": "a bare tray", "insulated": "a double tray", "stone": "a hot stone"}
_OUT_OF_WATER = (Option("wrapped", "wrapped"), Option("none", "none"))


def _cold_start(wish: BakeWish, oven_c: float | None) -> tuple[Problem, ...]:
    start = wish.cold_start_c
    if start is None:
        return ()
    top = oven_c if oven_c is not None else float("inf")
    if _COLDEST_C <= start < top:
        return ()
    until = "" if oven_c is None else f", which it reaches at {as_text(oven_c, 0)} °C"
    ask = (
        f"An oven of {as_text(start, 0)} °C at the door is not one that still warms{until}. Type "
        "the air's temperature when the tin goes in, for example 20."
    )
    return (Problem("cold-start-range", "--cold-start", as_text(start, 1), ask),)


def _doors(wish: BakeWish) -> tuple[Problem, ...]:
    wrong = [minute for minute in wish.door_min if not 0 < minute <= _LONGEST_MIN]
    if wrong:
        ask = (
            f"The door at {as_text(wrong[0], 1)} min is no minute of a bake. Type one from 1 to "
            f"{as_text(_LONGEST_MIN)}."
        )
        return (Problem("door-range", "--door", as_text(wrong[0], 1), ask),)
    if len(wish.door_min) > _MOST_DOORS:
        ask = f"The door {len(wish.door_min)} times: at most {_MOST_DOORS} are worked out."
        return (Problem("door-often", "--door", str(len(wish.door_min)), ask),)
    return ()


def _text(wish: BakeWish) -> str:
    given = (("jacket", wish.jacket), ("under", wish.under), ("rack", wish.rack))
    said = [_WORDS[each] for each in given if each in _WORDS]
    if wish.cold_start_c is not None:
        said.append(f"into an oven of {as_text(wish.cold_start_c, 0)} °C that still warms")
    if wish.door_min:
        minutes = [as_text(minute, 0) for minute in sorted(wish.door_min)]
        last = f"{', '.join(minutes[:-1])} and {minutes[-1]}" if minutes[1:] else minutes[0]
        said.append(f"the door opened at {last} min")
    text = "; ".join(said)
    return f"{text[:1].upper()}{text[1:]}." if text else ""
