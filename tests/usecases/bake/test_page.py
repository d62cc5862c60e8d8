"""A bake on a page: likeliest first, doubt on request, and what would narrow it."""

from pathlib import Path

import pytest

from krume.usecases import (
    Asked,
    BakeWish,
    bake_formula,
    bake_shown,
    load_demo,
    save_text,
    text_now,
)

F1 = "formulas/F1.txt"


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    found = Asked(book=tmp_path_factory.mktemp("shown") / "book")
    load_demo(found)
    return found


def test_the_likeliest_bake_says_no_interval(asked: Asked) -> None:
    page = bake_shown(F1, BakeWish(oven="171 C"), asked).result
    assert page.result.minutes is None
    assert page.likely_min == pytest.approx(32.2, abs=1.2)
    assert page.result.unknowns == ()
    assert page.result.cooling is None
    assert len(page.cuts) == 6


def test_worked_out_it_is_the_answer_of_the_command(asked: Asked) -> None:
    page = bake_shown(F1, BakeWish(), asked, work=True).result
    answer = bake_formula(F1, BakeWish(), asked).result
    assert (page.result.minutes, page.result.curve) == (answer.minutes, answer.curve)
    assert page.result.cooling is not None
    assert page.last_text.startswith("Core last")
    assert page.result.unknowns[0].share > 0.2


def test_a_second_tin_is_compared_at_once_and_with_its_doubt_on_request(asked: Asked) -> None:
    wish = BakeWish(beside="dark round 20 cm")
    first = bake_shown(F1, wish, asked).result
    assert first.result.beside is not None
    assert "how sure is not worked out yet" in first.result.beside.text
    assert len(first.pair) == 2
    assert first.likely_min is not None and first.other_likely_min is not None
    assert first.pair_min == min(first.likely_min, first.other_likely_min)
    worked = bake_shown(F1, wish, asked, work=True).result.result.beside
    assert worked is not None and worked.sooner_min is not None


def test_a_second_tin_that_is_asked_about_leaves_the_minutes(asked: Asked) -> None:
    answer = bake_shown(F1, BakeWish(beside="round 20 cm"), asked)
    assert [problem.where for problem in answer.problems] == ["--beside"]
    assert answer.result.likely_min is not None
    assert answer.result.pair == ()


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
