"""A bake and all beside it: given where asked for, the same minutes either way."""

import pytest

from krume.usecases import (
    Answer,
    Asked,
    BakeResult,
    BakeWish,
    bake_formula,
    bake_with_more,
    load_demo,
)


@pytest.fixture(scope="module")
def studio(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    found = Asked(book=tmp_path_factory.mktemp("more") / "book")
    load_demo(found)
    return found


@pytest.fixture(scope="module")
def whole(studio: Asked) -> Answer[BakeResult]:
    return bake_with_more("F1", BakeWish(doubt=True, cooling=True), studio)


def test_the_minutes_are_those_of_the_bake_alone(whole: Answer[BakeResult], studio: Asked) -> None:
    alone = bake_formula("F1", BakeWish(), studio).result
    assert whole.result.minutes == alone.minutes
    assert whole.result.curve == alone.curve
    assert (alone.tops, alone.unknowns, alone.cooling) == ((), (), None)


def test_the_top_gets_browner_from_the_first_look_to_the_last(whole: Answer[BakeResult]) -> None:
    tops = whole.result.tops
    assert [top.which for top in tops] == ["check from", "most likely", "latest"]
    assert [top.delta_e for top in tops] == sorted(top.delta_e for top in tops)
    assert [top.lightness for top in tops] == sorted((t.lightness for t in tops), reverse=True)
    assert tops[0].minute == whole.result.check_from_min


def test_the_doubt_is_told_with_its_largest_part_first(whole: Answer[BakeResult]) -> None:
    unknowns = whole.result.unknowns
    shares = [each.share for each in unknowns]
    assert shares == sorted(shares, reverse=True)
    assert 0.5 < sum(shares) < 1.3
    assert {each.key for each in unknowns if each.then_min} >= {"density"}


def test_after_the_oven_comes_the_cooling_with_its_own_notice(whole: Answer[BakeResult]) -> None:
    assert whole.result.cooling is not None
    assert whole.result.cooling.fill_min is not None
    assert any("compared with no cake" in notice.text for notice in whole.notices)


def test_a_refused_bake_has_nothing_beside_it(studio: Asked) -> None:
    answer = bake_with_more("F1", BakeWish(oven="90 C", beside="round 26 cm", doubt=True), studio)
    assert answer.exit_code == 4
    assert (answer.result.beside, answer.result.tops, answer.result.unknowns) == (None, (), ())


def test_a_door_when_all_is_over_is_asked_and_the_minutes_stay(studio: Asked) -> None:
    answer = bake_with_more("F1", BakeWish(door_min=(150.0,)), studio)
    assert [problem.code for problem in answer.problems] == ["door-after-the-bake"]
    assert answer.exit_code == 3
    assert answer.result.minutes is not None


def test_an_answer_names_the_second_tin(studio: Asked) -> None:
    asked = Asked(book=studio.book, answers=("--beside=dark round 20 cm",))
    assert bake_with_more("F1", BakeWish(beside="huh"), asked).exit_code == 0
