"""What a size is aimed at: the wanted depth and factor, and what stands against them."""

import math

from krume.base import Clash, InputError, Option, OutOfRangeError, Problem, as_text
from krume.size.factor import tin_factor, total_of
from krume.size.geometry import common_depth_cm, rim_cm, volume_at_ml
from krume.size.limits import value
from krume.size.request import EGGS, Aim, SizeLine, SizeRequest
from krume.size.saying import length_text
from krume.size.writing import tin_text


def check(request: SizeRequest) -> None:
    """Refuse what no size can be reckoned from."""
    if request.eggs not in EGGS:
        raise InputError(
            f"Eggs are 'whole' or 'any', not '{request.eggs}'.",
            field="eggs", got=request.eggs, want="whole or any",
        )  # fmt: skip
    if not request.targets:
        raise InputError(
            "Name at least one tin to bake in, for example 'round 24 x 7 cm'.",
            field="targets", got="none", want="one tin or more",
        )  # fmt: skip
    for name in ("density_g_ml", "depth_cm", "rise", "step_g"):
        amount = getattr(request, name)
        if amount is not None and not 0 < amount < math.inf:
            raise OutOfRangeError(
                f"{name} is {amount}; it must be more than 0.",
                field=name, got=str(amount), want="more than 0",
            )  # fmt: skip
    for line in request.lines:
        if line.mass_g is not None and not 0 <= line.mass_g < math.inf:
            raise OutOfRangeError(
                f"{line.name or line.key} has {line.mass_g} g; a mass is 0 g or more.",
                field=line.key, got=str(line.mass_g), want="0 or more",
            )  # fmt: skip


def _total_g(lines: tuple[SizeLine, ...]) -> float | None:
    masses = [line.mass_g for line in lines]
    known = [mass for mass in masses if mass is not None]
    return sum(known) if known and len(known) == len(masses) and sum(known) > 0 else None


def aim_of(request: SizeRequest) -> Aim:
    """Wanted depth and factor: the wished depth, else the own tin's, else nothing changes."""
    total = _total_g(request.lines)
    density = request.density_g_ml
    batter = None if total is None or density is None else total / density
    own = None
    if request.own is not None and batter is not None:
        own = common_depth_cm((request.own,), batter)
    depth = request.depth_cm if request.depth_cm is not None else _depth_below_rim(request, own)
    wanted = None
    if depth is not None and batter is not None:
        level = total_of(lambda tin: volume_at_ml(tin, depth), request.targets)
        wanted = None if level is None else level / batter
    if wanted is None and request.depth_cm is None:
        wanted = _factor_without_depth(request)
    return Aim(wanted, depth, own, batter, total)


def _depth_below_rim(request: SizeRequest, own_cm: float | None) -> float | None:
    """The own tin's depth, or the usual fill of a lower tin that it would not go into."""
    lowest = lowest_rim_cm(request)
    if own_cm is None or lowest is None or own_cm <= lowest:
        return own_cm
    return value("fill-high") * lowest


def _factor_without_depth(request: SizeRequest) -> float | None:
    """Where depth cannot be reckoned: the area's factor, then the volume's, then none at all."""
    if request.own is None:
        return 1.0
    factors = tin_factor(request.own, request.targets)
    return factors.by_area if factors.by_area is not None else factors.by_volume


def depth_clash(request: SizeRequest) -> Clash | None:
    """A wished depth above the lowest rim."""
    rims = [(rim_cm(tin), tin) for tin in request.targets]
    known = [(rim, tin) for rim, tin in rims if rim is not None]
    if request.depth_cm is None or not known:
        return None
    lowest, tin = min(known, key=lambda pair: pair[0])
    if request.depth_cm <= lowest:
        return None
    return Clash(
        f"depth of the tin ({tin_text(tin)})",
        f"at most {length_text(lowest)}",
        f"batter {length_text(request.depth_cm)} deep",
        f"{length_text(lowest)} to the rim",
    )


def rim_clash(request: SizeRequest, aim: Aim) -> Clash:
    """No option stays below the rim: the wanted batter against the lowest tin."""
    factor = 1.0 if aim.factor is None else aim.factor
    depth = depth_at(request, aim, factor) or 0.0
    lowest = lowest_rim_cm(request) or 0.0
    return Clash(
        "depth of the tin",
        f"at most {length_text(lowest)}",
        f"batter {length_text(depth)} deep",
        f"{length_text(lowest)} to the rim",
    )


def lowest_rim_cm(request: SizeRequest) -> float | None:
    """Height of the lowest rim that is known."""
    rims = [rim for rim in map(rim_cm, request.targets) if rim is not None]
    return min(rims) if rims else None


def problems_of(request: SizeRequest, aim: Aim) -> tuple[Problem, ...]:
    """What must be answered before a factor is known."""
    if aim.factor is not None:
        return ()
    if request.density_g_ml is None:
        return (_ask_density(),)
    unknown = next((t for t in request.targets if volume_at_ml(t, 1.0) is None), request.targets[0])
    missing = [line for line in request.lines if line.mass_g is None]
    if missing:
        name = missing[0].name or missing[0].key
        ask = f"How many grams is the line '{name}'? Without them the batter has no volume."
        return (Problem("mass-missing", missing[0].key, name, ask),)
    ask = (
        f"How wide and deep is '{unknown.read or tin_text(unknown)}' inside? "
        "The depth of the batter needs it."
    )
    return (Problem("tin-size-missing", "--tin", unknown.read, ask),)


def _ask_density() -> Problem:
    foam, butter = as_text(value("density-foam"), 2), as_text(value("density-butter"), 2)
    return Problem(
        "density-missing",
        "density",
        "",
        "How dense is the batter? Weigh the same cup with batter and with water: the depth follows "
        "from it.",
        (
            Option(f"{foam} g/ml, a foam sponge", f"Density: {foam} g/ml"),
            Option(f"{butter} g/ml, a butter batter", f"Density: {butter} g/ml"),
        ),
    )


def depth_at(request: SizeRequest, aim: Aim, factor: float) -> float | None:
    """Depth of the batter at a factor, in the tins filled to one depth."""
    if aim.batter_ml is None:
        return None
    return common_depth_cm(request.targets, aim.batter_ml * factor)
