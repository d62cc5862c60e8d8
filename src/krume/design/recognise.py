"""Which family a formula belongs to: as the person says it, else read from name and lines."""

from dataclasses import dataclass
from functools import cache

from krume.design.bands import families
from krume.design.formula import Formula
from krume.design.shares import Sums
from krume.evidence import figures

_SEPARATE = ("separat", "whites", "yolks", "eiweiß", "eischnee", "eigelb", "getrennt")
_FOAMS = ("separated", "genoise")
_ROLL = (" roll", "rolled", "einrollen", "aufrollen")


@dataclass(frozen=True, slots=True)
class FamilyGuess:
    """A family and how it was come by: `stated`, `name`, `lines`, or `unknown` with no key.

    `nut` is a foam cake, stated as such, that has so many nuts that it is judged as a nut sponge.
    """

    key: str | None
    basis: str


def family_of(formula: Formula, sums: Sums) -> FamilyGuess:
    """Family of a formula; what nothing points to stays unknown."""
    if formula.family is not None:
        stated = formula.family_basis if formula.family_basis != "unknown" else "stated"
        key = _stated(formula.family)
        if key in _FOAMS and _has_many_nuts(sums):
            return FamilyGuess("nut", "nut")
        return FamilyGuess(key, stated if key else "unknown")
    if _is_cream(formula, sums):
        key = _cream(sums)
        return FamilyGuess(key, "lines" if key else "unknown")
    if _has_many_nuts(sums) and not _is_creamed(sums):
        return FamilyGuess("nut", "lines")
    named = _named(formula.name or "")
    if named is not None:
        return FamilyGuess(named, "name")
    key = _batter(formula, sums)
    return FamilyGuess(key, "lines" if key else "unknown")


@cache
def _stated(words: str) -> str | None:
    """Family by its key or by a name people give it."""
    folded = words.strip().casefold()
    return next((each.key for each in families() if folded in (each.key, *each.words)), None)


@cache
def limit(key: str) -> float:
    """Limit of `balance.csv`, in the unit of its row."""
    return figures("balance.csv")[key].value


def _has_many_nuts(sums: Sums) -> bool:
    nut = sums.total("nut").best
    return nut > 0 and 100 * nut >= limit("nut-basis") * (sums.total("flour").best + nut)


def _is_creamed(sums: Sums) -> bool:
    """Whether a batter is carried by fat and sugar rather than by an egg foam."""
    whole = sums.total("flour").best + sums.total("nut").best
    return 100 * sums.total("added_fat").best >= limit("butter-least-fat") * whole


@cache
def _names() -> tuple[tuple[str, str], ...]:
    pairs = [
        (word, each.key) for each in families() if each.kind == "batter" for word in each.words
    ]
    return tuple(sorted(pairs, key=lambda pair: (-len(pair[0]), pair[0])))


def _named(name: str) -> str | None:
    folded = name.casefold()
    return next((key for word, key in _names() if word in folded), None)


def _batter(formula: Formula, sums: Sums) -> str | None:
    basis = sums.total("flour").best
    if _has_many_nuts(sums):
        basis += sums.total("nut").best
    if basis <= 0:
        return None

    def percent(name: str) -> float:
        return 100 * sums.total(name).best / basis

    egg, fat = percent("egg"), percent("added_fat")
    is_sheet = formula.tin is not None and formula.tin.shape == "sheet"
    if egg <= limit("tart-most-egg") and percent("butter") >= limit("tart-least-butter"):
        return "tart"
    if egg <= limit("butter-most-egg") and fat >= limit("butter-least-fat"):
        return "butter"
    if egg < limit("foam-least-egg"):
        return None
    if sums.total("white_alone").best == sums.total("egg").best and fat == 0:
        return "angel"
    separated = _is_separated(formula, sums)
    rich = fat >= limit("chiffon-least-fat")
    if separated and rich and percent("liquid") >= limit("chiffon-least-liquid"):
        return "chiffon"
    if is_sheet and _says(formula, _ROLL):
        return "roulade"
    return "separated" if separated else "genoise"


def _is_separated(formula: Formula, sums: Sums) -> bool:
    if sums.total("white_alone").best > 0 and sums.total("yolk_alone").best > 0:
        return True
    if any("separat" in line.read.casefold() for line in formula.lines):
        return True
    return not formula.steps or _says(formula, _SEPARATE)


def _says(formula: Formula, words: tuple[str, ...]) -> bool:
    said = " ".join((formula.name or "", formula.makes or "", *formula.steps)).casefold()
    return any(word in said for word in words)


def _is_cream(formula: Formula, sums: Sums) -> bool:
    """Whether nothing of it is baked: no tin, oven or baked line, and starch at most for flour."""
    if formula.tin or formula.oven or formula.baked or formula.core_c or formula.bake_min:
        return False
    only_starch = sums.total("flour").best == sums.total("starch").best
    return only_starch and not _nuts_carry(sums) and not sums.total("baking_powder").best


def _nuts_carry(sums: Sums) -> bool:
    """Whether nuts may be what is baked: not without an egg, nor stirred into cream."""
    return bool(sums.total("nut").best and sums.total("egg").best and not sums.total("cream").best)


def _cream(sums: Sums) -> str | None:
    def has(*names: str) -> bool:
        return all(sums.total(name).high > 0 for name in names)

    butter, others = sums.total("butter").best, sums.all.best - sums.total("butter").best
    if has("starch", "milk") and has("egg_yolk"):
        if has("cream"):
            return "custard-lightened"
        return "custard-buttercream" if butter >= others / 2 else "custard"
    if has("white_alone", "butter", "sugar"):
        return "cooked-white-buttercream"
    if has("chocolate", "cream") and not has("gelatine"):
        return "ganache"
    if has("fruit", "gelatine"):
        return "fruit-mousse" if has("cream") else "jelly"
    if has("cream", "gelatine"):
        return "set-cream"
    return "syrup" if has("sugar", "water") and not has("gelatine") else None
