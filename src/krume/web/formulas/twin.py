"""A person's own text, line by line, beside what was understood of it."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from krume.base import Interval, Problem, heat_text
from krume.usecases import CheckResult, ReadBaked, ReadLine, ReadResult, TextLineRow
from krume.web.frame.figures import amount
from krume.web.texts.questions import Question, asked_by_line

_KEPT = ("parent lines", "parent was", "own lines")
_BASES = ("flour", "flour and nut", "parts")


@dataclass(frozen=True, slots=True)
class Understood:
    """What one line was taken for: grams and a name, or a sentence."""

    mass: str = ""
    text: str = ""
    share: str = ""


@dataclass(frozen=True, slots=True)
class TwinRow:
    """One line of the text: its own words, what was understood, what is asked.

    `is_kept` is a line that krume wrote for itself: what a child was made from.
    """

    number: int
    own: str
    got: tuple[Understood, ...]
    questions: tuple[Question, ...]
    is_kept: bool = False


@dataclass(frozen=True, slots=True)
class _Whole:
    """What was understood of the whole text, and the units of the oven."""

    read: ReadResult
    check: CheckResult
    units: str


def twin(
    read: ReadResult, check: CheckResult, problems: Iterable[Problem], units: str = "c"
) -> tuple[TwinRow, ...]:
    """All lines of a text, each beside what was understood; `units` are those of the oven."""
    asked = asked_by_line(problems)
    by_line: dict[int, list[ReadLine]] = {}
    for line in read.lines:
        by_line.setdefault(line.line, []).append(line)
    steps = iter(range(1, len(read.steps) + 1))
    return tuple(
        TwinRow(
            each.line,
            each.text,
            _of_line(each, by_line, _Whole(read, check, units), steps),
            asked.get(f"line {each.line}", ()),
            is_kept=_key(each.text) in _KEPT,
        )
        for each in read.text
    )


def _of_line(
    each: TextLineRow,
    by_line: Mapping[int, list[ReadLine]],
    whole: _Whole,
    steps: Iterator[int],
) -> tuple[Understood, ...]:
    if each.line in by_line:
        return _got(by_line[each.line], whole.check)
    is_step = each.kind == "step"
    text = _step(next(steps, 0), whole.read) if is_step else _plain(each, whole)
    return (Understood(text=text),) if text else ()


def _got(lines: list[ReadLine], check: CheckResult) -> tuple[Understood, ...]:
    return tuple(
        Understood(_grams(line), _named(line), _share(line.mass_g, check)) for line in lines
    )


def _grams(line: ReadLine) -> str:
    if line.mass_g is None and isinstance(line.mass_interval_g, Interval):
        return amount(line.mass_interval_g)
    return amount(line.mass_g, 2)


def _named(line: ReadLine) -> str:
    taken = line.taken_as or "not in the pantry: not counted until you say what it is"
    part = "" if line.part in (None, "whole") else f", {line.part}"
    return f"{taken}{part}"


def _share(mass_g: float | None, check: CheckResult) -> str:
    base = check.basis_g
    if mass_g is None or not isinstance(base, float) or not base or check.basis not in _BASES:
        return ""
    return f"{amount(100 * mass_g / base)} %"


def _step(number: int, read: ReadResult) -> str:
    """What a step uses: the grams it names, or all of a line."""
    used = [use for use in read.uses if use.step == number]
    return ", ".join(
        use.name if use.mass_g is None else f"{amount(use.mass_g)} g {use.name}" for use in used
    )


def _key(text: str) -> str:
    return text.partition(":")[0].strip().casefold()


def _plain(each: TextLineRow, whole: _Whole) -> str:
    read = whole.read
    if each.kind == "name":
        return f"{read.name or 'no name'}, {read.family or 'family not known'}"
    if each.kind == "heading":
        return "heading of a part"
    if _key(each.text) in _KEPT:
        return "by this it follows its parent"
    key = _key(each.text) if each.kind == "key" else ""
    return _keys(read, whole.units).get(key, "")


def _keys(read: ReadResult, units: str) -> dict[str, str]:
    """What the key lines of a text were taken for."""
    said: dict[str, str] = {}
    if read.tin is not None:
        held = amount(read.tin.volume_ml, 0)
        said["tin"] = f"{read.tin.text}, {held} ml" if read.tin.volume_ml else read.tin.text
    if read.oven is not None:
        fan = {True: ", fan", False: ", no fan", None: ""}[read.oven.fan]
        heat = "not known" if read.oven.temp_c is None else heat_text(read.oven.temp_c, units, 1)
        said["oven"] = f"{heat}{fan}"
    if read.eggs.region or read.eggs.size:
        said["eggs"] = " ".join(x.upper() for x in (read.eggs.region, read.eggs.size) if x)
    if read.makes:
        said["makes"] = said["yield"] = read.makes
    if read.baked is not None:
        said["baked"] = _baked(read.baked)
    if read.density_g_ml is not None:
        said["density"] = f"{amount(read.density_g_ml, 2)} g/ml"
    return said


def _baked(baked: ReadBaked) -> str:
    height = "" if baked.height_mm is None else f"{amount(baked.height_mm)} mm high"
    mass = "" if baked.mass_g is None else f"{amount(baked.mass_g)} g"
    word = "measured" if baked.status == "measured" else "planned"
    return f"{word}: {', '.join(x for x in (height, mass) if x)}"
