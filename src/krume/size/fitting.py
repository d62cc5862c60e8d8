"""The size job: which factor, how many whole eggs, how deep, with what each choice costs."""

import math
from dataclasses import replace

from krume.base import Infeasible
from krume.size.aim import (
    aim_of,
    check,
    depth_at,
    depth_clash,
    lowest_rim_cm,
    problems_of,
    rim_clash,
)
from krume.size.eggs import nearest_eggs, whole_factors
from krume.size.factor import Factors, tin_factor
from krume.size.geometry import volume_at_ml, volume_ml
from krume.size.limits import value
from krume.size.reading import assumed_height_cm
from krume.size.request import Aim, Fit, SizedEggs, SizedLine, SizeLine, SizeOption, SizeRequest
from krume.size.rounding import round_masses
from krume.size.saying import option_text
from krume.size.warning import option_notices, request_notices

_MOST_OPTIONS = 3


def fit(request: SizeRequest) -> Fit | Infeasible:
    """Size a batter to one or more tins; options best first, or the limits that clash.

    The wanted factor keeps the depth of the own tin, or reaches the wished depth. With whole eggs
    the options are the nearest factors at which every egg line is whole; best is the one whose
    depth is nearest to the wanted one. A batter above the rim is no option.
    """
    check(request)
    clash = depth_clash(request)
    if clash is not None:
        return Infeasible((clash,))
    aim = aim_of(request)
    problems = problems_of(request, aim)
    options = () if problems else _options(request, aim)
    if not problems and not options:
        return Infeasible((rim_clash(request, aim),))
    own = request.own
    return Fit(
        factor=Factors(None, None) if own is None else tin_factor(own, request.targets),
        wanted_factor=aim.factor,
        wanted_depth_cm=aim.depth_cm,
        own_depth_cm=aim.own_depth_cm,
        options=options,
        problems=problems,
        notices=request_notices(request, options, aim),
    )


def _options(request: SizeRequest, aim: Aim) -> tuple[SizeOption, ...]:
    wanted = 1.0 if aim.factor is None else aim.factor
    kinds = _candidates(request, wanted)
    options = [_option(request, aim, kind, factor) for kind, factor in kinds]
    lowest = lowest_rim_cm(request)
    return tuple(
        option
        for option in options
        if lowest is None or option.depth_cm is None or option.depth_cm <= lowest + 1e-9
    )


def _candidates(request: SizeRequest, wanted: float) -> list[tuple[str, float]]:
    """Kinds and factors, best first: nearest in depth, a tie to the one that changes less."""
    counted = _egg_lines(request)
    if not counted:
        return _free_candidates(wanted)
    counts = [(line.mass_g or 0.0) / (line.egg_each_g or 1.0) for line in counted]
    factors = {*whole_factors(counts, near=wanted)}
    whole = [("whole", f) for f in factors if abs(f - 1) > 1e-9]
    nearest = sorted([("as-is", 1.0), *whole], key=lambda pair: _distance(pair, wanted))
    if request.eggs == "any":
        exact = [("exact", wanted)] if abs(wanted - 1) > 1e-9 else []
        return [*exact, *nearest[: _MOST_OPTIONS - len(exact)]]
    far = abs(math.log(nearest[0][1] / wanted)) > value("whole-eggs-far")
    keep = nearest[: _MOST_OPTIONS - far]
    return [*keep, ("exact", wanted)] if far else keep


def _free_candidates(wanted: float) -> list[tuple[str, float]]:
    if abs(wanted - 1) <= 1e-9:
        return [("as-is", 1.0)]
    near = abs(1 / wanted - 1) <= value("near-enough")
    return [("exact", wanted), *([("as-is", 1.0)] if near else [])]


def _distance(pair: tuple[str, float], wanted: float) -> tuple[float, bool, float]:
    kind, factor = pair
    return round(abs(math.log(factor / wanted)), 9), kind != "as-is", factor


def _egg_lines(request: SizeRequest) -> list[SizeLine]:
    return [
        line for line in request.lines
        if line.egg_each_g is not None and line.mass_g is not None and line.mass_g > 0
    ]  # fmt: skip


def _option(request: SizeRequest, aim: Aim, kind: str, factor: float) -> SizeOption:
    lines = _as_typed(request) if kind == "as-is" else scaled_lines(request, kind, factor)
    depth = depth_at(request, aim, factor)
    masses = [line.mass_g for line in lines]
    known = [mass for mass in masses if mass is not None]
    bare = SizeOption(
        kind=kind,
        factor=factor,
        lines=lines,
        eggs=_eggs(request, lines),
        total_g=round(sum(known), 6) if len(known) == len(masses) else None,
        depth_cm=depth,
        fill=_fill(request, aim, factor),
        shares_g=_shares(request, depth),
        text="",
    )
    return replace(
        bare,
        text=option_text(bare, wanted_cm=aim.depth_cm, before_g=aim.total_g),
        notices=option_notices(bare, request),
    )


def _as_typed(request: SizeRequest) -> tuple[SizedLine, ...]:
    return tuple(SizedLine(line.key, line.mass_g) for line in request.lines)


def scaled_lines(request: SizeRequest, kind: str, factor: float) -> tuple[SizedLine, ...]:
    """Masses at a factor; of kind `whole` egg lines come to whole eggs, all others to the scale."""
    whole = {
        line.key: round(line.mass_g * factor / line.egg_each_g) * line.egg_each_g
        for line in _egg_lines(request)
        if kind == "whole" and line.mass_g is not None and line.egg_each_g is not None
    }
    weighed = [ln for ln in request.lines if ln.mass_g is not None and ln.key not in whole]
    exact = [(line.mass_g or 0.0) * factor for line in weighed]
    rounded = round_masses(exact, step_g=request.step_g).masses_g
    new = {line.key: mass for line, mass in zip(weighed, rounded, strict=True)} | whole
    return tuple(
        SizedLine(ln.key, round(new[ln.key], 6) if ln.key in new else None) for ln in request.lines
    )


def _eggs(request: SizeRequest, lines: tuple[SizedLine, ...]) -> tuple[SizedEggs, ...]:
    masses = {line.key: line.mass_g for line in lines}
    found = []
    for line in _egg_lines(request):
        mass, each = masses[line.key] or 0.0, line.egg_each_g or 1.0
        eggs = nearest_eggs(mass, each_g=each)
        found.append(
            SizedEggs(
                line.key, eggs.count, line.egg_size, line.egg_part, mass, round(eggs.make_up_g, 6)
            )
        )
    return tuple(found)


def _fill(request: SizeRequest, aim: Aim, factor: float) -> float | None:
    """Fill of all target tins; a depth that was not given is assumed, and said so in a notice."""
    if aim.batter_ml is None:
        return None
    levels = [
        volume_ml(tin) if volume_ml(tin) is not None else volume_at_ml(tin, assumed_height_cm(tin))
        for tin in request.targets
    ]
    known = [level for level in levels if level is not None]
    return aim.batter_ml * factor / sum(known) if len(known) == len(levels) else None


def _shares(request: SizeRequest, depth: float | None) -> tuple[float, ...]:
    if depth is None or request.density_g_ml is None:
        return ()
    levels = [volume_at_ml(tin, depth) for tin in request.targets]
    return tuple(round(level * request.density_g_ml, 6) for level in levels if level is not None)
