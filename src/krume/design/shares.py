"""What each line of a formula counts as, and what the lines come to by class."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import lru_cache

from krume.base import Interval, NotFoundError
from krume.design.formula import Line
from krume.pantry import Ingredient, egg_size, find, ingredient

PLANNING_EGG = "eu-m"
_ROLE_OF_GOOD = {
    "flour": ("flour",),
    "starch": ("flour", "starch"),
    "nut": ("nut", "nut_fat"),
    "liquid": ("liquid",),
    "flavour": ("flavour",),
    "sugar": ("sugar",),
    "spice": ("flavour",),
}
_DRY_LIQUIDS = ("dry", "dried", "powder")


@dataclass(frozen=True, slots=True)
class Counted:
    """One class a line counts into; `factor` is its share of the line's mass, None unknown."""

    name: str
    factor: float | None = 1.0


@dataclass(slots=True)
class Total:
    """Sum of one class [g], with its ends where a line's mass is not settled."""

    low: float = 0.0
    best: float = 0.0
    high: float = 0.0
    is_known: bool = True


_NONE = Total()


@dataclass(slots=True)
class Sums:
    """Sums by class over the lines of a formula.

    `loose` is the sum of lines whose class nobody knows (`unclassed`); when one of them has no
    mass either, it is unknown and so is every figure. `unweighed` are lines of a known class
    without a mass.
    """

    by_class: dict[str, Total] = field(default_factory=dict)
    all: Total = field(default_factory=Total)
    loose: Total = field(default_factory=Total)
    unclassed: list[Line] = field(default_factory=list)
    unweighed: list[Line] = field(default_factory=list)
    egg_each_g: float | None = None
    egg_size_key: str | None = None

    def total(self, name: str) -> Total:
        """Sum of a class; a class no line counts into is nothing, and known."""
        return self.by_class.get(name, _NONE)


def sums(lines: Iterable[Line], *, own: tuple[Ingredient, ...] = ()) -> Sums:
    """Add up lines by class; one's own ingredients go before the packed ones."""
    out = Sums()
    for line in lines:
        low, best, high = _mass(line)
        _add(out.all, low, best, high, 1.0)
        counted = counted_as(line, own=own)
        if counted is None:
            out.unclassed.append(line)
            _add(out.loose, low, best, high, 1.0)
            continue
        if best is None:
            out.unweighed.append(line)
        for each in counted:
            total = out.by_class.get(each.name)
            if total is None:
                total = out.by_class[each.name] = Total()
            _add(total, low, best, high, each.factor)
        if counted and counted[0].name == "egg":
            _note_egg(out, line)
    return out


def _mass(line: Line) -> tuple[float | None, float | None, float | None]:
    if line.mass_g is not None:
        return line.mass_g, line.mass_g, line.mass_g
    spread = line.mass_interval_g
    if spread is None and line.unit == "g" and isinstance(line.amount, Interval):
        spread = line.amount
    return (None, None, None) if spread is None else (spread.low, spread.best, spread.high)


def _add(
    total: Total, low: float | None, best: float | None, high: float | None, factor: float | None
) -> None:
    if low is None or best is None or high is None or factor is None:
        total.is_known = False
        return
    total.low += low * factor
    total.best += best * factor
    total.high += high * factor


def _note_egg(out: Sums, line: Line) -> None:
    if line.egg_size is not None:
        out.egg_size_key = line.egg_size
    whole = line.part in (None, "whole")
    if whole and line.unit == "each" and line.mass_g and isinstance(line.amount, float | int):
        out.egg_each_g = line.mass_g / line.amount if line.amount else None


def counted_as(line: Line, *, own: tuple[Ingredient, ...] = ()) -> tuple[Counted, ...] | None:
    """Classes a line counts into; None when its ingredient is not known."""
    if line.ingredient is None:
        return _counted_words(line.name)
    if own:
        for mine in own:
            if mine.key == line.ingredient:
                return _counted(mine, line.part, line.egg_size)
    return _counted_key(line.ingredient, line.part, line.egg_size)


@lru_cache(maxsize=4096)
def _counted_words(words: str) -> tuple[Counted, ...] | None:
    good = find(words).good
    names = _ROLE_OF_GOOD.get(good.kind) if good is not None else None
    if names is None:
        return None
    return tuple(Counted(name, None if name == "nut_fat" else 1.0) for name in names)


@lru_cache(maxsize=4096)
def _counted_key(key: str, part: str | None, size: str | None) -> tuple[Counted, ...] | None:
    try:
        found = ingredient(key)
    except NotFoundError:
        return None
    return _counted(found, part, size)


def _counted(found: Ingredient, part: str | None, size: str | None) -> tuple[Counted, ...]:
    if found.role == "egg":
        return _egg(found, part, size)
    names = [Counted(found.role), *_flags(found)]
    if found.added_fat_pct is not None and found.role != "nut":
        names.append(Counted("added_fat", found.added_fat_pct / 100))
        fat_g = found.composition.fat_g
        names.append(Counted("packed_fat", None if fat_g is None else fat_g / 100))
    elif found.role == "fat":
        fat_g = found.composition.fat_g
        names.append(Counted("added_fat", None if fat_g is None else fat_g / 100))
        names.append(Counted("packed_fat", None if fat_g is None else fat_g / 100))
    if found.role == "nut":
        fat_g = found.composition.fat_g
        names.append(Counted("nut_fat", None if fat_g is None else fat_g / 100))
    return tuple({each.name: each for each in names}.values())


def _flags(found: Ingredient) -> tuple[Counted, ...]:
    words = found.key.split("-")
    named = (
        ("flour", found.is_flour),
        ("sweet_rice", found.sweet_rice),
        ("butter", found.role == "fat" and "butter" in words and "cocoa" not in words),
        ("liquid", _is_liquid(found, words)),
        ("acid", found.acid and found.leavening != "cream-of-tartar"),
        ("binder", found.binder or found.role == "binder"),
        ("xanthan", "xanthan" in words),
        ("psyllium", "psyllium" in words),
        ("baking_powder", found.leavening == "baking-powder"),
        ("soda", found.leavening == "soda"),
        ("cream_of_tartar", found.leavening == "cream-of-tartar"),
        ("milk", found.role == "dairy" and "milk" in words),
        (
            "cream",
            found.role == "dairy" and words[0] == "cream" and not {"cheese", "sour"} & set(words),
        ),
        ("gelatine", found.role == "gel" and bool({"gelatin", "gelatine"} & set(words))),
    )
    return tuple(Counted(name) for name, holds in named if holds and name != found.role)


def _is_liquid(found: Ingredient, words: list[str]) -> bool:
    wet = found.liquid or found.role in ("liquid", "water")
    return wet and not found.acid and not any(word in _DRY_LIQUIDS for word in words)


def _egg(found: Ingredient, part: str | None, size: str | None) -> tuple[Counted, ...]:
    words = found.key.split("-")
    if "dried" in words or "powder" in words:
        return (Counted("egg", None), Counted("egg_yolk", None), Counted("egg_white", None))
    for name in ("white", "yolk"):
        if part == name or (part in (None, "whole") and name in words):
            return Counted("egg"), Counted(f"egg_{name}"), Counted(f"{name}_alone")
    sized = egg_size(size or PLANNING_EGG)
    white, yolk = sized.white_g.best, sized.yolk_g.best
    return (
        Counted("egg"),
        Counted("egg_yolk", yolk / (white + yolk)),
        Counted("egg_white", white / (white + yolk)),
        Counted("whole_egg"),
    )
