"""How much of each formula a torte needs, in batches, and how the torte is cut."""

import math
from collections.abc import Iterable, Mapping
from types import MappingProxyType

from krume.build.figures import figure
from krume.build.plan_lines import TortePlan
from krume.build.torte import (
    Batch,
    ComponentFormula,
    Cover,
    EggsLeft,
    EggsNeeded,
    Layer,
    Slice,
    Torte,
    added,
)
from krume.pantry import egg_size

_DUST = 1e-9


def batches(
    layers: tuple[Layer, ...],
    parts: Mapping[str, ComponentFormula],
    cakes: Mapping[str, int],
    wastes_g: Mapping[str, float] = MappingProxyType({}),
) -> tuple[Batch, ...]:
    """Batches of each formula, in the order in which it is needed from the bottom up.

    `wastes_g` are grams of a formula that are made and stay in bag, bowl or on the board.
    """
    baked = [x.of for x in layers if x.role == "piece"]
    spread = [x.of for x in layers if x.role != "piece"]
    return tuple(
        _goods(parts[name], _needed_g(layers, name, is_cake=False))
        if parts[name].is_goods
        else _batch(
            parts[name],
            _needed_g(layers, name, is_cake=name in baked),
            cakes.get(name),
            wastes_g.get(name, 0.0),
        )
        for name in dict.fromkeys((*baked, *spread))
    )


def _needed_g(layers: tuple[Layer, ...], name: str, *, is_cake: bool) -> float | None:
    of = [x for x in layers if x.of == name]
    return added(x.mass_g for x in of if (x.role == "piece") == is_cake)


def wastes_of(
    plan: TortePlan, layers: tuple[Layer, ...], covers: tuple[Cover, ...]
) -> dict[str, float]:
    """Grams by formula that stay in bag and bowl, and what is cut away of a cover.

    A share is of what is made: of 100 g with 5 % waste 95 g go in.
    """
    shares = {c.number: c.waste_pct for c in plan.components if c.waste_pct is not None}
    found: dict[str, float] = {}
    for layer in layers:
        usual = plan.waste_pct if layer.role in ("filling", "top", "coat") else None
        share = shares.get(layer.line, usual) or 0.0
        found[layer.of] = found.get(layer.of, 0.0) + (layer.mass_g or 0.0) * share / (100 - share)
    names = {layer.line: layer.of for layer in layers}
    for cover in covers:
        name = names[cover.line]
        found[name] = found.get(name, 0.0) + (cover.cut_away_g or 0.0)
    return found


def _goods(part: ComponentFormula, needed_g: float | None) -> Batch:
    """What is bought and used as it is: weighed out, nothing over."""
    batch_g = part.total_g
    share = None if needed_g is None or not batch_g else needed_g / batch_g
    return Batch(
        part.name, part.title, "goods", needed_g, batch_g, share, share, needed_g,
        None if needed_g is None else 0.0,
    )  # fmt: skip


def _batch(
    part: ComponentFormula, needed_g: float | None, cakes: int | None, waste_g: float
) -> Batch:
    batch_g = part.total_g if cakes is None else part.baked_mass_g
    factor = None
    if needed_g is not None and batch_g is not None and batch_g > 0:
        factor = needed_g / batch_g
    count = float(cakes) if cakes is not None else _made(_with(factor, waste_g, batch_g))
    made_g = None if count is None or batch_g is None else count * batch_g
    over_g = None if made_g is None or needed_g is None else made_g - needed_g - waste_g
    return Batch(
        name=part.name,
        title=part.title,
        kind="cream" if cakes is None else "cake",
        needed_g=needed_g,
        batch_g=batch_g,
        factor=factor,
        batches=count,
        made_g=made_g,
        over_g=over_g,
        waste_g=waste_g,
    )


def _with(factor: float | None, waste_g: float, batch_g: float | None) -> float | None:
    return factor if factor is None or not batch_g else factor + waste_g / batch_g


def _made(factor: float | None) -> float | None:
    """Batches that are made: halves, up to the next one that is enough."""
    if factor is None:
        return None
    step = figure("batch-step").value
    return max(1, math.ceil(factor / step - _DUST)) * step


def slices(torte: Torte, counts: tuple[int, ...]) -> tuple[Slice, ...]:
    """The torte cut into each number of slices asked for."""
    return tuple(_slice(torte, count) for count in counts)


def _slice(torte: Torte, count: int) -> Slice:
    mass = None if torte.mass_g is None else torte.mass_g / count
    if torte.kind == "roll":
        width = None if torte.roll_width_cm is None else torte.roll_width_cm * 10 / count
        return Slice(count, mass, None, None, width, width)
    across = None if torte.outline is None else torte.outline.diameter_cm
    if across is None:
        return Slice(count, mass, None, None, None, torte.plate_mm)
    return Slice(count, mass, math.pi * across / count, 360.0 / count, None, torte.plate_mm)


def eggs(found: Iterable[Batch], parts: Mapping[str, ComponentFormula]) -> EggsNeeded:
    """Eggs to crack for the batches that are made, whole eggs and parts together.

    A yolk and a white that are both wanted come from one egg; a part egg is a whole one cracked.
    """
    wanted: dict[str, dict[str, float]] = {}
    for batch in found:
        for use in parts[batch.name].eggs:
            of_size = wanted.setdefault(use.size, {"whole": 0.0, "yolk": 0.0, "white": 0.0})
            of_size[use.part] += use.count * (batch.batches or 0.0)
    cracked = {size: _cracked(of) for size, of in sorted(wanted.items())}
    left = [one for size, of in sorted(wanted.items()) for one in _left(size, of, cracked[size])]
    return EggsNeeded(cracked, tuple(left))


def _cracked(of: Mapping[str, float]) -> int:
    return math.ceil(of["whole"] + max(of["yolk"], of["white"]) - _DUST)


def _left(size: str, of: Mapping[str, float], cracked: int) -> list[EggsLeft]:
    known = egg_size(size)
    apart = cracked - of["whole"]
    found = []
    for part in ("yolk", "white"):
        count = apart - of[part]
        if count > _DUST:
            mass = count * known.part_g(part).best
            found.append(EggsLeft(size, part, count, mass, known.status))
    return found
