"""What each line of a text is taken for."""

import pytest

from krume.design import read

COVERS = (
    "headings",
    "scoring",
    "wording",
)


def kinds(text: str) -> list[str]:
    return [line.kind for line in read(text).value.source_lines if line.kind != "blank"]


def test_a_blogs_chatter_is_neither_list_nor_method() -> None:
    text = (
        "# Lemon cake\n\nHi friends, I made this 3 times last week and my family loved it.\n\n"
        "Prep time: 20 mins\n## Ingredients\n- 225g butter\n- 1 lemon, zested\n\n## Method\n"
        "1. Beat the butter.\n2. Bake at 170 C.\n\nI hope you enjoy it.\n\n## Nutrition\nFat 21 g\n"
    )
    assert kinds(text) == [
        "name",
        "note",
        "note",
        "heading",
        "ingredient",
        "ingredient",
        "heading",
        "step",
        "step",
        "note",
        "heading",
        "note",
    ]


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("Cream butter and sugar 6 minutes.", "step"),
        ("Cream of tartar", "ingredient"),
        ("12 slices", "note"),
        ("Butter the tin.", "step"),
        ("Salt", "ingredient"),
        ("350 F", "note"),
        ("FILLING", "heading"),
        ("Füllung:", "heading"),
        ("**Sponge**", "heading"),
        ("----", "note"),
        ("Tin: round 20 cm", "key"),
        ("Serves 8", "key"),
        ("Whites 2 eggs, beaten until stiff", "ingredient"),
        ("1x 2x 3x", "note"),
        ("100 g of hazelnuts go into a bowl first.", "step"),
    ],
)
def test_one_line_among_ingredients(line: str, kind: str) -> None:
    text = f"Cake\n\n85 g butter\n{line}\n40 g sugar\n\nMix and bake."
    assert kinds(text)[2] == kind


def test_lines_that_only_go_on_are_one_step() -> None:
    text = (
        "x\n\n85 g butter\n\nBeat the butter with the sugar until the mixture is pale and\n"
        "thick enough to hold a trail.\nBake."
    )
    assert len(read(text).value.steps) == 2
