"""Answers are kept in mind until something they were read from changes."""

import ast
import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from krume import usecases
from krume.base import KrumeError
from krume.store import (
    Book,
    KeptTrial,
    add_texts,
    back_up,
    book_at,
    book_bytes,
    drop_row,
    drop_text,
    keep_row,
    keep_text,
    keep_trial,
    kept_rows,
    kept_text,
    kept_versions,
    restore,
)
from krume.usecases import (
    Asked,
    BakeWish,
    LabelWish,
    bake_shown,
    check_formula,
    label_of,
    load_demo,
    order_view,
    orders_of,
    pantry_now,
    standings_of,
    today_of,
    torte_shown,
)
from krume.usecases.asking.remembering import Remembered, day_key, forget_all
from krume.usecases.bench.plan import plan_of
from krume.usecases.sold.kitchen_nuts import kitchen_nuts
from krume.usecases.sold.papers import papers_of
from krume.usecases.sold.product import sold_of


def test_an_answer_is_made_once_and_again_after_an_edit(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n"})
    made: list[int] = []

    def make() -> int:
        made.append(len(book_bytes(book, "formulas/F1.txt") or b""))
        return len(made)

    kept: Remembered[int] = Remembered(2)
    assert kept.get(book, "a") is None
    assert [kept.of(book, "a", make), kept.of(book, "a", make)] == [1, 1]
    keep_text(book, "formulas/F1.txt", b"F2\n", seen=1)
    assert kept.of(book, "a", make) == 2


def test_an_edit_of_what_an_answer_was_not_read_from_leaves_it(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n", "formulas/F2.txt": b"F2\n"})
    kept: Remembered[list[bytes | None]] = Remembered(2)

    def one() -> list[bytes | None]:
        return kept.of(book, "a", lambda: [book_bytes(book, "formulas/F1.txt")])

    first = one()
    keep_text(book, "formulas/F2.txt", b"F2\n\n1 g salt\n", seen=1)
    assert one() is first
    keep_text(book, "formulas/F1.txt", b"F1\n\n1 g salt\n", seen=1)
    assert one() == [b"F1\n\n1 g salt\n"]


def test_what_an_answer_within_was_read_from_counts_for_the_one_around_it(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n"})
    inner: Remembered[bytes | None] = Remembered(2)
    outer: Remembered[tuple[bytes | None]] = Remembered(2)

    def within() -> bytes | None:
        return inner.of(book, "a", lambda: book_bytes(book, "formulas/F1.txt"))

    within()
    assert outer.of(book, "a", lambda: (within(),)) == (b"F1\n",)
    keep_text(book, "formulas/F1.txt", b"F2\n", seen=1)
    assert outer.of(book, "a", lambda: (within(),)) == (b"F2\n",)


def test_only_so_many_are_kept_and_the_oldest_goes(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n"})
    kept: Remembered[str] = Remembered(2)
    for key in ("a", "b", "a", "c"):
        kept.of(book, key, lambda key=key: key)  # type: ignore[misc]
    assert [kept.get(book, key) for key in ("a", "b", "c")] == ["a", None, "c"]


def test_what_changed_while_it_was_made_is_not_kept(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    add_texts(book, {"formulas/F1.txt": b"F1\n"})

    def make() -> str:
        book_bytes(book, "formulas/F1.txt")
        keep_text(book, "formulas/F1.txt", b"F2\n", seen=1)
        return "of the old text"

    kept: Remembered[str] = Remembered(2)
    assert kept.of(book, "a", make) == "of the old text"
    assert kept.get(book, "a") is None


def test_of_plain_files_nothing_is_kept(tmp_path: Path) -> None:
    (tmp_path / "formulas").mkdir()
    book = book_at(tmp_path)
    kept: Remembered[str] = Remembered(2)
    assert kept.of(book, "a", lambda: "made") == "made"
    assert kept.get(book, "a") is None


def test_another_day_or_another_answer_is_another_key(tmp_path: Path) -> None:
    book = book_at(tmp_path)
    plain = day_key(book, Asked(), "101")
    assert day_key(book, Asked(answers=("line 1=x",)), "101") != plain
    assert day_key(book, Asked(), "102") != plain


def test_nothing_but_remembered_keeps_what_was_read_of_a_book() -> None:
    """A cache that takes a book or a request would hide from the notes what it was read from."""
    folder = Path(usecases.__file__).parent
    hidden = [
        f"{path.name} {node.name}"
        for path in sorted(folder.rglob("*.py"))
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.FunctionDef)
        and any("cache" in ast.unparse(each) for each in node.decorator_list)
        and any(ast.unparse(a.annotation or a) in ("Book", "Asked") for a in node.args.args)
    ]
    assert hidden == []


_SHOWN: dict[str, Callable[[Asked], object]] = {
    "today": today_of,
    "orders": lambda asked: standings_of(orders_of(asked), asked),
    "order": lambda asked: order_view("101", asked),
    "torte": lambda asked: torte_shown("T1", asked),
    "pantry": pantry_now,
    "check": lambda asked: check_formula("formulas/F2.txt", asked),
    "bake": lambda asked: bake_shown("formulas/F1.txt", BakeWish(), asked),
    "label": lambda asked: label_of("T1", LabelWish(), asked),
    "bench": lambda asked: plan_of("F2", asked),
    "nuts": lambda asked: kitchen_nuts(asked, "eu"),
    "sold": lambda asked: sold_of("orders/102.txt", asked),
    "papers": papers_of,
}
"""What is kept in mind, each as a page asks for it."""

_Edit = Callable[[Book], object]


def _text(place: str, change: Callable[[bytes], bytes]) -> _Edit:
    """An edit of a text; one that was taken out is brought back."""

    def edit(book: Book) -> object:
        now = kept_text(book, place)
        body = now.body if now is not None else kept_versions(book, place)[0].body
        return keep_text(book, place, change(body), seen=None if now is None else now.revision)

    return edit


def _out(place: str) -> _Edit:
    def edit(book: Book) -> object:
        now = kept_text(book, place)
        return None if now is None else drop_text(book, place, seen=now.revision)

    return edit


def _row(place: str, number: int, column: str, word: str) -> _Edit:
    """An edit of one cell of a table."""

    def edit(book: Book) -> object:
        head, rows = kept_rows(book, place)
        row = rows[number]
        cells = list(row.cells)
        cells[head.index(column)] = word
        return keep_row(book, place, cells, key=row.key, seen=row.revision)

    return edit


def _gone(place: str) -> _Edit:
    def edit(book: Book) -> None:
        _, rows = kept_rows(book, place)
        drop_row(book, rows[-1].key, seen=rows[-1].revision)

    return edit


def _put_back(book: Book) -> None:
    """A copy is made, something is kept, and the copy is put back."""
    copy = back_up(book)
    _EDITS["more sugar"](book)
    restore(book, copy)


def _tried(book: Book) -> object:
    """Sent twice it is kept once."""
    trial = KeptTrial(
        "k", "formulas/F1.txt", None, None, 95.0, 50.0, 48.0, 35.0, 460.0, "good", "", "2027-06-10"
    )
    return keep_trial(book, trial, seen=None)


_EDITS: dict[str, _Edit] = {
    "more sugar": _text("formulas/F2.txt", lambda body: body.replace(b"130 g", b"131 g")),
    "less sugar": _text("formulas/F2.txt", lambda body: body.replace(b"131 g", b"130 g")),
    "another cake": _text(
        "formulas/F1.txt", lambda body: re.sub(rb"(?m)^(\d+) g", rb"1\1 g", body, count=1)
    ),
    "another title": _text("formulas/C1.txt", lambda body: b"New " + body),
    "another formula": lambda book: add_texts(book, {"formulas/F9.txt": b"F9\n\n100 g almonds\n"}),
    "a formula out": _out("formulas/F3.txt"),
    "a cream out": _out("formulas/C5.txt"),
    "a cream back": _text("formulas/C5.txt", lambda body: body),
    "a torte": _text("tortes/T1.txt", lambda body: body.replace(b"14 mm", b"15 mm")),
    "an order": _text("orders/101.txt", lambda body: body.replace(b"1 T1", b"2 T1")),
    "an order out": _out("orders/102.txt"),
    "a lot": _row("lots.csv", 0, "valid_to", "2027-06-01"),
    "a lot out": _gone("lots.csv"),
    "a price": _row("prices.csv", 0, "price", "9.90"),
    "a trial in the table": _row("trials.csv", 0, "word", "good"),
    "a trial at the bench": _tried,
    "eggs": _text("studio.toml", lambda body: body.replace(b'region = "eu"', b'region = "us"')),
    "the day": _text("studio.toml", lambda body: body.replace(b"06-10T", b"06-13T")),
    "an import": lambda book: add_texts(
        book, {"lots.csv": b"lot,ingredient\nL-9,teff flour\n"}, is_newer=True
    ),
    "put back": _put_back,
}


_MOVES_NOTHING = ("a cream back", "a trial in the table", "put back")
"""Edits after which nothing that is shown is another."""


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("made") / "book"
    load_demo(Asked(book=folder))
    return folder


def _all(asked: Asked) -> dict[str, object]:
    return {name: _said(show, asked) for name, show in _SHOWN.items()}


def _said(show: Callable[[Asked], object], asked: Asked) -> object:
    """What is shown, or why it is not."""
    try:
        return show(asked)
    except KrumeError as error:
        return error.message


@settings(
    max_examples=2,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(edits=st.lists(st.sampled_from(sorted(_EDITS)), min_size=4, max_size=6, unique=True))
def test_after_any_edits_what_is_kept_in_mind_equals_what_is_made_anew(
    edits: list[str], made: Path, tmp_path: Path
) -> None:
    folder = tmp_path / "book"
    shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(made, folder)
    book, asked = book_at(folder), Asked(book=folder)
    _all(asked)
    for name in edits:
        _EDITS[name](book)
        kept = _all(asked)
    forget_all()
    assert kept == _all(asked), edits


@pytest.mark.parametrize("edit", sorted(_EDITS))
def test_each_edit_is_seen_at_once(edit: str, made: Path, tmp_path: Path) -> None:
    shutil.copytree(made, tmp_path / "book")
    asked, quick = Asked(book=tmp_path / "book"), sorted(_SHOWN.keys() - {"bake", "today"})
    before = [_said(_SHOWN[name], asked) for name in quick]
    _EDITS[edit](book_at(tmp_path / "book"))
    after = [_said(_SHOWN[name], asked) for name in quick]
    forget_all()
    assert after == [_said(_SHOWN[name], asked) for name in quick]
    assert (before == after) is (edit in _MOVES_NOTHING)
