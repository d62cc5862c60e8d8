"""What is asked of a blend, all of it in one place: flours, aim, limits, steps of the scale."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import hypot

from krume.base import as_text
from krume.design import BlendLimit, BlendTask, PropertyLimit, TypedLimit
from krume.usecases.blend.flours import Flour
from krume.usecases.blend.result import BlendLimitTold, BlendLine, Profile

SLACK = 1e-9
_DECIMALS = 9


@dataclass(frozen=True, slots=True)
class Setting:
    """A blend that is looked for. Places of the limits are those of `flours`.

    `left_out` are places of flours that stay out; `stock_g` and `per_kg` go by key and hold what
    is known; `was_g` are grams of the formula's own blend.
    """

    flours: tuple[Flour, ...]
    target: dict[str, float]
    limits: tuple[TypedLimit, ...]
    left_out: frozenset[int]
    total_g: float
    step_g: float
    least_g: float
    most_flours: int | None
    most_price_per_kg: float | None
    per_kg: dict[str, float]
    stock_g: dict[str, float]
    was_g: dict[str, float]

    @property
    def places(self) -> tuple[int, ...]:
        """Places of the flours that may go in."""
        return tuple(at for at in range(len(self.flours)) if at not in self.left_out)

    @property
    def in_play(self) -> tuple[Flour, ...]:
        """Flours that may go in."""
        return tuple(self.flours[at] for at in self.places)

    @property
    def shares(self) -> tuple[TypedLimit, ...]:
        """Limits on the share of flours, in the order of the task; those on no flour left out."""
        return tuple(x for x in self.limits if x.kind == "share" and self.members(x))

    def members(self, limit: TypedLimit) -> tuple[int, ...]:
        """Places of a limit's flours among those that may go in."""
        return tuple(self.places.index(at) for at in limit.members if at in self.places)

    @property
    def held(self) -> tuple[TypedLimit, ...]:
        """Limits on what the blend holds, in the order of the task."""
        return tuple(limit for limit in self.limits if limit.kind == "property")

    def without(self, keys: frozenset[str]) -> "Setting":
        """The same, with more flours left out."""
        more = frozenset(at for at, flour in enumerate(self.flours) if flour.key in keys)
        return replace(self, left_out=self.left_out | more)


def task_of(setting: Setting) -> BlendTask:
    """The setting as the solver takes it: percent for grams, places among the flours in play."""
    flours, names = setting.in_play, tuple(setting.target)
    prices = tuple(setting.per_kg.get(flour.key, 0.0) for flour in flours)
    stock = tuple(setting.stock_g.get(flour.key) for flour in flours)
    has_price = setting.most_price_per_kg is not None
    return BlendTask(
        names=tuple(flour.name for flour in flours),
        composition=tuple(tuple(known(flour, name) for name in names) for flour in flours),
        properties=names,
        target=tuple(setting.target.values()),
        total_g=setting.total_g,
        step_g=setting.step_g,
        limits=tuple(_share(setting, limit) for limit in setting.shares),
        most_g=stock if setting.stock_g else None,
        least_part_g=setting.least_g,
        most_parts=setting.most_flours,
        price_per_kg=prices if has_price else None,
        most_price_per_kg=setting.most_price_per_kg,
        property_limits=tuple(
            PropertyLimit(x.name, tuple(known(f, x.name) for f in flours), x.low, x.high)
            for x in setting.held
        ),
    )


def known(flour: Flour, name: str) -> float:
    """What a flour holds, asked about before where it was not known."""
    value = flour.holds(name)
    if value is None:
        message = f"{flour.name} has no {name}: it was to be asked before"
        raise TypeError(message)
    return value


def _share(setting: Setting, limit: TypedLimit) -> BlendLimit:
    factor = 1.0 if limit.unit == "%" else 100 / setting.total_g
    low, high = (None if end is None else end * factor for end in (limit.low, limit.high))
    return BlendLimit(limit.name, setting.members(limit), low, high)


def got(setting: Setting, masses_g: Sequence[float]) -> Profile:
    """What 100 g of a blend hold, worked out from its grams."""
    total_g = sum(masses_g)
    pairs = list(zip(setting.in_play, masses_g, strict=True))
    return {
        name: sum(mass * known(flour, name) for flour, mass in pairs if mass) / total_g
        for name in setting.target
    }


def distance(setting: Setting, held: Profile) -> float:
    """Root of the summed squares of what a blend holds less what it should."""
    return hypot(*((held[name] or 0.0) - value for name, value in setting.target.items()))


def lines(setting: Setting, masses_g: Sequence[float]) -> tuple[BlendLine, ...]:
    """The flours that go in, in the order at hand, with their grams."""
    total_g = sum(masses_g)
    return tuple(
        BlendLine(
            flour.key,
            flour.name,
            round(mass, _DECIMALS),
            100 * mass / total_g,
            setting.was_g.get(flour.key, 0.0) if setting.was_g else None,
        )
        for flour, mass in zip(setting.in_play, masses_g, strict=True)
        if mass > 0
    )


def broken(setting: Setting, masses_g: Sequence[float]) -> tuple[str, ...]:
    """What a blend does not keep, in the words that were typed: looked at apart from the solver."""
    return tuple(dict.fromkeys(_broken(setting, masses_g)))


def _broken(setting: Setting, masses_g: Sequence[float]) -> Iterator[str]:
    total_g = sum(masses_g)
    for limit in setting.limits:
        value = _value(setting, limit, masses_g)
        if value is not None and not _inside(limit.low, value, limit.high):
            yield limit.read
    used = [mass for mass in masses_g if mass > 0]
    if setting.most_flours is not None and len(used) > setting.most_flours:
        yield f"at most {setting.most_flours} {'flour' if setting.most_flours == 1 else 'flours'}"
    if setting.least_g and min(used, default=0.0) < setting.least_g - SLACK:
        yield f"at least {as_text(setting.least_g)} g of each"
    for flour, mass in zip(setting.in_play, masses_g, strict=True):
        most = setting.stock_g.get(flour.key)
        if most is not None and mass > most + SLACK:
            yield f"{as_text(most)} g of {flour.name} in the house"
    if setting.most_price_per_kg is not None:
        pairs = zip(setting.in_play, masses_g, strict=True)
        paid = sum(setting.per_kg[flour.key] * mass for flour, mass in pairs if mass)
        if paid / total_g > setting.most_price_per_kg + SLACK:
            yield f"at most {as_text(setting.most_price_per_kg)} per kg"


def _value(setting: Setting, limit: TypedLimit, masses_g: Sequence[float]) -> float | None:
    if limit.kind == "property":
        total_g = sum(masses_g)
        pairs = zip(setting.in_play, masses_g, strict=True)
        return sum(mass * known(flour, limit.name) for flour, mass in pairs) / total_g
    if limit.kind != "share":
        return None
    mass_g = sum(masses_g[at] for at in setting.members(limit))
    return mass_g if limit.unit == "g" else 100 * mass_g / sum(masses_g)


def _inside(low: float | None, value: float, high: float | None) -> bool:
    slack = SLACK * max(1.0, abs(value))
    return (low is None or value >= low - slack) and (high is None or value <= high + slack)


def told(setting: Setting) -> tuple[BlendLimitTold, ...]:
    """Every limit that was typed, its ends in the unit they were typed in."""
    return tuple(_told(setting, limit) for limit in setting.limits)


def _told(setting: Setting, limit: TypedLimit) -> BlendLimitTold:
    in_pct, in_g = limit.unit == "%", limit.unit == "g"
    is_share = in_pct or in_g
    return BlendLimitTold(
        read=limit.read,
        kind=limit.kind,
        name=limit.name,
        members=tuple(setting.flours[at].key for at in limit.members),
        low_pct=limit.low if in_pct else None,
        high_pct=limit.high if in_pct else None,
        low_g=limit.low if in_g else None,
        high_g=limit.high if in_g else None,
        low=None if is_share else limit.low,
        high=None if is_share else limit.high,
        unit=limit.unit,
    )
