"""What is touched next at the oven, and in how many minutes."""

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from krume.store import KeptWeighing, begin_weighing, book_at, start_clock
from krume.usecases import Asked, Load, load_demo, oven_view, put_in, take_out
from krume.usecases.oven import oven as oven_module

START = "2027-06-10T08:00:00.000+00:00"


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    found = Asked(book=tmp_path_factory.mktemp("oven") / "book")
    load_demo(found)
    return found


def _load(number: int = 1, **known: float | str) -> Load:
    fields = {"check_min": 25.0, "likely_min": 34.0, "latest_min": 46.0, **known}
    return Load(f"id{number}", number, "F1", "", START, None, **fields)  # type: ignore[arg-type]


def _holds(monkeypatch: pytest.MonkeyPatch, *loads: Load) -> None:
    def held(_: Asked, *, at: str) -> tuple[Load, ...]:
        assert at
        return loads

    monkeypatch.setattr(oven_module, "loads_now", held)


def _at(minutes: float) -> str:
    return (datetime.fromisoformat(START) + timedelta(minutes=minutes)).isoformat()


@pytest.mark.parametrize(
    ("minutes", "kind", "left"),
    [
        (0, "check", 25),
        (18.2, "check", 7),
        (25, "latest", 21),
        (45.5, "latest", 1),
        (50, "over", 4),
    ],
)
def test_first_the_check_then_the_latest_then_what_is_over(
    asked: Asked, monkeypatch: pytest.MonkeyPatch, minutes: float, kind: str, left: int
) -> None:
    _holds(monkeypatch, _load())
    found = oven_view(asked, at=_at(minutes)).next
    assert (found.kind, found.minutes) == (kind, left)


def test_a_probe_moves_what_is_awaited(asked: Asked, monkeypatch: pytest.MonkeyPatch) -> None:
    probed = _load(
        core_c=88.0, core_at=_at(30), left_low_min=3.0, left_best_min=4.0, left_high_min=6.0
    )
    _holds(monkeypatch, probed)
    assert oven_view(asked, at=_at(31)).next.kind == "core"
    assert oven_view(asked, at=_at(31)).next.minutes == 3
    assert oven_view(asked, at=_at(36)).next.kind == "probe"
    assert "first check 10:33, latest out 10:36" in oven_view(asked, at=_at(31)).svg


def test_the_load_that_wants_the_hand_soonest_comes_first(
    asked: Asked, monkeypatch: pytest.MonkeyPatch
) -> None:
    loads = (_load(1, check_min=40.0), _load(2, check_min=30.0), _load(3, check_min=0.0))
    bare = Load("id4", 4, "", "", START, None)
    _holds(monkeypatch, bare, *loads)
    view = oven_view(asked, at=_at(10))
    assert [load.number for load in view.inside] == [2, 1, 3, 4]
    assert [load.number for load in oven_view(asked, at=_at(50)).inside] == [1, 2, 3, 4]


def test_an_empty_oven_offers_what_stands_ready_and_what_was_baked_last(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    assert oven_view(asked).next.kind == "empty"
    assert oven_view(asked).ready == ()
    put_in("one", "F2", "", asked)
    take_out("one", asked)
    book = book_at(asked.book)
    begin_weighing(book, KeptWeighing("w", "formulas/F1.txt", 1, "2027-06-10", 1.0, "open"))
    start_clock(book, "foam", kind="foam", weighing="w")
    view = oven_view(asked)
    assert [(each.formula, each.why) for each in view.ready] == [
        ("F1", "its foam stands ready"),
        ("F2", "once more"),
    ]
    assert view.last_out is not None


def test_without_a_book_the_oven_is_empty(tmp_path: Path) -> None:
    view = oven_view(Asked(book=tmp_path / "none"))
    assert view.next.kind == "empty"
    assert "No load is in the oven" in view.svg
