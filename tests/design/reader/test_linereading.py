"""Single lines: amount, unit, part, ingredient, mass, in the wordings of many hands."""

import pytest

from krume.base import Interval
from krume.design import Line, read

COVERS = (
    "items",
    "pieces",
    "entries",
    "entry",
    "eggentries",
    "eggs",
    "weights",
    "besides",
    "amounts",
    "asks",
    "asking",
    "naming",
    "tables",
    "prose",
    "tied",
    "ratios",
    "vocabulary",
    "settings",
)

EGGS = "x\nEggs: EU M\n\n"


def lines(text: str) -> tuple[Line, ...]:
    return read(EGGS + text).value.lines


@pytest.mark.parametrize(
    ("text", "amount", "unit", "part"),
    [
        ("Whites 3 eggs", 3, "each", "white"),
        ("3 egg whites", 3, "each", "white"),
        ("white of 1 egg", 1, "each", "white"),
        ("Eiweiß von 3 Eiern", 3, "each", "white"),
        ("4 Eigelb (Größe M)", 4, "each", "yolk"),
        ("Yolks of 2 eggs", 2, "each", "yolk"),
        ("3 eggs, whites only", 3, "each", "white"),
        ("5 eggs, medium, separated", 5, "each", None),
        ("Grated rind 1/2 lemon", 0.5, "each", "zest"),
        ("Abrieb einer Zitrone", 1, "each", "zest"),
        ("3 g lemon zest", 3, "g", "zest"),
        ("peel of 1 orange", 1, "each", "zest"),
        ("1 lemon, finely zested", 1, "each", "zest"),
        ("Juice 1 lemon", 1, "each", "juice"),
        ("120 g pasteurised egg white", 120, "g", "white"),
        ("85 g white rice flour", 85, "g", None),
        ("30 g rice flour, white", 30, "g", None),
        ("1 oz candied orange peel", 1, "oz", None),
        ("1 T butter", 1, "tbsp", None),
        ("1 c. sugar", 1, "cup", None),
        ("2 x 100 g sugar", 200, "g", None),
        ("1 cup plus 2 tbsp sugar", 1.125, "cup", None),
        ("1 lb 2 oz honey", 1.125, "lb", None),
        ("Prise Salz", 1, "pinch", None),
        ("butter (40 g)", 40, "g", None),
        ("take 85 g butter", 85, "g", None),
    ],
)
def test_amount_unit_and_part(text: str, amount: float, unit: str, part: str | None) -> None:
    (line,) = lines(text)
    assert line.amount == pytest.approx(amount)
    assert (line.unit, line.part) == (unit, part)


@pytest.mark.parametrize(
    ("text", "mass_g", "basis"),
    [
        ("85 g butter", 85, "weighed"),
        ("3 oz (85 g) butter", 85, "weighed"),
        ("1 lb butter", 453.6, "weighed"),
        ("1 cup sugar (200 g)", 200, "weighed"),
        ("1 cup sugar", 200, "measure"),
        ("1 stick butter", 113.4, "trade"),
        ("5 eggs, EU L", 300, "egg"),
        ("5 eggs (260 g shelled)", 260, "weighed"),
        ("2 egg yolks (40 g)", 40, "weighed"),
        ("Juice 1 lemon", 48, "count"),
        ("1 x 400g tin coconut milk", 400, "weighed"),
        ("2 packets (8 g each) vanilla sugar", 16, "weighed"),
        ("14 dag butter", 140, "weighed"),
    ],
)
def test_grams_and_how_they_came_about(text: str, mass_g: float, basis: str) -> None:
    (line,) = lines(text)
    assert line.mass_g == pytest.approx(mass_g, abs=0.05)
    assert line.basis == basis


def test_eggs_keep_the_spread_of_their_size() -> None:
    (line,) = lines("5 eggs, medium")
    assert line.mass_interval_g is not None
    assert line.mass_interval_g.low < 255 < line.mass_interval_g.high
    assert (line.mass_g, line.egg_size) == (255.0, "eu-m")


def test_a_range_of_eggs_is_a_range_of_grams() -> None:
    (line,) = lines("2 or 3 eggs")
    assert line.amount == Interval(2, 2.5, 3)
    assert line.mass_g == pytest.approx(127.5)


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("1 egg, plus 1 yolk", [(1, None), (1, "yolk")]),
        ("Yolks 2 eggs and whites 3 eggs", [(2, "yolk"), (3, "white")]),
        ("Juice of 1 orange and 1/2 lemon", [(1, "juice"), (0.5, "juice")]),
        ("Grated rind and juice of 1 lemon", [(1, "zest"), (1, "juice")]),
        ("Grated rind of 1 lemon and juice of 1/2", [(1, "zest"), (0.5, "juice")]),
        ("1/4 teaspoon each mace, clove and allspice", [(0.25, None)] * 3),
        (
            "26g white rice flour / 16 millet flour / 22 potato starch",
            [(26, None), (16, None), (22, None)],
        ),
        ("200 g sugar, 100 g butter, 3 eggs", [(200, None), (100, None), (3, None)]),
    ],
)
def test_a_line_with_several_ingredients_is_read_as_several(
    text: str, parts: list[tuple[float, str | None]]
) -> None:
    assert [(x.amount, x.part) for x in lines(text)] == parts


@pytest.mark.parametrize(
    "text",
    [
        "1/4 cup sugar, plus 2 tbsp for the tin",
        "75g butter, melted, plus extra for the tin",
        "120g sugar, divided: 60g for yolks, 60g for whites",
        "1 cup sugar, less 1 tablespoon",
        "3/4 teaspoon soda dissolved in 1 tablespoon hot water",
        "100 g chocolate, 70 %",
    ],
)
def test_what_is_only_said_beside_an_ingredient_is_no_second_one(text: str) -> None:
    assert len(lines(text)) == 1


def test_what_is_said_beside_an_ingredient_is_kept_as_its_note() -> None:
    (line,) = lines("75g butter, melted, plus extra for the tin")
    assert line.name == "butter"
    assert line.note == "melted, plus extra for the tin"


def test_flour_called_gluten_free_is_never_wheat() -> None:
    (line,) = lines("250 g Mehl, glutenfrei")
    assert line.ingredient is None


def test_the_first_of_two_goods_is_planned_and_the_other_is_said() -> None:
    found = read(EGGS + "1 cup milk or water")
    assert found.value.lines[0].ingredient == "milk-whole"
    assert any(n.code == "alternative" and "water" in n.text for n in found.notices)


def test_a_bare_number_of_flour_asks_for_its_unit() -> None:
    (problem,) = read(EGGS + "85 buckwheat flour").problems
    assert problem.code == "unit-missing"
    assert problem.options[0].line == "85 g buckwheat flour"


@pytest.mark.parametrize(
    ("head", "row"),
    [
        ("Ingredient\tg", "buckwheat flour\t85"),
        ("no\titem\tkg\tg", "1\tbuckwheat flour\t\t85"),
        ("| Weight (g) | Item |", "| 85 | buckwheat flour |"),
        ("item;amount;unit", "buckwheat flour;85;g"),
        ("Ingredient,Amount,Unit", "buckwheat flour,85,g"),
    ],
)
def test_a_row_of_a_table_is_read_by_the_tables_head(head: str, row: str) -> None:
    (line,) = read(f"x\n\n{head}\n{row}").value.lines
    assert (line.amount, line.unit, line.mass_g) == (85.0, "g", 85.0)
    assert line.ingredient == "flour-buckwheat-whole"


def test_ingredients_in_running_text_are_found_where_there_is_no_list() -> None:
    text = "Beat 6 US Large egg yolks with 150 g sugar, fold in 200 g ground almonds. Bake 30 min."
    found = read(f"Torte\n\n{text}")
    assert [(x.amount, x.unit) for x in found.value.lines] == [(6, "each"), (150, "g"), (200, "g")]
    assert found.value.steps == (text,)


def test_an_answer_about_eggs_in_running_text_settles_them() -> None:
    text = "Torte\n\nBeat 3 eggs with 150 g sugar, bake 30 min."
    (problem,) = read(text).problems
    assert problem.code == "egg-size-missing"
    for option in problem.options:
        assert read(f"Torte\n\n{option.line}").problems == ()
    first = read(f"Torte\n\n{problem.options[0].line}").value.lines
    assert [x.mass_g for x in first] == [153.0, 150.0]
