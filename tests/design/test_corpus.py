"""Texts of many hands: what is read in each, what is asked, and that nothing is lost.

The texts lie in `corpus/texts`, what a careful colleague reads in them in `corpus/texts.toml`, and
single ingredient lines in old wording in `corpus/lines.toml`. Fields of an expectation:

`lines` holds every ingredient line (`at` its number, `read` its words) with its `items`; a line
that is not named must not be taken for an ingredient, and `items = []` leaves it open. `says` lists
the readings that are right, each an amount and a unit: `2-3 g` is an interval, `?` is unknown, `*`
is anything. `key` is looked for in the pantry's key; among its alternatives `?` stands for a line
that is asked about or has no key, and a leading `~` allows no key. `part` left out means neither
white nor yolk nor zest; `*` is anything. `asks` and `asks_not` name questions by what they mean.
`miss` is the reason why an expectation is not met yet.
"""

import re
import tomllib
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from _pytest.mark.structures import ParameterSet
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval, Problem, Read
from krume.design import Formula, Line, read

CORPUS = Path(__file__).parent / "corpus"
Facts = dict[str, Any]
TEXTS: list[Facts] = tomllib.loads((CORPUS / "texts.toml").read_text("utf-8"))["text"]
OLD: list[Facts] = tomllib.loads((CORPUS / "lines.toml").read_text("utf-8"))["line"]

# A question is known by its meaning, so that a code may be renamed without touching the texts.
MEANINGS = {
    "amounts": r"amounts-(differ|disagree)|two-amounts|double",
    "claim": r"claim",
    "egg": r"egg",
    "egg-count": r"egg-count",
    "egg-size": r"egg-size",
    "lookalike": r"look-?alike|script",
    "negative": r"negative",
    "no-lines": r"no-(ingredient|line)|empty",
    "not-a-number": r"not-a-number|nan",
    "oven-word": r"oven-(word|gas)|gas|moderate",
    "percent": r"percent|blend",
    "pinch": r"pinch|trade",
    "range": r"range",
    "sum": r"sum",
    "temp-conflict": r"(temp|oven).*(conflict|differ|disagree|pair)",
    "temp-unit": r"(temp|oven).*unit",
    "thousand": r"thousand|decimal|comma",
    "tin-conflict": r"tin.*(conflict|two|twice)",
    "tin-shape": r"tin-shape",
    "too-heavy": r"heav|huge|large",
    "twice": r"twice|duplicate|repeat",
    "volume": r"volume|cup",
    "which-flour": r"which|ambiguous",
    "which-ingredient": r"which|ambiguous",
}


def text_of(facts: Facts) -> str:
    """The text of an expectation, line ends and all."""
    path: Path = CORPUS / "texts" / facts["file"]
    return path.read_bytes().decode("utf-8")


@cache
def reading(text: str) -> Read[Formula]:
    return read(text)


def means(problem: Problem, meaning: str) -> bool:
    return re.search(MEANINGS[meaning], problem.code) is not None


def tell(problems: tuple[Problem, ...]) -> str:
    return "; ".join(f"{p.where} {p.code}: {p.ask}" for p in problems) or "no question"


def amount_fits(amount: float | Interval | None, want: str) -> bool:
    if want in "*?":
        return want == "*" or amount is None
    low, _, high = want.partition("-")
    ends = (amount.low, amount.high) if isinstance(amount, Interval) else (amount, amount)
    return None not in ends and ends == pytest.approx((float(low), float(high or low)), abs=1e-3)


def says_fits(line: Line, says: list[str]) -> bool:
    for want in says:
        amount, _, unit = want.partition(" ")
        if amount_fits(line.amount, amount) and unit in ("*", line.unit):
            return True
    return False


def key_fits(key: str | None, want: str, *, asked: bool) -> bool:
    words = want.removeprefix("~").split("|")
    if "*" in words or ("?" in words and (asked or key is None)):
        return True
    if key is None:
        return want.startswith("~")
    return re.search("|".join(w for w in words if w != "?") or "$^", key) is not None


def part_fits(part: str | None, want: str) -> bool:
    if not want:
        return part not in ("white", "yolk", "zest")
    return "*" in want.split("|") or (part or "") in want.split("|")


def mass_fits(mass_g: float | None, want: list[float] | None) -> bool:
    return want is None or (mass_g is not None and want[0] <= mass_g <= want[1])


def misfits(line: Line, item: Facts, *, asked: bool) -> list[str]:
    """What of one ingredient line is not as expected."""
    section = item.get("section", "")
    checks = {
        f"says {line.amount} {line.unit}, not {item['says']}": says_fits(line, item["says"]),
        f"is {line.ingredient}, not {item.get('key')}": key_fits(
            line.ingredient, item.get("key", "*"), asked=asked
        ),
        f"part {line.part}, not {item.get('part')}": part_fits(line.part, item.get("part", "")),
        f"weighs {line.mass_g}, not {item.get('mass_g')}": mass_fits(
            line.mass_g, item.get("mass_g")
        ),
        f"stands in {line.section}, not {section}": re.search(section, line.section or "", re.I)
        is not None,
    }
    return [words for words, right in checks.items() if not right]


def unmet(lines: list[Line], items: list[Facts], *, asked: bool) -> list[str]:
    """Pair the lines read from one source line with what it says, and tell what is left over."""
    left, told = list(lines), []
    for item in sorted(items, key=lambda item: item.get("part", "") == "*"):
        if not left:
            told += [] if item.get("optional") else [f"nothing read for {item['says']}"]
            continue
        best = min(left, key=lambda line: len(misfits(line, item, asked=asked)))
        wrong = misfits(best, item, asked=asked)
        if wrong and item.get("optional"):
            continue
        left.remove(best)
        told += wrong
    return told + [f"also read {line.amount} {line.unit} {line.name}" for line in left]


def case(facts: Facts) -> ParameterSet:
    """One expectation; one that is known to be missed is a strict xfail."""
    reason = facts.get("miss")
    marks = (pytest.mark.xfail(strict=True, reason=reason),) if reason else ()
    return pytest.param(facts, id=facts["id"], marks=marks)


def cases(facts: list[Facts]) -> list[ParameterSet]:
    return [case(one) for one in facts]


def text_lines() -> list[Facts]:
    return [
        line | {"file": one["file"], "id": f"{one['file']}:{line['at']}"}
        for one in TEXTS
        for line in one.get("lines", ())
        if line["items"]
    ]


HEADS = (
    "name", "tin", "oven", "steps", "family", "core_c", "exit", "at_least", "asks", "asks_not",
)  # fmt: skip


def heads() -> list[Facts]:
    """One case for each thing a text is expected to say beside its ingredient lines."""
    return [
        {"id": f"{one['file']}:{head}", "file": one["file"], "head": head, "want": one[head]}
        | ({"miss": one["misses"][head]} if head in one.get("misses", {}) else {})
        for one in TEXTS
        for head in HEADS
        if head in one
    ]


def whole_texts(aspect: str) -> list[Facts]:
    return [
        one
        | {"id": one["file"]}
        | ({"miss": one["misses"][aspect]} if aspect in one.get("misses", {}) else {})
        for one in TEXTS
    ]


@pytest.mark.parametrize("facts", cases(text_lines()))
def test_an_ingredient_line_is_read_as_a_colleague_would(facts: Facts) -> None:
    got = reading(text_of(facts))
    lines = [line for line in got.value.lines if line.number == facts["at"]]
    asked = any(problem.where == f"line {facts['at']}" for problem in got.problems)
    assert not unmet(lines, facts["items"], asked=asked), facts["read"]
    assert {line.read.strip() for line in lines} <= {facts["read"].strip()}


@pytest.mark.parametrize("facts", cases(whole_texts("nothing_else")))
def test_nothing_but_ingredient_lines_is_taken_for_one(facts: Facts) -> None:
    named = {line["at"] for line in facts.get("lines", ())}
    extra = [line.read for line in reading(text_of(facts)).value.lines if line.number not in named]
    assert not extra


@pytest.mark.parametrize("facts", cases([one | {"id": one["read"]} for one in OLD]))
def test_an_old_line_is_read_as_a_colleague_would(facts: Facts) -> None:
    got = reading(f"Old card\n\n1 cup sugar\n{facts['read']}\n1 cup milk\n")
    lines = [line for line in got.value.lines if line.number == 4]
    asked = any(problem.where == "line 4" for problem in got.problems)
    assert not unmet(lines, facts["items"], asked=asked)
    assert {line.read for line in lines} == {facts["read"]}


def head_fault(got: Read[Formula], head: str, want: Any) -> str:
    """What is wrong with one thing a text says beside its ingredient lines, or nothing."""
    value, problems = got.value, got.problems
    if head == "name":
        right = value.name is not None and named(value.name, want)
        return "" if right else f"the name is {value.name!r}"
    if head == "steps":
        return "" if want[0] <= len(value.steps) <= want[1] else f"the steps are {value.steps}"
    if head == "exit":
        return "" if bool(problems) == (want == 3) else tell(problems)
    if head == "at_least":
        return "" if len(problems) >= want else tell(problems)
    if head in ("tin", "oven"):
        return fields_fault(getattr(value, head), want)
    if head in ("family", "core_c"):
        return fields_fault(value, {head: want})
    found = {word: any(means(problem, word) for problem in problems) for word in want}
    wrong = [word for word in want if found[word] != (head == "asks")]
    return f"{wrong}: {tell(problems)}" if wrong else ""


def named(name: str, want: str) -> bool:
    if want.startswith("~"):
        return re.search(want[1:], name, re.I) is not None
    return name.casefold() == want.casefold()


def fields_fault(thing: object, want: Facts) -> str:
    for field, value in want.items():
        got = getattr(thing, field, None)
        if isinstance(value, list):
            right = got is not None and value[0] <= got <= value[1]
        elif isinstance(value, str):
            right = got in value.split("|")
        elif isinstance(value, bool):
            right = got == value
        else:
            right = got == pytest.approx(value, abs=0.06)
        if not right:
            return f"{field} is {got}, not {value}"
    return ""


@pytest.mark.parametrize("facts", cases(heads()))
def test_the_rest_of_a_text_is_read_as_a_colleague_would(facts: Facts) -> None:
    fault = head_fault(reading(text_of(facts)), facts["head"], facts["want"])
    assert not fault, fault


@pytest.mark.parametrize("facts", cases(whole_texts("verbatim")))
def test_every_line_of_a_text_is_kept_verbatim(facts: Facts) -> None:
    text = text_of(facts).removeprefix("\ufeff")
    kept = [line.text for line in reading(text_of(facts)).value.source_lines]
    kept[0] = kept[0].removeprefix("\ufeff")
    assert kept[: len(text.splitlines())] == text.splitlines()
    assert [line.number for line in reading(text).value.source_lines] == [*range(1, len(kept) + 1)]


def answered(text: str, problem: Problem, line: str) -> str:
    """The text with an option's line typed where its question points."""
    rows = text.removeprefix("\ufeff").splitlines()
    number = int(problem.where.split()[-1])
    first = number if problem.where.startswith("after") else number - 1
    return "\n".join([*rows[:first], line, *rows[number:]])


@pytest.mark.parametrize("facts", cases(whole_texts("answers")))
def test_typing_an_option_makes_its_question_go_away(facts: Facts) -> None:
    text = text_of(facts)
    for problem in reading(text).problems:
        for option in problem.options:
            after = reading(answered(text, problem, option.line)).problems
            still = [p for p in after if (p.code, p.where) == (problem.code, problem.where)]
            assert not still, f"{problem.where} {problem.code}: {option.line!r} is asked again"


@pytest.mark.parametrize("facts", cases(whole_texts("settles")))
def test_answering_one_question_after_the_other_comes_to_an_end(facts: Facts) -> None:
    text = text_of(facts)
    for _ in range(40):
        asked = [problem for problem in read(text).problems if problem.options]
        if not asked:
            return
        text = answered(text, asked[0], asked[0].options[0].line)
    pytest.fail(f"still asked: {tell(tuple(asked))}")


WORDS = sorted({word for one in OLD for word in one["read"].split()})
SIGNS = ("½", "1/0", "--", "0,5", "٣", "\u202e", "<b>", "&nbsp;", "|", "(", "°F", "Tin:", "Eggs:")
LINES = st.lists(st.sampled_from([*WORDS, *SIGNS]), max_size=8).map(" ".join)


@given(st.text() | st.lists(LINES, max_size=6).map("\n".join))
def test_reading_never_raises_and_keeps_every_line(text: str) -> None:
    got = read(text)
    kept = [line.text for line in got.value.source_lines]
    assert "".join("".join(kept).split()) == "".join(text.split())


def test_the_corpus_is_large_and_its_texts_are_all_expected() -> None:
    assert len(OLD) >= 250
    assert {one["file"] for one in TEXTS} == {p.name for p in (CORPUS / "texts").iterdir()}
