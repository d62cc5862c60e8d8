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
        "denies", "hedges", "grain-begins", "warns", "unsuited", "suits",
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
_WARNS = re.compile(r"(?:\s*,)?\s*(?:\b(?:and|but)\s+)?(?=\bmay (?:also )?contain\b)")
_WORDS = re.compile(r"\W+|_")
_NO_WORDS = "a warning without words"
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


@cache
def _phrases(meaning: str) -> tuple[str, ...]:
    """Words of a meaning in one order, the longest first: what a paper says hangs on no chance."""
    return tuple(sorted(_words_meaning(meaning), key=lambda words: (-len(words), words)))


@lru_cache(maxsize=1024)
def lot_words(lot: Lot) -> LotWords:
    """Read the words of all papers of a lot; only specifications name its parts.

    >>> words = lot_words(Lot("L", "chocolate", "specification", notes="soya lecithin; may "
    ...     "contain milk, nuts"))
    >>> words.parts, words.may_contain
    (('soya lecithin',), ('milk', 'nuts'))
    """
    said = [record_words(record) for record in lot.records]
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


def record_words(record: LotRecord) -> LotWords:
    """Read the words of one paper."""
    may: list[str] = []
    parts: list[str] = []
    denies: list[str] = []
    folded = plain_word(record.notes)
    for clause in _clauses(folded):
        warned, denied = _after(clause, "may-contain"), _denied(clause)
        if denied:
            denies += denied
        elif warned is not None:
            may += parts_listed(warned)
        elif record.evidence == "may-contain":
            may += parts_listed(clause)
        elif record.evidence == "specification" or _after(clause, "part") is not None:
            parts += _parts_of(clause)
    if record.evidence == "may-contain" and not (may or denies):
        may.append(_NO_WORDS)
    return LotWords(
        may_contain=tuple(may),
        parts=tuple(parts),
        is_complete=any(_is_closing(part) for part in parts_listed(folded.replace(";", ","))),
        says_clean_oats=any(_says_clean_oats(each) for each in _SENTENCES.split(folded)),
        denies=tuple(denies),
    )


def _clauses(folded: str) -> list[str]:
    """Clauses of a paper; a warning begins its own, whatever the one before it denies."""
    parted = (_WARNS.split(clause) for clause in _CLAUSES.split(folded))
    return [clause for clauses in parted for clause in clauses if clause]


def _says_clean_oats(sentence: str) -> bool:
    """Whether a sentence says that oats were kept apart, and nothing in it denies or hedges it."""
    said = [words for words in _phrases("clean-oats") if words in sentence]
    for words in said:
        sentence = sentence.replace(words, " ")
    against = _words_meaning("denies") | _words_meaning("hedges")
    return bool(said) and not _worded(sentence) & against


def _denied(clause: str) -> list[str]:
    """What a clause says is not in it: `free from milk and nuts`, `milk-free`."""
    begun = _FREE_OF.match(clause)
    if begun is not None:
        return parts_listed(clause[begun.end() :])
    ended = [_FREE.fullmatch(part) for part in parts_listed(clause)]
    return [match[1] for match in ended if match is not None] if all(ended) else []


def _after(clause: str, meaning: str) -> str | None:
    """What follows the words of a meaning, where a clause begins with them, once or twice."""
    for words in _phrases(meaning):
        if clause.startswith(words):
            rest = clause.removeprefix(words).strip(" :")
            deeper = _after(rest, meaning)
            return rest if deeper is None else deeper
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


def doubtful_words(record: LotRecord) -> str:
    """What a paper asks, or warns of in another language; empty where it does neither."""
    if "?" in record.notes:
        return record.notes
    sentences = _SENTENCES.split(plain_word(record.notes))
    return next((each for each in sentences if _worded(each) & _words_meaning("warns")), "")


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
    words = record_words(record)
    parts = (*words.may_contain, *words.parts, *(record.ingredients or ()))
    named = next((each for each in parts if _is_gluten_grain(each)), "")
    clauses = [each for each in _SENTENCES.split(plain_word(record.notes)) if each]
    unsuited = next((each for each in clauses if _is_unsuited(each)), "")
    if named or unsuited or not record.kind.says:
        return named or unsuited
    return next((each for each in clauses if _names_grain(each)), "")


def _is_unsuited(sentence: str) -> bool:
    """Whether a sentence speaks of people with coeliac disease and does not plainly suit them."""
    words = _worded(sentence)
    if not words & _words_meaning("unsuited"):
        return False
    doubted = words & (_words_meaning("denies") | _words_meaning("hedges"))
    return bool(doubted) or not words & _words_meaning("suits")


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
        if _has_grain(words) and not _is_denial(denied, words):
            return True
    return False


def _is_denial(denied: frozenset[str], words: frozenset[str]) -> bool:
    """One plain denial; two of them, or a perhaps, deny nothing."""
    return len(denied) == 1 and not words & _words_meaning("hedges")


def _has_grain(words: frozenset[str]) -> bool:
    """A grain by its whole word, or by what a longer word begins with: weizenmehl."""
    begins = tuple(_words_meaning("grain-begins"))
    begun = (word for word in words if word.startswith(begins))
    return bool(words & _words_meaning("grain")) or any(
        not w.endswith(("frei", "free")) for w in begun
    )


def _worded(clause: str) -> frozenset[str]:
    return frozenset(word for word in _WORDS.split(clause) if word)


def _is_gluten_grain(said: str) -> bool:
    plain = plain_word(without_share(said))
    words = _worded(plain)
    if _is_denial(words & _words_meaning("denies"), words):
        return False
    return _has_grain(words) or names_gluten_grain(find(plain))
