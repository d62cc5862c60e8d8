"""What sets the creams of a torte: gelatine by both rules, its water, and alcohol it can take."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from krume.base import Clash, Notice, Option, Problem, as_text
from krume.build.materials import Working, working
from krume.build.torte import Batch, ComponentFormula, Gel
from krume.properties import LeafSwap, alcohol_pct, in_leaves, most_spirit_g, setting

Parts = Mapping[str, ComponentFormula]
_DUST = 1e-9
_HOT = "melt it in what is hot and no longer boils"
_FOLDED = frozenset({"set-cream", "fruit-mousse"})


@dataclass(frozen=True, slots=True)
class GelUse:
    """What sets one cream, for all of it that is made; None is not known.

    `water_g` is what a powder blooms in. `leaves` hold it by both rules in use, which disagree.
    """

    name: str
    title: str
    label: str
    mass_g: float
    strength_bloom: float | None
    is_leaf: bool
    water_g: float | None
    leaves: tuple[LeafSwap, ...]
    steps: str
    status: str

    @property
    def strong(self) -> str:
        """Its strength in words."""
        if self.strength_bloom is None:
            return "strength not written"
        return f"{as_text(self.strength_bloom, 0)} bloom"

    @property
    def lines(self) -> tuple[str, ...]:
        """It in sentences, as screen, page and paper say it."""
        return tuple(_lines(self))


def gels(batches: Iterable[Batch], parts: Parts) -> tuple[GelUse, ...]:
    """What sets each cream that is made."""
    found = []
    for batch in batches:
        gel = parts[batch.name].gel
        if gel is not None and batch.batches is not None and gel.mass_g is not None:
            kind = working(parts[batch.name].family)
            found.append(_use(batch, gel, gel.mass_g * batch.batches, kind))
    return tuple(found)


def _use(batch: Batch, gel: Gel, mass_g: float, kind: Working) -> GelUse:
    rules = setting(gel.key)
    swaps = () if gel.strength_bloom is None else in_leaves(mass_g, from_bloom=gel.strength_bloom)
    water = None
    if rules.water_ratio is not None and not gel.is_leaf:
        water = rules.water_ratio * mass_g
    return GelUse(
        batch.name, batch.title, rules.label, mass_g, gel.strength_bloom, gel.is_leaf, water, swaps,
        _steps(gel, mass_g, water, kind), rules.status,
    )  # fmt: skip


def _steps(gel: Gel, mass_g: float, water_g: float | None, kind: Working) -> str:
    """How it is worked, in the order of the hands."""
    rules = setting(gel.key)
    if gel.key != "gelatine":
        boil = f"Boil it {as_text(rules.boil_min or 0, 0)} min in what is liquid"
        return f"{boil}; it sets from about {as_text(rules.sets_c or 0, 0)} °C: pour it hotter."
    minutes = as_text(rules.bloom_min or 0, 0)
    first = f"Soak the leaves {minutes} min in plenty of cold water and press them out"
    if not gel.is_leaf:
        first = (
            f"Bloom {as_text(mass_g, 1)} g {minutes} min in {as_text(water_g or 0, 0)} g of cold "
            "water"
        )
    melt = f"melt at {as_text(rules.melt_low_c or 0)} to {as_text(rules.melt_high_c or 0)} °C"
    if kind.use_low_c is not None and kind.use_high_c is not None and kind.gels:
        at = f"{as_text(kind.use_low_c)} to {as_text(kind.use_high_c)} °C"
        return (
            f"{first}; melt it in what is hot and no longer boils; fold in what is whipped at {at}."
        )
    if kind.family not in _FOLDED:
        return f"{first}; melt it in what is hot and no longer boils; pour it cooled to 25 °C."
    return (
        f"{first}; {melt}; stir a third of the cream's base into it, then it into the rest, which "
        "is above 20 °C; fold in what is whipped when it begins to thicken."
    )


def gel_asked(part: ComponentFormula) -> tuple[Problem, ...]:
    """Question about a powder that has nothing to bloom in."""
    gel = part.gel
    if gel is None or gel.is_leaf or gel.key != "gelatine" or gel.has_liquid:
        return ()
    times = setting("gelatine").water_ratio or 0
    grams = "" if gel.mass_g is None else as_text(gel.mass_g * times, 0)
    line = f"{grams or '40'} g water"
    ask = (
        f"In what does the gelatine of {part.name} bloom? Nothing in it is liquid, and dry powder "
        f"stays grit. It takes {as_text(times)} times its grams of water. Add to it: {line}"
    )
    where = f"{part.name} after line {gel.line}"
    return (Problem("gelatine-without-water", where, part.title, ask, (Option(line, line),)),)


def gel_clashes(parts: Iterable[ComponentFormula]) -> tuple[Clash, ...]:
    """Creams with more alcohol than what sets them takes, with the most that sets."""
    return tuple(clash for part in parts for clash in _too_strong(part))


def _too_strong(part: ComponentFormula) -> tuple[Clash, ...]:
    gel = part.gel
    limit = None if gel is None else setting(gel.key).alcohol_pct
    if gel is None or limit is None or gel.alcohol_g is None or gel.water_g is None:
        return ()
    share = alcohol_pct(gel.alcohol_g, water_g=gel.water_g)
    if share <= limit + _DUST or gel.spirit_g <= 0:
        return ()
    most = most_spirit_g(
        limit_pct=limit,
        water_g=gel.water_g - gel.spirit_water_g,
        spirit_alcohol_pct=100 * gel.alcohol_g / gel.spirit_g,
        spirit_water_pct=100 * gel.spirit_water_g / gel.spirit_g,
    )
    rules = setting(gel.key)
    has, needs = f"{as_text(share, 1)} % alcohol", f"at most {as_text(limit)} %"
    least = int(most)
    said = (
        f"Of what is liquid in {part.title} {has.replace(' alcohol', '')} is alcohol, and "
        f"{rules.label} sets up to about {as_text(limit)} % (from memory). Nearest: {least} g of "
        f"{gel.spirit} in place of {as_text(gel.spirit_g, 0)} g."
    )
    return (Clash(f"the {rules.label} of {part.name}", f"{part.name}: {gel.spirit}", needs, has,
                  said),)  # fmt: skip


def gel_notices(parts: Iterable[ComponentFormula]) -> tuple[Notice, ...]:
    """What of a gel is not known: its strength, or what alcohol does to it."""
    found: list[Notice] = []
    for part in parts:
        gel = part.gel
        if gel is None:
            continue
        if gel.key == "gelatine" and gel.strength_bloom is None:
            text = (
                f"How strong the gelatine of {part.name} is is not written, so no other can be "
                "told for it. Its bloom number or grade stands on the packet: type it behind, "
                "such as “, 200 bloom” or “silver”."
            )
            found.append(Notice("bloom-missing", text, f"{part.name} line {gel.line}"))
        no_limit = setting(gel.key).alcohol_pct is None
        if gel.spirit_g > 0 and (no_limit or gel.alcohol_g is None):
            text = (
                f"Whether {gel.spirit} lets the {setting(gel.key).label} of {part.name} set is "
                "not known. Try a spoonful first."
            )
            found.append(Notice("alcohol-not-known", text, f"{part.name} line {gel.line}"))
    return tuple(found)


def _lines(use: GelUse) -> Iterator[str]:
    yield f"{use.title}: {as_text(use.mass_g, 2)} g {use.label}, {use.strong}. {use.steps}"
    if use.leaves:
        each = "; ".join(_leaf(swap) for swap in use.leaves)
        yield f"In leaves, by the root rule or the ratio rule: {each}"


def _leaf(swap: LeafSwap) -> str:
    leaf = swap.leaf
    root = f"{as_text(swap.by_root_count, 1)} ({as_text(swap.by_root_g, 2)} g)"
    ratio = f"{as_text(swap.by_ratio_count, 1)} ({as_text(swap.by_ratio_g, 2)} g)"
    name = leaf.label.removesuffix(" leaf")
    bloom, grams = as_text(leaf.strength_bloom), as_text(leaf.leaf_g)
    return f"{name} of {bloom} bloom and {grams} g, {root} or {ratio}"
