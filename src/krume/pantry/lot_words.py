"""What the words of a lot's papers say: may contain, parts, animal, kept apart."""

import re
from dataclasses import dataclass
from functools import cache, lru_cache

from krume.evidence import Row, column, load, optional
from krume.pantry.allergens import names_gluten_grain
from krume.pantry.finding import find
from krume.pantry.lots import Lot, LotRecord
from krume.pantry.typed_rows import plain_word, split_outside

WORD_COLUMNS = (
    column("key", "key"),
    column("words"),
    column(
        "means", "one of", "may-contain", "complete", "part", "animal", "clean-oats", "grain",
        "denies", "hedges",
    ),
    optional("value"),
    column("status", "status"),
    column("source", "source"),
)  # fmt: skip
_CLAUSES = re.compile(r"\s*[;·]\s*")
_SENTENCES = re.compile(r"\s*(?:[;·!?]|\.(?!\d))\s*")
_LIST = re.compile(r"\s*,\s*|\s+(?:and|or|und|&)\s+")
_FREE_OF = re.compile(r"(?:free (?:from|of)|without|contains no|does not contain|no)\s+")
_FREE = re.compile(r"(.+?)[ -]free")
_SHARE = re.compile(r"^\d+(?:[.,]\d+)?\s*%\s*")
_TRADE = re.compile(r"^\d+(?:[.,]\d+)?\s*(?:bloom|mesh|µm|um)$|^not a cereal$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class LotWords:
    """What papers say of the goods beside gluten; `parts` as said, with their share.

    `is_complete` is True where the parts are all there is; `animal` is None where not said.
    `denies` is what they say is not in it.
    """

    may_contain: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()
    is_complete: bool = False
    animal: str | None = None
    says_clean_oats: bool = False
    denies: tuple[str, ...] = ()


@cache
def _meanings() -> tuple[Row, ...]:
    return load("lot_words.csv", WORD_COLUMNS)


@cache
def _words_meaning(meaning: str) -> frozenset[str]:
    return frozenset(r.text("words") for r in _meanings() if r.text("means") == meaning)


@lru_cache(maxsize=1024)
def lot_words(lot: Lot) -> LotWords:
    """Read the words of all papers of a lot; only specifications name its parts.

    >>> words = lot_words(Lot("L", "chocolate", "specification", notes="soya lecithin; may "
    ...     "contain milk, nuts"))
    >>> words.parts, words.may_contain
    (('soya lecithin',), ('milk', 'nuts'))
    """
    said = [_record_words(record) for record in lot.records]
    listed = next((r.ingredients for r in lot.records if r.ingredients is not None), None)
    parts = tuple(dict.fromkeys(part for words in said for part in words.parts))
    return LotWords(
        may_contain=tuple(dict.fromkeys(word for words in said for word in words.may_contain)),
        parts=parts if listed is None else listed,
        is_complete=listed is not None or any(words.is_complete for words in said),
        animal=_animal(parts),
        says_clean_oats=any(words.says_clean_oats for words in said),
        denies=tuple(dict.fromkeys(word for words in said for word in words.denies)),
    )


def _record_words(record: LotRecord) -> LotWords:
    may: list[str] = []
    parts: list[str] = []
    denies: list[str] = []
    folded = plain_word(record.notes)
    seen = {row.text("means") for row in _meanings() if row.text("words") in folded}
    for clause in _CLAUSES.split(folded):
        warned, denied = _after(clause, "may-contain"), _denied(clause)
        if denied:
            denies += denied
        elif warned is not None:
            may += parts_listed(warned)
        elif record.evidence == "may-contain":
            may += parts_listed(clause)
        elif record.evidence == "specification" or _after(clause, "part") is not None:
            parts += _parts_of(clause)
    return LotWords(
        may_contain=tuple(may),
        parts=tuple(parts),
        is_complete="complete" in seen,
        says_clean_oats="clean-oats" in seen,
        denies=tuple(denies),
    )


def _denied(clause: str) -> list[str]:
    """What a clause says is not in it: `free from milk and nuts`, `milk-free`."""
    begun = _FREE_OF.match(clause)
    if begun is not None:
        return parts_listed(clause[begun.end() :])
    ended = [_FREE.fullmatch(part) for part in parts_listed(clause)]
    return [match[1] for match in ended if match is not None] if all(ended) else []


def _after(clause: str, meaning: str) -> str | None:
    """What follows the words of a meaning, where a clause begins with them."""
    for words in _words_meaning(meaning):
        if clause.startswith(words):
            return clause.removeprefix(words).strip()
    return None


def _parts_of(clause: str) -> list[str]:
    found = _after(clause, "part")
    words = clause if found is None else found
    return [
        part for part in parts_listed(words) if not _TRADE.match(part) and not _is_closing(part)
    ]


def _is_closing(part: str) -> bool:
    return part in _words_meaning("complete")


def parts_listed(words: str) -> list[str]:
    """Parts of a list by comma, "and" and "or"; what stands in brackets stays with its part.

    >>> parts_listed("sugar, chocolate (sugar, cocoa) and salt.")
    ['sugar', 'chocolate (sugar, cocoa)', 'salt']
    """
    return [part.strip(" .") for part in split_outside(words, _LIST) if part.strip(" .")]


def _animal(parts: tuple[str, ...]) -> str | None:
    for row in _meanings():
        if row.text("means") == "animal" and any(row.text("words") in p.split() for p in parts):
            return row.text("value")
    return None


def without_share(part: str) -> str:
    """A part's own words without its share: `3 % maize starch` is maize starch."""
    return _SHARE.sub("", part)


def says_gluten(lot: Lot) -> bool:
    """Whether a lot's goods or its papers name wheat, rye or barley, or a trace of them."""
    listed = lot_words(lot).parts
    return (
        any(_is_gluten_grain(each) for each in (lot.ingredient, *listed))
        or any(grain_said(record) for record in lot.records)
    )  # fmt: skip


@lru_cache(maxsize=4096)
def grain_said(record: LotRecord) -> str:
    """What of wheat, rye or barley a paper names, in its own words; empty where it names none.

    A supplier's words, a warning and one's own handling are read as they stand: a grain in them
    counts unless the same sentence plainly denies it. Of a test or a certificate only what it
    says to be in it, or perhaps in it, is read.
    """
    words = _record_words(record)
    parts = (*words.may_contain, *words.parts, *(record.ingredients or ()))
    named = next((each for each in parts if _is_gluten_grain(each)), "")
    if named or not record.kind.says:
        return named
    clauses = (each for each in _SENTENCES.split(plain_word(record.notes)) if each)
    return next((each for each in clauses if _names_grain(each)), "")


def _names_grain(sentence: str) -> bool:
    """A grain that a sentence names and does not plainly deny.

    A denial reaches over the commas behind it, up to a piece that says again what it contains.
    """
    denied: frozenset[str] = frozenset()
    for piece in sentence.split(","):
        words = _worded(piece)
        if "contains" in words:
            denied = frozenset()
        denied = words & _words_meaning("denies") or denied
        if words & _words_meaning("grain") and not _is_denial(denied, words):
            return True
    return False


def _is_denial(denied: frozenset[str], words: frozenset[str]) -> bool:
    """One plain denial; two of them, or a perhaps, deny nothing."""
    return len(denied) == 1 and not words & _words_meaning("hedges")


def _worded(clause: str) -> frozenset[str]:
    return frozenset(word for word in re.split(r"[\s,()/-]+", clause) if word)


def _is_gluten_grain(said: str) -> bool:
    plain = without_share(said).casefold()
    words = _worded(plain)
    if _is_denial(words & _words_meaning("denies"), words):
        return False
    return bool(words & _words_meaning("grain")) or names_gluten_grain(find(plain))
