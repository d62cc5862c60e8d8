"""The page folds the steps of a weighing exactly as the book does, whatever is said."""

import random
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import pytest
from playwright.sync_api import Page

from krume.usecases import Asked, Bench, BenchSaid, load_demo, say_at_bench, set_aside
from krume.web.bench.showing import state_of
from tests.browser import browser, page
from tests.web.bench.slip_module import module_page

__all__ = ["browser", "page"]

WEIGHINGS = 60
NAMES = ("F1", "F2", "F3", "F6", "C1", "S1")


@dataclass(frozen=True, slots=True)
class Told:
    """What was said in a weighing, and where the book says it stands."""

    start: dict[str, Any]
    said: list[dict[str, Any]]
    kept: dict[str, Any]
    stands: dict[str, Any]


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    """A demo book for many weighings."""
    found = Asked(book=tmp_path_factory.mktemp("state") / "book")
    load_demo(found)
    return found


def stands(bench: Bench) -> dict[str, Any]:
    found = bench.found
    return {
        "now": found.now,
        "slip": found.slip,
        "last": None if found.last is None else found.last.client_id,
        "rows": [[s.target_g, s.got_g, s.is_done] for s in found.spots],
        "display": None if found.now is None else found.display_g(found.now),
        "running": None if found.now is None else found.running_g(found.now),
    }


def next_said(bench: Bench, chance: random.Random, number: str) -> BenchSaid:
    """Something a hand may do now: mostly right, sometimes over, short, or taken back."""
    found = bench.found
    if found.slip is not None and bench.slip is not None:
        closed = [w.kind for w in bench.slip.ways if w.kind in ("jar", "leave", "hold", "scale")]
        if closed and chance.random() < 0.8:
            return BenchSaid(number, "choose", way=chance.choice(closed))
        return BenchSaid(number, "undo", of=found.last.client_id if found.last else "")
    if found.last is not None and chance.random() < 0.08:
        return BenchSaid(number, "undo", of=found.last.client_id)
    at = found.now or 0
    row = bench.plan.rows[at]
    if row.kind == "tare":
        return BenchSaid(number, "tare", at)
    display = found.display_g(at) or 0.0
    if row.kind != "add":
        return BenchSaid(number, "got", at, round(display * chance.uniform(0.95, 1.05), 1))
    if chance.random() < 0.7:
        return BenchSaid(number, "in", at)
    add = found.add_g(at) or 0.0
    off = round(add * chance.uniform(-0.4, 0.4), 1)
    return BenchSaid(number, "got", at, round(display + off, 1))


def told(asked: Asked) -> Iterator[Told]:
    chance = random.Random(610)  # noqa: S311
    for weighing in range(WEIGHINGS):
        name = chance.choice(NAMES)
        set_aside(name, asked)
        bench = say_at_bench(name, f"w{weighing}", (BenchSaid(f"{weighing}-0", "tare", 0),), asked)
        start, said = state_of(bench), list[dict[str, Any]]()
        for number in range(1, chance.randint(4, 30)):
            if bench.found.now is None and bench.slip is None:
                break
            each = next_said(bench, chance, f"{weighing}-{number}")
            bench = say_at_bench(name, f"w{weighing}", (each,), asked)
            said.append(
                {"id": each.client_id, "kind": each.kind, "position": each.position,
                 "display_g": each.display_g, "way": each.way, "of": each.of}
            )  # fmt: skip
        yield Told(start, said, state_of(bench), stands(bench))


QUESTION = """async ([address, many]) => {
    const module = await import(address);
    return many.map(({ start, said, kept }) => {
        const all = module.withSaid(start.rows, start.ground, start.steps, said);
        const look = (steps) => {
            const found = module.standing(start.rows, steps);
            const now = found.now;
            return { now, slip: found.slip, last: found.last?.id ?? null,
                rows: found.spots.map((s) => [s.target_g, s.got_g, s.done]),
                display: now === null ? null : module.displayOf(found, now),
                running: now === null ? null : module.runningOf(found, now) };
        };
        return { alone: look(all), after: look(kept.steps) };
    });
}"""


def plain(value: Any) -> Any:
    """Numbers to a hundred-thousandth of a gram."""
    if isinstance(value, dict):
        return {key: plain(each) for key, each in value.items()}
    if isinstance(value, list):
        return [plain(each) for each in value]
    return round(value + 0.0, 5) if isinstance(value, float) else value


def is_grown(each: Told) -> bool:
    """Whether the cake's size was changed, and then something went wrong once more."""
    ways = [s["way"] for s in each.said if s["kind"] == "choose"]
    return "scale" in ways[:-1]


def test_the_page_stands_where_the_book_stands(
    page: Page, asked: Asked, served_static: str
) -> None:
    many = [each for each in told(asked) if not is_grown(each)]
    sent = [{"start": t.start, "said": t.said, "kept": t.kept} for t in many]
    module_page(page, served_static)
    answers = page.evaluate(QUESTION, [f"{served_static}/static/bench-state.js", sent])
    wrong = [
        (way, each.said, plain(answer[way]), plain(each.stands))
        for each, answer in zip(many, answers, strict=True)
        for way in ("alone", "after")
        if plain(answer[way]) != plain(each.stands)
    ]
    assert wrong[:1] == []
    assert sum(s["kind"] == "choose" for t in many for s in t.said) >= WEIGHINGS // 3
