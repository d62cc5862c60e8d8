"""What lies where: each cream finds its place, and what has none is asked with the line to type."""

import pytest

from krume.build.stack import Stack, stack_of
from tests.build.studio import plan_of


def stack(text: str) -> Stack:
    return stack_of(plan_of(f"A torte\n\n{text}"))


def lies_on(found: Stack) -> list[list[str]]:
    return [[spread.component.what for spread in storey.on] for storey in found.storeys]


def test_cream_between_the_layers_leaves_the_top_free() -> None:
    found = stack("3 layers of F1, 14 mm\n10 mm C1 between the layers")
    assert lies_on(found) == [["C1"], ["C1"], []]


def test_cream_on_each_layer_reaches_the_top_one_too() -> None:
    assert lies_on(stack("2 layers of F1, 14 mm\n10 mm C1 on each layer")) == [["C1"], ["C1"]]


def test_syrup_soaks_in_before_the_cream_whatever_the_text_says_first() -> None:
    found = stack("2 layers of F1, 9 mm\n9 mm C1 between the layers\n.1 g/cm2 S1 on each layer")
    assert lies_on(found) == [["S1", "C1"], ["S1"]]


def test_on_the_layer_is_the_single_layer_above_in_the_text() -> None:
    text = "1 layer of F1, 9 mm\n5 mm C4 on the layer\n1 layer of F2, 9 mm\n3 mm C3 on the layer"
    assert lies_on(stack(text)) == [["C4"], ["C3"]]


def test_two_creams_between_the_layers_lie_in_the_order_of_the_text() -> None:
    text = "2 layers of F1, 9 mm\n2 mm C4 between the layers\n8 mm C1 between the layers"
    assert lies_on(stack(text)) == [["C4", "C1"], []]


@pytest.mark.parametrize(
    ("text", "code", "line"),
    [
        ("3 layers of F1, 9 mm\n5 mm C1 on the layer", "place-unclear", "5 mm C1 on each layer"),
        ("1 layer of F1, 9 mm\n5 mm C1 between the layers", "place-unclear",
         "5 mm C1 on the layer"),
        ("1 layer of F1, 9 mm\n5 mm C1 on the sheet", "place-unclear", "5 mm C1 on each layer"),
        ("1 layer of F1, 9 mm\n90 g C3 in the shell", "place-unclear", "90 g C3 on top"),
        ("3 layers of F1, 9 mm\n4 x 5 mm C1 between the layers", "count-differs",
         "2 x 5 mm C1 between the layers"),
        ("2 shells of F7", "one-piece", "1 shell of F7"),
    ],
)  # fmt: skip
def test_what_cannot_be_placed_is_asked_and_the_line_to_type_answers_it(
    text: str, code: str, line: str
) -> None:
    found = stack(text)
    (problem,) = found.problems
    assert problem.code == code
    assert problem.options[0].line == line
    lines = text.splitlines()
    answered = "\n".join(line if x == problem.read else x for x in lines)
    assert stack(answered).problems == ()


def test_a_roll_has_no_layers_beside_it() -> None:
    text = "1 sheet of F3, 12 mm, rolled from the long side\n1 layer of F1, 14 mm"
    assert [p.code for p in stack(text).problems] == ["one-piece"]


def test_a_bare_mass_between_the_layers_is_shared_and_said() -> None:
    found = stack("3 layers of F1, 9 mm\n200 g C1 between the layers")
    assert [spread.mass_g for storey in found.storeys for spread in storey.on] == [100.0, 100.0]
    assert [notice.code for notice in found.notices] == ["mass-shared"]


def test_a_bare_mass_with_a_number_in_front_is_each() -> None:
    found = stack("3 layers of F1, 9 mm\n2 x 200 g C1 between the layers")
    assert [spread.mass_g for storey in found.storeys for spread in storey.on] == [200.0, 200.0]
    assert found.notices == ()
