"""The page of a bake: asked by tin, oven and altitude, its doubt worked out when asked for."""

from dataclasses import dataclass
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import Notice, Problem
from krume.usecases import BakePage, BakeResult, BakeWish, bake_shown, text_now
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page

_FIELDS = {"--tin": "tin", "--oven": "oven", "--altitude": "altitude"}


@dataclass(frozen=True, slots=True)
class BakeContext:
    """One bake: the form, the answer, and what is asked beside no field."""

    name: str
    title: str
    address: str
    form: Form
    bake: BakePage
    result: BakeResult
    asks: tuple[str, ...]
    notices: tuple[Notice, ...]
    is_possible: bool


def bake(request: Request) -> Response:
    """How long a formula takes in a tin and an oven."""
    asked, name = asked_of(request), request.path_params["name"]
    now = text_now("formula", name, asked)
    typed = Form({key: text.strip() for key, text in request.query_params.items()})
    wish, wrong = _wish(typed)
    work = bool(typed.get("work"))
    answer = bake_shown(f"formulas/{now.name}.txt", wish, asked, work=work)
    form = _filled(typed, answer.result.result, wrong).with_problems(answer.problems, _FIELDS)
    context = BakeContext(
        name=now.name,
        title=now.title or now.name,
        address=f"/bake/{quote(now.name, safe='')}",
        form=form,
        bake=answer.result,
        result=answer.result.result,
        asks=_asks(answer.problems),
        notices=tuple(dict.fromkeys(answer.notices)),
        is_possible=answer.is_possible,
    )
    title = f"Bake {context.title}"
    return page(request, "bake/bake.html", context, title=title, section="formulas")


def _wish(form: Form) -> tuple[BakeWish, str]:
    """What is wished, and what is wrong with the altitude as typed."""
    altitude = form.get("altitude")
    try:
        height = float(altitude.replace(",", ".")) if altitude else 0.0
        wrong = ""
    except ValueError:
        height, wrong = 0.0, f"“{altitude}” is no height. Type it in metres, for example 850."
    wish = BakeWish(
        tin=form.get("tin") or None,
        oven=form.get("oven") or None,
        fan=bool(form.get("fan")),
        altitude_m=height,
    )
    return wish, wrong


def _filled(typed: Form, result: BakeResult, wrong: str) -> Form:
    """The form with the formula's own tin and oven where nothing is typed."""
    oven = "" if result.oven_c is None else f"{result.oven_c:g} C"
    own = {"tin": result.tin or "", "oven": oven, "fan": "on" if result.fan else ""}
    form = Form({**own, **{key: text for key, text in typed.values.items() if text}})
    return form.with_wrong("altitude", wrong) if wrong else form


def _asks(problems: tuple[Problem, ...]) -> tuple[str, ...]:
    """What is asked of the formula itself, once each."""
    return tuple(dict.fromkeys(p.ask for p in problems if p.where not in _FIELDS))


ROUTES = (Route("/bake/{name}", bake, methods=["GET"]),)
