"""How a torte's custard cools, as `keep` answers it."""

import subprocess
import sys

import pytest

from krume.base import OutOfRangeError
from krume.design import read
from krume.usecases import Asked, keep_and_cool, keep_of
from krume.usecases.keep.custard_way import custard_way, log_lines


def test_a_torte_with_custard_shows_its_predicted_way_and_its_log(demo: Asked) -> None:
    cooling = keep_and_cool("T1", demo).result.cooling
    assert cooling is not None
    assert cooling.of == ("C1",)
    assert cooling.verdict == "not-shown"
    assert any("21 °C or below" in line for line in cooling.log)
    assert "no evidence" in cooling.log[-1]
    assert "local law" in cooling.log[-1]


def test_every_vessel_has_its_sentence_and_the_custard_its_depth(demo: Asked) -> None:
    cooling = keep_and_cool("C1", demo).result.cooling
    assert cooling is not None
    assert len(cooling.lines) == len(cooling.vessels) + 2
    assert cooling.lines[1].startswith("Metal tray in the fridge: up to ")
    assert cooling.lines[-1] == "All 942 g of C1 in one tray of 33 × 23 cm lie 1.1 cm deep."


def test_a_torte_without_custard_has_no_way(demo: Asked) -> None:
    assert keep_and_cool("TART", demo).result.cooling is None
    assert keep_and_cool("F1", demo).result.cooling is None


def test_how_long_it_keeps_is_the_same_with_and_without_the_prediction(demo: Asked) -> None:
    with_way, without = keep_and_cool("T1", demo), keep_of("T1", demo)
    assert without.result.cooling is None
    assert with_way.result.cold_hours == without.result.cold_hours
    assert with_way.result.reasons == without.result.reasons
    assert set(with_way.sources) > set(without.sources)


def test_the_prediction_never_says_that_a_batch_passes(demo: Asked) -> None:
    cooling = keep_and_cool("T1", demo).result.cooling
    assert cooling is not None
    words = " ".join((*cooling.lines, *cooling.log)).casefold()
    assert "safe" not in words
    assert " pass" not in words.replace("place passes 57", "")


def test_a_fridge_at_six_degrees_is_refused(demo: Asked) -> None:
    with pytest.raises(OutOfRangeError, match="never brings custard"):
        keep_and_cool("T1", demo, fridge_c=6.0)


def test_a_custard_with_a_line_without_grams_has_no_depth() -> None:
    formula = read("Custard\nFamily: custard\n\n400 g milk\n2 eggs\n").value
    way = custard_way({"X": formula}, {"X": "custard"})
    assert way is not None
    assert not any(line.startswith("All ") for line in way.lines)


def test_the_log_names_both_limits_of_the_law() -> None:
    assert log_lines()[2].startswith("By 2 h it must be at 21 °C or below, by 6 h in all at 5 °C")


def test_what_only_keeps_does_not_wait_for_the_solver() -> None:
    code = "import sys, krume.usecases.keep.keep; print('numpy' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False"]
