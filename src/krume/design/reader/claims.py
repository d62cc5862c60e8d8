"""Claims a text makes about the cake, held against its lines: nothing is printed on hope."""

import re
from collections.abc import Iterator
from functools import lru_cache

from krume.base import Notice, Option, Problem
from krume.design.formula import Line
from krume.design.reader.asking import Asking
from krume.design.reader.blanks import blanked
from krume.design.reader.classifying import Kind
from krume.design.reader.settings import limit
from krume.pantry import Allergen, allergens, allergens_of_words, ingredient

_WHATS = (
    r"gluten|wheat|peanuts?|tree nuts?|nuts?|almonds?|hazelnuts?|walnuts?|dairy|milk|lactose|"
    r"eggs?|soya?|sesame|alcohol|"
    r"erdn(?:uss|üsse)|n(?:uss|üsse)|mandeln?|haseln(?:uss|üsse)|milch|laktose|eier|ei|soja|sesam|alkohol|weizen"
)
_FREE = re.compile(
    rf"\b(?P<what>{_WHATS})\s*-?\s*(?:free|frei(?:e[rsnm]?)?)\b|\bfree (?:from|"
    rf"of)\s+(?P<from>{_WHATS})\b"
    rf"|\b(?:no|without|ohne|contains no)\s+(?P<no>{_WHATS})\b|\b(?P<vegan>vegane?[rs]?)\b"
    r"|\b(?P<sugar>sugar|zucker)\s*-?\s*(?:free|frei(?:e[rsnm]?)?)\b|\b(?P<diet>vegetarian|vegetarische?[rs]?|halal|"
    r"kosher|koscher)\b"
    r"|\b(?:suitable|safe|fine|good|ok|okay)\s+for\s+(?:people with\s+)?(?P<coeliac>c(?:o)?eliacs?|"
    r"z(?:ö|oe)liakie\w*)\b|\b(?P<gf>(?-i:GF))\b",
    re.IGNORECASE,
)
_KEEPS = re.compile(
    r"(?P<said>\b(?:keeps?|will keep|lasts?|hält(?: sich)?|"
    r"haltbar)\b[^.,;]{0,24}?(?P<time>(?:\b(?P<count>\d{1,2}|a|an|one|two|three|eine?|zwei)\s+)(?P<unit>days?|weeks?|months?|tage?n?|wochen?|monate?)\b))",
    re.IGNORECASE,
)
_KIDS = re.compile(
    r"\bfor\s+(?:an?\s+|the\s+|our\s+|small\s+|young\s+)*(?:kids?|child(?:ren)?|(?P<young>toddlers?|"
    r"bab(?:y|ies)))\b|\bfür\s+(?:kleine\s+)?(?:kinder|(?P<klein>kleinkinder|babys?))\b",
    re.IGNORECASE,
)
_NUMBERS = {"a": 1, "an": 1, "one": 1, "ein": 1, "eine": 1, "two": 2, "zwei": 2, "three": 3}
_MEANS = {
    word: meant
    for meant, words in {
        "nut": "nuts nuss nüsse",
        "tree nut": "tree_nuts",
        "peanut": "peanuts erdnuss erdnüsse",
        "almond": "almonds mandel mandeln",
        "hazelnut": "hazelnuts haselnuss haselnüsse",
        "walnut": "walnuts",
        "dairy": "milk milch",
        "lactose": "laktose",
        "egg": "eggs ei eier",
        "soy": "soya soja",
        "sesame": "sesam",
        "alcohol": "alkohol",
        "wheat": "weizen",
        "vegan": "veganer vegane veganes",
        "sugar": "zucker",
        "vegetarian": "vegetarisch vegetarische vegetarischer vegetarisches",
        "kosher": "koscher",
    }.items()
    for word in words.split()
}
_INGREDIENT_BEHIND = re.compile(
    r"^\s*(?:certified\s+)?(?:plain |all-purpose |self-raising |self-rising |oat|rolled "
    r")?(?:flour|oats?|blend|mix|baking|mehl|haferflocken|spread|butter|margarine|milk|cream|chocolate)",
    re.IGNORECASE,
)


def claims(kinds: list[Kind], lines: list[Line]) -> Iterator[Problem | Notice]:
    """Questions and notices about what a text promises."""
    for kind in kinds:
        if kind.kind in ("ingredient", "blank", "unread", "key") or not _may_claim(
            blanked(kind.source)
        ):
            continue
        for match in _FREE.finditer(kind.source):
            if not _INGREDIENT_BEHIND.match(kind.source[match.end() :]):
                yield from _free(kind, match, lines)
        yield from _keeping(kind)
        if young := _KIDS.search(kind.source):
            yield from _kids(kind, young, lines)


@lru_cache(maxsize=8192)
def _may_claim(blank: str) -> bool:
    return any(pattern.search(blank) for pattern in (_FREE, _KEEPS, _KIDS))


def _kids(kind: Kind, match: re.Match[str], lines: list[Line]) -> Iterator[Problem | Notice]:
    """What is for children holds no alcohol, and for the smallest no honey."""
    against = [line for line in lines if _speaks_against("alcohol", line)]
    if match["young"] or match["klein"]:
        against += [line for line in lines if "honey" in (line.ingredient or "").split("-")]
    if against:
        yield _contradicted(kind, match, "kids", against)
        return
    yield Notice(
        "claim-kids",
        "for children: no whole or coarse nuts and no alcohol may be in it; a cream "
        "keeps its cold chain",
        f"line {kind.number}",
    )


def _free(kind: Kind, match: re.Match[str], lines: list[Line]) -> Iterator[Problem | Notice]:
    what = _claimed(match)
    against = [line for line in lines if _speaks_against(what, line)]
    if against:
        yield _contradicted(kind, match, what, against)
    elif what == "gluten":
        yield from _gluten(kind, match, lines)


def _claimed(match: re.Match[str]) -> str:
    if match["coeliac"] or match["gf"]:
        return "gluten"
    groups = ("what", "from", "no", "vegan", "sugar", "diet")
    said = next(match[group] for group in groups if match[group]).casefold()
    return _MEANS.get(said, said)


_BEASTS = frozenset("gelatin gelatine lard suet tallow bacon".split())
_DIETS = frozenset(("vegetarian", "halal", "kosher"))


def _is_of_beast(what: str, line: Line) -> bool:
    """Whether a line is of an animal that a diet leaves out, and does not say that it fits."""
    words = set((line.ingredient or line.name.casefold()).replace(" ", "-").split("-"))
    return bool(words & _BEASTS) and not (what != "vegetarian" and what in line.read.casefold())


def _speaks_against(what: str, line: Line) -> bool:
    if what in _DIETS and _is_of_beast(what, line):
        return True
    if line.ingredient is None:
        return _is_held(what, _held(allergens_of_words(line.name)))
    item = ingredient(line.ingredient)
    if what in ("gluten", "wheat"):
        return item.gluten_grain in (("wheat",) if what == "wheat" else ("wheat", "rye", "barley"))
    if what == "sugar":
        return item.role == "sugar"
    if what in _DIETS and what != "halal":
        return False
    if what in ("alcohol", "halal"):
        return item.role == "spirit" or (
            (item.composition.alcohol_g or 0.0) > 0 and item.role != "flavour"
        )
    if what == "lactose" and "lactose" in line.name.casefold():
        return False
    if what == "vegan" and (item.key == "honey" or "gelatin" in item.key):
        return True
    return _is_held(what, _held(allergens(line.ingredient))) or (
        what == "almond" and item.key.startswith("almond")
    )


def _held(found: tuple[Allergen, ...]) -> str:
    told = [a for a in found if a.presence == "contains"]
    return " ".join(word for a in told for market in ("us", "eu") for word in a.words(market))


def _is_held(what: str, held: str) -> bool:
    """Whether declared allergens speak against a claim."""
    words = {
        "dairy": ("milk",),
        "lactose": ("milk",),
        "vegan": ("milk", "egg"),
        "gluten": ("wheat", "rye", "barley"),
        "tree nut": ("tree nut", "nuts ("),
    }
    return any(word in held for word in words.get(what, (what,)))


def _contradicted(kind: Kind, match: re.Match[str], what: str, against: list[Line]) -> Problem:
    line = against[0]
    named = ", ".join(f"line {x.number} ({x.name})" for x in against[:3])
    claim = match[0].strip()
    return Problem(
        f"claim-{what.replace(' ', '-')}",
        f"line {kind.number}",
        kind.source.strip()[:200],
        f"'{claim}' contradicts {named}. Drop the claim, or change the line.",
        (_dropped(kind, match), _says(kind, match, f"contains {line.name}")),
    )


def _dropped(kind: Kind, match: re.Match[str]) -> Option:
    start, end = match.span()
    tail = kind.source[end:].lstrip("!")
    line = (kind.source[:start].rstrip(" ,") + tail).strip(" ,")
    return Option("drop the claim", line or "(a claim, left out)")


def _says(kind: Kind, match: re.Match[str], text: str) -> Option:
    tail = kind.source[match.end() :].lstrip("!")
    return Option(text, kind.source[: match.start()] + text + tail)


def _gluten(kind: Kind, match: re.Match[str], lines: list[Line]) -> Iterator[Problem | Notice]:
    oats = [x for x in lines if x.ingredient and ingredient(x.ingredient).gluten_grain == "oat"]
    if oats:
        yield Problem(
            "claim-gluten-oats", f"line {kind.number}", kind.source.strip()[:200],
            f"Line {oats[0].number} has oats: only with evidence of 20 mg/kg or less (EU "
            f"828/2014), and some people with "
            "coeliac disease do not tolerate even clean oats. Drop the claim, or say which oats.",
            (_dropped(kind, match), _says(kind, match, "contains oats")),
        )  # fmt: skip
        return
    if kind.kind in ("name", "heading"):
        yield Notice(
            "claim-gluten",
            "the name is no claim: a gluten statement prints only with valid records of its lots",
            f"line {kind.number}",
        )
        return
    yield Problem(
        "claim-gluten", f"line {kind.number}", kind.source.strip()[:200],
        f"'{match[0]}': the text names no lots, so no record supports the claim. Drop it, or "
        f"say what went in.",
        (_dropped(kind, match), _says(kind, match, "no wheat, rye or barley goes in")),
    )  # fmt: skip


def _keeping(kind: Kind) -> Iterator[Problem | Notice]:
    for match in _KEEPS.finditer(kind.source):
        count = match["count"].casefold()
        number = _NUMBERS.get(count) or int(count if count.isdigit() else 1)
        unit = match["unit"].casefold()
        days = number * (
            30 if unit.startswith("mon") else 7 if unit.startswith(("week", "woch")) else 1
        )
        if days <= limit("keeps-at-most"):
            yield Notice(
                "claim-keeping",
                f"'{match['said']}': a cake with cream keeps 3 to 5 days cold (common practice)",
                f"line {kind.number}",
            )
            continue
        asking = Asking(kind.source)
        asking.ask(
            "claim-keeping",
            f"'{match['said']}': a cake with cream keeps 3 to 5 days cold (common practice), "
            f"not {days}. What may be said?",
            ("3 days, cold", asking.edit(*match.span("time"), "3 days")),
            ("5 days, cold", asking.edit(*match.span("time"), "5 days")),
        )
        yield Problem(
            asking.problems[0].code,
            f"line {kind.number}",
            asking.problems[0].read,
            asking.problems[0].ask,
            asking.problems[0].options,
        )
