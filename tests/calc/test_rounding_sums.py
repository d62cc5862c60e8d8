"""The sum on rounding to a scale as people and checks call it."""

import pytest

from krume.base import InputError, OutOfRangeError
from krume.calc import answer, run


def test_the_list_comes_back_in_whole_steps_with_its_worst_error() -> None:
    found = run("round-to-scale", masses="32.4,16.2,24.3,7.29,4.86", step=1)
    assert found["masses_g"] == [33.0, 16.0, 24.0, 7.0, 5.0]
    assert found["total_g"] == 85.0
    assert found["worst_ratio_error_pct"] == pytest.approx(100 * 0.29 / 7.29)
    assert found["too_fine"] == [False] * 5


def test_masses_may_carry_their_units() -> None:
    assert run("round-to-scale", masses=["1 oz", "2 oz"], step_g="0.5 g")["masses_g"] == [
        28.5,
        56.5,
    ]


def test_a_line_too_fine_for_the_scale_is_named() -> None:
    found = answer("round-to-scale", {"masses": "70,0.25", "step": "1"})
    assert found.values["masses_g"] == [70.0, 0.25]
    assert found.values["too_fine"] == [False, True]
    assert [notice.code for notice in found.notices] == ["finer-than-scale"]
    assert found.notices[0].text.startswith("0.25 g: a step of 1 g")


def test_what_no_scale_shows_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="Type the step"):
        run("round-to-scale", masses="70,30", step=0)
    with pytest.raises(OutOfRangeError, match="0 or more"):
        run("round-to-scale", masses="70,-30", step=1)
    with pytest.raises(InputError, match="step"):
        run("round-to-scale", masses="70,30")
