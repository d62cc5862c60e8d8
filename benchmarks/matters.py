"""Which weighing matters, beside the card it stands on and the bake it is about."""

from typing import TYPE_CHECKING

from benchmarks.measure import Row, call_s
from benchmarks.paper import card_pdf_s
from benchmarks.texts import many_formulas

if TYPE_CHECKING:
    from krume.design import Formula

# A card may take so many milliseconds longer for its marks.
MOST_OF_A_CARD_MS = 10.0


def rows() -> list[Row]:
    """The lines to weigh twice, the ranking, and every line of a bake."""
    twice_s, pdf_s, balance_s = twice_of_a_card_s(times=20), card_pdf_s(times=20), balance_s_of()
    most = MOST_OF_A_CARD_MS / (pdf_s * 1e3)
    pdf = "the card as PDF, warm"
    one = "one balance"
    return [
        Row("weigh twice, for a card", twice_s * 1e3, pdf_s * 1e3, "ms", pdf, most),
        Row("weigh twice, for a check", twice_s * 1e3, balance_s * 1e3, "ms", one),
        Row("shares of all lines", ranking_s(times=5) * 1e3, balance_s * 1e3, "ms", one),
        Row("every line of a bake", lines_s(times=3), bake_s(times=5), "s", "one bake"),
    ]


def formulas(count: int) -> "list[Formula]":
    """So many formulas, no two of them alike."""
    from krume.design import read

    return [read(text, eggs_region="eu").value for text in many_formulas(count)]


def twice_of_a_card_s(*, times: int) -> float:
    """Median time to name the lines of a formula that is weighed out already."""
    from krume.design import matters, weigh_out

    made = [(each, weigh_out(each)) for each in formulas(times + 1)]
    return call_s(lambda number: matters(*made[number]), times=times)


def balance_s_of(times: int = 20) -> float:
    """Median time of one balance."""
    from krume.design import balance

    made = formulas(times + 1)
    return call_s(lambda number: balance(made[number]), times=times)


def ranking_s(*, times: int) -> float:
    """Median time of the shares of all lines."""
    from krume.design import matters, ranking, weigh_out

    made = [(each, matters(each, weigh_out(each))) for each in formulas(times + 1)]
    return call_s(lambda number: ranking(*made[number], seed=number), times=times)


def lines_s(*, times: int) -> float:
    """Median time of every line of F1's bake."""
    from krume.bake import Oven, lines_bake
    from krume.design import doubts, weigh_out

    made = formulas(1)[0]
    held, tin = doubts(made, weigh_out(made)), made.tin
    if tin is None:
        raise LookupError("the demo's first formula has no tin")
    return call_s(
        lambda number: lines_bake(
            made,
            held,
            tin,
            Oven(170),
            family="separated",
            density_g_ml=0.48,
            density_measured=False,
            seed=number,
        ),
        times=times,
    )


def bake_s(*, times: int) -> float:
    """Median time of one bake of the same formula."""
    from krume.bake import Oven, batter_of, simulate

    made = formulas(1)[0]
    batter = batter_of(made, family="separated", density_g_ml=0.48, density_measured=False).value
    if batter is None or made.tin is None:
        raise LookupError("the demo's first formula has no batter or no tin")
    tin = made.tin
    return call_s(lambda _: simulate(batter, tin, Oven(170)), times=times)
