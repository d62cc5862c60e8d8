"""What to mind with an option: the rim, a thin or brimful tin, tiny amounts, a roll's binder."""

from krume.base import Notice, as_text
from krume.size.geometry import rim_cm
from krume.size.limits import figure, value
from krume.size.reading import assumed_height_cm
from krume.size.request import Aim, SizeOption, SizeRequest
from krume.size.saying import length_text


def request_notices(
    request: SizeRequest, options: tuple[SizeOption, ...], aim: Aim
) -> tuple[Notice, ...]:
    """Notices that hold for the whole answer."""
    found = [*_plan_notices(request, aim), *_mass_notices(request, aim)]
    lacking = [tin for tin in request.targets if rim_cm(tin) is None]
    if options and lacking and options[0].fill is not None:
        high = length_text(assumed_height_cm(lacking[0]))
        text = (
            f"The tin's depth is not given: {high} is assumed for the fill; area and depth of the "
            "batter are exact."
        )
        found.append(Notice("tin-depth-assumed", text))
    return tuple(found)


def _plan_notices(request: SizeRequest, aim: Aim) -> list[Notice]:
    found = []
    if request.own is None and request.depth_cm is None:
        text = (
            "The formula names no tin, so its usual depth is not known: the amounts are left as "
            "they are. Wish a depth (--depth 3.5), or add a line 'Tin: round 20 x 7 cm'."
        )
        found.append(Notice("own-tin-missing", text))
    if request.density_g_ml is None:
        text = (
            "The density of the batter is not known: depth and fill cannot be told. The factor "
            "goes by the area of the tins."
        )
        found.append(Notice("density-unknown", text))
    if request.depth_cm is None and aim.depth_cm is not None and aim.own_depth_cm != aim.depth_cm:
        text = (
            f"The formula's own depth, {length_text(aim.own_depth_cm or 0.0)}, does not go into "
            f"this tin: {length_text(aim.depth_cm)} is aimed at."
        )
        found.append(Notice("depth-lowered", text))
    return found


def _mass_notices(request: SizeRequest, aim: Aim) -> list[Notice]:
    shown = "" if aim.factor is None else f" (x {as_text(aim.factor, 2)})"
    without = [line for line in request.lines if line.mass_g is None]
    texts = [f"'{ln.name or ln.key}' has no grams: scale it by eye{shown}." for ln in without]
    return [Notice("mass-unknown", text, ln.key) for ln, text in zip(without, texts, strict=True)]


def option_notices(option: SizeOption, request: SizeRequest) -> tuple[Notice, ...]:
    """Notices of one option."""
    found = [*_rim(option, request), *_fill(option, request), *_roll(option, request)]
    return (*found, *_tiny(option, request))


def _rim(option: SizeOption, request: SizeRequest) -> list[Notice]:
    rims = [rim for rim in map(rim_cm, request.targets) if rim is not None]
    if option.depth_cm is None or request.rise is None or not rims:
        return []
    baked = option.depth_cm * request.rise
    if baked <= min(rims):
        return []
    return [
        Notice(
            "rise-above-rim",
            f"Baked it would stand {length_text(baked)} high by the formula's own rise, in a tin "
            f"of {length_text(min(rims))}: it may run over.",
        )
    ]


def _fill(option: SizeOption, request: SizeRequest) -> list[Notice]:
    assumed = any(rim_cm(tin) is None for tin in request.targets)
    if option.fill is None:
        return []
    share = f"{100 * option.fill:.0f} %"
    if option.fill > value("fill-high"):
        tail = ": measure the tin's depth first" if assumed else ": it may run over"
        return [Notice("fill-high", f"The tin is {share} full before the batter rises{tail}.")]
    if option.fill < value("fill-low"):
        text = f"The tin is only {share} full: a thin cake, browner at the edge, sooner done."
        return [Notice("fill-low", text)]
    return []


def _roll(option: SizeOption, request: SizeRequest) -> list[Notice]:
    """A thin sheet is rolled, and a roll wants xanthan: how much on this flour."""
    flat = all(tin.shape == "sheet" for tin in request.targets)
    if not flat or option.depth_cm is None or option.depth_cm > value("roll-depth-most"):
        return []
    masses = {line.key: line.mass_g for line in option.lines}
    flour = sum(masses[ln.key] or 0.0 for ln in request.lines if ln.kind == "flour")
    binder = sum(masses[ln.key] or 0.0 for ln in request.lines if ln.kind == "binder")
    least, most = (value(key) * flour / 100 for key in ("roll-binder-low", "roll-binder-high"))
    if flour == 0 or binder >= least:
        return []
    status = figure("roll-binder-low").status
    return [
        Notice(
            "roll-binder",
            f"If this sheet is rolled, it wants {least:.2f}-{most:.2f} g xanthan on "
            f"{as_text(flour, 1)} g flour ({status}); here are {as_text(binder, 2)} g.",
        )
    ]


def _tiny(option: SizeOption, request: SizeRequest) -> list[Notice]:
    """Amounts finer than the scale shows: they are never rounded away."""
    if option.kind == "as-is":
        return []
    names = {line.key: line.name or line.key for line in request.lines}
    eggs = {eggs.key for eggs in option.eggs}
    tiny = [
        line
        for line in option.lines
        if line.mass_g and line.key not in eggs and _is_finer(line.mass_g, request.step_g)
    ]
    if not tiny:
        return []
    words = ", ".join(f"{names[line.key]} {as_text(line.mass_g or 0.0, 3)} g" for line in tiny)
    step = as_text(request.step_g, 3)
    return [
        Notice(
            "scale-too-coarse",
            f"{words}: a scale that shows {step} g is too coarse. Use a finer one, or pre-mix it "
            "with part of the starch, sift, and weigh the mix.",
        )
    ]


def _is_finer(mass_g: float, step_g: float) -> bool:
    steps = mass_g / step_g
    return abs(steps - round(steps)) > 1e-6
