"""Running a quick sum by its name, and telling what it is."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from krume.base import InputError, NotFoundError, Notice
from krume.calc.declaring import Input, Json, Values
from krume.calc.given import given
from krume.calc.naming import nearest
from krume.calc.registry import SUMS
from krume.calc.summing import Sum


@dataclass(frozen=True, slots=True)
class SumAnswer:
    """What a sum answers: plain JSON values, notices, and the keys of its sources."""

    name: str
    values: Values
    notices: tuple[Notice, ...]
    sources: tuple[str, ...]


def run(name: str, /, **inputs: object) -> Values:
    """Answer a quick sum with plain JSON values; an input called `from` is given as `from_`.

    >>> run("salt", sodium=250)
    {'salt_g': 0.625}
    >>> run("tin-factor", from_="round 20 cm", to="round 24 cm")["by_area"]
    1.44
    """
    return answer(name, inputs).values


def answer(name: str, inputs: Mapping[str, object]) -> SumAnswer:
    """Answer a quick sum with its notices and sources."""
    declared = sum_named(name)
    found = given(declared, dict(inputs))
    values = {key: _plain(value) for key, value in declared.compute(found).items()}
    sources = tuple(dict.fromkeys((*declared.sources, *found.sources)))
    return SumAnswer(declared.name, values, tuple(found.notices), sources)


def sum_named(name: str) -> Sum:
    """Declaration of a sum; an unknown name is answered with the close ones."""
    key = name.strip().casefold().replace("_", "-")
    if key in SUMS:
        return SUMS[key]
    close = nearest(key, SUMS)
    hint = f" Did you mean {' or '.join(close)}?" if close else " `calc` lists them all."
    raise NotFoundError(
        f"No sum is called '{name}'.{hint}",
        field="name",
        got=name,
        want=", ".join(close) or ", ".join(SUMS),
    )


def describe(name: str) -> dict[str, Json]:
    """A sum's declaration as plain JSON values: for the form, the help and the docs.

    >>> describe("salt")["inputs"][0]["name"]
    'sodium'
    """
    declared = sum_named(name)
    return {
        "name": declared.name,
        "meaning": declared.meaning,
        "inputs": [_told(item) for item in declared.inputs],
        "outputs": [{"name": o.name, "meaning": o.meaning} for o in declared.outputs],
        "sources": list(declared.sources),
        "example": dict(declared.example),
        "note": declared.note,
    }


def _told(item: Input) -> Json:
    return {
        "name": item.name,
        "meaning": item.meaning,
        "unit": item.unit or None,
        "kind": item.kind,
        "required": item.required,
        "choices": list(item.choices),
    }


def parse_inputs(words: Iterable[str]) -> dict[str, str]:
    """Inputs from words `key=value`; the value may hold further `=`.

    >>> parse_inputs(["diameter=8in", "from=round 20 cm"])
    {'diameter': '8in', 'from': 'round 20 cm'}
    """
    found: dict[str, str] = {}
    for word in words:
        key, sign, value = word.partition("=")
        if not sign or not key.strip():
            raise InputError(
                f"'{word}' is no input. Type name=value, for example diameter=8in.",
                field=word, got=word, want="name=value",
            )  # fmt: skip
        if key.strip() in found:
            raise InputError(
                f"{key.strip()} was given twice. Type it once.",
                field=key.strip(), got=value, want="one value",
            )  # fmt: skip
        found[key.strip()] = value.strip()
    return found


def _plain(value: Json) -> Json:
    """The value itself, with the dust of binary sums beyond 12 digits wiped off."""
    if isinstance(value, dict):
        return {key: _plain(item) for key, item in value.items()}
    if isinstance(value, list):
        return [_plain(item) for item in value]
    if isinstance(value, bool) or not isinstance(value, float):
        return value
    if not math.isfinite(value):
        raise InputError(
            "The sum has no finite answer for these inputs. Check their size.",
            field="inputs", got=str(value), want="a finite answer",
        )  # fmt: skip
    return float(f"{value:.12g}")
