"""The balance: a formula per 100 g of its basis and per egg, against the bands of its family."""

from dataclasses import dataclass, field

from krume.base import Interval, Notice, as_text
from krume.design.bands import Band, Family, bands, family
from krume.design.cream import cream_figures
from krume.design.findings import Finding, finding, near_edge
from krume.design.formula import Formula, Line
from krume.design.ratios import (
    OF_FLOUR,
    PERCENT_KEYS,
    Basis,
    Value,
    basis_of,
    best_of,
    mass,
    percent,
    ratio,
    scaled,
)
from krume.design.recognise import FamilyGuess, family_of, limit
from krume.design.shares import PLANNING_EGG, Sums, sums
from krume.pantry import Ingredient, egg_size
from krume.size import area_cm2

_SIDE_WORDS = (
    *("filling", "cream", "frosting", "icing", "glaze", "topping", "syrup", "coat", "jelly"),
    *("ganache", "sauce", "garnish", "to serve", "to finish", "decorat", "dusting", "soak"),
    *("füllung", "fülle", "creme", "guss", "glasur", "belag", "tränke"),
)
_FLOUR = ("flour",)
_FLOUR_AND_NUT = ("flour", "nut")


@dataclass(frozen=True, slots=True)
class PerEgg:
    """A formula for one egg of the size at hand; `size` is its key, `basis` says how it is known.

    For an angel cake the egg is one white.
    """

    size: str
    basis: str
    egg_g: float
    flour_g: Value
    sugar_g: Value


@dataclass(frozen=True, slots=True)
class Balance:
    """A formula's figures against the usual; None is unknown, an interval is not settled.

    `basis` is what 100 is: `flour` (flours and starches), `flour and nut`, `parts` (of the egg, on
    flour), `none` (flourless: `percent` has no values), or of a cream what its bands stand on.
    `percent` holds percent of the basis; `starch` and `sweet_rice` are always percent of the
    flour; a whole egg counts into `egg_yolk` and `egg_white` by its size. `figures` are the other
    figures by the keys of their bands. `near` are remarks on figures near an edge.
    """

    family: str | None
    family_label: str
    family_basis: str
    basis: str
    basis_g: Value
    total_g: Value
    flour_g: Value
    percent: dict[str, Value]
    sugar_per_egg: Value
    nut_share_pct: Value
    per_egg: PerEgg | None
    figures: dict[str, Value] = field(default_factory=dict)
    findings: tuple[Finding, ...] = ()
    near: tuple[Finding, ...] = ()
    notices: tuple[Notice, ...] = ()
    sources: tuple[str, ...] = ()


def balance(formula: Formula, *, own: tuple[Ingredient, ...] = ()) -> Balance:
    """Balance a formula against the bands of its family; never raises on what was read.

    Lines under a heading of a filling, a coat or the like are left out where a batter stands
    beside them. One's own ingredients go before the packed ones.
    """
    lines, left_out = batter_lines(formula)
    added = sums(lines, own=own)
    guess = family_of(formula, added)
    kind = family(guess.key) if guess.key is not None else None
    if kind is not None and kind.kind == "cream":
        return _cream(formula, kind, guess, added)
    return _batter(formula, kind, guess, added, left_out)


def batter_lines(formula: Formula) -> tuple[tuple[Line, ...], tuple[Line, ...]]:
    """Lines that go into the batter, and those under a heading of a filling, coat or the like."""
    if all(line.section is None for line in formula.lines):
        return formula.lines, ()
    batter = tuple(line for line in formula.lines if not _is_side(line.section))
    aside = tuple(line for line in formula.lines if _is_side(line.section))
    return (batter, aside) if batter else (formula.lines, ())


def _is_side(section: str | None) -> bool:
    return section is not None and any(word in section.casefold() for word in _SIDE_WORDS)


def _batter(
    formula: Formula,
    kind: Family | None,
    guess: FamilyGuess,
    added: Sums,
    left_out: tuple[Line, ...],
) -> Balance:
    basis = _basis(added, kind)
    on_flour = basis if basis.classes == _FLOUR else basis_of(added, "flour", _FLOUR)
    per_100 = {
        key: percent(added, key, on_flour if key in OF_FLOUR else basis) for key in PERCENT_KEYS
    }
    per_egg_sugar = ratio(added, "sugar", "egg_white" if guess.key == "angel" else "egg")
    more = _sheet_figures(formula, added) if guess.key == "roulade" else {}
    figures = per_100 | {"sugar_per_egg": per_egg_sugar} | more
    found, near = _judge(bands(kind.key) if kind else (), figures, added, basis)
    nut_share = percent(added, "nut", basis_of(added, "flour and nut", _FLOUR_AND_NUT))
    return Balance(
        family=guess.key,
        family_label=kind.label if kind else "",
        family_basis=guess.basis,
        basis=basis.name,
        basis_g=_basis_g(added, basis),
        # Of a text without a single line nothing is known: its total is no 0.
        total_g=mass(added) if formula.lines else None,
        flour_g=mass(added, "flour") if formula.lines else None,
        percent=per_100,
        sugar_per_egg=per_egg_sugar,
        nut_share_pct=nut_share,
        per_egg=_per_egg(added, guess.key),
        figures=more,
        findings=found,
        near=near,
        notices=(*_notices(guess, added, basis, left_out), *_packed_fat(added, basis, per_100)),
        sources=_sources(kind),
    )


def _basis(added: Sums, kind: Family | None) -> Basis:
    flour, nut = added.total("flour"), added.total("nut")
    whole = flour.best + nut.best
    many_nuts = nut.best > 0 and 100 * nut.best >= limit("nut-basis") * whole
    if (many_nuts or (kind is not None and kind.key == "nut")) and nut.is_known:
        return basis_of(added, "flour and nut", _FLOUR_AND_NUT)
    if flour.high <= 0 and flour.is_known:
        return basis_of(added, "none", ())
    return basis_of(added, "parts" if kind and kind.basis == "parts" else "flour", _FLOUR)


def _basis_g(added: Sums, basis: Basis) -> Value:
    if basis.name == "none" or not basis.total.is_known or not added.loose.is_known:
        return None
    low, high = basis.total.low, basis.total.high + added.loose.high
    return basis.total.best if low == high else Interval(low, basis.total.best, high)


def _judge(
    limits: tuple[Band, ...], figures: dict[str, Value], added: Sums, basis: Basis | None
) -> tuple[tuple[Finding, ...], tuple[Finding, ...]]:
    found: list[Finding] = []
    near: list[Finding] = []
    for each in limits:
        value = figures.get(each.quantity)
        outside = finding(each, value, sums=added, basis=basis)
        if outside is not None:
            found.append(outside)
        elif (remark := near_edge(each, value)) is not None:
            near.append(remark)
    return tuple(found), tuple(near)


def _sheet_figures(formula: Formula, added: Sums) -> dict[str, Value]:
    area = area_cm2(formula.tin) if formula.tin is not None else None
    baked = formula.baked.height_mm if formula.baked is not None else None
    on_sheet = scaled(mass(added), 1 / area) if area else None
    return {"batter_g_cm2": on_sheet, "baked_mm": baked}


def _per_egg(added: Sums, key: str | None) -> PerEgg | None:
    sized = egg_size(added.egg_size_key or PLANNING_EGG)
    how = "line" if added.egg_size_key else "planning size"
    if key == "angel":
        egg_g, eggs = sized.white_g.best, added.total("egg_white")
    else:
        egg_g, eggs = added.egg_each_g or sized.whole_g.best, added.total("egg")
    if not eggs.is_known or eggs.best <= 0:
        return None
    name = "egg_white" if key == "angel" else "egg"
    return PerEgg(
        size=sized.key,
        basis=how,
        egg_g=egg_g,
        flour_g=scaled(ratio(added, "flour", name), egg_g),
        sugar_g=scaled(ratio(added, "sugar", name), egg_g),
    )


def _notices(
    guess: FamilyGuess, added: Sums, basis: Basis, left_out: tuple[Line, ...]
) -> list[Notice]:
    notices: list[Notice] = []
    if guess.key is None:
        text = "Family unknown: no band is judged. Type a line such as: Family: separated"
        notices.append(Notice("family-unknown", text))
    elif guess.basis == "nut":
        text = "With this much nut it is judged as a nut sponge, on flour and nut."
        notices.append(Notice("judged-as-nut", text))
    elif guess.basis in ("name", "lines"):
        text = f"Taken as {guess.key} from its {guess.basis}. Another: type a line Family:"
        notices.append(Notice("family-read", text))
    if basis.name == "none":
        text = "There is no flour in it: per 100 g flour is not defined. Per egg is shown."
        notices.append(Notice("flourless", text))
    if basis.name == "flour and nut":
        share = f"{as_text(limit('nut-basis'))} %"
        text = f"100 is flour and nut together: nut makes {share} of them or more."
        notices.append(Notice("basis-flour-and-nut", text))
    if left_out:
        text = f"Not in the balance: the {len(left_out)} lines of {_headings(left_out)}."
        notices.append(Notice("left-out", text))
    return notices + _unknowns(added)


def _headings(lines: tuple[Line, ...]) -> str:
    return ", ".join(dict.fromkeys(f"“{line.section}”" for line in lines))


def _unknowns(added: Sums) -> list[Notice]:
    notices = [
        Notice(
            "class-unknown",
            f"“{line.name}” is neither flour, starch, sugar, fat, egg nor anything else known: "
            "figures it could move are shown as a range, or not at all.",
            f"line {line.number}",
        )
        for line in added.unclassed
    ]
    notices += [
        Notice(
            "mass-unknown",
            f"“{line.read}” has no mass: figures it counts into are not known.",
            f"line {line.number}",
        )
        for line in added.unweighed
    ]
    return notices


def _packed_fat(added: Sums, basis: Basis, per_100: dict[str, Value]) -> tuple[Notice, ...]:
    """Say it where the fat of the packed composition would print another figure."""
    taken = best_of(per_100["added_fat"])
    packed = best_of(percent(added, "packed_fat", basis))
    if taken is None or packed is None or round(taken, 1) == round(packed, 1):
        return ()
    text = (
        f"Added fat {as_text(taken, 1)} % takes each fat at its planning share; by the packed "
        f"compositions it is {as_text(packed, 1)} %."
    )
    return (Notice("packed-composition", text),)


def _cream(formula: Formula, kind: Family, guess: FamilyGuess, added: Sums) -> Balance:
    figures = cream_figures(kind.key, formula, added)
    found, near = _judge(bands(kind.key), figures, added, None)
    return Balance(
        family=kind.key,
        family_label=kind.label,
        family_basis=guess.basis,
        basis=kind.basis,
        basis_g=None,
        total_g=mass(added),
        flour_g=mass(added, "flour"),
        percent=dict.fromkeys(PERCENT_KEYS),
        sugar_per_egg=None,
        nut_share_pct=None,
        per_egg=None,
        figures=figures,
        findings=found,
        near=near,
        notices=tuple(_notices(guess, added, Basis("", (), added.all), ())),
        sources=_sources(kind),
    )


def _sources(kind: Family | None) -> tuple[str, ...]:
    if kind is None:
        return ()
    return tuple(dict.fromkeys(each.source for each in bands(kind.key)))
