"""Small labels with a table, a US box and a code, for the tests of labels."""

from dataclasses import replace

from krume.publish import (
    FactsBox,
    FactsColumn,
    FactsRow,
    Imprint,
    LabelSheet,
    NetWords,
    PanelLine,
    PanelTable,
)

MADE = Imprint(date="2027-06-10", program="0.1", data="abc", notes=("balanced, not baked",))
_ROWS = (
    ("fat", "Total Fat", 0, "8 g", "10%"),
    ("saturated", "Saturated Fat", 1, "3 g", "15%"),
    ("trans", "Trans Fat", 1, "0 g", ""),
    ("cholesterol", "Cholesterol", 0, "less than 5 mg", "1%"),
    ("sodium", "Sodium", 0, "160 mg", "7%"),
    ("carbohydrate", "Total Carbohydrate", 0, "37 g", "13%"),
    ("fibre", "Dietary Fiber", 1, "4 g", "14%"),
    ("sugars", "Total Sugars", 1, "12 g", ""),
    ("added-sugars", "Includes Added Sugars", 2, "10 g", "20%"),
    ("protein", "Protein", 0, "3 g", ""),
    ("vitamin-d", "Vitamin D", 0, "2 mcg", "10%"),
    ("calcium", "Calcium", 0, "260 mg", "20%"),
    ("iron", "Iron", 0, "8 mg", "45%"),
    ("potassium", "Potassium", 0, "240 mg", "6%"),
)


def label(**more: str) -> LabelSheet:
    """A small label."""
    given = {
        "name": "Cake", "market": "eu", "ingredients": "EGG, sugar", "durability": "Keep cold.",
        "maker": "Made by A",
    } | more  # fmt: skip
    return LabelSheet(
        given["name"], given["market"], given["ingredients"], ("May contain: nuts",),
        given["durability"], None, given["maker"], NetWords(), MADE,
    )  # fmt: skip


def with_panel() -> LabelSheet:
    """A label with two rows of a table of our own, in two columns."""
    rows = (
        PanelLine("Fat", ("10 g", "8.5 g")),
        PanelLine("of which saturates", ("2 g", "1.7 g"), is_inside=True),
    )
    table = PanelTable(("per 100 g", "per slice of 85 g"), rows, ("Cut into 14.",))
    return replace(label(), panel=table)


def facts_box(columns: int = 1) -> FactsBox:
    """A US nutrition box with one column or with two."""
    heads = ("",) if columns == 1 else ("Per serving", "Per container")
    return FactsBox(
        servings="15 servings per container",
        serving_size="1/15 cake (75 g)",
        columns=tuple(FactsColumn(head, "230") for head in heads),
        rows=tuple(
            FactsRow(key, name, level, (amount,) * columns, (percent,) * columns)
            for key, name, level, amount, percent in _ROWS
        ),
    )


def us_label(columns: int = 1) -> LabelSheet:
    """A US label with its box."""
    return replace(
        label(market="us", ingredients="egg, sugar"),
        panel=facts_box(columns),
        net=NetWords(("NET WT", "42.1 OZ", "(2 LB 10.1 OZ)", "(1194 g)"), 6.35),
    )
