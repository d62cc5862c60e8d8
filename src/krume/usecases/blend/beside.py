"""What stands beside the nearest blend: simple swaps, near blends of other flours, the open one."""

from collections.abc import Callable, Iterable
from dataclasses import replace

from krume.base import Infeasible
from krume.design import BlendFit, blend_figure, next_blends, solve_blend
from krume.usecases.blend.flours import Flour
from krume.usecases.blend.match import Match
from krume.usecases.blend.result import BlendOpen, BlendOther, BlendRecord, BlendSwap
from krume.usecases.blend.setting import Setting, broken, distance, got, lines, task_of

ALTERNATIVES = 3
"""How many blends of other flours are shown."""

_IN_FORCE = ("good", "not-needed")

Gained = Callable[[Iterable[Flour]], tuple[str, ...]]
"""Allergens that flours bring beyond those of the blend they replace."""


def swaps(setting: Setting, match: Match | None, gained: Gained) -> tuple[BlendSwap, ...]:
    """Each flour one for one in place of what is missing, nearest first; none where all is there.

    The other flours keep their share of the formula's blend.
    """
    if match is None:
        return ()
    hand = {flour.key: at for at, flour in enumerate(setting.in_play)}
    is_all_there = all(part.flour.key in hand for part in match.parts)
    if is_all_there or not hand:
        return ()
    found = [_swap(setting, match, key, hand, gained) for key in hand]
    return tuple(sorted(found, key=lambda swap: (swap.distance, swap.name)))


def _swap(
    setting: Setting, match: Match, key: str, hand: dict[str, int], gained: Gained
) -> BlendSwap:
    masses = [0.0] * len(hand)
    for part in match.parts:
        masses[hand.get(part.flour.key, hand[key])] += part.mass_g
    scale = setting.total_g / sum(masses)
    masses = [mass * scale for mass in masses]
    held = got(setting, masses)
    flour = setting.in_play[hand[key]]
    return BlendSwap(
        key, flour.name, lines(setting, masses), held, distance(setting, held),
        broken(setting, masses), gained(_flours(setting, masses)),
    )  # fmt: skip


def others(setting: Setting, best: BlendFit, gained: Gained) -> tuple[BlendOther, ...]:
    """The next nearest blends, each of other flours than the ones before it.

    A flour goes into them by a share worth weighing, where the limits leave room for that.
    """
    least_g = blend_figure("least-share") / 100 * setting.total_g
    task = task_of(setting)
    worth = replace(task, least_part_g=max(task.least_part_g, least_g))
    found = next_blends(worth, best, ALTERNATIVES) or next_blends(task, best, ALTERNATIVES)
    used = _used(setting, best)
    told = [
        BlendOther(
            lines(setting, fit.masses_g),
            got(setting, fit.masses_g),
            fit.distance,
            fit.proven,
            tuple(name for name in used if name not in _used(setting, fit)),
            tuple(name for name in _used(setting, fit) if name not in used),
            gained(_flours(setting, fit.masses_g)),
        )
        for fit in found
    ]
    return tuple(sorted(told, key=lambda other: other.distance))


def _used(setting: Setting, fit: BlendFit) -> list[str]:
    return [flour.name for flour in _flours(setting, fit.masses_g)]


def _flours(setting: Setting, masses_g: Iterable[float]) -> list[Flour]:
    """Flours that go in."""
    pairs = zip(setting.in_play, masses_g, strict=True)
    return [flour for flour, mass in pairs if mass > 0]


def open_blend(
    setting: Setting, fit: BlendFit, records: tuple[BlendRecord, ...], grains: frozenset[str]
) -> BlendOpen | None:
    """The nearest blend of flours with a record in force, where the nearest of all is not one.

    A gluten grain never is one.
    """
    shut = grains | {each.ingredient for each in records if each.state not in _IN_FORCE}
    pairs = list(zip(setting.in_play, fit.masses_g, strict=True))
    if not any(flour.key in shut for flour, mass in pairs if mass > 0):
        return None
    narrowed = setting.without(shut)
    if not narrowed.in_play:
        return None
    found = solve_blend(task_of(narrowed))
    if isinstance(found, Infeasible) or broken(narrowed, found.masses_g):
        return None
    names = tuple(flour.name for flour, _ in pairs if flour.key in shut)
    return BlendOpen(
        names,
        lines(narrowed, found.masses_g),
        got(narrowed, found.masses_g),
        found.distance,
        found.proven,
        " ".join(f'--without "{name}"' for name in names),
    )
