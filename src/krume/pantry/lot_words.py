"""What the words of a lot's record say: may contain, parts, animal, kept apart."""

import re
from dataclasses import dataclass
from functools import cache, lru_cache

from krume.evidence import Row, column, load, optional
from krume.pantry.allergens import Allergen, allergens_of, names_gluten_grain
from krume.pantry.finding import find
from krume.pantry.lots import Lot

WORD_COLUMNS = (
    column("key", "key"),
    column("words"),
    column("means", "one of", "may-contain", "complete", "part", "animal", "clean-oats"),
    optional("value"),
    column("status", "status"),
    column("source", "source"),
)
_CLAUSES = re.compile(r"\s*[;·]\s*")
_LIST = re.compile(r"\s*,\s*|\s+(?:and|or|und|&)\s+")
_SHARE = re.compile(r"^\d+(?:[.,]\d+)?\s*%\s*")
_TRADE = re.compile(r"^\d+(?:[.,]\d+)?\s*(?:bloom|mesh|µm|um)$|^not a cereal$", re.IGNORECASE)
_GENERAL = {
    "nuts": ("tree nuts", "nuts"),
    "tree nuts": ("tree nuts", "nuts"),
    "wheat": ("wheat", "cereals containing gluten (wheat)"),
    "soya": ("soybean", "soybean"),
    "soy": ("soybean", "soybean"),
}


@dataclass(frozen=True, slots=True)
class LotWords:
    """What a record's words say of the goods beside gluten; `parts` as said, with their share.

    `is_complete` is True where the parts are all there is; `animal` is None where not said.
    """

    may_contain: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()
    is_complete: bool = False
    animal: str | None = None
    says_clean_oats: bool = False


@cache
def _meanings() -> tuple[Row, ...]:
    return load("lot_words.csv", WORD_COLUMNS)


@lru_cache(maxsize=1024)
def lot_words(lot: Lot) -> LotWords:
    """Read the words of a lot's specification; other evidence names no parts.

    >>> words = lot_words(Lot("L", "chocolate", "specification", notes="soya lecithin; may "
    ...     "contain milk, nuts"))
    >>> words.parts, words.may_contain
    (('soya lecithin',), ('milk', 'nuts'))
    """
    may: list[str] = []
    parts: list[str] = []
    seen = {row.text("means"): row for row in _meanings() if row.text("words") in _folded(lot)}
    for clause in _CLAUSES.split(_folded(lot)):
        warned = _after(clause, "may-contain")
        if warned is not None:
            may += _listed(warned)
        elif lot.evidence == "specification" or _after(clause, "part") is not None:
            parts += _parts_of(clause)
    animal = _animal(parts)
    listed = lot.ingredients
    return LotWords(
        may_contain=tuple(may),
        parts=listed if listed is not None else tuple(parts),
        is_complete=listed is not None or "complete" in seen,
        animal=animal,
        says_clean_oats="clean-oats" in seen,
    )


def _folded(lot: Lot) -> str:
    return " ".join(lot.notes.casefold().split())


def _after(clause: str, meaning: str) -> str | None:
    """What follows the words of a meaning, where a clause begins with them."""
    for row in _meanings():
        words = row.text("words")
        if row.text("means") == meaning and clause.startswith(words):
            return clause.removeprefix(words).strip()
    return None


def _parts_of(clause: str) -> list[str]:
    found = _after(clause, "part")
    words = clause if found is None else found
    return [part for part in _listed(words) if not _TRADE.match(part) and not _is_closing(part)]


def _is_closing(part: str) -> bool:
    return any(r.text("means") == "complete" and r.text("words") == part for r in _meanings())


def _listed(words: str) -> list[str]:
    return [part.strip(" .") for part in _LIST.split(words) if part.strip(" .")]


def _animal(parts: list[str]) -> str | None:
    for row in _meanings():
        if row.text("means") == "animal" and any(row.text("words") in p.split() for p in parts):
            return row.text("value")
    return None


def without_share(part: str) -> str:
    """A part's own words without its share: `3 % maize starch` is maize starch."""
    return _SHARE.sub("", part)


def allergens_said(words: str) -> tuple[Allergen, ...]:
    """Allergens of a word of a record; a word that means none known is unknown, never none."""
    general = _GENERAL.get(words.casefold())
    if general is not None:
        us, eu = general
        return (Allergen("contains", us, eu, "declared", "supplier-sheet"),)
    return allergens_of(find(without_share(words)))


def says_gluten(lot: Lot) -> bool:
    """Whether a lot's goods or its record's words name wheat, rye or barley, or a trace of them."""
    words = lot_words(lot)
    said = (lot.ingredient, *words.may_contain, *words.parts)
    return any(_is_gluten_grain(each) for each in said)


def _is_gluten_grain(said: str) -> bool:
    plain = without_share(said).casefold()
    words = re.split(r"[\s,]+", plain)
    if "free" in words:
        return False
    grains = ("wheat", "rye", "barley", "spelt", "gluten", "triticale", "malt")
    return any(grain in words for grain in grains) or names_gluten_grain(find(plain))
