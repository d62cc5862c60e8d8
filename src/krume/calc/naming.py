"""Names of inputs as people type them: with or without the unit, and `from` as `from_`."""

from collections.abc import Iterable, Mapping
from difflib import get_close_matches

from krume.base import InputError
from krume.calc.declaring import Declared, Input
from krume.calc.units import measure_named

_LIST_KINDS = frozenset({"numbers"})


def matched(declared: Declared, inputs: Mapping[str, object]) -> dict[str, object]:
    """Inputs by their declared names; an empty text counts as not given."""
    found: dict[str, object] = {}
    typed: dict[str, str] = {}
    for key, value in inputs.items():
        if value is None or (isinstance(value, str) and not value.strip()):
            continue
        name, own_unit = _match(declared, key)
        if name in found:
            raise InputError(
                f"{name} was given twice, as '{typed[name]}' and as '{key}'. Type it once.",
                field=name, got=key, want="one value",
            )  # fmt: skip
        found[name] = _with_unit(value, own_unit)
        typed[name] = key
    return found


def _match(declared: Declared, key: str) -> tuple[str, str]:
    """Declared name, and the unit where the typed name carries another one (`temp_f`)."""
    word = key.strip().rstrip("_").replace("-", "_").casefold()
    for item in declared.inputs:
        if word in _spellings(item):
            return item.name, ""
    for item in declared.inputs:
        own = word.removeprefix(f"{item.name}_")
        if own != word and item.unit and _same_kind(own, item.unit):
            return item.name, own
    raise _unknown(declared, key)


def _spellings(item: Input) -> tuple[str, ...]:
    with_unit = f"{item.name}_{item.unit}" if item.unit else item.name
    bare = item.name.removesuffix(f"_{item.unit}") if item.unit else item.name
    return item.name, with_unit, bare


def _same_kind(own: str, wanted: str) -> bool:
    one, two = measure_named(own), measure_named(wanted)
    return one is not None and two is not None and one.kind == two.kind


def _with_unit(value: object, own_unit: str) -> object:
    if not own_unit:
        return value
    if isinstance(value, list | tuple):
        return [f"{item} {own_unit}" for item in value]
    if isinstance(value, str) and "," in value:
        return [f"{item.strip()} {own_unit}" for item in value.split(",")]
    return f"{value} {own_unit}"


def _unknown(declared: Declared, key: str) -> InputError:
    names = [item.name for item in declared.inputs]
    close = nearest(key, names)
    hint = f" Did you mean {close[0]}?" if close else ""
    return InputError(
        f"{declared.name} has no input '{key}'. It takes {', '.join(names)}.{hint}",
        field=key,
        got=key,
        want=", ".join(names),
    )


def nearest(word: str, names: Iterable[str]) -> list[str]:
    """Names that look like a word, the closest first.

    >>> nearest("tin-volme", ["tin-volume", "tin-factor"])
    ['tin-volume']
    """
    return get_close_matches(word.casefold().replace("_", "-"), list(names), n=3, cutoff=0.6)
