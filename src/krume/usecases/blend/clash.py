"""Why no blend exists: the limits that cannot hold together, and the least each may give way."""

from collections.abc import Sequence
from dataclasses import replace
from math import ceil, floor

from krume.base import Option, Problem, as_text
from krume.design import ClashingLimit, TypedLimit, clashing_limits
from krume.usecases.blend.setting import Setting, task_of

_DIGITS, _STEPS = 2, 100
_SHOWN = 3
_PLACES = {
    "parts": "--most-flours",
    "least-part": "--least",
    "price": "--most-price",
    "stock": "--stock",
    "total": "--total",
}


def own_clashes(setting: Setting, texts: Sequence[str]) -> tuple[Problem, ...]:
    """Limits that no flour or no number can keep, whatever the others are."""
    problems = []
    for limit in setting.limits:
        low, high = limit.low, limit.high
        if low is not None and high is not None and low > high:
            problems.append(_backwards(limit, texts))
        elif limit.kind == "share" and low and not setting.members(limit):
            problems.append(_no_flour(setting, limit, texts))
    if not setting.in_play:
        ask = "No flour is left: name more after --from, or leave fewer out."
        problems.append(Problem("no-flour-left", "--from", "", ask))
    return tuple(problems)


def _backwards(limit: TypedLimit, texts: Sequence[str]) -> Problem:
    least, most = _amount(limit.low, limit), _amount(limit.high, limit)
    ask = f"{limit.name}: at least {least} and at most {most} cannot both hold."
    turned = replace(limit, low=limit.high, high=limit.low)
    option = Option("the other way round", _line(limit, turned, texts))
    return Problem("limit-backwards", limit.where, limit.read, ask, (option,))


def _no_flour(setting: Setting, limit: TypedLimit, texts: Sequence[str]) -> Problem:
    out = [setting.flours[at].name for at in limit.members]
    why = f"{', '.join(out)} is left out" if out else "none of it is among the flours at hand"
    ask = f"“{limit.read}” cannot hold: {why}. Take the limit out, or put the flour back."
    option = Option("without this limit", _without(limit, texts))
    return Problem("limit-without-its-flour", limit.where, limit.read, ask, (option,))


def clash_problems_of(setting: Setting, texts: Sequence[str]) -> tuple[Problem, ...]:
    """The smallest set of limits that cannot hold together, each with its least loosening."""
    found = clashing_limits(task_of(setting))
    narrow = _one_limit(setting, found)
    if narrow is not None:
        return (_between_steps(setting, narrow, texts),)
    names = [_said(setting, each) for each in found]
    told = _in_all(setting, found)
    return tuple(
        _problem(setting, each, [name for at, name in enumerate(names) if at != here], told, texts)
        for here, each in enumerate(found)
    )


def _in_all(setting: Setting, found: Sequence[ClashingLimit]) -> str:
    """The total the limits are on, where it is not one of them itself, and what they come to."""
    if any(each.kind == "total" for each in found) or not any(x.kind == "share" for x in found):
        return ""
    total = f" in a blend of {as_text(setting.total_g, _DIGITS)} g"
    sides = {each.side for each in found if each.kind == "share"}
    if len(sides) > 1 or any(each.kind != "share" for each in found) or len(found) == 1:
        return total
    grams = as_text(sum(each.value for each in found) * setting.total_g / 100, _DIGITS)
    word = "ask for" if sides == {"low"} else "leave room for"
    return f"{total}: together they {word} {grams} g"


def _one_limit(setting: Setting, found: Sequence[ClashingLimit]) -> TypedLimit | None:
    """The limit whose own two ends are all that clashes: no step of the scale lies between."""
    ends = [each for each in found if each.kind != "total"]
    limits = [_typed(setting, each) for each in ends if each.kind == "share"]
    if len(ends) != 2 or len(limits) != 2 or limits[0] is not limits[1]:
        return None
    return limits[0]


def _between_steps(setting: Setting, limit: TypedLimit, texts: Sequence[str]) -> Problem:
    factor = 1.0 if limit.unit == "g" else setting.total_g / 100
    step = setting.step_g
    below = floor((limit.low or 0.0) * factor / step) * step
    steps = [mass for mass in (below + step, below) if 0 < mass <= setting.total_g]
    ask = (
        f"“{limit.read}” of {as_text(setting.total_g)} g lies between two steps of the scale: "
        f"{' or '.join(f'{as_text(mass)} g' for mass in steps)}."
    )
    lines = [replace(limit, unit="g", low=mass, high=mass) for mass in steps]
    options = tuple(Option(limit_text(line), _line(limit, line, texts)) for line in lines)
    return Problem("limit-between-steps", limit.where, limit.read, ask, options)


def _problem(
    setting: Setting, clash: ClashingLimit, others: list[str], told: str, texts: Sequence[str]
) -> Problem:
    limit = _typed(setting, clash)
    said = _said(setting, clash)
    beside = f"does not go with {_listed(others)}" if others else "cannot be kept"
    options: tuple[Option, ...] = ()
    if clash.loosened is not None:
        ways = f"The least way out of it: {_said(setting, clash, loosened=True)}."
        if clash.kind != "stock":
            options = (_option(setting, clash, limit, texts),)
    else:
        next_one = _next_clash(setting, clash, limit)
        ways = f"Moving it alone opens nothing{next_one}."
        if limit is not None and next_one:
            options = (_dropped(clash, limit, texts),)
    where = _PLACES.get(clash.kind, "--limit") if limit is None else limit.where
    read = said if limit is None else limit.read
    ask = f"{said[:1].upper()}{said[1:]} {beside}{told}. {ways}"
    return Problem("limits-clash", where, read, ask, options)


def _listed(words: Sequence[str]) -> str:
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last


def _without_end(clash: ClashingLimit, limit: TypedLimit) -> TypedLimit | None:
    """A limit without the end that clashes; None where nothing of it is left."""
    is_exact = limit.low == limit.high
    low = None if clash.side == "low" or is_exact else limit.low
    high = None if clash.side == "high" or is_exact else limit.high
    return None if low is None and high is None else replace(limit, low=low, high=high)


def _next_clash(setting: Setting, clash: ClashingLimit, limit: TypedLimit | None) -> str:
    """What clashes still once the end of a limit is gone, in words."""
    if limit is None or clash.kind not in ("share", "property"):
        return ""
    left = _without_end(clash, limit)
    pairs = ((each, left if each is limit else each) for each in setting.limits)
    open_setting = replace(setting, limits=tuple(new for _, new in pairs if new is not None))
    found = clashing_limits(task_of(open_setting))
    names = [_said(open_setting, each) for each in found]
    if len(names) < 2:
        return f": without it, {names[0]} cannot be kept" if names else ""
    return f": without it, {names[0]} does not go with {_listed(names[1:])} either"


def _dropped(clash: ClashingLimit, limit: TypedLimit, texts: Sequence[str]) -> Option:
    """The way on where no loosening is enough: the end of this limit taken out."""
    left = _without_end(clash, limit)
    if left is None:
        return Option("without this limit", _without(limit, texts))
    return Option(limit_text(left), _line(limit, left, texts))


def _typed(setting: Setting, clash: ClashingLimit) -> TypedLimit | None:
    """The limit as typed that a clashing one came from; None where it came from an option."""
    if clash.kind == "share" and clash.place is not None:
        return setting.shares[clash.place]
    if clash.kind == "property" and clash.place is not None:
        return setting.held[clash.place]
    kind = {"parts": "parts", "price": "price"}.get(clash.kind)
    return next((limit for limit in setting.limits if limit.kind == kind), None)


def _said(setting: Setting, clash: ClashingLimit, *, loosened: bool = False) -> str:
    """A clashing limit in words, at its value or where it would go."""
    limit = _typed(setting, clash)
    value = clash.loosened if loosened and clash.loosened is not None else clash.value
    side = "at least" if clash.side == "low" else "at most"
    if limit is not None and clash.kind == "share":
        amount = _amount(_in_unit(setting, clash, limit, value, loosened=loosened), limit)
        if not loosened and limit.low == limit.high:
            return f"{limit.name} exactly {amount}"
        return f"{limit.name} {side} {amount}"
    number = as_text(_loose(value, clash) if loosened else value, _SHOWN)
    return {
        "property": f"{clash.name} {side} {number} g in 100 g",
        "parts": f"at most {number} {'flour' if value == 1 else 'flours'}",
        "least-part": f"at least {number} g of each flour",
        "price": f"at most {number} a kilogram",
        "stock": f"{number} g of {clash.name} in the house",
        "total": f"{number} g in all",
    }.get(clash.kind, f"{clash.name} {side} {number}")


def _in_unit(
    setting: Setting, clash: ClashingLimit, limit: TypedLimit, pct: float, *, loosened: bool
) -> float:
    """A share in the unit it was typed in; a loosened end is rounded to the loose side."""
    value = pct if limit.unit == "%" else pct * setting.total_g / 100
    if not loosened:
        return round(value, 6)
    return _loose(value, clash)


def _loose(value: float, clash: ClashingLimit) -> float:
    """A loosened end on the loose side of it, short enough to be typed."""
    scaled = round(value * _STEPS, 6)
    return (floor(scaled) if clash.side == "low" else ceil(scaled)) / _STEPS


def _amount(value: float | None, limit: TypedLimit) -> str:
    unit = {"%": " %", "g": " g", "g in 100 g": " g in 100 g"}.get(limit.unit, "")
    return f"{as_text(value or 0.0, _SHOWN)}{unit}"


def _option(
    setting: Setting, clash: ClashingLimit, limit: TypedLimit | None, texts: Sequence[str]
) -> Option:
    label = _said(setting, clash, loosened=True)
    loosened = clash.loosened or 0.0
    if limit is None:
        return Option(label, as_text(_loose(loosened, clash), _DIGITS))
    value = _loose(loosened, clash)
    if clash.kind == "share":
        value = _in_unit(setting, clash, limit, loosened, loosened=True)
    low = value if clash.side == "low" else limit.low
    high = value if clash.side == "high" else limit.high
    if limit.low == limit.high and limit.low is not None:
        low, high = min(value, limit.low), max(value, limit.low)
    return Option(label, _line(limit, replace(limit, low=low, high=high), texts))


def _line(limit: TypedLimit, changed: TypedLimit, texts: Sequence[str]) -> str:
    """The text at a limit's place with this one limit changed, the others in it as they were."""
    return _text(limit, texts).replace(limit.read, limit_text(changed), 1)


def _without(limit: TypedLimit, texts: Sequence[str]) -> str:
    return _text(limit, texts).replace(limit.read, "", 1).strip(" ,;")


def _text(limit: TypedLimit, texts: Sequence[str]) -> str:
    number = limit.where.rpartition(" ")[2]
    at = int(number) - 1 if number.isdigit() else 0
    return texts[at] if at < len(texts) else limit.read


def limit_text(limit: TypedLimit) -> str:
    """A limit as it may be typed.

    >>> limit_text(TypedLimit("", "", "share", "starch", "%", 27.0, 50.0))
    'starch 27..50'
    """
    if limit.kind == "parts":
        return f"at most {as_text(limit.high or 0.0)} {'flour' if limit.high == 1 else 'flours'}"
    unit = " g" if limit.unit == "g" else ""
    low, high = (None if end is None else as_text(end) for end in (limit.low, limit.high))
    if low is None:
        return f"{limit.name} <= {high}{unit}"
    if high is None:
        return f"{limit.name} >= {low}{unit}"
    return f"{limit.name} {low}{unit}" if low == high else f"{limit.name} {low}..{high}{unit}"
