"""Which of the flours at hand a word means: one by its name, or a class of them together."""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from krume.pantry import find

_AND = re.compile(r"\s*(?:\+|&|\band\b|\bund\b)\s*")
_ARTICLES = re.compile(r"^(?:the|of|all|alle|any)\s+")
_CLASSES = {
    "starch": ("starch", "starches", "pure starch", "pure starches", "stärke", "stärken"),
    "flour": ("flour", "flours", "mehl", "mehle"),
    "nut": ("nut", "nuts", "ground nuts", "nüsse"),
    "sweet rice": ("sweet rice", "sweet rice flour", "glutinous rice", "glutinous rice flour",
                   "klebreis", "klebreismehl"),
}  # fmt: skip
CLASS_NAMES = frozenset({"starch", "flour", "nut"})
_ENDINGS = (" flour", " starch", "mehl")
_SWEET = frozenset({"sweet", "glutinous", "sticky", "mochi"})


@dataclass(frozen=True, slots=True)
class AtHand:
    """A flour at hand: the words for it, its key of the pantry, and its role in a balance."""

    name: str
    key: str
    role: str
    is_sweet_rice: bool = False


@dataclass(frozen=True, slots=True)
class Members:
    """Flours that words mean, by their place; `others` are those that fit as well.

    `is_known` says that the words mean something, if perhaps nothing at hand.
    """

    name: str
    places: tuple[int, ...] = ()
    others: tuple[int, ...] = ()
    is_known: bool = True


def members_of(words: str, flours: Sequence[AtHand]) -> Members:
    """Flours at hand that a name or a class means; `rice + buckwheat` is both together.

    >>> hand = [AtHand("white rice flour", "flour-rice-white", "flour"),
    ...         AtHand("potato starch", "starch-potato-ciqual", "starch")]
    >>> members_of("starch", hand).places, members_of("rice", hand).places
    ((1,), (0,))
    """
    said = _ARTICLES.sub("", " ".join(words.casefold().split()))
    parts = [part for part in _AND.split(said) if part]
    whole = _one(said, flours)
    if len(parts) < 2 or whole.places:
        return whole
    found = [_one(part, flours) for part in parts]
    places = tuple(dict.fromkeys(place for each in found for place in each.places))
    others = tuple(place for each in found for place in each.others if place not in places)
    return Members(said, places, others, all(each.is_known for each in found))


def _one(said: str, flours: Sequence[AtHand]) -> Members:
    for name, spoken in _CLASSES.items():
        if said in spoken:
            return Members(name, _of_class(name, flours))
    exact = _where(flours, lambda flour: said in (flour.name.casefold(), flour.key))
    if exact:
        return Members(said, exact)
    return _by_pantry(said, flours) or _by_words(said, flours)


def _of_class(name: str, flours: Sequence[AtHand]) -> tuple[int, ...]:
    if name == "sweet rice":
        return _where(flours, lambda flour: flour.is_sweet_rice)
    return _where(flours, lambda flour: flour.role == name)


def _where(flours: Sequence[AtHand], holds: Callable[[AtHand], bool]) -> tuple[int, ...]:
    return tuple(place for place, flour in enumerate(flours) if holds(flour))


def _by_pantry(said: str, flours: Sequence[AtHand]) -> Members | None:
    """Flours whose row of the pantry the words mean, with or without the word flour."""
    for spelling in _spellings(said):
        keys = keys_meant(spelling)
        places = tuple(place for place, flour in enumerate(flours) if flour.key in keys)
        if places:
            return _told_apart(said, places, flours)
    return None


def keys_meant(words: str) -> tuple[str, ...]:
    """Keys of the pantry that words mean, or may mean where they are asked about."""
    found = find(words)
    if found.kind == "known" and found.key is not None:
        return (found.key,)
    return (
        tuple(choice.key for choice in found.choices if choice.key) if found.kind == "ask" else ()
    )


def _by_words(said: str, flours: Sequence[AtHand]) -> Members:
    """Flours whose own words hold all the words that were typed."""
    typed = set(said.split())
    places = _where(flours, lambda flour: typed <= set(flour.name.casefold().split()))
    if places:
        return _told_apart(said, places, flours)
    known = any(find(spelling).kind in ("known", "ask") for spelling in _spellings(said))
    return Members(said, is_known=known)


def _spellings(said: str) -> Iterable[str]:
    return (said, *(said + ending for ending in _ENDINGS))


def _told_apart(said: str, places: tuple[int, ...], flours: Sequence[AtHand]) -> Members:
    """Plain rice is not sweet rice: that one is always called by its whole name."""
    if len(places) > 1 and not _SWEET & set(said.split()):
        places = tuple(p for p in places if not flours[p].is_sweet_rice) or places
    return Members(said, places) if len(places) == 1 else Members(said, (), places)
