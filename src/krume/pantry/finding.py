"""Find what a baker's words mean: known, asked, close, known elsewhere, or unknown."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import combinations, pairwise

from krume.pantry.close import closest, latin_lookalike
from krume.pantry.ingredients import Ingredient, ingredient
from krume.pantry.names import Choice, Good, Meaning, index, percent_rows, questions, spellings
from krume.pantry.open_kinds import kind_wanted
from krume.pantry.words import Words, spelled

_NOT_FOOD = "not-food"
_MOST_DROPPED = 7
_LONGEST_NAME = 200
_PERCENT_SLACK = 1.5
_GLUTEN_FREE_WORDS = frozenset({"gf", "glutenfree", "glutenfrei", "glutenfreie", "glutenfreier"})
_GLUTEN_FREE = _GLUTEN_FREE_WORDS | {"gluten", "free", "certified"}
_WHICH_BLEND = "gluten-free-flour"
_CEREALS = ("wheat", "rye", "barley", "oat", "triticale")
_PURPOSE = frozenset(
    "for to dissolved in with plus at until from when cut mixed rolled the fuer zum zur mit aus "
    "nach beim size sufficient enough about according made which that".split()
)
_CLASS_WORDS = {
    "grain flour": "flour",
    "flour": "flour",
    "starch": "starch",
    "nut": "nut",
    "seed": "nut",
    "liquid": "liquid",
    "flavour": "flavour",
}


@dataclass(frozen=True, slots=True)
class Found:
    """What words were taken for.

    `kind` is `known` (`key`, with `others` of the same name), `ask` (goods share the name),
    `close` (looks like a name: asked, never taken), `lookalike` (letters of another script),
    `good` (a known word without a row) or `unknown`. All but `known` and `good` carry a question.
    `wanted` is what the name leaves open of the goods, such as which oil it is.
    """

    kind: str
    words: str
    key: str | None = None
    question: str = ""
    choices: tuple[Choice, ...] = ()
    notice: str = ""
    others: tuple[str, ...] = ()
    good: Good | None = None
    percent: float | None = None
    wanted: str = ""


def find(words: str, *, own: tuple[Ingredient, ...] = ()) -> Found:
    """Find what words mean; one's own ingredients go before the packed ones.

    >>> find("soft butter").key, find("potato flour").kind, find("buckweat flour").kind
    ('butter-82-ciqual', 'ask', 'close')
    """
    if len(words) > _LONGEST_NAME:
        ask = f"the name is longer than {_LONGEST_NAME} signs. Type the ingredient's name alone."
        return Found("unknown", words, question=ask)
    mine = _own(words, own) if own else None
    return mine or _find(words)


def is_not_food(words: str) -> bool:
    """Whether words name a thing that is not eaten: a board, a ribbon, a pick, a candle.

    >>> is_not_food("cake picks"), is_not_food("gold leaf"), is_not_food("fresh flowers")
    (True, False, False)
    """
    good = find(words).good
    return good is not None and good.kind == _NOT_FOOD


@lru_cache(maxsize=65536)
def _find(words: str) -> Found:
    asked = spelled(words)
    meaning = index().exact.get(" ".join(asked.tokens))
    if meaning is None:
        return _search(words, asked)
    return _answer(words, meaning, asked.percent)


def _search(words: str, asked: Words) -> Found:
    if not asked.tokens:
        return Found("unknown", words, question="Which ingredient is it? Type its name.")
    meaning = _reworded(asked)
    if meaning is not None:
        return _answer(words, meaning, asked.percent)
    return (
        _lookalike(words)
        or _classed(words, asked)
        or _gluten_free(words, asked)
        or _either(words, asked)
        or _before_purpose(words, asked)
        or _first_part(words, asked)
        or _close(words, asked)
        or _unknown(words)
    )


def _answer(words: str, meaning: Meaning, percent: float | None) -> Found:
    if meaning.good is not None:
        return Found("good", words, good=meaning.good, notice=_not_in_table(meaning.good))
    by_percent = _by_percent(words, meaning, percent)
    if by_percent is not None:
        return by_percent
    wanted = kind_wanted(meaning.name)
    if meaning.ask:
        question, choices = questions()[meaning.ask]
        return Found(
            "ask", words, question=question, choices=choices, percent=percent, wanted=wanted
        )
    key = meaning.keys[0]
    notice = meaning.notice or _percent_notice(key, percent)
    return Found(
        "known", words, key, notice=notice, others=meaning.keys[1:], percent=percent, wanted=wanted
    )


def _not_in_table(good: Good) -> str:
    return f"{good.name} is not in the composition table: its composition is unknown"


def _by_percent(words: str, meaning: Meaning, percent: float | None) -> Found | None:
    if percent is None:
        return None
    wanted = (meaning.ask, *meaning.keys[:1])
    groups = {row.group for row in percent_rows() if row.key in wanted or row.group in wanted}
    for row in percent_rows():
        if row.group in groups and row.low_pct <= percent <= row.high_pct:
            notice = _percent_notice(row.key, percent)
            return Found("known", words, row.key, notice=notice, percent=percent)
    return None


def _percent_notice(key: str, percent: float | None) -> str:
    if percent is None:
        return ""
    item = ingredient(key)
    has = item.composition.fat_g
    if has is None or item.role not in ("dairy", "fat"):
        return ""
    if abs(has - percent) <= _PERCENT_SLACK:
        return ""
    return f"planned with the row {item.name}, {has:g} % fat; the text says {percent:g} %"


def _reworded(asked: Words) -> Meaning | None:
    """Meaning of the words in another order or without words that only say how it is prepared."""
    for tokens in _less(asked):
        meaning = index().exact.get(" ".join(tokens)) or index().bags.get(tuple(sorted(tokens)))
        if meaning is not None:
            return meaning
    return None


def _less(asked: Words) -> Iterator[tuple[str, ...]]:
    orders = tuple(dict.fromkeys(_orders(asked)))
    droppable = [word for word in dict.fromkeys(orders[0]) if word in index().qualifiers]
    for count in range(min(len(droppable), _MOST_DROPPED) + 1):
        for dropped in combinations(droppable, count):
            for order in orders:
                left = tuple(word for word in order if word not in dropped)
                if left:
                    yield left


def _orders(asked: Words) -> Iterator[tuple[str, ...]]:
    parts = tuple(filter(None, (_without_phrases(part) for part in asked.parts)))
    if not parts:
        return iter((asked.tokens,))
    plain = tuple(word for part in parts for word in part)
    turned = tuple(word for part in (*parts[1:], parts[0]) for word in part)
    return iter((plain, turned, _of(plain)))


def _without_phrases(tokens: tuple[str, ...]) -> tuple[str, ...]:
    text = f" {' '.join(tokens)} "
    for phrase in index().phrases:
        if f" {phrase} " in text:
            text = text.replace(f" {phrase} ", " ")
    return tuple(text.split())


def _of(tokens: tuple[str, ...]) -> tuple[str, ...]:
    """`rind of a lemon` as `lemon rind`."""
    if "of" not in tokens[1:-1]:
        return tokens
    at = tokens.index("of", 1)
    whole = tuple(word for word in tokens[at + 1 :] if word not in ("a", "an", "the", "one"))
    return (*whole, *tokens[:at])


def _own(words: str, own: tuple[Ingredient, ...]) -> Found | None:
    spelling = " ".join(spelled(words).tokens)
    for mine in own:
        if spelling in _own_spellings(mine):
            return Found("known", words, mine.key)
    return None


@lru_cache(maxsize=4096)
def _own_spellings(mine: Ingredient) -> frozenset[str]:
    names = (mine.name, mine.label_name, mine.key)
    return frozenset(spelling for name in names for spelling in spellings(name))


def _lookalike(words: str) -> Found | None:
    latin = latin_lookalike(words)
    if latin is None:
        return None
    meant = _find(latin)
    if meant.kind not in ("known", "ask", "good"):
        return None
    question = f"'{words}' looks like {latin}, is spelled with another letter. Is it {latin}?"
    return Found("lookalike", words, question=question, choices=(Choice(latin, latin, meant.key),))


def _classed(words: str, asked: Words) -> Found | None:
    """`fonio flour, as a grain flour`: the answer to the question what an unknown good is."""
    for text, role in _CLASS_WORDS.items():
        ending = ("as", "a", *text.split())
        if asked.tokens[-len(ending) :] == ending and len(asked.tokens) > len(ending):
            name = words[: words.casefold().rindex(" as ")].strip(" ,;")
            return Found(
                "good",
                words,
                good=Good(name, role, None, role=role),
                notice=_classed_as(name, text),
            )
    return None


def _classed_as(name: str, text: str) -> str:
    return f"{name} counts as a {text}; its composition and allergens are unknown"


def _gluten_free(words: str, asked: Words) -> Found | None:
    """`gluten-free oats` are oats; of a flour that cannot be without gluten the blend is asked."""
    left = tuple(w for w in asked.tokens if w not in _GLUTEN_FREE)
    if not left or not _says_gluten_free(asked.tokens):
        return None
    meaning = _reworded(Words((left,)))
    if meaning is not None and not meaning.generic and not _brings_gluten(meaning):
        return _answer(words, meaning, asked.percent)
    is_flour = "flour" in left or (meaning is not None and _is_flour(meaning))
    return _answer(words, Meaning(words, ask=_WHICH_BLEND), asked.percent) if is_flour else None


def _is_flour(meaning: Meaning) -> bool:
    return any(ingredient(key).is_flour for key in meaning.keys[:1])


def _says_gluten_free(tokens: tuple[str, ...]) -> bool:
    pairs = pairwise(tokens)
    return ("gluten", "free") in pairs or any(w in _GLUTEN_FREE_WORDS for w in tokens)


def _brings_gluten(meaning: Meaning) -> bool:
    if meaning.good is not None:
        held = meaning.good.allergens or ()
        return meaning.good.composite or any(grain in held for grain in _CEREALS)
    asked = questions()[meaning.ask][1] if meaning.ask else ()
    keys = (*meaning.keys[:1], *(choice.key for choice in asked if choice.key))
    grains = {ingredient(key).gluten_grain for key in keys}
    return bool(grains & {"wheat", "rye", "barley"})


def _before_purpose(words: str, asked: Words) -> Found | None:
    """`flour for dredging` is flour: what stands behind such a word says what it is for."""
    tokens = asked.parts[0]
    at = next((i for i, word in enumerate(tokens) if i and word in _PURPOSE), None)
    meaning = _reworded(Words((tokens[:at],))) if at is not None else None
    return _answer(words, meaning, asked.percent) if meaning is not None else None


def _either(words: str, asked: Words) -> Found | None:
    """Two goods to choose from; `tapioca starch/flour` is one good with two names."""
    tokens = asked.tokens
    word = next((w for w in ("or", "oder") if w in tokens[1:-1]), None)
    if word is not None:
        at = tokens.index(word, 1)
        sides = (" ".join(tokens[:at]), " ".join(tokens[at + 1 :]))
    elif words.count("/") == 1 and len(tokens) > 1:
        before, _, after = words.partition("/")
        stem = " ".join(before.split()[:-1])
        sides = (before, after if " " in after.strip() or not stem else f"{stem} {after}")
    else:
        return None
    shared = _find(f"{sides[0]} {sides[1].split()[-1]}") if sides[1].split() else None
    first = shared if shared is not None and shared.kind == "known" else _find(sides[0])
    found = [first, _find(sides[1])]
    known = [f for f in found if f.kind in ("known", "good")]
    if len(known) == 2 and known[0].key is not None and known[0].key == known[1].key:
        return replace(known[0], words=words)
    choices = tuple(Choice(f.words, f.words, f.key) for f in known)
    return (
        Found("ask", words, question=f"Which one is it: {words}?", choices=choices)
        if choices
        else None
    )


def _first_part(words: str, asked: Words) -> Found | None:
    """`butter, cut small`: what follows a comma prepares it, unless the name is generic."""
    if len(asked.parts) < 2:
        return None
    meaning = _reworded(Words(asked.parts[:1]))
    if meaning is None or meaning.generic:
        return None
    found = _answer(words, meaning, asked.percent)
    read = " ".join(asked.parts[0])
    return replace(found, notice=found.notice or f"read as {read}; the rest is taken as a note")


def _close(words: str, asked: Words) -> Found | None:
    names = closest(tuple(w for w in asked.tokens if w not in index().qualifiers) or asked.tokens)
    meant = [index().exact[name] for name in names]
    if _says_gluten_free(asked.tokens):
        meant = [meaning for meaning in meant if not _brings_gluten(meaning)]
    choices = tuple(dict.fromkeys(_choice(meaning) for meaning in meant))
    if not choices:
        return None
    listed = " or ".join(f"'{choice.words}'" for choice in choices)
    question = f"read '{words}'; did you mean {listed}?"
    return Found("close", words, question=question, choices=choices)


def _choice(meaning: Meaning) -> Choice:
    return Choice(meaning.name, meaning.name, meaning.keys[0] if meaning.keys else None)


def _unknown(words: str) -> Found:
    question = (
        f"'{words}' is unknown to the pantry, so its composition is unknown and it counts in no "
        "balance. What is it: a grain flour, a starch, a nut or a seed?"
    )
    kinds = ("grain flour", "starch", "nut", "seed")
    choices = tuple(Choice(f"a {kind}", f"{words}, as a {kind}", None) for kind in kinds)
    return Found("unknown", words, question=question, choices=choices)
