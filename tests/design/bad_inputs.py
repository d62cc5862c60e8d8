"""Inputs that are odd, wrong or double, each with what it must get; one test loops over them.

`gets` is `ask` (a question, nothing taken), `error` (a question without an accepted value), `note`
(accepted, and said what was assumed) or `accept` (neither a question nor an error). `code` is the
code of the question or notice, `words` what its text must hold.
"""

from typing import NamedTuple

EGGS = "Eggs: EU sizes"


class Bad(NamedTuple):
    """One odd input: its number in the list, the text, and what it must get."""

    row: int
    text: str
    gets: str
    code: str = ""
    words: tuple[str, ...] = ()


def cake(line: str, *more: str) -> str:
    """A small cake around one line."""
    return "\n".join(("Sponge", EGGS, "", line, "130 g caster sugar", *more))


ROWS = (
    Bad(
        1,
        cake("1 1/2 cups white rice flour"),
        "ask",
        "volume-mass",
        ("range", "weigh it", "140 g each"),
    ),
    Bad(1, cake("1 1/2 cups white rice flour"), "ask+note", "measure", ("140 g",)),
    Bad(2, cake("½ tsp salt"), "note", "measure", ("3 g",)),
    Bad(2, cake("1⁄2 tsp salt"), "note", "measure", ("3 g",)),
    Bad(2, cake("1½ tsp salt"), "note", "measure", ("9 g",)),
    Bad(2, cake("1 ½ tsp salt"), "note", "measure", ("9 g",)),
    Bad(3, cake("2-3 g lemon zest"), "note", "range-middle", ("2.5", "2–3")),
    Bad(3, cake("2–3 g lemon zest"), "note", "range-middle", ("2.5", "2–3")),
    Bad(4, cake("25-25 g butter"), "ask", "range-equal-ends", ("equal ends",)),
    Bad(4, cake("3-2 g salt"), "ask", "range-backwards", ("range runs backwards",)),
    Bad(
        5,
        cake("a pinch of xanthan", "70 g white rice flour"),
        "ask",
        "trade-measure",
        ("0.2", "0.4", "0.29", "0.57", "matters"),
    ),
    Bad(6, cake("a pinch of salt"), "note", "measure", ("0.3 g",)),
    Bad(7, cake("1 stick butter"), "note", "measure", ("113", "US")),
    Bad(8, cake("1,5 kg butter"), "accept"),
    Bad(8, cake("1,500 g butter"), "accept"),
    Bad(8, cake("1,500 g butter", "0,25 g xanthan gum"), "ask", "decimal-comma", ("1500", "1.5")),
    Bad(9, cake("0,25g xanthan"), "accept"),
    Bad(
        10,
        cake("85 g butter", "", "Bake at 315 F (165 C), no fan."),
        "ask",
        "oven-temp-conflict",
        ("7.8 °C apart", "157.2"),
    ),
    Bad(
        11,
        "Sponge\nOven: 350F/180C\n\n85 g butter",
        "note",
        "oven-rounded",
        ("176.7", "3.3", "ordinary rounding"),
    ),
    Bad(12, cake("85 g butter", "", "bake at 180"), "ask", "oven-unit", ("unit",)),
    Bad(12, cake("85 g butter", "", "bake at 350"), "ask", "oven-unit", ("unit",)),
    Bad(
        13,
        cake("85 g butter", "", "Bake at gas 4."),
        "ask",
        "oven-word",
        ("180 °C", "common practice", "170", "190"),
    ),
    Bad(
        13,
        cake("85 g butter", "", "Bake in a moderate oven."),
        "ask",
        "oven-word",
        ("180 °C", "common practice"),
    ),
    Bad(14, "Sponge\n\n6 eggs\n130 g sugar", "ask", "egg-size-missing", ("Which size",)),
    Bad(
        15,
        "Sponge\n\n5 eggs (250 g)\n130 g sugar",
        "ask",
        "egg-mass-basis",
        ("50 g each", "shelled", "EU S"),
    ),
    Bad(
        15,
        "Sponge\n\n5 medium eggs\n130 g sugar",
        "ask",
        "egg-size-region",
        ("51 g", "44 g", "14 %"),
    ),
    Bad(16, "Sponge\nEggs: EU M\n\n1 egg, plus 1 yolk\n130 g sugar", "accept"),
    Bad(
        17,
        cake("1 g salt", "2 g salt"),
        "ask",
        "line-twice",
        ("two additions", "3 g", "typed twice"),
    ),
    Bad(
        18,
        cake(
            "20 g butter",
            "",
            "Beat the yolks with 55 g of the sugar.",
            "Whisk the whites, add 80 g sugar.",
        ),
        "ask",
        "split-sum",
        ("135 ≠ 130",),
    ),
    Bad(
        19,
        cake("40 g fonio flour"),
        "ask",
        "ingredient-unknown",
        ("unknown", "grain flour", "starch", "nut", "seed"),
    ),
    Bad(
        19,
        cake("40 g fonio flour"),
        "ask+note",
        "ingredient-unknown",
        ("unknown to the table", "composition"),
    ),
    Bad(20, cake("50 g potato flour"), "ask", "which-ingredient", ("starch", "differently")),
    Bad(21, cake("50 g rice flour"), "ask", "which-ingredient", ("hite", "rown", "sweet")),
    Bad(22, cake("50 g corn flour"), "ask", "which-ingredient", ("tarch",)),
    Bad(
        23,
        "Oat cake\n\n85 g oats\n130 g sugar\n\nMix.\nThis cake is gluten free.",
        "ask",
        "claim-gluten-oats",
        ("evidence", "828/2014"),
    ),
    Bad(
        24,
        "Flour blend\n\n40 % white rice flour\n37 % potato starch\n20 % teff flour",
        "ask",
        "percent-sum",
        ("97 %", "3 %", "missing"),
    ),
    Bad(
        25,
        "Flour blend\n\n40 % white rice flour\n40 % potato starch\n24 % teff flour",
        "ask",
        "percent-sum",
        ("104 %", "4 %", "too much"),
    ),
    Bad(
        26,
        "Sponge\nTin: 8 in round\n\n85 g butter",
        "note",
        "tin-depth-assumed",
        ("2 in", "area is exact"),
    ),
    Bad(
        26,
        "Sponge\n\n85 g butter\n\nPour into an 8 inch round pan.",
        "note",
        "tin-depth-assumed",
        ("2 in",),
    ),
    Bad(27, "Sponge\nTin: 8in pan\n\n85 g butter", "ask", "tin-shape-missing", ("324", "413")),
    Bad(28, "Sponge\nTin: 20 x 6\n\n85 g butter", "ask", "", ()),
    Bad(29, cake("-30 g sugar"), "error", "negative-amount", ("negative",)),
    Bad(
        30,
        "Flourless\nEggs: EU M\n\n4 eggs\n120 g sugar\n200 g ground walnuts",
        "note",
        "flourless",
        ("per 100 g flour", "per egg"),
    ),
    Bad(30, cake("0 g white rice flour"), "note", "amount-zero", ()),
    Bad(31, cake("100000 g butter"), "ask", "amount-heavy", ("heavier than any bowl", "100 kg")),
    Bad(31, cake("1e9 g butter"), "ask", "amount-heavy", ("heavier than any bowl",)),
    Bad(
        32,
        cake("99999999999999999999999999 g butter"),
        "error",
        "number-too-large",
        ("more than this reader takes",),
    ),
    Bad(33, cake("NaN g butter"), "error", "not-a-number", ("not a number",)),
    Bad(33, cake("inf g butter"), "error", "not-a-number", ("not a number",)),
    Bad(34, cake("85 g 🥜 flour"), "ask", "which-ingredient-nut", ("Which nut",)),
    Bad(34, cake("85 g 📷 butter"), "accept"),
    Bad(35, cake("\u202b85 g butter\u202c"), "accept"),
    Bad(35, cake("٨٥ g butter"), "accept"),
    Bad(36, cake("<b>85 g</b> buckwheat&nbsp;flour<script>"), "accept"),
    Bad(37, '=HYPERLINK("x")\n\n85 g butter', "accept"),
    Bad(38, "../../etc/passwd\n\n85 g butter", "accept"),
    Bad(38, "C:\\cakes\\sponge\n\n85 g butter", "accept"),
    Bad(38, "CON\n\n85 g butter", "accept"),
    Bad(
        39,
        cake("10 g ѕugar"),
        "ask",
        "lookalike",
        ("looks like sugar, is spelled with another letter",),
    ),
    Bad(40, "Sponge\n\nbuckwheat flour\t85\tg\nIngredient\tAmount\tUnit\nbutter\t40\tg", "accept"),
    Bad(42, "", "ask", "no-ingredient-line", ("No ingredient line found", "85 g buckwheat flour")),
    Bad(42, "  \n \n", "ask", "no-ingredient-line", ("No ingredient line found",)),
    Bad(42, "My grandmother's sponge", "ask", "no-ingredient-line", ("No ingredient line found",)),
    Bad(44, cake("buckwheat flour 85g"), "accept"),
    Bad(44, cake("85g of buckwheat flour"), "accept"),
    Bad(44, cake("buckwheat flour: 85 g"), "accept"),
    Bad(44, cake("85 grams buckwheat flour"), "accept"),
    Bad(44, cake("3 oz (85 g) buckwheat flour"), "accept"),
    Bad(44, cake("3 oz (95 g) buckwheat flour"), "ask", "two-amounts", ("10.5 % apart",)),
    Bad(
        45,
        "Four of a weight\n\n2 eggs (weigh the eggs, then as much sugar, butter and flour)",
        "accept",
    ),
    Bad(
        46,
        cake("85 g butter", "", "Bake until done."),
        "note",
        "minutes-open",
        ("no interval", "check rule"),
    ),
    Bad(
        46,
        cake("85 g butter", "", "Bake at 170 C, 20 min or so."),
        "note",
        "minutes-open",
        ("no interval",),
    ),
    Bad(47, cake("85 g butter", "", "Ready by 10:30 PM."), "ask", "time-which", ("which instant",)),
    Bad(47, cake("85 g butter", "", "Ready by 24:00."), "ask", "time-which", ("which instant",)),
    Bad(48, cake("85 g butter", "", "Use by 31/02/27."), "ask", "date-not-a-date", ("not a date",)),
    Bad(
        48,
        cake("85 g butter", "", "Use by 03/04/27."),
        "ask",
        "date-two-meanings",
        ("day or the month first",),
    ),
    Bad(49, "Sponge\nOven: 180 then 160 after 10 min\n\n85 g butter", "accept"),
    Bad(
        50,
        cake("40 g ground almonds", "", "Mix and bake at 170 C.", "nut free!!"),
        "ask",
        "claim-nut",
        ("contradicts line 4",),
    ),
)
