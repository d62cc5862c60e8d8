"""A text held against itself: steps against lines, tin against tin, oven against oven, claims."""

import re
from collections.abc import Iterator

from krume.base import Interval, Notice, Option, Problem, as_text
from krume.design.formula import Formula, Line
from krume.design.reader.asking import Asking, grams, left_out
from krume.design.reader.claims import claims
from krume.design.reader.classifying import Kind
from krume.design.reader.dates import dates
from krume.design.reader.heads import Head
from krume.design.reader.mentions import Count, Mention, egg_counts
from krume.design.reader.settings import limit
from krume.design.reader.steps import Steps, line_words, step_said
from krume.design.reader.tinsaid import THIS_ONE, TinSaid, same_tin

_SECOND = "second addition"
_MORE_EGGS = "more than the eggs give"


def crosschecks(
    formula: Formula, kinds: list[Kind], roles: list[str | None], head: Head, steps: Steps,
    problems: list[Problem], notices: list[Notice],
) -> None:  # fmt: skip
    """Ask about everything in which the text disagrees with itself."""
    found: list[Problem | Notice] = []
    found += _twice(formula.lines, roles)
    found += _splits(formula, steps)
    found += _egg_counts(formula, steps)
    found += _tins(head, steps)
    found += _ovens(head, kinds)
    found += _minutes(steps)
    found += _percents(formula.lines, roles)
    found += claims(kinds, list(formula.lines))
    found += dates(kinds)
    found += _flourless(formula, roles)
    problems += [x for x in found if isinstance(x, Problem)]
    notices += [x for x in found if isinstance(x, Notice)]


def _twice(lines: tuple[Line, ...], roles: list[str | None]) -> Iterator[Problem | Notice]:
    """One ingredient on two lines of one part, without a word that tells them apart."""
    first: dict[tuple[str, str | None, str | None], Line] = {}
    for line, role in zip(lines, roles, strict=True):
        if (
            line.ingredient is None
            or line.amount is None
            or role in ("egg", "water")
            or line.basis == "ratio"
        ):
            continue
        key = (line.ingredient, line.section, line.part)
        other = first.setdefault(key, line)
        if other is line or other.number == line.number or _told_apart(other, line):
            continue
        yield _ask_twice(other, line)


def _told_apart(one: Line, other: Line) -> bool:
    notes = (one.note or "", other.note or "")
    if any(
        re.search(
            r"\b(?:for|für|zum|second|first|more|extra|divided|reserved|again|topping|dust\w*|sprinkl\w*|greas\w*)\b",
            n,
            re.IGNORECASE,
        )
        for n in notes
    ):
        return True
    if re.search(r"\b(?:more|extra|another|additional)\b", other.read, re.IGNORECASE):
        return True
    return one.name.casefold() != other.name.casefold() and None not in (one.mass_g, other.mass_g)


def _ask_twice(one: Line, other: Line) -> Problem:
    both = (
        grams(one.mass_g + other.mass_g)
        if one.mass_g is not None and other.mass_g is not None
        else "both"
    )
    end = len(other.read.rstrip())
    kept = f"{other.read[:end]}, {_SECOND}"
    return Problem(
        "line-twice",
        f"line {other.number}",
        other.read.strip()[:200],
        f"{other.name} stands in line {one.number} and in line {other.number}: added in two additions, {both} in all, or typed twice?",
        (
            Option(f"two additions, {both} in all", kept),
            Option(f"typed twice: only line {one.number} holds", left_out(other.read)),
        ),
    )


def _splits(formula: Formula, steps: Steps) -> Iterator[Problem | Notice]:
    """Amounts the steps take of one line must add up to it."""
    taken: dict[int, list[tuple[Kind, Mention, float]]] = {}
    for kind, mention, at, mass in steps.taken:
        if at is not None and mass is not None:
            taken.setdefault(at, []).append((kind, mention, mass))
        elif at is None and mention.words and mention.unit.kind == "mass":
            yield from _step_only(kind, mention)
    for at, parts in taken.items():
        yield from _split(formula, at, parts)


def _step_only(kind: Kind, mention: Mention) -> Iterator[Notice]:
    from krume.pantry import find

    words = " ".join(mention.words)
    if find(words).kind == "known":
        text = f"the step takes {as_text(_best(mention.value))} {mention.unit.name} {words}; no line has it"
        yield Notice("step-ingredient", text, f"line {kind.number}")


def _best(value: float | Interval) -> float:
    return value.best if isinstance(value, Interval) else value


def _split(
    formula: Formula, at: int, parts: list[tuple[Kind, Mention, float]]
) -> Iterator[Problem]:
    line = formula.lines[at]
    if line.mass_g is None:
        return
    same = [
        x
        for x in formula.lines
        if x.ingredient == line.ingredient and x.name == line.name and x.mass_g is not None
    ]
    whole = sum(x.mass_g or 0.0 for x in same)
    total = sum(mass for _, _, mass in parts)
    slack = max(limit("split-agrees") / 100 * line.mass_g, 0.05)
    if abs(total - line.mass_g) <= slack or abs(total - whole) <= slack:
        return
    is_vague = _is_named_bare(formula, at)
    says_rest = any(mention.is_remaining for _, mention, _ in parts)
    if len(same) > 1 and total < whole:
        return
    if total > line.mass_g + slack or says_rest or (len(parts) > 1 and not is_vague):
        yield _ask_split(line, parts, total)
    elif not is_vague and _is_lone(formula, at, parts):
        yield _ask_split(line, parts, total)


def _is_named_bare(formula: Formula, at: int) -> bool:
    """Whether a step takes of a line without saying how much: the rest, half, or just its name."""
    if any(use.line == at and use.mass_g is None for use in formula.uses):
        return True
    words = line_words(formula.lines[at])
    if not words:
        return False
    share = re.compile(
        rf"\b(?:rest|remainder|remaining|half|third|quarter|übrige\w*|restliche\w*|hälfte)\s+(?:of\s+)?(?:the\s+|des\s+|der\s+)?(?:\w+\s+)?{re.escape(words[-1])}",
        re.IGNORECASE,
    )
    return any(share.search(step) for step in formula.steps)


def _is_lone(formula: Formula, at: int, parts: list[tuple[Kind, Mention, float]]) -> bool:
    """One amount in one step, not `of the`, and the ingredient named nowhere else."""
    _, mention, _ = parts[0]
    return (
        len(parts) == 1
        and not mention.is_of_the
        and sum(use.line == at for use in formula.uses) == 1
    )


def _ask_split(line: Line, parts: list[tuple[Kind, Mention, float]], total: float) -> Problem:
    kind, last, mass = parts[-1]
    mass_g = line.mass_g or 0.0
    said = " + ".join(grams(m) for _, _, m in parts)
    asking = Asking(kind.source)
    needed = mass_g - (total - mass)
    number_end = last.start + len(
        re.match(r"[\d.,/ ½¼¾⅓⅔]*", kind.source[last.start :])[0].rstrip()
    )  # type: ignore[index]
    if needed > 0 and last.unit.kind == "mass":
        value = as_text(needed / (last.unit.size or 1.0), 2)
        options = [(f"{value} {last.unit.name} here", asking.edit(last.start, number_end, value))]
    else:
        options = []
    options.append(
        (
            f"here the rest of the {line.name}",
            asking.edit(last.start, last.end, f"the rest of the {line.name}"),
        )
    )
    others = [(k, m, g) for k, m, g in parts[:-1] if k is kind]
    if others and mass_g - (total - others[-1][2]) > 0:
        _, other, other_g = others[-1]
        value = as_text(mass_g - (total - other_g), 2)
        end = other.start + len(re.match(r"[\d.,/ ½¼¾⅓⅔]*", kind.source[other.start :])[0].rstrip())  # type: ignore[index]
        options.append((f"{value} g in the other place", asking.edit(other.start, end, value)))
    asking.ask(
        "split-sum",
        f"The steps take {said} = {grams(total)} {line.name}; line {line.number} has {grams(mass_g)}: "
        f"{as_text(total, 1)} ≠ {as_text(mass_g, 1)}. Which is right? (Or type {grams(total)} in line {line.number}.)",
        *options,
    )
    return _placed(asking.problems[0], kind)


def _placed(problem: Problem, kind: Kind) -> Problem:
    return Problem(problem.code, f"line {kind.number}", problem.read, problem.ask, problem.options)


def _egg_counts(formula: Formula, steps: Steps) -> Iterator[Problem]:
    """`whisk the five whites` where the lines have four eggs; `beat 2 yolks` where they have three."""
    has = _eggs(formula.lines)
    if not has:
        return
    named: dict[str, list[tuple[Kind, Count]]] = {}
    for group in steps.kinds:
        for kind in group:
            for count in egg_counts(kind.source) if _MORE_EGGS not in kind.source else ():
                named.setdefault(count.part, []).append((kind, count))
    for part, counts in named.items():
        yield from _wrong_counts(part, counts, has.get(part, 0.0), formula)


def _wrong_counts(
    part: str, counts: list[tuple[Kind, Count]], there: float, formula: Formula
) -> Iterator[Problem]:
    if not there:
        return
    for kind, count in counts:
        if count.count > there or (count.is_definite and count.count != there):
            yield _ask_count(kind, count.count, part, there, (count.start, count.end))
            return
    kind, last = counts[-1]
    total = sum(count.count for _, count in counts)
    if part != "whole" and total < there and _all_else_is_counted(part, counts, formula):
        yield _ask_count(kind, last.count, part, last.count + there - total, (last.start, last.end))


def _all_else_is_counted(part: str, counts: list[tuple[Kind, Count]], formula: Formula) -> bool:
    """Whether no step takes whites or yolks without counting them, and both parts are spoken of."""
    other = "white" if part == "yolk" else "yolk"
    text = " ".join(formula.steps).casefold()
    spoken = len(re.findall(rf"\b{part}s?\b", text))
    return spoken == len(counts) and other in text


def _eggs(lines: tuple[Line, ...]) -> dict[str, float]:
    """How many whites, yolks and whole eggs the lines give, where all are counted."""
    eggs = [x for x in lines if (x.ingredient or "").startswith("egg")]
    if not eggs or any(x.unit != "each" or x.amount is None for x in eggs):
        return {}
    counts = {
        part: sum(_most(x.amount) for x in eggs if x.part == part)
        for part in (None, "white", "yolk")
    }
    return {
        "white": counts[None] + counts["white"],
        "yolk": counts[None] + counts["yolk"],
        "whole": counts[None],
    }


def _most(amount: float | Interval | None) -> float:
    return amount.high if isinstance(amount, Interval) else amount or 0.0


def _ask_count(kind: Kind, count: float, part: str, there: float, at: tuple[int, int]) -> Problem:
    name = {"white": "whites", "yolk": "yolks", "whole": "eggs"}[part]
    said = kind.source[at[0] : at[1]]
    asking = Asking(kind.source)
    end = at[1]
    behind = re.match(r"\s+(?:egg\s+)?\S+", kind.source[end:])
    after = end + (behind.end() if behind else 0)
    apart = as_text(abs(count - there))
    options = [(f"{as_text(there)} {name}", asking.edit(at[0], end, as_text(there)))]
    if count > there:
        options.append(
            (
                f"{as_text(count)} {name}: {apart} more",
                asking.edit(after, after, f" ({apart} {_MORE_EGGS})"),
            )
        )
    asking.ask(
        "egg-count-conflict",
        f"The step says {said} {name}; the lines have {as_text(there)}. Which is right?",
        *options,
    )
    return _placed(asking.problems[0], kind)


def _tins(head: Head, steps: Steps) -> Iterator[Problem | Notice]:
    said = steps.tins_said
    decided = [one for one in said if one[1].decided]
    if not said or decided:
        for kind, one in decided[:1]:
            yield Notice(
                "tin-decided",
                f"'{one.text}' holds; other tins in the text are left aside",
                f"line {kind.number}",
            )
        return
    if head.tin_line is not None:
        yield from _against_key(head, said)
        return
    first_kind, first = said[0]
    other = next(((k, s) for k, s in said[1:] if not _one_tin(first, s)), None)
    if other is not None:
        yield _ask_tins(first.text, f"line {first_kind.number}", *other)
        return
    for problem in first.problems if first.tin is None else ():
        options = tuple(
            Option(
                o.label, first_kind.source[: first.start] + o.line + first_kind.source[first.end :]
            )
            for o in problem.options
        )
        yield Problem(problem.code, f"line {first_kind.number}", first.text, problem.ask, options)
    for notice in first.notices:
        yield Notice(notice.code, notice.text, f"line {first_kind.number}")


def _one_tin(one: TinSaid, other: TinSaid) -> bool:
    if one.tin is not None and other.tin is not None:
        return same_tin(one.tin, other.tin)
    return _figures(one.text) == _figures(other.text)


def _figures(text: str) -> list[str]:
    return re.findall(r"\d+(?:[.,]\d+)?", text)


def _against_key(head: Head, said: tuple[tuple[Kind, TinSaid], ...]) -> Iterator[Problem]:
    if not head.tins:
        return
    for kind, one in said:
        if (
            one.tin is not None
            and kind.kind == "step"
            and not any(same_tin(tin, one.tin) for tin in head.tins)
        ):
            yield _ask_tins(head.tins[0].read, f"line {head.tin_line}", kind, one)
            return


def _ask_tins(first: str, where: str, kind: Kind, other: TinSaid) -> Problem:
    asking = Asking(kind.source)
    asking.ask(
        "tin-conflict",
        f"Two tins: {first} ({where}) and {other.text} (line {kind.number}). Which one is baked in?",
        (first, asking.edit(other.start, other.end, first)),
        (other.text, asking.edit(other.end, other.end, f" {THIS_ONE}")),
    )
    return _placed(asking.problems[0], kind)


def _ovens(head: Head, kinds: list[Kind]) -> Iterator[Problem]:
    """An oven line against the temperature a step bakes at; two steps against each other."""
    said = []
    for kind in kinds:
        oven = step_said(kind.source).oven if kind.kind == "step" else None
        if kind.number == head.oven_line:
            oven = head.oven
        if oven is not None and oven.temp_c is not None:
            said.append((kind, oven))
    if len(said) < 2 or any(THIS_ONE in kind.source for kind, _ in said):
        return
    first_kind, first = said[0]
    for kind, oven in said[1:]:
        if oven.temp_c is None or first.temp_c is None or first.stages or _is_later(kind.source):
            continue
        if oven.fan != first.fan and (oven.fan or first.fan):
            continue
        if abs(oven.temp_c - first.temp_c) > limit("temperatures-agree"):
            yield _ask_ovens(first_kind, first.temp_c, kind, oven.temp_c)
            return


def _is_later(source: str) -> bool:
    return bool(
        re.search(
            r"\b(?:reduce|lower|turn|then|increase|raise|drop|dann|reduzieren|second|toast|roast|meringue)\b",
            source,
            re.IGNORECASE,
        )
    )


def _ask_ovens(first: Kind, first_c: float, kind: Kind, other_c: float) -> Problem:
    asking = Asking(kind.source)
    match = re.search(r"\d{3}(?:[.,]\d)?(?:\s*(?:°|degrees|grad))?\s*[CF]?\b", kind.source)
    start, end = match.span() if match else (len(kind.source), len(kind.source))
    asking.ask(
        "oven-conflict",
        f"Line {first.number} bakes at {as_text(first_c, 1)} °C, line {kind.number} at {as_text(other_c, 1)} °C. Which one?",
        (f"{as_text(first_c, 1)} °C", asking.edit(start, end, f"{as_text(first_c, 1)} C")),
        (f"{as_text(other_c, 1)} °C", asking.edit(end, end, f" {THIS_ONE}")),
    )
    return _placed(asking.problems[0], kind)


def _minutes(steps: Steps) -> Iterator[Problem]:
    """Minutes in the oven named twice, without a word that says one follows the other."""
    plain = [(kind, minutes, at) for kind, minutes, at, is_added in steps.minutes if not is_added]
    for kind in dict.fromkeys(kind for kind, _, _ in plain):
        loose = _OR_MINUTES.search(kind.source)
        if loose is not None:
            yield _ask_minutes(kind, loose)
            return
    if len(plain) < 2:
        return
    _, first, _ = plain[0]
    for kind, minutes, _ in plain[1:]:
        if minutes.low > first.high or minutes.high < first.low:
            yield _ask_two_minutes(kind, first, minutes)
            return


_OR_MINUTES = re.compile(
    r"(?P<one>\d{1,3}(?:\s*[-–]\s*\d{1,3})?)\s*min\w*\.?\s*(?:\.{2,}|…|,|/)*\s*\bor\s+(?P<two>\d{1,3}(?:\s*(?:[-–]|to)\s*\d{1,3})?)\b(?!\s*(?:g|c|f|°))(?:\s*min\w*)?",
    re.IGNORECASE,
)


def _ask_minutes(kind: Kind, match: re.Match[str]) -> Problem:
    asking = Asking(kind.source)
    asking.ask(
        "minutes-conflict",
        f"{match['one']} minutes or {match['two']} minutes: the depth decides, and it is not written. Which?",
        *(
            (f"{m} minutes", asking.edit(*match.span(), f"{m} minutes"))
            for m in (match["one"], match["two"])
        ),
    )
    return _placed(asking.problems[0], kind)


def _ask_two_minutes(kind: Kind, first: Interval, other: Interval) -> Problem:
    asking = Asking(kind.source)
    match = re.search(r"\d{1,3}(?:\s*(?:-|–|to|bis)\s*\d{1,3})?(?=\s*min)", kind.source)
    start, end = match.span() if match else (len(kind.source), len(kind.source))
    texts = [_span(first), _span(other)]
    asking.ask(
        "minutes-conflict",
        f"The text bakes {texts[0]} minutes in one place and {texts[1]} minutes in another. Which?",
        (f"{texts[0]} minutes", asking.edit(start, end, texts[0])),
        (f"{texts[1]} minutes more", asking.edit(end, end, " more")),
    )
    return _placed(asking.problems[0], kind)


def _span(minutes: Interval) -> str:
    low, high = as_text(minutes.low), as_text(minutes.high)
    return low if low == high else f"{low} to {high}"


def _percents(lines: tuple[Line, ...], roles: list[str | None]) -> Iterator[Problem]:
    """Percentages of a blend must sum to 100."""
    parts = [
        (x, r)
        for x, r in zip(lines, roles, strict=True)
        if x.unit == "%" and not isinstance(x.amount, Interval) and x.amount is not None
    ]
    if len(parts) < 2 or any(
        role not in (None, "flour", "starch", "nut", "binder") for _, role in parts
    ):
        return
    total = sum(float(x.amount) for x, _ in parts if isinstance(x.amount, float))
    last = parts[-1][0]
    if abs(total - 100) <= limit("percent-sum-agrees") or "parts of" in last.read:
        return
    own = float(last.amount) if isinstance(last.amount, float) else 0.0
    asking = Asking(last.read)
    match = re.search(r"\d+(?:[.,]\d+)?(?=\s*%)", last.read)
    options = [
        (
            f"scale to 100: these are parts of {as_text(total)}",
            f"{last.read.rstrip()}, parts of {as_text(total)}",
        )
    ]
    if match is not None and own + 100 - total > 0:
        value = as_text(own + 100 - total)
        options.append((f"{value} % {last.name}", asking.edit(*match.span(), value)))
    more = "missing" if total < 100 else "too much"
    yield Problem(
        "percent-sum", f"line {last.number}", last.read.strip()[:200],
        f"The blend sums to {as_text(total)} %: {as_text(abs(100 - total))} % {more}. Scale to 100, or which one is wrong?",
        tuple(Option(*option) for option in options),
    )  # fmt: skip


def _flourless(formula: Formula, roles: list[str | None]) -> Iterator[Notice]:
    flour = sum(
        x.mass_g or 1.0
        for x, role in zip(formula.lines, roles, strict=True)
        if role in ("flour", "starch") and x.mass_g != 0
    )
    has_cake = "egg" in roles and (
        "nut" in roles or "chocolate" in roles or any(x.mass_g == 0 for x in formula.lines)
    )
    if flour == 0 and has_cake and "gel" not in roles and "dairy" not in roles:
        yield Notice(
            "flourless", "no flour: a balance per 100 g flour is not defined, per egg is shown"
        )
