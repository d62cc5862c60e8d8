"""Whether the sheets of a folder still say what their texts say; nothing is written."""

import shlex
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from krume import __version__
from krume.base import KrumeError, Option, Problem
from krume.evidence import data_version
from krume.store import book_at, is_file, is_folder, read_bytes
from krume.usecases.asking.answer import Answer, Asked, QuestionError
from krume.usecases.asking.kind import made_of
from krume.usecases.sheets.manifest import (
    MANIFEST,
    ListedFile,
    Run,
    batches_told,
    digest_now,
    read_manifest,
    sha256,
)
from krume.usecases.sheets.result import SheetResult, SheetVerified
from krume.usecases.sold.order import judge_order
from krume.usecases.sold.product import sold_of

_WHERE = "--verify"
_AS_WRITTEN = "as written"
_CARD = "bench-card"
_PAST = "order-past"


@dataclass(frozen=True, slots=True)
class _Now:
    """How a run stands now: why each text is another, the maker, the hold, other batches."""

    changed: dict[str, str]
    other_maker: str
    other_hold: str
    other_batches: frozenset[str]


def verify_sheets(folder: Path, asked: Asked) -> Answer[SheetResult]:
    """Check every sheet that the list of a folder names against its texts as they are today."""
    if not is_folder(folder):
        ask = f"{folder} is no folder. Name the one the sheets were written to."
        raise QuestionError(Problem("no-sheets", _WHERE, str(folder), ask))
    runs = read_manifest(folder)
    if not runs:
        ask = f"{folder} holds no {MANIFEST}, so nothing says what its sheets were made of. "
        ask += "Make them again with `krume sheet NAME --out DIR`."
        raise QuestionError(Problem("no-sheets", _WHERE, str(folder), ask))
    found = [(run, each) for run in runs for each in _verified(run, folder, asked)]
    problems = tuple(_problem(each, run, folder) for run, each in found if not each.is_fresh)
    files = tuple(each for _, each in found)
    return Answer(SheetResult((), (), (), _summary(files), files), problems)


def _verified(run: Run, folder: Path, asked: Asked) -> list[SheetVerified]:
    now = _now(run, asked)
    return [_file(each, folder, now) for each in run.files]


def _now(run: Run, asked: Asked) -> _Now:
    book = book_at(asked.book)
    changed = {}
    for text in run.texts:
        digest = digest_now(text.key, book)
        if digest is None:
            gone = "by standard input" if text.key == "-" else "there no more"
            changed[text.key] = f"its text {text.name} is {gone}"
        elif digest != text.sha256:
            changed[text.key] = f"older than its text {text.name}"
    return _Now(changed, _other_maker(run), _other_hold(run, asked), _other_batches(run, asked))


def _other_maker(run: Run) -> str:
    if run.program != __version__:
        return f"made by krume {run.program}, this is {__version__}"
    if run.data != data_version():
        return f"made with data {run.data}, these are {data_version()}"
    return ""


def _inner(run: Run, asked: Asked) -> Asked:
    """The request of a run, asked again."""
    on = None if run.on is None else date.fromisoformat(run.on)
    return replace(asked, answers=run.answers, on=on, typed=None)


def _other_hold(run: Run, asked: Asked) -> str:
    """Whether an order is held otherwise than when its sheets were made."""
    if run.kind != "order":
        return ""
    inner = _inner(run, asked)
    try:
        order = made_of(run.name, inner).order
        if order is None:
            return "it is no order any more"
        judged = judge_order(sold_of(run.name, inner), order, inner)
    except KrumeError as error:
        return f"its order cannot be judged any more: {error}"
    if any(problem.code != _PAST for problem in judged.problems):
        return "its order now holds a contradiction"
    held = tuple(f"{hold.text} {hold.opens}".strip() for hold in judged.holds)
    return "" if held == run.held else "what holds its order has changed"


def _other_batches(run: Run, asked: Asked) -> frozenset[str]:
    """Formulas of which another number of batches is needed now, or it cannot be told any more."""
    before = dict(told.rsplit(": ", 1) for told in run.batches)
    if not before:
        return frozenset()
    try:
        told = batches_told(run.name, _inner(run, asked))
    except KrumeError:
        return frozenset(before)
    now = dict(each.rsplit(": ", 1) for each in told)
    return frozenset(name for name in {*before, *now} if before.get(name) != now.get(name))


def _file(each: ListedFile, folder: Path, now: _Now) -> SheetVerified:
    path = folder / each.file
    reasons = list(dict.fromkeys(now.changed[key] for key in each.made_of if key in now.changed))
    if each.kind == _CARD and each.of in now.other_batches:
        reasons.append(f"another number of batches of {each.of} is needed")
    reasons += [reason for reason in (now.other_hold, now.other_maker) if reason]
    if not is_file(path):
        reasons.insert(0, "it is not in the folder")
    elif sha256(read_bytes(path)) != each.sha256:
        reasons.insert(0, "changed since it was written")
    return SheetVerified(
        file=each.file,
        kind=each.kind,
        of=each.of,
        path=str(path.resolve()),
        is_fresh=not reasons,
        text="; ".join(reasons) if reasons else _AS_WRITTEN,
    )


def renewing(run: Run, folder: Path) -> str:
    """The command that makes the sheets of a run again; of a slip, the one that shows its ways."""
    if run.again:
        return shlex.join(run.again)
    words = ["krume", "sheet", run.name, "--out", str(folder), "--paper", run.paper]
    words += ["--on", run.on] if run.on is not None else []
    words += [word for answer in run.answers for word in ("--answer", answer)]
    return shlex.join(words)


def _problem(each: SheetVerified, run: Run, folder: Path) -> Problem:
    command = renewing(run, folder)
    ask = f"{each.file}: {each.text}. Do not work by it; make it again: {command}"
    return Problem("sheet-not-fresh", each.file, each.of, ask, (Option("Make it again", command),))


def _summary(files: tuple[SheetVerified, ...]) -> tuple[str, ...]:
    fresh = sum(each.is_fresh for each in files)
    return (f"{fresh} of {len(files)} files are as written, of texts that did not change.",)
