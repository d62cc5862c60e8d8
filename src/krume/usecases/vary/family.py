"""The family of a formula: which children follow their parent, and which need a decision."""

from dataclasses import dataclass, replace
from pathlib import Path

from krume.base import InputError, Notice, Option, Problem, Read
from krume.design import Formula, Line, decode_text, varying
from krume.pantry import find
from krume.store import book_at, folder_bytes, list_texts, studio_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.read import FormulaRead, formula_of
from krume.usecases.formula.size import scale_step_g
from krume.usecases.formula.size_keep import sized_again
from krume.usecases.sold.papers import papers_of
from krume.usecases.vary.child import parent_name, write_child
from krume.usecases.vary.papers import own_sheets
from krume.usecases.vary.result import (
    VaryChild,
    VaryDecision,
    VaryResult,
    change_rows,
    line_rows,
)


@dataclass(frozen=True, slots=True)
class FamilyWish:
    """Which children: files by name, else those of the book; where a followed one is written."""

    files: tuple[str, ...] = ()
    step_g: float | None = None
    write: Path | None = None
    replace: bool = False


@dataclass(frozen=True, slots=True)
class _Child:
    """A child with what it says of its parent, what it would be today, and how it follows."""

    name: str
    read: FormulaRead
    lineage: varying.Lineage
    now: Read[tuple[Line, ...]]
    followed: varying.Followed
    is_edited: bool
    is_parent_changed: bool


def vary_children(name: str, wish: FamilyWish, asked: Asked) -> Answer[VaryResult]:
    """The children of a formula: unchanged, following, or with what must be decided."""
    found = formula_of(name, replace(asked, answers=_own_answers(asked)))
    parent = parent_name(found)
    bare = VaryResult(found.formula.name, parent, ())
    if found.problems:
        return Answer(bare, found.problems, found.notices)
    children = [_child(each, found, wish, asked) for each in _names(found, wish, asked)]
    problems = tuple(p for child in children for p in _problems(child, asked))
    rows = tuple(_row(child, asked) for child in children)
    answer = Answer(replace(bare, children=rows), problems, found.notices)
    if not children:
        text = f"No text of the book names {parent} as its parent."
        return replace(answer, notices=(*answer.notices, Notice("no-children", text)))
    return _written(answer, children, found, wish)


def _own_answers(asked: Asked) -> tuple[str, ...]:
    """Answers meant for the parent's own lines."""
    return tuple(a for a in asked.answers if a.casefold().startswith(("line ", "after line ")))


def _answers_for(name: str, asked: Asked) -> tuple[str, ...]:
    start = f"{name} "
    return tuple(a.removeprefix(start) for a in asked.answers if a.startswith(start))


def _names(found: FormulaRead, wish: FamilyWish, asked: Asked) -> tuple[str, ...]:
    """Names of the children: those asked for, else the book's formulas that name the parent."""
    if wish.files:
        return wish.files
    mine = {_plain(parent_name(found)), _plain(found.formula.name or "")}
    names: list[str] = []
    naming = _naming_a_parent(asked)
    for text in list_texts(book_at(asked.book)):
        if text.kind != "formula" or text.path == found.source.path or text.name not in naming:
            continue
        lineage = varying.lineage_of(formula_of(str(text.path), Asked(book=asked.book)).formula)
        if lineage is not None and _plain(lineage.parent) in mine:
            names.append(text.name)
    return tuple(names)


def _naming_a_parent(asked: Asked) -> frozenset[str]:
    """Formulas in which the word stands at all: only those are read, in a book of a thousand."""
    texts = folder_bytes(book_at(asked.book), "formulas").items()
    return frozenset(n for n, data in texts if "parent" in decode_text(data).value.casefold())


def _plain(text: str) -> str:
    return " ".join(text.casefold().split())


def _child(name: str, found: FormulaRead, wish: FamilyWish, asked: Asked) -> _Child:
    read = formula_of(name, replace(asked, answers=_answers_for(name, asked)))
    lineage = varying.lineage_of(read.formula)
    if lineage is None:
        message = f"{name} names no parent: it has no line “Parent:”. Name a child of it."
        raise InputError(message, field="--child", got=name, want="a text with a line Parent:")
    parent = found.formula
    own = own_sheets(papers_of(asked))
    made_with = varying.Wish(step_g=wish.step_g or scale_step_g(asked), own=own)
    now = _derived(parent, lineage, made_with)
    changed = varying.fingerprint(parent.lines) != lineage.parent_lines
    edited = varying.fingerprint(read.formula.lines) != lineage.own_lines
    made = _made_lines(read.formula, parent, lineage, made_with, edited=edited, asked=asked)
    lines = now.value if changed and not now.problems else made
    followed = varying.follow(made, lines if changed else made, read.formula.lines)
    return _Child(name, read, lineage, now, followed, edited, changed)


def _derived(
    parent: Formula, lineage: varying.Lineage, wish: varying.Wish
) -> Read[tuple[Line, ...]]:
    """Lines a child would have if it were made of this parent now."""
    if lineage.blend:
        return Read(varying.blended(parent, lineage, step_g=wish.step_g))
    if lineage.sized:
        return Read(sized_again(parent, lineage.sized, step_g=wish.step_g))
    wanted = varying.together(
        [
            *(varying.swap_wanted(parent, text, own=wish.own) for text in lineage.swaps),
            *(varying.cut_wanted(parent, text) for text in lineage.cuts),
            *(varying.added_wanted(parent, text, own=wish.own) for text in lineage.added),
        ]
    )
    if wanted.problems:
        return Read((), wanted.problems)
    key = "none" if lineage.fat == "none" else find(lineage.fat).key if lineage.fat else None
    had = any(line.ingredient == key for line in parent.lines)
    wish = replace(wish, fat=None if had else key, fat_name="" if had else lineage.fat)
    return Read(varying.vary(parent, wanted.value.changes, wish).formula.lines)


def _made_lines(
    child: Formula,
    parent: Formula,
    lineage: varying.Lineage,
    made_with: varying.Wish,
    *,
    edited: bool,
    asked: Asked,
) -> tuple[Line, ...]:
    """Lines the child was made with; none where its head no longer says it."""
    if not edited:
        return child.lines
    region = studio_of(book_at(asked.book)).eggs_region
    was = varying.parent_as_was(lineage, parent, eggs_region=region)
    return () if was is None else _derived(was, lineage, made_with).value


def _open(child: _Child, asked: Asked) -> tuple[varying.Decision, ...]:
    """Decisions that no answer of this request has settled."""
    answered = {a.partition("=")[0].strip() for a in _answers_for(child.name, asked)}
    return tuple(d for d in child.followed.decisions if _place(child, d) not in answered)


def _place(child: _Child, decision: varying.Decision) -> str:
    if decision.yours is not None:
        return f"line {decision.yours.number}"
    last = max((line.number for line in child.read.formula.lines), default=0)
    return f"after line {last}"


def _problems(child: _Child, asked: Asked) -> tuple[Problem, ...]:
    asks = [*child.read.problems, *(child.now.problems if child.is_parent_changed else ())]
    placed = [replace(problem, where=f"{child.name} {problem.where}") for problem in asks]
    return (*placed, *(_decision_problem(child, d) for d in _open(child, asked)))


def _decision_problem(child: _Child, decision: varying.Decision) -> Problem:
    yours, parents = _text(decision.yours), _text(decision.parents)
    ask = (
        f"{child.name}: you have {yours or 'taken this line out'}; after its parent it would be "
        f"{parents or 'gone'}. Which holds?"
    )
    out = f"({yours or parents}, left out)"
    options = (
        Option("as you have it", yours or out),
        Option("after its parent", parents or out),
    )
    where = f"{child.name} {_place(child, decision)}"
    return Problem("child-decision", where, yours or "", ask, options)


def _text(line: Line | None) -> str | None:
    return None if line is None else line.read.strip()


def _state(child: _Child, asked: Asked) -> str:
    if child.read.problems:
        return "unreadable"
    if not child.is_parent_changed:
        return "unchanged"
    if child.now.problems or _open(child, asked):
        return "decide"
    return "follows"


_SAID = {
    "unreadable": "Its own text asks something first.",
    "unchanged": "Its parent is as it was when this was made.",
    "decide": "Its parent has changed where you changed it too: you decide.",
    "follows": "Its parent has changed; it follows.",
}


def _row(child: _Child, asked: Asked) -> VaryChild:
    state = _state(child, asked)
    return VaryChild(
        name=child.name,
        title=child.read.formula.name,
        state=state,
        edited=child.is_edited,
        swaps=(
            *child.lineage.swaps,
            *child.lineage.cuts,
            *child.lineage.added,
            *(("another blend",) if child.lineage.blend else ()),
            *((f"another size, {child.lineage.sized}",) if child.lineage.sized else ()),
        ),
        changes=change_rows(child.followed.lines) if state in ("follows", "decide") else (),
        decisions=tuple(
            VaryDecision(d.number, _text(d.made), _text(d.yours), _text(d.parents))
            for d in _open(child, asked)
        ),
        text=_SAID[state] + (" Your own changes are kept." if child.is_edited else ""),
    )


def _written(
    answer: Answer[VaryResult],
    children: list[_Child],
    found: FormulaRead,
    wish: FamilyWish,
) -> Answer[VaryResult]:
    """The one child that follows, as its new text; written where that is wished."""
    if not answer.is_answered or (wish.write is None and len(children) != 1):
        return answer
    if len(children) != 1:
        message = f"{len(children)} children follow: name the one to write with --child."
        raise InputError(message, field="--write", got=str(wish.write), want="one child")
    child = children[0]
    answer = replace(answer, result=replace(answer.result, text=_text_of(child, found)))
    if wish.write is None:
        return answer
    path = write_child(wish.write, answer.result.text or "", replace=wish.replace)
    lines = line_rows(child.followed.lines)
    result = replace(
        answer.result,
        lines=lines,
        changes=change_rows(child.followed.lines),
        written=path,
    )
    return replace(answer, result=result)


def _text_of(child: _Child, found: FormulaRead) -> str:
    """Text of a child after its parent as it is now."""
    formula = found.formula
    lineage = replace(
        child.lineage,
        parent_lines=varying.fingerprint(formula.lines),
        own_lines=varying.fingerprint(child.now.value),
        parent_was=varying.lines_as_were(formula.lines),
        blend=varying.flour_phrases(child.now.value) if child.lineage.blend else (),
    )
    return varying.child_text(
        child.read.formula, child.followed.lines, name=child.read.formula.name, lineage=lineage
    )
