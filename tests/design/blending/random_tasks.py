"""Invented tasks: small ones of any kind, and ones like those of a studio."""

from random import Random
from typing import Any

from krume.design import BlendLimit, BlendTask, PropertyLimit

# Protein, fat and fibre in g per 100 g, as flours of such names might have them.
FLOURS = {
    "amaranth": (13.6, 7.0, 6.7),
    "brown rice": (7.2, 2.8, 4.6),
    "buckwheat": (12.6, 3.1, 10.0),
    "chestnut": (6.0, 3.5, 10.0),
    "maize starch": (0.3, 0.1, 0.9),
    "millet": (10.8, 4.3, 3.5),
    "oat": (14.7, 9.1, 6.5),
    "potato starch": (0.1, 0.1, 0.0),
    "quinoa": (14.1, 6.1, 7.0),
    "rice": (6.0, 1.4, 2.4),
    "sorghum": (8.4, 3.3, 6.6),
    "sweet rice": (6.7, 0.6, 0.9),
    "tapioca starch": (0.2, 0.0, 0.9),
    "teff": (13.3, 2.4, 8.0),
}
STARCHES = ("maize starch", "potato starch", "tapioca starch")


def small_task(seed: int) -> BlendTask:
    """Two to five flours, few steps, any limits, ties not rare."""
    draw = Random(seed)  # noqa: S311 - drawing tasks, not keys
    count = draw.choice((2, 3, 4, 5))
    step_g = draw.choice((0.5, 1.0, 1.0, 2.0))
    properties, digits = draw.choice((1, 2, 3, 3, 4)), draw.choice((0, 1, 2))
    rows = [_row(draw, properties, digits) for _ in range(count)]
    if draw.random() < 0.2:
        rows[1] = rows[0]
    names = list("abcde"[:count])
    draw.shuffle(names)
    return BlendTask(
        tuple(names),
        tuple(rows),
        tuple("pqrs"[:properties]),
        tuple(round(draw.uniform(2, 12), digits) for _ in range(properties)),
        total_g=step_g * draw.choice((12, 16) if count == 5 else (12, 20, 24, 40)[: 6 - count]),
        step_g=step_g,
        limits=tuple(_share(draw, count) for _ in range(draw.randrange(4))),
        **_rarer(draw, rows, step_g),
    )


def _row(draw: Random, properties: int, digits: int) -> tuple[float, ...]:
    return tuple(round(draw.uniform(0, 15), digits) for _ in range(properties))


def _share(draw: Random, count: int) -> BlendLimit:
    members = tuple(sorted(draw.sample(range(count), draw.randint(1, count))))
    low = draw.choice((None, 10.0, 20.0, 35.0))
    high = draw.choice((None, (low or 0.0) + draw.choice((0.0, 8.0, 15.0, 30.0))))
    return BlendLimit("share", members, low, high)


def _rarer(draw: Random, rows: list[tuple[float, ...]], step_g: float) -> dict[str, Any]:
    count = len(rows)
    more: dict[str, Any] = {}
    if draw.random() < 0.4:
        more["most_parts"] = draw.randint(1, count)
    if draw.random() < 0.4:
        more["least_part_g"] = draw.choice((1, 2, 3, 5)) * step_g
    if draw.random() < 0.3:
        more["most_g"] = tuple(draw.choice((None, 3.0, 6.0, 10.0)) for _ in rows)
    if draw.random() < 0.3:
        more["price_per_kg"] = tuple(round(draw.uniform(1, 9), 1) for _ in rows)
        more["most_price_per_kg"] = draw.choice((3.0, 4.0, 5.0))
    if draw.random() < 0.3:
        low, high = draw.choice((None, 3.0)), draw.choice((None, 8.0))
        more["property_limits"] = (PropertyLimit("p", tuple(r[0] for r in rows), low, high),)
    return more


def studio_task(seed: int, counts: tuple[int, ...]) -> BlendTask:
    """Some of the flours, about 100 g, a range of starch, tastes, and sometimes more limits."""
    draw = Random(seed)  # noqa: S311 - drawing tasks, not keys
    names = draw.sample(sorted(FLOURS), draw.choice(counts))
    if not set(names) & set(STARCHES):
        names[0] = "potato starch"
    rows = [tuple(round(v * draw.uniform(0.9, 1.1), 2) for v in FLOURS[name]) for name in names]
    kind = draw.choice("abcdefg")
    return BlendTask(
        tuple(names),
        tuple(rows),
        ("protein", "fat", "fibre"),
        _target(draw, kind, rows),
        total_g=float(draw.choice((95, 100, 105, 120))),
        limits=_studio_limits(draw, names),
        **_studio_more(draw, kind, rows),
    )


def _target(draw: Random, kind: str, rows: list[tuple[float, ...]]) -> tuple[float, ...]:
    if kind in "ab":
        return (5.4, 1.08, 2.58)
    if kind == "c":
        shares = [draw.random() ** 2 for _ in rows]
        return tuple(
            round(sum(s * r[at] for s, r in zip(shares, rows, strict=True)) / sum(shares), 2)
            for at in range(3)
        )
    return (
        round(draw.uniform(3, 9), 2),
        round(draw.uniform(0.6, 3.5), 2),
        round(draw.uniform(1.5, 6), 2),
    )


def _studio_limits(draw: Random, names: list[str]) -> tuple[BlendLimit, ...]:
    starch = tuple(at for at, name in enumerate(names) if name in STARCHES)
    low = draw.choice((20.0, 30.0, 35.0))
    limits = [BlendLimit("starch", starch, low, low + draw.choice((10.0, 20.0)))]
    for at, name in enumerate(names):
        if at not in starch and draw.random() < 0.6:
            high = float(draw.choice((8, 10, 16, 25, 40)))
            limits.append(BlendLimit(name, (at,), None, high))
        elif at not in starch and draw.random() < 0.2:
            limits.append(BlendLimit(name, (at,), float(draw.choice((2, 5, 9))), None))
    return tuple(limits)


def _studio_more(draw: Random, kind: str, rows: list[tuple[float, ...]]) -> dict[str, Any]:
    more: dict[str, Any] = {}
    if kind in "de":
        more["most_parts"] = draw.choice((3, 4, 5, 6))
        more["least_part_g"] = float(draw.choice((0, 3, 5)))
    if kind in "ef":
        more["price_per_kg"] = tuple(round(draw.uniform(2, 12), 2) for _ in rows)
        more["most_price_per_kg"] = draw.choice((4.0, 5.0, 6.0))
    if kind == "g":
        high = draw.choice((1.0, 1.5, 2.0))
        more["property_limits"] = (PropertyLimit("fat", tuple(r[1] for r in rows), None, high),)
        more["most_g"] = tuple(draw.choice((None, None, 20.0, 35.0)) for _ in rows)
    return more
