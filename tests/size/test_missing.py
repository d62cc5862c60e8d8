"""What every shape asks when its size is missing."""

import pytest

from krume.size import SHAPES, Tin, read_tin
from krume.size.asking import Asking
from krume.size.missing import EXAMPLES, has_capacity, whole
from krume.size.sizes import Sizes


@pytest.mark.parametrize("shape", SHAPES)
def test_every_shape_has_examples_that_read(shape: str) -> None:
    assert EXAMPLES[shape]
    for line in EXAMPLES[shape]:
        read = read_tin(line)
        assert read.value is not None and read.value.shape == shape


def test_water_alone_is_a_size() -> None:
    asking = Asking("tube", "tin")
    assert has_capacity("tube", Tin("", "tube", water_ml=2000.0), asking)
    assert asking.problems == []
    assert not has_capacity("tube", Tin("", "tube"), asking)
    assert asking.problems[0].code == "tin-size-missing"


def test_a_guess_is_a_whole_number_of_the_persons_unit() -> None:
    assert whole(6.4, Sizes("cm")) == 6
    assert whole(6.4, Sizes("in")) == pytest.approx(3 * 2.54)
    assert whole(0.2, Sizes("cm")) == 1
