"""A formula varied on a page, and its children: which follow it, which need a decision."""

from dataclasses import dataclass, replace
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError, Option, Problem
from krume.usecases import (
    FamilyWish,
    TextNow,
    VaryChild,
    VaryChoices,
    VaryResult,
    VaryWish,
    choices_of,
    text_now,
    vary_children,
    vary_formula,
)
from krume.web.frame.asking import Ask, address, asked_with_answers, asks_of, said_in
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page
from krume.web.vary.shown import (
    ChangeRow,
    FigureRow,
    OffRow,
    change_rows,
    figure_rows,
    off_rows,
)


@dataclass(frozen=True, slots=True)
class Varied:
    """A variation as it is shown."""

    result: VaryResult
    make_up: str
    changes: tuple[ChangeRow, ...]
    figures: tuple[FigureRow, ...]
    off: tuple[OffRow, ...]


@dataclass(frozen=True, slots=True)
class VaryPage:
    """The form of a variation and its answer."""

    now: TextNow
    form: Form
    choices: VaryChoices
    asks: tuple[Ask, ...]
    is_possible: bool
    varied: Varied | None
    notices: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ChildRow:
    """One child: how it stands to its parent, and what would change."""

    child: VaryChild
    changes: tuple[ChangeRow, ...]
    address: str
    asks: tuple[Ask, ...]


@dataclass(frozen=True, slots=True)
class FamilyPage:
    """The children of a formula; `kept` is the new text of the one that was chosen, if it follows.

    `seen` is the version of that child the text was made from.
    """

    now: TextNow
    rows: tuple[ChildRow, ...]
    asks: tuple[Ask, ...]
    notices: tuple[str, ...]
    chosen: str
    kept: str
    seen: int | None


def vary(request: Request) -> Response:
    """One formula, what is wished of it, and all that changes with it."""
    name = request.path_params["name"]
    now = text_now("formula", name, asked_of(request))
    place = f"formulas/{now.name}.txt"
    form = Form({k: v.strip() for k, v in request.query_params.items() if v.strip()})
    choices = choices_of(place, asked_of(request))
    bare = VaryPage(now, form, choices, asks=(), is_possible=True, varied=None, notices=())
    context = _answered(request, bare, place)
    status = 422 if context.form.wrong else 200
    title = f"Vary {now.title or name}"
    return page(request, "vary/vary.html", context, title=title, section="formulas", status=status)


def _wish(request: Request, form: Form) -> VaryWish:
    query = request.query_params
    swap = f"{form.get('of')}={form.get('to')}" if form.get("to") else ""
    cut = f"{form.get('less')} {form.get('by')}" if form.get("by") else ""
    return VaryWish(
        swaps=tuple(x for x in (*query.getlist("swap"), swap) if x.strip()),
        cuts=tuple(x for x in (*query.getlist("cut"), cut) if x.strip()),
        added=tuple(x for x in query.getlist("add") if x.strip()),
        wishes=tuple(x for x in query.getlist("for") if x.strip()),
        fat=form.get("fat") or None,
    )


def _answered(request: Request, bare: VaryPage, place: str) -> VaryPage:
    form, wish = bare.form, _wish(request, bare.form)
    if form.get("to") and not form.get("of"):
        return replace(bare, form=form.with_wrong("of", "Which line goes?"))
    if form.get("by") and not form.get("less"):
        return replace(bare, form=form.with_wrong("less", "Which line is it less of?"))
    if wish.is_empty:
        return bare
    try:
        answer = vary_formula(place, wish, asked_with_answers(request))
    except InputError as error:
        return replace(bare, form=form.with_wrong("to", error.message))
    found = answer.result
    make_up = "" if found.make_up is None else _plain(found.make_up.text)
    shown = Varied(found, make_up, change_rows(found.changes), figure_rows(found), off_rows(found))
    return replace(
        bare,
        asks=asks_of(request, answer.problems),
        is_possible=answer.is_possible,
        varied=shown if found.allergens is not None and found.changes else None,
        notices=tuple(dict.fromkeys(_plain(notice.text) for notice in answer.notices)),
    )


def _plain(text: str) -> str:
    """A sentence without the option of the command line in it: the page has a field for that."""
    return text.replace(" (--fat butter)", "")


def children(request: Request) -> Response:
    """The children of a formula."""
    now = text_now("formula", request.path_params["name"], asked_of(request))
    chosen = request.query_params.get("child", "").strip()
    wish = FamilyWish((chosen,) if chosen else ())
    answer = vary_children(f"formulas/{now.name}.txt", wish, asked_with_answers(request))
    rows = answer.result.children
    names = {row.name for row in rows}
    of = {name: [p for p in answer.problems if p.where.startswith(f"{name} ")] for name in names}
    context = FamilyPage(
        now=now,
        rows=tuple(
            ChildRow(
                row,
                change_rows(row.changes),
                address(request.url.path, _with_child(request, row.name)),
                asks_of(request, tuple(_with_lines(problem) for problem in of[row.name])),
            )
            for row in rows
        ),
        asks=asks_of(
            request, tuple(p for p in answer.problems if not any(p in each for each in of.values()))
        ),
        notices=tuple(dict.fromkeys(notice.text for notice in answer.notices)),
        chosen=quote(chosen, safe=""),
        kept=_kept(answer.result, chosen),
        seen=text_now("formula", chosen, asked_of(request)).revision if chosen else None,
    )
    title = f"Children of {now.title or now.name}"
    return page(request, "vary/children.html", context, title=title, section="formulas")


def _with_lines(problem: Problem) -> Problem:
    """A decision whose answers show the lines themselves."""
    if problem.code != "child-decision":
        return problem
    options = tuple(Option(f"{each.line}, {each.label}", each.line) for each in problem.options)
    return replace(problem, options=options)


def _with_child(request: Request, name: str) -> tuple[tuple[str, str], ...]:
    kept = tuple(pair for pair in said_in(request) if pair[0] != "child")
    return (*kept, ("child", name))


def _kept(found: VaryResult, chosen: str) -> str:
    """The text to keep, where the chosen child has something to follow."""
    is_following = any(row.name == chosen and row.state == "follows" for row in found.children)
    return (found.text or "") if is_following else ""


ROUTES = (
    Route("/vary/{name}", vary, methods=["GET"]),
    Route("/vary/{name}/children", children, methods=["GET"]),
)
