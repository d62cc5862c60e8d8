"""What an input of a sum is."""

from krume.calc import SUMS, Input
from krume.calc.declaring import KINDS


def test_every_input_is_of_a_known_kind() -> None:
    for declared in SUMS.values():
        for item in declared.inputs:
            assert item.kind in KINDS


def test_an_input_is_a_required_number_unless_said() -> None:
    item = Input("mass", "mass", "g")
    assert (item.kind, item.required, item.may_be_unknown) == ("number", True, False)
