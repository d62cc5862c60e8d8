"""Sums on keeping as people and checks call them."""

import pytest

from krume.base import InputError, OutOfRangeError
from krume.calc import answer, run
from tests.agreement import agrees, reads


@pytest.mark.source("reference-book", "R19 to R23, R27, R28 as quick sums")
def test_sums_are_the_printed_ones() -> None:
    assert agrees(run("mould-free-days", erh=80, temp=21)["days"], "26.9")  # type: ignore[arg-type]
    assert agrees(run("mould-free-days", erh_pct=80, temp_c=27)["days"], "17.5")  # type: ignore[arg-type]
    why = "the book's own tolerance"
    heating = run("lethality", times="0,2,4,6,8,10,12", temps="50,56,60,62,62,60,52",
                  reference=60, z=4.7)  # fmt: skip
    assert agrees(heating["minutes"], "13.589", within="0.002", why=why)  # type: ignore[arg-type]
    ramp = run("lethality", times=[0, 10], temps=["122F", "158F"], reference=60, z="18F")
    assert agrees(ramp["minutes"], "21.498", within="0.002", why=why)  # type: ignore[arg-type]
    assert reads(str(run("tcs", aw=0.93, ph=5.2)["verdict"]), "assess")


@pytest.mark.source("reference-book", "cooling logs A and B as quick sums")
def test_cooling_logs_are_judged_as_printed() -> None:
    a = run("cooling", times="0,1,2,4,6", temps="57,33,20,9,4")
    assert agrees(a["stage_1_h"], "1.92") and agrees(a["total_h"], "5.6")  # type: ignore[arg-type]
    assert reads(str(a["verdict"]), "pass")
    b = run("cooling", times="0 h,60 min,2 h,4 h,6 h", temps=[57, 40, 26, 12, 6])
    assert agrees(b["stage_1_h"], "2.71")  # type: ignore[arg-type]
    assert (b["total_h"], b["verdict"]) == (None, "fail")


def test_log_reductions_need_d() -> None:
    inputs = {"times": "0,10", "temps": "60,60", "reference": 60, "z": 4.7}
    assert run("lethality", **inputs)["log_reductions"] is None
    assert run("lethality", **inputs, d=0.5)["log_reductions"] == pytest.approx(20.0)
    with pytest.raises(OutOfRangeError):
        run("lethality", **inputs, d=0)


def test_an_unknown_number_keeps_it_cold_and_says_so() -> None:
    found = answer("tcs", {"aw": "?", "ph": 4.0})
    assert found.values == {"verdict": "tcs"}
    assert found.notices[0].code == "not-shown"


def test_what_is_not_shown_fails() -> None:
    found = run("cooling", times="0,1,2,4", temps="57,33,20,9")
    assert (found["verdict"], found["reason"]) == ("fail", "not-shown")


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="74 to 90"):
        run("mould-free-days", erh=92, temp=21)
    with pytest.raises(InputError):
        run("tcs", aw=0.9)
    with pytest.raises(InputError, match="yes nor no"):
        run("tcs", aw=0.9, ph=5, heat_treated_packaged="perhaps")
    with pytest.raises(InputError, match="temperatures"):
        run("cooling", times="0,1", temps="57")


@pytest.mark.parametrize("last_c", [4, 9])
def test_a_judged_log_leaves_the_last_word_to_the_law(last_c: float) -> None:
    found = answer("cooling", {"times": "0,1,2,4,6", "temps": f"57,33,20,9,{last_c}"})
    assert found.values["verdict"] == ("pass" if last_c < 5 else "fail")
    assert "local-law" in {notice.code for notice in found.notices}


def test_a_heating_of_egg_is_told_no_further_than_it_was_measured() -> None:
    found = answer("egg-heat", {"times": "0,5", "temps": "90,90"})
    assert found.values["is_more"] is True
    assert found.values["log_reductions"] == 7.0
    assert found.notices[0].code == "no-promise"
    assert run("egg-heat", times="0,60", temps="57,57")["minutes"] == 0.0


def test_where_it_freezes_and_where_it_sweats() -> None:
    assert run("freezing-point", aw=0.98)["temp_c"] == pytest.approx(-2.07, abs=0.01)
    assert run("dew-point", temp=21)["dew_c"] == pytest.approx(10.2, abs=0.05)
    assert run("dew-point", temp="70F", humidity=60)["dew_c"] == pytest.approx(13.0, abs=0.2)
    with pytest.raises(OutOfRangeError):
        run("freezing-point", aw=0.5)


def test_a_cream_that_is_not_cooked_has_one_stage() -> None:
    log = {"times": "0,2,4", "temps": "20,10,5"}
    assert run("cooling", **log, cooked="no")["verdict"] == "pass"
    assert run("cooling", **log)["verdict"] == "fail"
