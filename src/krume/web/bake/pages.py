"""The page of a bake: asked by tin, oven and what stands round it, its doubt when asked for."""

from dataclasses import dataclass
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import Notice, Problem
from krume.usecases import (
    OTHERWISE,
    BakePage,
    BakePlaces,
    BakeResult,
    BakeWish,
    bake_shown,
    bake_svg,
    places_to_bake,
    text_now,
)
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
    places: BakePlaces
    otherwise: tuple[str, ...]


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
        places=places_to_bake(asked),
        otherwise=("dark", "glass", "silicone", *OTHERWISE),
    )
    title = f"Bake {context.title}"
    return page(request, "bake/bake.html", context, title=title, section="formulas")


def _is_round(wish: BakeWish, wrong: dict[str, str]) -> bool:
    usual = BakeWish(
        wish.tin,
        wish.oven,
        fan=wish.fan,
        altitude_m=wish.altitude_m,
        oven_name=wish.oven_name,
        beside=wish.beside,
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


def picture(request: Request) -> Response:
    """The drawing of a bake as a file; where there is none, the page that says why."""
    asked = asked_of(request)
    now = text_now("formula", request.path_params["name"], asked)
    wish, wrong = wished(Form({key: text.strip() for key, text in request.query_params.items()}))
    answer = bake_svg(f"formulas/{now.name}.txt", wish, asked)
    if answer.result is None or answer.problems or wrong:
        address = f"/bake/{quote(now.name, safe='')}"
        return RedirectResponse(f"{address}?{request.url.query}", status_code=303)
    name = quote(f"bake-{now.name}.svg", safe="")
    return Response(
        answer.result,
        media_type="image/svg+xml",
        headers={"Content-Disposition": f"attachment; filename*=UTF-8''{name}"},
    )


ROUTES = (
    Route("/bake/{name}", bake, methods=["GET"]),
    Route("/bake/{name}/picture.svg", picture, methods=["GET"]),
)
