"""What is to stay out of a blend: words read as flours, and what is asked where none is meant."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import Notice, Option, Problem
from krume.design import AtHand, TypedLimit, members_of, property_named
from krume.pantry import find
from krume.usecases.asking.answer import Asked, place_of
from krume.usecases.blend.flours import WITHOUT

_AND = re.compile(r"\s*(?:\+|,|;|\n|\band\b)\s*")


@dataclass(frozen=True, slots=True)
class LeaveOut:
    """One word for what stays out, and the place an answer to it goes to."""

    word: str
    where: str


@dataclass(frozen=True, slots=True)
class LeftOut:
    """Places of the flours that stay out, with all that is asked and told about the words."""

    places: frozenset[int]
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]


def words_left_out(typed: Sequence[str], asked: Asked) -> tuple[LeaveOut, ...]:
    """Words as typed, each with its own answer in its place, then the answers that add more."""
    parts = [part for each in typed for part in _AND.split(each) if part.strip()]
    placed = [(f"{WITHOUT} {at}", part.strip()) for at, part in enumerate(parts, start=1)]
    said = [(where, asked.answer_for(where), word) for where, word in placed]
    words = [LeaveOut(word if new is None else new, where) for where, new, word in said]
    more = [a.partition("=")[2] for a in asked.answers if place_of(a) == WITHOUT]
    words += [LeaveOut(w.strip(), WITHOUT) for each in more for w in _AND.split(each)]
    return tuple(dict.fromkeys(each for each in words if each.word))


def left_out(
    words: Sequence[LeaveOut],
    hand: Sequence[AtHand],
    limits: Sequence[TypedLimit],
    *,
    dropped: frozenset[str],
) -> LeftOut:
    """Flours that stay out, by their words and by limits such as `no tapioca`."""
    out = {at for limit in limits if limit.kind == "leave-out" for at in limit.members}
    problems: list[Problem] = []
    notices: list[Notice] = []
    for each in words:
        members = members_of(each.word, hand)
        if members.others:
            problems.append(_which(each, [hand[at].name for at in members.others]))
        elif members.places:
            out |= set(members.places)
        elif property_named(each.word) in dropped:
            text = f"{property_named(each.word)} is left out of the match."
            notices.append(Notice("property-left-out", text, WITHOUT))
        elif members.is_known:
            text = f"{each.word} is not among the flours at hand: nothing to leave out."
            notices.append(Notice("nothing-to-leave-out", text, WITHOUT))
        else:
            problems.append(_unknown(each, hand))
    return LeftOut(frozenset(out), tuple(problems), tuple(notices))


def _which(each: LeaveOut, names: list[str]) -> Problem:
    ask = f"Which one stays out: {' or '.join(names)}?"
    options = tuple(Option(name, name) for name in names)
    return Problem("without-which", each.where, each.word, ask, options)


def _unknown(each: LeaveOut, hand: Sequence[AtHand]) -> Problem:
    """A word that names no flour, with those it may be misspelt for."""
    near = [choice.words for choice in find(each.word).choices]
    likely = [flour.name for word in near for flour in _meant(word, hand)]
    names = ", ".join(flour.name for flour in hand)
    ask = f"“{each.word}” is none of the flours at hand: {names}. Which one stays out?"
    options = [Option(name, name) for name in dict.fromkeys(likely)]
    nothing = Option("nothing: go on without that word", "")
    return Problem("without-unknown", each.where, each.word, ask, (*options, nothing))


def _meant(word: str, hand: Sequence[AtHand]) -> list[AtHand]:
    members = members_of(word, hand)
    return [hand[at] for at in (*members.places, *members.others)]
