"""What stands beside a weighing, as the book says it and as the page works it out."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from playwright.sync_api import Page
from starlette.testclient import TestClient

from krume.usecases import Asked, BenchSaid, ClockSaid, CupSaid, EndSaid, bench_of, clocks_at_bench
from krume.usecases.bench.cup import judged
from krume.web.bench.beside import said_beside, whole_state
from tests.browser import browser, page
from tests.web.bench.slip_module import call

__all__ = ["browser", "page"]

AT = tuple(
    f"{datetime.now(UTC) - timedelta(minutes=n):%Y-%m-%dT%H:%M:%S}.000Z" for n in (50, 44, 6)
)


def started(number: str, clock: str, at: str, **more: Any) -> dict[str, Any]:
    return {"id": number, "kind": "clock-start", "clock": clock, "at": at, **more}


BAKE = [
    started("1", "foam", AT[0]),
    {"id": "2", "kind": "cup", "empty_g": 100, "water_g": 340, "batter_g": 215.2},
    started("3", "oven", AT[1]),
    {"id": "4", "kind": "clock-stop", "clock": "oven", "at": AT[2]},
]


def test_each_thing_said_is_what_it_is() -> None:
    assert said_beside(BAKE[1]) == CupSaid("2", 100.0, 340.0, 215.2)
    assert said_beside(BAKE[3]) == ClockSaid("4", "oven", is_start=False, at=AT[2])
    end = {"id": "t", "kind": "end", "typed": {"core": 95}}
    assert said_beside(end) == EndSaid("t", {"core": "95"})
    assert said_beside({"id": "a", "kind": "tare"}) is None


@pytest.mark.parametrize(
    "said",
    [{"kind": "cup", "id": "x", "empty_g": "much"}, {"kind": "clock-start", "id": "x"},
     {"kind": "end", "id": "x", "typed": 7}],
)  # fmt: skip
def test_half_a_thing_keeps_nothing(own: TestClient, said: dict[str, Any]) -> None:
    answer = own.post("/bench/F2/said", json={"key": "k", "said": [said]})
    assert answer.status_code == 422
    assert own.get("/bench/F2/state").json()["key"] == ""


def test_what_is_refused_names_its_field(own: TestClient) -> None:
    one = [started("1", "oven", "")]
    assert own.post("/bench/F1/said", json={"key": "a", "said": one}).status_code == 200
    answer = own.post("/bench/F2/said", json={"key": "b", "said": [started("2", "foam", "")]})
    assert (answer.status_code, answer.json()["field"]) == (422, "reason")
    busy = own.get("/bench/F2/state").json()["busy"]
    assert (busy["id"], busy["kind"]) == ("1", "oven")
    assert own.get("/bench/F1/state").json()["busy"] is None


def test_the_page_folds_its_clocks_and_its_cup_as_the_book_does(
    page: Page, own: TestClient
) -> None:
    asked: Asked = own.app.state.asked  # type: ignore[attr-defined]
    empty = whole_state(bench_of("F2", asked), asked)
    asks = [[empty, BAKE[:n]] for n in range(len(BAKE) + 1)]
    clocks = call(page, "bench-times.js", "clocksNow", asks)
    cups = call(page, "bench-times.js", "cupNow", asks)
    for n, said in enumerate(BAKE, 1):
        body = own.post("/bench/F2/said", json={"key": "k", "said": [said]}).json()
        kept = [(c["kind"], c["stopped"] is None) for c in body["clocks"]]
        assert kept == [(c["kind"], c["stopped"] is None) for c in clocks[n]]
        assert body["cup"]["sg"] == (pytest.approx(cups[n]["sg"]) if cups[n]["sg"] else None)
    found = clocks_at_bench("F2", asked).clocks
    minutes = call(page, "bench-times.js", "minutesOf", [[each, 0] for each in clocks[-1]])
    assert minutes == [6.0, 38.0]
    assert [c.minutes for c in found] == pytest.approx(minutes)


def test_the_page_judges_a_cup_as_the_book_does(page: Page) -> None:
    band = {"low": 0.46, "high": 0.5}
    values = [0.3, 0.459, 0.46, 0.48, 0.5, 0.501, 1.2]
    places = call(page, "bench-times.js", "placeOf", [[sg, band] for sg in values])
    assert places == [judged(sg, 0.46, 0.5)[0] for sg in values]
    none = call(page, "bench-times.js", "placeOf", [[0.4, {"low": None, "high": None}]])
    assert none == [judged(0.4, None, None)[0]]


def test_rows_and_what_stands_beside_them_come_in_one_order(own: TestClient) -> None:
    rows = [{"id": "a", "kind": "tare", "position": 0}, BAKE[0]]
    body = own.post("/bench/F2/said", json={"key": "k", "said": rows}).json()
    assert [step["kind"] for step in body["steps"]] == ["tare"]
    assert [clock["kind"] for clock in body["clocks"]] == ["foam"]
    assert BenchSaid("a", "tare", 0).client_id == body["steps"][0]["id"]
