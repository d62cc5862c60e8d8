"""A bake on a page: likeliest first, doubt on request, and what would narrow it."""

from pathlib import Path

import pytest

from krume.usecases import Asked, BakeWish, bake_formula, bake_shown, load_demo, save_text, text_now

F1 = "formulas/F1.txt"


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    found = Asked(book=tmp_path_factory.mktemp("shown") / "book")
    load_demo(found)
    return found


def test_the_likeliest_bake_says_no_interval(asked: Asked) -> None:
    page = bake_shown(F1, BakeWish(oven="171 C"), asked).result
    assert page.result.minutes is None
    assert page.likely_min == pytest.approx(33.6, abs=0.6)
    assert page.narrows == ()


def test_worked_out_it_is_the_answer_of_the_command(asked: Asked) -> None:
    page = bake_shown(F1, BakeWish(), asked, work=True).result
    answer = bake_formula(F1, BakeWish(), asked).result
    assert page.result == answer
    assert page.last_text.startswith("Core last")


def test_one_timed_bake_narrows_the_doubt_most(asked: Asked) -> None:
    page = bake_shown(F1, BakeWish(), asked, work=True).result
    assert page.result.minutes is not None
    now = page.result.minutes.high - page.result.minutes.low
    widths = [each.minutes.high - each.minutes.low for each in page.narrows]
    assert page.narrows[0].key == "one-bake"
    assert widths == sorted(widths)
    assert widths[0] < now


def test_what_was_worked_out_is_kept_until_the_book_changes(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    first = bake_shown(F1, BakeWish(), asked, work=True)
    assert bake_shown(F1, BakeWish(), asked) is first
    now = text_now("formula", "F1", asked)
    save_text("formula", "F1", f"{now.text}\n", asked, seen=now.revision)
    assert bake_shown(F1, BakeWish(), asked).result.result.minutes is None


def test_a_limit_is_named_without_and_with_the_doubt(asked: Asked) -> None:
    for work in (False, True):
        answer = bake_shown(F1, BakeWish(oven="90 C"), asked, work=work)
        assert not answer.is_possible
        assert answer.result.svg is None
        assert answer.problems[0].code == "limits-clash"
