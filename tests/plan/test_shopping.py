"""What to buy: sums, packs, stock, and the order of the list."""

from hypothesis import given
from hypothesis import strategies as st

from krume.plan import NeededLine, Pack, shopping

SUGAR = NeededLine("caster sugar", "sugar", 135.0, "F1", ("101",))


def test_lines_of_one_ingredient_are_added_up() -> None:
    more = NeededLine("sugar", "sugar", 40.0, "C1", ("101", "102"))
    (row,) = shopping([SUGAR, more], {}, {})
    assert (row.name, row.need_g, row.buy_g) == ("caster sugar", 175.0, 175.0)
    assert row.formulas == ("F1", "C1") and row.stops == ("101", "102")
    assert row.packs is None


def test_packs_are_whole_and_stock_is_taken_off() -> None:
    (row,) = shopping([SUGAR], {"caster sugar": Pack(100.0, "mill", 30.0)}, {})
    assert (row.packs, row.buy_g, row.where) == (2, 200.0, "mill")


def test_what_the_house_has_enough_of_is_not_on_the_list() -> None:
    assert shopping([SUGAR], {"caster sugar": Pack(stock_g=135.0)}, {}) == ()


def test_an_unknown_mass_stays_unknown_and_on_the_list() -> None:
    (row,) = shopping([SUGAR, NeededLine("sugar", "sugar", None, "C1")], {}, {})
    assert row.need_g is None and row.buy_g is None


def test_what_stops_most_orders_and_is_needed_soonest_comes_first() -> None:
    lines = [
        NeededLine("late", "a", 1.0, "C1", ("101",)),
        NeededLine("soon", "b", 1.0, "F1", ("101",)),
        NeededLine("both", "c", 1.0, "C1", ("101", "102")),
        NeededLine("mill", "d", 1.0, "C1", ("101",)),
    ]
    found = shopping(lines, {"mill": Pack(where="the mill")}, {"F1": 0, "C1": 1})
    assert [row.name for row in found] == ["mill", "both", "soon", "late"]


@given(st.floats(0.1, 1e5), st.floats(1.0, 1e4), st.floats(0.0, 1e5))
def test_bought_and_in_the_house_are_enough(need: float, pack: float, stock: float) -> None:
    line = NeededLine("x", "x", need, "F1")
    rows = shopping([line], {"x": Pack(pack, None, stock)}, {})
    bought = sum(row.buy_g or 0.0 for row in rows)
    assert bought + stock >= need * (1 - 1e-6)
    assert bought - pack < max(0.0, need - stock) + 1e-6
