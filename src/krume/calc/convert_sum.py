"""The quick sum that converts units, with an ingredient between mass and volume."""

from krume.base import InputError, Interval
from krume.calc.declaring import Input, Json, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.calc.units import Measure, in_unit, measure_named
from krume.calc.values import Quantity, quantity
from krume.pantry import Measure as Weighed
from krume.pantry import find, measure

_BULK = ("mass", "volume", "count")


def _convert(given: Given) -> Values:
    target = _unit(given.text("to"), "to")
    parts = _parts(given)
    source = parts[0][1]
    if any(unit.kind != source.kind for _, unit in parts):
        raise _kinds_differ(given, parts)
    difference = given.yes("difference", default=False)
    if source.kind == target.kind and (source.kind != "count" or source.name == target.name):
        total = sum(
            in_unit(amount.value, unit.name, target.name, field="value", difference=difference)
            for amount, unit in parts
        )
        return {"value": total}
    if source.kind not in _BULK or target.kind not in _BULK:
        raise _kinds_do_not_meet(given, source, target)
    return _by_ingredient(given, parts, target)


def _parts(given: Given) -> list[tuple[Quantity, Measure]]:
    """The amounts that are added, each with its own unit or with `from`."""
    raw = given.raw["value"]
    texts = [t for t in raw.split("+") if t.strip()] if isinstance(raw, str) else [raw]
    read = [quantity(text, field="value") for text in texts]
    found = []
    for amount in read:
        name = amount.unit or (given.text("from") if given.has("from") else "")
        if not name:
            raise given.missing("from")
        found.append((amount, _unit(name, "value" if amount.unit else "from")))
    return found


def _unit(text: str, field: str) -> Measure:
    found = measure_named(text)
    if found is None:
        raise InputError(
            f"'{text}' is no unit known here. Type for example g, oz, ml, cup, tbsp, tsp, floz, "
            "cm, in, C or F.",
            field=field, got=text, want="a unit",
        )  # fmt: skip
    return found


def _kinds_differ(given: Given, parts: list[tuple[Quantity, Measure]]) -> InputError:
    kinds = " and ".join(dict.fromkeys(f"{u.name} is a {u.kind}" for _, u in parts))
    shown = str(given.raw["value"])
    return InputError(
        f"'{shown}' cannot be added: {kinds}. Convert one of them first; between mass and volume "
        "that needs the ingredient.",
        field="value", got=shown, want="amounts of one kind",
    )  # fmt: skip


def _kinds_do_not_meet(given: Given, source: Measure, target: Measure) -> InputError:
    shown = str(given.raw["value"])
    return InputError(
        f"{source.name} is a {source.kind}, {target.name} is a {target.kind}: neither turns into "
        "the other.",
        field="to", got=f"{shown} to {target.name}", want=f"a unit of {source.kind}",
    )  # fmt: skip


def _by_ingredient(given: Given, parts: list[tuple[Quantity, Measure]], target: Measure) -> Values:
    if not given.has("ingredient"):
        source = parts[0][1]
        raise InputError(
            f"{source.name} is a {source.kind}, {target.name} is a {target.kind}: the "
            "answer depends on the ingredient. Type ingredient=..., for example "
            "ingredient='white rice flour'.",
            field="ingredient", got="nothing", want="an ingredient",
        )  # fmt: skip
    key = _key(given)
    masses = [_grams(given, key, amount.value, unit) for amount, unit in parts]
    grams = Interval(
        sum(m.low for m in masses), sum(m.best for m in masses), sum(m.high for m in masses)
    )
    if target.kind == "mass":
        found = grams.times(1 / target.size)
    else:
        each = _of_one(given, key, target)
        found = Interval(grams.best / each.high, grams.best / each.best, grams.best / each.low)
    return {"value": found.best, "interval": _interval(found), "ingredient": key}


def _interval(found: Interval) -> Json:
    return {"low": found.low, "best": found.best, "high": found.high}


def _key(given: Given) -> str:
    words = given.text("ingredient")
    found = find(words)
    if found.key is not None:
        return found.key
    lines = [choice.words for choice in found.choices]
    tail = f" Type one of: {', '.join(lines)}." if lines else ""
    raise InputError(
        f"{found.question or f'{words} has no row in the pantry.'}{tail}",
        field="ingredient", got=words, want=" or ".join(lines) or "an ingredient of the pantry",
    )  # fmt: skip


def _grams(given: Given, key: str, amount: float, unit: Measure) -> Interval:
    if unit.kind == "mass":
        mass = amount * unit.size
        return Interval(mass, mass, mass)
    return _of_one(given, key, unit).times(amount)


def _of_one(given: Given, key: str, unit: Measure) -> Interval:
    """Grams of one unit, or the refusal to invent one."""
    found: Weighed | None = measure(key, unit.name)
    if found is None:
        raise InputError(
            f"What one {unit.name} of {key} weighs is not known. Weigh it once and use the grams.",
            field="ingredient", got=key, want="an ingredient with a known density",
        )  # fmt: skip
    given.cite(found.source)
    note = f", {found.note}" if found.note else ""
    given.note(
        "measure",
        f"1 {unit.name} of {key}: {found.mass_g.best:.4g} g ({found.mass_g.low:.4g} to "
        f"{found.mass_g.high:.4g}; {found.status}{note}). Weighing is surer.",
    )
    return found.mass_g


CONVERT_SUMS = (
    Sum(
        "convert",
        "One amount in another unit.",
        (
            Input("value", "amount; with its unit, or with from", kind="quantity"),
            Input("from", "unit of a bare amount", kind="text", required=False),
            Input("to", "unit wanted", kind="text"),
            Input("ingredient", "needed between mass and volume", kind="text", required=False),
            Input("difference", "a difference of temperatures", kind="yes-no", required=False),
        ),
        (
            Output("value", "in the unit wanted"),
            Output("interval", "low, best and high, where an ingredient stands between"),
        ),
        _convert,
        ("nist-sp-811", "nist-handbook-44"),
        (("value", "1"), ("from", "cup"), ("to", "ml")),
    ),
)
