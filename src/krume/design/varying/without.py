"""Steps that no longer use what is gone: whole sentences and clauses go, the rest is marked."""

import re
from collections.abc import Sequence

_SENTENCE = re.compile(r"(?<=[.;])\s+")
_CLAUSE = re.compile(r",\s*")
_TAIL = r"\s+(?:and|und)\s+(?:(?:stir|fold|beat|mix|whisk)\s+in\s+|add\s+)?(?:the\s+)?"
_PLAIN = frozenset(("batter", "spoon", "bowl"))
"""Words a clause may hold beside what is gone and still be about it alone."""
_OTHERS = re.compile(
    r"\b(?:whites?|yolks?|eggs?|flours?|mix|mixture|foam|batter|dough|dry|rest|everything|all"
    r"|eiwei(?:ß|ss)|eigelb|mehl|masse|teig)\b",
    re.IGNORECASE,
)


def step_without(step: str, gone: Sequence[str], others: Sequence[str]) -> str:
    """A step without a thing that is no longer in the formula; empty where it was about it alone.

    `gone` are the words that mean it and nothing else, `others` those of all other lines. A
    sentence or a clause that speaks of it alone is taken out; where it stands among other things,
    the step says that it goes without.

    >>> step_without("Melt the butter and keep it at 40 C.", ["butter"], ["sugar"])
    ''
    >>> step_without("Fold in the flours, the butter last.", ["butter"], ["flour"])
    'Fold in the flours.'
    >>> step_without("Sift the flours and stir in the nuts.", ["nut"], ["flour"])
    'Sift the flours.'
    >>> step_without("Cream butter and sugar 6 minutes.", ["butter"], ["sugar"])
    'Cream butter and sugar 6 minutes (without the butter).'
    """
    means, other = _words(gone), _words(others)
    if not means.search(step):
        return step
    kept = [_sentence(s, means, other) for s in _SENTENCE.split(step.strip())]
    return " ".join(sentence for sentence in kept if sentence)


def _words(words: Sequence[str]) -> re.Pattern[str]:
    said = "|".join(re.escape(word) for word in words) or r"(?!)"
    return re.compile(rf"\b(?:{said})(?:e?s)?\b", re.IGNORECASE)


def _sentence(sentence: str, means: re.Pattern[str], other: re.Pattern[str]) -> str:
    if not means.search(sentence):
        return sentence
    if not other.search(sentence) and not _OTHERS.search(sentence):
        return ""
    tail = re.compile(rf"{_TAIL}{means.pattern}$", re.IGNORECASE)
    first, *clauses = (tail.sub("", clause) for clause in _CLAUSE.split(sentence.rstrip(".")))
    kept = [first, *(c for c in clauses if not means.search(c) or _names_more(c, other))]
    whole = ", ".join(kept)
    named = means.search(whole)
    if named:
        whole += f" (without the {named[0].lower()})"
    return f"{whole}." if sentence.endswith(".") else whole


def _names_more(clause: str, other: re.Pattern[str]) -> bool:
    """Whether a clause speaks of more than the thing itself and the batter it goes into."""
    more = {found.casefold() for found in _OTHERS.findall(clause)} - _PLAIN
    return bool(other.search(clause)) or bool(more)
