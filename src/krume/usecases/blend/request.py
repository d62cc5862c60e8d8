"""A request for a blend, read: flours at hand, aim, limits, total, each with its questions."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from math import isfinite
from pathlib import Path

from krume.base import InputError, Notice, Option, Problem, as_text, read_number
from krume.design import (
    PROPERTY_WORDS,
    AtHand,
    TypedLimit,
    members_of,
    property_named,
    read_limits,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.blend.flours import FROM, Flour, blanks, flours_named, flours_of
from krume.usecases.blend.match import MATCH, Aim, aim_of
from krume.usecases.blend.papers import (
    flours_in_house,
    prices_at_hand,
    prices_per_kg,
    ran_out,
    stock_g,
    unpriced,
)
from krume.usecases.blend.setting import Setting
from krume.usecases.blend.without import left_out, words_left_out
from krume.usecases.sold.papers import Papers, papers_of

PROPERTIES = ("protein", "fat", "fibre")
"""What a blend is matched by unless more is asked."""

LIMIT = "--limit"
_USUAL_TOTAL_G = 100.0
_MOST_STEPS = 50_000
_OFF_GRID = 1e-6


@dataclass(frozen=True, slots=True)
class BlendWish:
    """What is wished of a blend: flours at hand, aim, limits, total, and what to make of it."""

    flours: str | None = None
    match: str | None = None
    want: str | None = None
    also: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    limits: tuple[str, ...] = ()
    total_g: float | None = None
    step_g: float = 1.0
    least_g: float = 0.0
    most_flours: int | None = None
    most_price_per_kg: float | None = None
    by_stock: bool = False
    cakes: int | None = None
    write: Path | None = None
    replace: bool = False
    out: Path | None = None


@dataclass(slots=True)
class _Asking:
    """Questions and notices as they come up."""

    problems: list[Problem] = field(default_factory=list)
    notices: list[Notice] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class BlendRequest:
    """A request as far as it could be read; without a setting something is asked first."""

    flours: tuple[Flour, ...]
    aim: Aim
    papers: Papers
    setting: Setting | None
    texts: tuple[str, ...]
    properties: tuple[str, ...]
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]


def read_request(wish: BlendWish, asked: Asked) -> BlendRequest:
    """Read all of a request; everything that is open is asked at once."""
    wish = _checked(_with_answers(wish, asked))
    papers, asking = papers_of(asked), _Asking()
    words = words_left_out(wish.without, asked)
    named = {property_named(each.word) for each in words}
    dropped = frozenset(name for name in PROPERTIES if name in named)
    also = _also(wish, asking)
    properties = tuple(p for p in dict.fromkeys((*PROPERTIES, *also)) if p not in dropped)
    aim = aim_of(wish.match, wish.want, properties, asked, papers)
    target = {name: value for name, value in aim.target.items() if name not in dropped}
    aim = replace(aim, target=target)
    asking.problems += aim.problems
    asking.notices += aim.notices
    if aim.match is None and target:
        asking.problems += [_no_wish(name) for name in also if name not in target]
    flours = _flours(wish, aim, asked, papers, asking)
    texts = tuple(_answered(asked, _at(n), t) for n, t in enumerate(wish.limits, start=1))
    hand = [flour.at_hand for flour in flours]
    limits = read_limits(texts, hand)
    asking.problems += limits.problems
    asking.notices += limits.notices
    gone = [] if aim.match is None else [part.flour.at_hand for part in aim.match.parts]
    said = [
        each
        for each in words
        if property_named(each.word) in dropped or not _is_gone(each.word, hand, gone)
    ]
    out = left_out(said, hand, limits.value, dropped=dropped)
    asking.problems += out.problems
    asking.notices += out.notices
    setting = _setting(wish, asked, aim, flours, limits.value, out.places, asking)
    return BlendRequest(
        flours, aim, papers, setting, texts, tuple(target) or properties,
        tuple(dict.fromkeys(asking.problems)), tuple(dict.fromkeys(asking.notices)),
    )  # fmt: skip


def _is_gone(word: str, hand: Sequence[AtHand], gone: Sequence[AtHand]) -> bool:
    """Whether a word names a flour of the formula that is not at hand anyway."""
    here = members_of(word, hand)
    return not here.places and not here.others and bool(members_of(word, gone).places)


def _with_answers(wish: BlendWish, asked: Asked) -> BlendWish:
    """The wish with the answers to its own options in it."""
    count = _number(asked.answer_for("--most-flours"), wish.most_flours)
    return replace(
        wish,
        total_g=_number(asked.answer_for("--total"), wish.total_g),
        least_g=_number(asked.answer_for("--least"), wish.least_g) or 0.0,
        most_flours=None if count is None else int(count),
        most_price_per_kg=_number(asked.answer_for("--most-price"), wish.most_price_per_kg),
    )


def _answered(asked: Asked, where: str, text: str) -> str:
    answer = asked.answer_for(where)
    return text if answer is None else answer


def _at(number: int) -> str:
    return LIMIT if number == 1 else f"{LIMIT} {number}"


def _also(wish: BlendWish, asking: _Asking) -> tuple[str, ...]:
    found: list[str] = []
    for word in (part.strip() for each in wish.also for part in each.split(",")):
        name = property_named(word)
        if name is not None:
            found.append(name)
        elif word.casefold() == "price":
            ask = "A price is kept below, not matched. Type --most-price 4.20 in place of it."
            asking.problems.append(Problem("price-is-a-limit", "--also", word, ask))
        elif word:
            known = ", ".join(PROPERTY_WORDS)
            ask = f"'{word}' is nothing a blend is matched by. There are: {known}."
            asking.problems.append(Problem("property-unknown", "--also", word, ask))
    return tuple(found)


def _no_wish(name: str) -> Problem:
    ask = f"How much {name} should 100 g hold? Add it to --want: {name} 12."
    return Problem("want-missing", "--want", name, ask)


def _flours(
    wish: BlendWish, aim: Aim, asked: Asked, papers: Papers, asking: _Asking
) -> tuple[Flour, ...]:
    """Flours of the list; without one those in the house, and the formula's own."""
    listed = asked.answer_for(FROM) or wish.flours
    if listed is not None:
        read = flours_named(listed, asked, papers.sheets)
    else:
        read = flours_of(_in_house(aim, papers, asking), asked, papers.sheets)
    asking.problems += read.problems
    asking.notices += read.notices
    if not read.value and not read.problems:
        ask = "Which flours are at hand? Type them with commas between: "
        example = "white rice flour, buckwheat flour, potato starch"
        option = Option("such as", example)
        asking.problems.append(Problem("no-flours", FROM, listed or "", ask + example, (option,)))
    return read.value


def _in_house(aim: Aim, papers: Papers, asking: _Asking) -> list[tuple[str, str]]:
    housed = flours_in_house(papers)
    old = [name for name in housed if ran_out(name, papers)]
    kept = [name for name in housed if name not in old]
    own = [] if aim.match is None else [part.flour.name for part in aim.match.parts]
    names = list(dict.fromkeys((*kept, *own)))
    if names:
        more = ", and the formula's own" if own else ""
        text = f"No --from: taken are the flours the book has lots of{more}."
        asking.notices.append(Notice("flours-of-the-book", text, FROM))
    for name in old:
        if name not in own:
            text = (
                f"{name} is left out: the record of its lot ran out. Name it in --from to use it."
            )
            asking.notices.append(Notice("flour-of-old-lot", text, FROM))
    return [(name, f"{FROM} {at}") for at, name in enumerate(names, start=1)]


def _setting(
    wish: BlendWish,
    asked: Asked,
    aim: Aim,
    flours: tuple[Flour, ...],
    limits: tuple[TypedLimit, ...],
    out: frozenset[int],
    asking: _Asking,
) -> Setting | None:
    total_g = _total_g(wish, aim, asking)
    in_play = [flour for at, flour in enumerate(flours) if at not in out]
    wanted = (*aim.target, *(limit.name for limit in limits if limit.kind == "property"))
    asking.problems += blanks(in_play, tuple(dict.fromkeys(wanted)))
    most_price = _least([wish.most_price_per_kg, *_highs(limits, "price")])
    per_kg = prices_per_kg(in_play, prices_at_hand(asked)) if most_price is not None else {}
    if most_price is not None:
        asking.problems += unpriced(in_play, per_kg)
    stock, notices = stock_g(in_play, asked) if wish.by_stock else ({}, ())
    asking.notices += notices
    target = {name: value for name, value in aim.target.items() if value is not None}
    if asking.problems or total_g is None or not target:
        return None
    count = _least([None if wish.most_flours is None else float(wish.most_flours),
                    *_highs(limits, "parts")])  # fmt: skip
    return Setting(
        flours=flours,
        target=target,
        limits=limits,
        left_out=out,
        total_g=total_g,
        step_g=wish.step_g,
        least_g=wish.least_g,
        most_flours=None if count is None else int(count),
        most_price_per_kg=most_price,
        per_kg={key: float(price) for key, price in per_kg.items()},
        stock_g=stock,
        was_g={} if aim.match is None else {p.flour.key: p.mass_g for p in aim.match.parts},
    )


def _highs(limits: Sequence[TypedLimit], kind: str) -> list[float | None]:
    return [limit.high for limit in limits if limit.kind == kind]


def _least(values: Sequence[float | None]) -> float | None:
    return min((value for value in values if value is not None), default=None)


def _total_g(wish: BlendWish, aim: Aim, asking: _Asking) -> float | None:
    """Total of the blend on the steps of the scale; a formula's own goes to the nearest step."""
    typed = wish.total_g
    total_g = typed or (_USUAL_TOTAL_G if aim.match is None else aim.match.total_g)
    steps = total_g / wish.step_g
    nearest = max(round(steps), 1) * wish.step_g
    if steps > _MOST_STEPS:
        ask = f"{as_text(total_g)} g in steps of {as_text(wish.step_g)} g is too fine a grid."
        asking.problems.append(Problem("too-many-steps", "--total", as_text(total_g), ask))
        return None
    if abs(steps - round(steps)) <= _OFF_GRID and round(steps) >= 1:
        return round(steps) * wish.step_g
    if typed is None:
        text = (
            f"The formula's blend is {as_text(total_g)} g; in steps of {as_text(wish.step_g)} g "
            f"it is {as_text(nearest)} g here."
        )
        asking.notices.append(Notice("total-to-the-scale", text, MATCH))
        return nearest
    ask = (
        f"{as_text(total_g)} g cannot be weighed in steps of {as_text(wish.step_g)} g. Type a "
        "total that can, or a finer --scale."
    )
    option = Option(f"{as_text(nearest)} g", as_text(nearest))
    asking.problems.append(Problem("total-off-scale", "--total", as_text(total_g), ask, (option,)))
    return None


def _number(answer: str | None, given: float | None) -> float | None:
    """A number of an answer, else the one that was given."""
    if answer is None:
        return given
    found = read_number(answer.removesuffix("g").strip())
    if found is None:
        message = f"'{answer}' is no number. Type one such as 105 or 0.5."
        raise InputError(message, got=answer, want="a number")
    return found.value


def _checked(wish: BlendWish) -> BlendWish:
    """The wish, its numbers being numbers: refused with the option where one is none."""
    numbers = {
        "total": wish.total_g,
        "scale": wish.step_g,
        "least": wish.least_g,
        "most-price": wish.most_price_per_kg,
    }
    for name, value in numbers.items():
        if value is not None and not (isfinite(value) and value >= 0):
            message = f"--{name} is no number of 0 or more: {value}."
            raise InputError(message, field=name, got=str(value), want="a number of 0 or more")
    if wish.step_g <= 0 or (wish.total_g is not None and wish.total_g <= 0):
        message = "A total and a step of the scale are more than 0 g."
        raise InputError(message, field="total", want="more than 0 g")
    return wish
