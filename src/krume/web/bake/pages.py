"""The page of a bake: asked by tin, oven and what stands round it, its doubt when asked for."""

from dataclasses import dataclass
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import Notice, Problem
from krume.usecases import BakePage, BakeResult, BakeWish, bake_shown, text_now
from krume.web.bake.typed import CHOICES, FIELDS, KEYS, wished
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page


@dataclass(frozen=True, slots=True)
class BakeContext:
    """One bake: the form, the answer, and what is asked beside no field.

    `kept` are the fields as typed, for the button that works out the doubt; `is_round` says that
    something beyond tin and oven was typed.
    """

    name: str
    title: str
    address: str
    form: Form
    bake: BakePage
    result: BakeResult
    asks: tuple[str, ...]
    notices: tuple[Notice, ...]
    is_possible: bool
    kept: tuple[tuple[str, str], ...]
    choices: dict[str, tuple[tuple[str, str], ...]]
    is_round: bool


def bake(request: Request) -> Response:
    """How long a formula takes in a tin and an oven."""
    asked, name = asked_of(request), request.path_params["name"]
    now = text_now("formula", name, asked)
    typed = Form({key: text.strip() for key, text in request.query_params.items()})
    wish, wrong = wished(typed)
    work = bool(typed.get("work"))
    answer = bake_shown(f"formulas/{now.name}.txt", wish, asked, work=work)
    form = _filled(typed, answer.result.result, wrong).with_problems(answer.problems, FIELDS)
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
        kept=tuple((key, typed.get(key)) for key in KEYS if typed.get(key)),
        choices=CHOICES,
        is_round=_is_round(wish, wrong),
    )
    title = f"Bake {context.title}"
    return page(request, "bake/bake.html", context, title=title, section="formulas")


def _is_round(wish: BakeWish, wrong: dict[str, str]) -> bool:
    usual = BakeWish(
        wish.tin, wish.oven, fan=wish.fan, altitude_m=wish.altitude_m, beside=wish.beside
    )
    return wish != usual or bool(wrong.keys() - {"altitude"})


def _filled(typed: Form, result: BakeResult, wrong: dict[str, str]) -> Form:
    """The form with the formula's own tin and oven where nothing is typed."""
    oven = "" if result.oven_c is None else f"{result.oven_c:g} C"
    own = {"tin": result.tin or "", "oven": oven, "fan": "on" if result.fan else ""}
    form = Form({**own, **{key: text for key, text in typed.values.items() if text}})
    for name, words in wrong.items():
        form = form.with_wrong(name, words)
    return form


def _asks(problems: tuple[Problem, ...]) -> tuple[str, ...]:
    """What is asked of the formula itself, once each."""
    return tuple(dict.fromkeys(p.ask for p in problems if p.where not in FIELDS))


ROUTES = (Route("/bake/{name}", bake, methods=["GET"]),)
