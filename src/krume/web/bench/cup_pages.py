"""The cup at the bench: one number, the band as a ruled strip, one sentence."""

import json
import math
from dataclasses import dataclass
from uuid import uuid4

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError, as_text
from krume.usecases import CupNow, bench_of, cup_at_bench, cup_limits, keep_cup
from krume.web.bench.addresses import address_of, to
from krume.web.bench.beside import small_state
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page

_LOW, _HIGH, _EDGE, _END = 82.0, 246.0, 8.0, 320.0


@dataclass(frozen=True, slots=True)
class Strip:
    """The band over the middle half of its rule; `mark` is None until a cup was taken."""

    low: str
    high: str
    mark: float | None
    words: str


@dataclass(frozen=True, slots=True)
class CupPage:
    """The cup's boxes, what it came to, and where that stands."""

    name: str
    title: str
    address: str
    key: str
    client_id: str
    cup: CupNow
    sg: str
    strip: Strip | None
    band: str
    form: Form
    state: str


def cup(request: Request) -> Response:
    """The cup, its empty and water grams as remembered."""
    return _page(request, None)


def _page(request: Request, form: Form | None, *, status: int = 200) -> Response:
    bench = bench_of(request.path_params["name"], asked_of(request))
    now = cup_at_bench(bench, asked_of(request))
    values = {
        "empty": "" if now.empty_g is None else as_text(now.empty_g, 1),
        "water": "" if now.water_g is None else as_text(now.water_g, 1),
    }
    context = CupPage(
        name=bench.plan.name,
        title=bench.plan.title,
        address=address_of(bench.plan.name),
        key=bench.key or uuid4().hex,
        client_id=uuid4().hex,
        cup=now,
        sg="" if now.sg is None else f"{now.sg:.2f}",
        strip=_strip(now),
        band=_band(now),
        form=form or Form(values),
        state=small_state(bench, asked_of(request)),
    )
    return page(request, "bench/cup.html", context, title=f"Cup, {context.title}", status=status)


def _band(now: CupNow) -> str:
    """What the script judges a cup by, as JSON: the band, the words, the heaviest cup."""
    most, words = cup_limits()
    strip = "" if now.low is None else f"Usual specific gravity {now.low:.2f} to {now.high:.2f}"
    band = {"low": now.low, "high": now.high, "most": most, "words": words, "strip": strip}
    return json.dumps(band, ensure_ascii=False, separators=(",", ":"))


def _strip(now: CupNow) -> Strip | None:
    if now.low is None or now.high is None:
        return None
    low, high = f"{now.low:.2f}", f"{now.high:.2f}"
    words = f"Usual specific gravity {low} to {high}"
    if now.sg is None:
        return Strip(low, high, None, words)
    share = (now.sg - now.low) / (now.high - now.low)
    mark = min(max(_LOW + share * (_HIGH - _LOW), _EDGE), _END)
    return Strip(low, high, round(mark, 1), f"{words}; this batter is {now.sg:.2f}")


async def weigh(request: Request) -> Response:
    """Keep a cup."""
    form = await read_form(request)
    return await run_in_threadpool(_weigh, request, form)


def _weigh(request: Request, form: Form) -> Response:
    name = request.path_params["name"]
    numbers = {field: _grams(form.get(field)) for field in ("batter", "empty", "water")}
    for field, value in numbers.items():
        if value is None:
            form = form.with_wrong(field, "Type its grams, cup included, a number such as 212.")
    batter, empty, water = numbers["batter"], numbers["empty"], numbers["water"]
    if batter is None or empty is None or water is None:
        return _page(request, form, status=422)
    try:
        keep_cup(
            name, form.get("key"), asked_of(request), client_id=form.get("id"), empty_g=empty,
            water_g=water, batter_g=batter,
        )  # fmt: skip
    except InputError as error:
        wrong = form.with_wrong(error.field or "batter", error.message)
        return _page(request, wrong, status=error.http_status)
    return to(f"{address_of(name)}/cup")


def _grams(text: str) -> float | None:
    plain = text.strip().replace(",", ".").removesuffix("g").strip()
    try:
        value = float(plain)
    except ValueError:
        return None
    return value if math.isfinite(value) else None


ROUTES = (
    Route("/bench/{name}/cup", cup, methods=["GET"]),
    Route("/bench/{name}/cup", weigh, methods=["POST"]),
)
