"""Names that look alike: letters of another script, and slips of the keyboard."""

import unicodedata
from functools import cache, lru_cache
from itertools import product

from krume.pantry.names import index

_LATIN_OF = str.maketrans(
    "асеіјоорѕухһԁԛѡвкмнтАВЕІЈКМНОРЅСТУХабгαικνορτυχεΑΒΕΖΗΙΚΜΝΟΡΤΥΧ",
    "aceijoopsyxhdqwbkmhtabeijkmhopsctyxa6raiknoptuxeabezhikmnoptyx",
)
_SHORTEST = 3
_LONG = 7
_MOST_WORDS = 6
_MOST_NAMES = 3
_MOST_PER_WORD = 4


def latin_lookalike(words: str) -> str | None:
    """The words in Latin letters, where some of their letters only look Latin; else None.

    >>> latin_lookalike("ѕugar"), latin_lookalike("sugar")
    ('sugar', None)
    """
    if words.isascii():
        return None
    latin = unicodedata.normalize("NFKC", words).translate(_LATIN_OF)
    return latin if latin != words and _is_latin(latin) else None


def _is_latin(text: str) -> bool:
    return all(unicodedata.name(s, "").startswith("LATIN") for s in text if s.isalpha())


def closest(tokens: tuple[str, ...]) -> tuple[str, ...]:
    """Names that the words come to when each misspelled word is mended, nearest first.

    Where all words are known but not together, the longest known ending counts.
    """
    wrong = [word for word in tokens if word not in index().vocabulary]
    if wrong:
        mended = _mended(tokens)
        return mended if mended or len(wrong) == len(tokens) else _endings(tokens)
    return _endings(tokens)


def _mended(tokens: tuple[str, ...]) -> tuple[str, ...]:
    if len(tokens) > _MOST_WORDS:
        return ()
    options = [_like(word) for word in tokens]
    if not all(options):
        return ()
    ranked = sorted(product(*options), key=lambda words: sum(cost for _, cost in words))
    names = (" ".join(word for word, _ in words) for words in ranked)
    whole = [name for name in dict.fromkeys(names) if name in index().exact]
    return tuple(whole[:_MOST_NAMES])


@lru_cache(maxsize=4096)
def _like(word: str) -> tuple[tuple[str, int], ...]:
    """Words of the vocabulary within one slip of a short word, two of a long one."""
    if word in index().vocabulary:
        return ((word, 0),)
    if len(word) < _SHORTEST:
        return ()
    from rapidfuzz.distance import OSA
    from rapidfuzz.process import extract

    most = 1 if len(word) < _LONG else 2
    found = extract(word, _sorted_words(), scorer=OSA.distance, score_cutoff=most, limit=None)
    near = ((name, int(cost)) for name, cost, _ in found if len(word) > 4 or name[0] == word[0])
    return tuple(sorted(near, key=lambda each: (each[1], each[0]))[:_MOST_PER_WORD])


@cache
def _sorted_words() -> tuple[str, ...]:
    """The vocabulary in an order that is the same in every run."""
    return tuple(sorted(index().vocabulary))


def _endings(tokens: tuple[str, ...]) -> tuple[str, ...]:
    for start in range(1, len(tokens)):
        name = " ".join(tokens[start:])
        meaning = index().exact.get(name)
        if meaning is not None:
            return () if meaning.generic else (name,)
    return ()
