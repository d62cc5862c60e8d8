"""What goes into a product at mixing, and what it weighs finished: the ground of a label."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from krume.base import NotFoundError
from krume.build import Batch, Torte
from krume.design import Formula, Line, balance, family
from krume.pantry import find, ingredient, is_not_food
from krume.properties import constants
from krume.size import area_cm2

_MM_PER_CM = 10
_DUST_G = 0.05
_SPIRIT = "spirit"


@dataclass(frozen=True, slots=True)
class Used:
    """Goods of one kind in a product: grams at mixing, and the formulas they come in by.

    `key` is None where the pantry has no row; `mass_g` is None where one line has no mass.
    """

    name: str
    key: str | None
    label_name: str
    role: str
    mass_g: float | None
    of: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ProductPart:
    """One formula in a product, or goods used as they are bought: what of it goes in at mixing.

    `finished_g` is what it weighs in the product, None where that is not known.
    """

    name: str
    title: str
    used: tuple[Used, ...]
    finished_g: float | None

    @property
    def mixed_g(self) -> float | None:
        """Grams of everything in it at mixing; None when a line has no mass."""
        return _sum(each.mass_g for each in self.used)


@dataclass(frozen=True, slots=True)
class Product:
    """A formula or a torte as the buyer gets it. `families` are those of its formulas, by name.

    `finished_g` is what is sold, from the planned or weighed bake, None where that is not said.
    `parts` are its formulas one by one; `not_food` is what stands beside the food: boards, picks.
    `called` are names it has in a book beside its own.
    """

    name: str
    kind: str
    used: tuple[Used, ...]
    finished_g: float | None
    finished_status: str
    families: Mapping[str, str | None]
    slices: tuple[int, ...] = ()
    parts: tuple[ProductPart, ...] = ()
    not_food: tuple[str, ...] = ()
    called: tuple[str, ...] = ()

    @property
    def mixed_g(self) -> float | None:
        """Grams of everything at mixing; None when a line has no mass."""
        return _sum(each.mass_g for each in self.used)


def product_of_formula(name: str, formula: Formula) -> Product:
    """A formula alone as a product: the whole bake, or the whole cream."""
    kind = family_key(formula)
    eaten, not_food = _eaten(_used(name, formula.lines, _mixed_share(formula, kind)))
    used = _merged(eaten)
    finished, status = _finished(formula, kind)
    if not _can_be(finished, _sum(each.mass_g for each in used)):
        finished, status = None, "unknown"
    title = _title(formula, name)
    return Product(
        name=title,
        kind="formula",
        used=used,
        finished_g=finished,
        finished_status=status,
        families={name: kind},
        parts=(ProductPart(name, title, used, finished),),
        not_food=not_food,
        called=(name,),
    )


def product_of_torte(torte: Torte, formulas: Mapping[str, Formula], *, status: str) -> Product:
    """A torte as a product: of each formula only what goes in, at mixing.

    Goods that no formula makes (fruit, nuts, a bought sheet) stand in it as they are bought.
    """
    parts: list[ProductPart] = []
    not_food: tuple[str, ...] = ()
    finished = torte.mass_g
    for batch in torte.batches:
        eaten, beside = _eaten(_used_of_batch(batch, formulas.get(batch.name)))
        not_food += beside
        if not eaten and finished is not None:
            finished -= batch.needed_g or 0.0
        title = " ".join(batch.title.split())
        if eaten:
            parts.append(ProductPart(batch.name, title, _merged(eaten), batch.needed_g))
    return Product(
        name=torte.name,
        kind="torte",
        used=_merged([each for part in parts for each in part.used]),
        finished_g=finished,
        finished_status=status,
        families={name: family_key(formula) for name, formula in formulas.items()},
        slices=tuple(each.count for each in torte.slices),
        parts=tuple(parts),
        not_food=tuple(dict.fromkeys(not_food)),
    )


def _used_of_batch(batch: Batch, formula: Formula | None) -> list[Used]:
    if formula is None:
        return [_bought(batch)]
    share = batch.factor
    if batch.kind == "cake":
        whole = _mixed_share(formula, family_key(formula))
        share = None if share is None or whole is None else share * whole
    return _used(batch.name, formula.lines, share)


def _bought(batch: Batch) -> Used:
    """Goods of a torte that no formula makes; what the pantry does not know stays unknown."""
    words = " ".join(batch.title.split())
    key = find(words).key
    if key is None:
        return Used(words, None, words, _role(words), batch.needed_g, (batch.name,))
    goods = ingredient(key)
    return Used(words, key, goods.label_name, goods.role, batch.needed_g, (batch.name,))


def _eaten(used: list[Used]) -> tuple[list[Used], tuple[str, ...]]:
    """What of the lines is food, and the names of what is not: boards, ribbons, picks."""
    beside = [each for each in used if each.key is None and is_not_food(each.name)]
    return [each for each in used if each not in beside], tuple(each.name for each in beside)


def family_key(formula: Formula) -> str | None:
    """Family of a formula; a text that only says cream is told apart by what is in it."""
    found = balance(formula).family
    return found if found is not None else balance(replace(formula, family=None)).family


def _title(formula: Formula, name: str) -> str:
    return " ".join((formula.name or name).split())


def _can_be(finished_g: float | None, mixed_g: float | None) -> bool:
    """Whether a bake of this mass can come of what goes in: it gains nothing, nor dries away."""
    if finished_g is None or mixed_g is None:
        return True
    most = constants("declared.csv")["loss-most-pct"]
    return mixed_g * (1 - most / 100) <= finished_g <= mixed_g + _DUST_G


def _used(name: str, lines: Iterable[Line], share: float | None) -> list[Used]:
    return [_use(name, line, share) for line in lines]


def _use(name: str, line: Line, share: float | None) -> Used:
    mass = None if line.mass_g is None or share is None else line.mass_g * share
    words = line.name or line.read.strip()
    try:
        goods = None if line.ingredient is None else ingredient(line.ingredient)
    except NotFoundError:
        goods = None
    if goods is None:
        return Used(words, None, words, _role(words), mass, (name,))
    return Used(words, goods.key, goods.label_name, goods.role, mass, (name,))


def _role(words: str) -> str:
    """Role of goods without a row: of a drink with alcohol it is known, though not how much."""
    good = find(words).good
    return _SPIRIT if good is not None and good.kind == _SPIRIT else ""


def _merged(found: list[Used]) -> tuple[Used, ...]:
    """Goods of one kind together, heaviest first; one without a mass makes its kind unknown."""
    kinds: dict[tuple[str, str], list[Used]] = {}
    for each in found:
        # A purée and the fruit itself share a row of the pantry, but not a need of a record; oil
        # shares the row of one oil, and may be another.
        told_apart = each.key is None or each.role == "fruit" or find(each.name).wanted
        name = each.name.casefold() if told_apart else ""
        kinds.setdefault((each.key or "", name), []).append(each)
    merged = [
        replace(
            same[0],
            mass_g=_sum(each.mass_g for each in same),
            of=tuple(dict.fromkeys(name for each in same for name in each.of)),
        )
        for same in kinds.values()
    ]
    return tuple(sorted(merged, key=lambda u: (-(u.mass_g or 0.0), u.label_name)))


def _sum(values: Iterable[float | None]) -> float | None:
    known: list[float] = []
    for value in values:
        if value is None:
            return None
        known.append(value)
    return math.fsum(known)


def _mixed_share(formula: Formula, kind: str | None) -> float | None:
    """Share of the written lines that is in the bake: all, or of a shell what its sheet weighs."""
    baked = formula.baked
    if baked is None or baked.thickness_mm is None:
        return 1.0
    total = _sum(line.mass_g for line in formula.lines)
    raw = _shell_g(formula, kind)
    return None if raw is None or total is None or raw > total else raw / total


def _shell_g(formula: Formula, kind: str | None) -> float | None:
    """Dough of a shell, floor and wall rolled to one thickness [g]."""
    tin, baked = formula.tin, formula.baked
    density = None if kind is None else family(kind).sg_plan
    if tin is None or baked is None or density is None or tin.diameter_cm is None:
        return None
    floor = area_cm2(tin)
    if floor is None or baked.height_mm is None or baked.thickness_mm is None:
        return None
    wall = math.pi * tin.diameter_cm * baked.height_mm / _MM_PER_CM
    return (floor + wall) * baked.thickness_mm / _MM_PER_CM * density


def _finished(formula: Formula, kind: str | None) -> tuple[float | None, str]:
    """What is sold, with its status: the bake as planned or weighed, or a cream as mixed."""
    if formula.baked is not None:
        return formula.baked.mass_g, formula.baked.status
    is_cream = kind is not None and family(kind).kind == "cream"
    if is_cream and formula.oven is None and formula.tin is None:
        return _sum(line.mass_g for line in formula.lines), "derived"
    return None, "unknown"
