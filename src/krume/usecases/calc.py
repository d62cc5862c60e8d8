"""The quick sums: listed, or one of them answered."""

from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import Interval
from krume.calc import SUMS, Sum, answer, parse_inputs, sum_named
from krume.usecases.asking.answer import Answer, Asked, Explanation
from krume.usecases.asking.as_json import Json
from krume.usecases.asking.why import key_meant, source_rows


@dataclass(frozen=True, slots=True)
class SumInput:
    """One input of a sum; a bare number is in `unit`."""

    name: str
    meaning: str
    unit: str | None
    kind: str
    required: bool
    choices: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SumOutput:
    """One value a sum answers with."""

    name: str
    meaning: str


@dataclass(frozen=True, slots=True)
class SumRow:
    """What a sum takes, what it answers, and an example that runs."""

    name: str
    meaning: str
    inputs: tuple[SumInput, ...]
    outputs: tuple[SumOutput, ...]
    sources: tuple[str, ...]
    example: str
    note: str


@dataclass(frozen=True, slots=True)
class SumList:
    """All quick sums."""

    sums: tuple[SumRow, ...]


def list_sums() -> Answer[SumList]:
    """All quick sums, in the order a day meets them."""
    return Answer(SumList(tuple(_row(declared) for declared in SUMS.values())))


def answer_sum(
    name: str, words: Sequence[str], asked: Asked, *, explain: str | None = None
) -> Answer[dict[str, Json]]:
    """Answer a quick sum: its values, its name as `sum` and what was given as `inputs`."""
    answers = [each for each in asked.answers if not each.startswith("--")]
    inputs = parse_inputs(words) | parse_inputs(answers)
    found = answer(name, inputs)
    given: dict[str, Json] = dict(inputs)
    told = Answer(
        {"sum": found.name, "inputs": given, **found.values}, (), found.notices, found.sources
    )
    key = asked.answer_for("--explain") or explain
    if key is None:
        return told
    return told.explained(_explained(key, found.name, found.values, found.sources))


def _explained(
    asked: str, name: str, values: dict[str, Json], sources: tuple[str, ...]
) -> Explanation:
    key = key_meant(asked, values)
    declared = sum_named(name)
    meaning = next((o.meaning for o in declared.outputs if o.name == key), "")
    said = [declared.meaning, f"{meaning[:1].upper()}{meaning[1:]}.", declared.note]
    return Explanation(
        key=key,
        value=_value(values[key]),
        unit="",
        how=" ".join(part for part in said if part not in ("", ".")),
        status="derived",
        sources=source_rows(sources),
    )


def _value(value: Json) -> float | Interval | str | None:
    if value is None or isinstance(value, str | float | int):
        return value
    if isinstance(value, dict) and value.keys() == {"low", "best", "high"}:
        low, best, high = value["low"], value["best"], value["high"]
        if isinstance(low, float) and isinstance(best, float) and isinstance(high, float):
            return Interval(low, best, high)
    return ", ".join(str(item) for item in value)


def _row(declared: Sum) -> SumRow:
    words = " ".join(f"{key}={_quoted(value)}" for key, value in declared.example)
    return SumRow(
        name=declared.name,
        meaning=declared.meaning,
        inputs=tuple(
            SumInput(i.name, i.meaning, i.unit or None, i.kind, i.required, i.choices)
            for i in declared.inputs
        ),
        outputs=tuple(SumOutput(o.name, o.meaning) for o in declared.outputs),
        sources=declared.sources,
        example=f"{declared.name} {words}",
        note=declared.note,
    )


def _quoted(value: str) -> str:
    return f'"{value}"' if any(sign in value for sign in " ;?*<>|&()") else value
