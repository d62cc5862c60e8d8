"""The cost of everything in the demo studio, against sums worked out apart from the program."""

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from krume.store import Book, add_texts
from krume.usecases import Answer, Asked, CostResult, CostWish, cost_of
from tests.cost import studio

COVERS = ("prices", "result", "said", "sold")

Write = Callable[[str], str]


def cost(name: str, asked: Asked, *answers: str, **wish: str) -> Answer[CostResult]:
    given = Asked(book=asked.book, answers=answers, on=asked.on)
    return cost_of(name, CostWish(**wish), given)


def amount(value: Decimal | None) -> Fraction:
    assert value is not None
    return Fraction(value)


def codes(answer: Answer[CostResult]) -> set[str]:
    return {notice.code for notice in answer.notices}


@pytest.fixture
def own(tmp_path: Path, demo: Asked) -> Callable[[dict[str, str]], Asked]:
    """The demo book with some of its files changed."""

    def makes(changed: dict[str, str]) -> Asked:
        assert demo.book is not None
        texts = {
            str(path.relative_to(demo.book)): path.read_bytes()
            for path in demo.book.rglob("*")
            if path.is_file()
        }
        book = Book(tmp_path / "own")
        add_texts(book, texts | {name: text.encode() for name, text in changed.items()})
        return Asked(book=book.path)

    return makes


@pytest.mark.parametrize("name", studio.TORTES)
def test_every_head_of_a_torte_and_an_order_is_the_sum_worked_out_by_hand(
    name: str, demo: Asked
) -> None:
    answer = cost(name, demo)
    assert answer.exit_code == 0
    for head, wanted in studio.heads(name).items():
        assert amount(getattr(answer.result, head)) == wanted, head
    found = {each.name: amount(each.cost) for each in answer.result.components}
    assert found == studio.components(name)


@pytest.mark.parametrize("name", studio.GRAMS)
def test_a_formula_alone_costs_its_whole_batch(name: str, demo: Asked) -> None:
    answer = cost(name, demo)
    assert answer.exit_code == 0
    assert amount(answer.result.material) == studio.cents(studio.batch(name))
    assert (answer.result.labour is None) == (name[0] in "CS")


def test_the_hazel_torte_at_its_agreed_price(demo: Asked) -> None:
    result = cost("T1", demo, price="96").result
    printed = {
        "material": "6.76", "labour": "52.80", "energy": "0.61", "packaging": "2.46",
        "direct": "62.63", "fixed_share": "25.83", "full": "88.46", "price": "96",
        "price_for_margin": "126.37", "contribution": "33.37", "per_slice": "6.86",
        "left_a_month": "180.88", "per_hour": "27.43",
    }  # fmt: skip
    assert {key: getattr(result, key) for key in printed} == {
        key: Decimal(value) for key, value in printed.items()
    }
    assert (result.markup.price, round(result.markup.margin_pct or 0, 1)) == (
        *(Decimal("115.00"), Decimal("23.1")),
    )
    assert round(result.margin_pct or 0, 1) == Decimal("7.9")
    assert (result.break_even, result.break_even_unpaid) == (19, 8)
    assert result.text == (
        "At 96.00 a torte leaves 33.37 after its direct cost; break-even: 19 tortes a month. "
        "If your own work is nothing: 8 tortes; this pays you nothing."
    )


def test_each_head_of_the_hazel_torte_is_the_printed_one(demo: Asked) -> None:
    found = {each.name: str(each.cost) for each in cost("T1", demo).result.components}
    assert found == {"F1": "3.28", "S1": "0.13", "C1": "1.70", "C5": "1.65"}


def test_the_order_brings_its_own_price_and_its_guests(demo: Asked) -> None:
    result = cost("101", demo).result
    assert (result.price, result.price_basis) == (Decimal("96.00"), "agreed")
    assert result.per_slice == Decimal("6.86")
    assert cost("101", demo, price="100").result.price_basis == "given"


def test_what_is_cut_away_and_what_is_bought_beyond_is_said(demo: Asked) -> None:
    said = {n.where: n.text for n in cost("T1", demo).notices}
    assert said["F1"].startswith("97.1 g of Orl hazel sponge are cut away; they are paid: 0.66 ")
    (eggs,) = [n.text for n in cost("T1", demo).notices if n.code == "eggs-left"]
    assert "3 whites (100.5 g)" in eggs
    assert "eggs-left" not in codes(cost("TART", demo))
    assert said["C1"].startswith("22.8 g of Vanilla custard cream are made and not used: 0.09 ")


def test_of_an_order_a_cream_is_made_once_for_all(demo: Asked) -> None:
    result = cost("102", demo).result
    cream = next(each for each in result.components if each.name == "C2")
    assert cream.used_g == pytest.approx(1519.0, abs=0.05)
    assert cream.over_g == pytest.approx(187.0, abs=0.05)
    assert [(item.name, item.count) for item in result.items] == [("T2", 2), ("T3", 1), ("TART", 1)]


def test_without_a_price_all_is_at_the_price_for_the_margin(demo: Asked) -> None:
    answer = cost("T1", demo)
    assert (answer.result.price, answer.result.price_basis) == (Decimal("126.37"), "margin")
    assert "price-of-margin" in codes(answer)
    assert cost("T1", demo, margin="0").result.price_for_margin == Decimal("88.46")


@pytest.mark.parametrize(("price", "exists"), [("62.62", False), ("62.63", False), ("62.64", True)])
def test_a_price_that_leaves_nothing_has_no_break_even(
    price: str, exists: bool, demo: Asked
) -> None:
    answer = cost("T1", demo, price=price)
    assert answer.exit_code == 0
    assert (answer.result.break_even is not None) == exists
    assert ("no-break-even" in codes(answer)) != exists
    assert answer.result.break_even_unpaid == 12


def test_a_break_even_beyond_what_is_made_is_said(demo: Asked) -> None:
    assert "break-even-high" in codes(cost("T1", demo, price="80"))
    assert "break-even-high" not in codes(cost("T1", demo, price="96"))


@pytest.mark.parametrize(
    ("wish", "where"),
    [
        ({"price": "-3"}, "--price"),
        ({"price": "0"}, "--price"),
        ({"price": "much"}, "--price"),
        ({"margin": "100"}, "--margin"),
        ({"margin": "-1"}, "--margin"),
        ({"margin": "x"}, "--margin"),
        ({"slices": "0"}, "--slices"),
        ({"slices": "a few"}, "--slices"),
        ({"slices": "10001"}, "--slices"),
    ],
)
def test_a_wish_that_cannot_be_read_is_asked(wish: dict[str, str], where: str, demo: Asked) -> None:
    answer = cost("T1", demo, **wish)
    assert (answer.exit_code, [p.where for p in answer.problems]) == (3, [where])
    assert answer.result.full == Decimal("88.46")
    good = {"--price": "96", "--margin": "30 %", "--slices": "14"}[where]
    assert cost("T1", demo, f"{where}={good}", **wish).exit_code == 0


def test_a_missing_price_is_asked_by_name_and_never_0(
    own: Callable[[dict[str, str]], Asked],
) -> None:
    asked = own({"prices.csv": "item,price,per\nwhole milk,1.20,kg\nwater,0,kg\n"})
    answer = cost("C1", asked)
    assert answer.exit_code == 3
    assert answer.result.material is None
    assert answer.result.missing == (
        *("eggs, EU M", "caster sugar", "maize starch", "butter", "fine salt"),
        *("powdered gelatine", "whipping cream"),
    )
    assert {p.code for p in answer.problems} == {"price-missing"}
    assert {p.where for p in answer.problems} == {"prices.csv after line 3"}
    milk = answer.result.components[0].lines[0]
    assert (milk.cost, milk.status) == (Decimal("0.48"), "declared")


def test_the_answer_to_a_missing_price_is_a_line_of_the_list(
    own: Callable[[dict[str, str]], Asked],
) -> None:
    asked = own({"prices.csv": "item,price,per\ndark chocolate,14,kg\nbutter,9.20,kg\n"})
    assert cost("C3", asked).exit_code == 3
    answered = cost("C3", asked, "prices.csv after line 3=whipping cream,5.60,kg")
    assert (answered.exit_code, answered.result.material) == (0, Decimal("3.71"))


def test_without_a_book_everything_that_is_wanted_is_asked(write: Write, bare: Asked) -> None:
    path = write(
        "Plain sponge\nTin: round 20 x 7 cm\n\n100 g white rice flour\n120 g water\n\nBake.\n"
    )
    answer = cost(path, bare)
    assert answer.exit_code == 3
    places = [problem.where for problem in answer.problems]
    assert places.count("prices.csv after line 1") == 5
    assert sum(place.startswith("studio.toml [cost] ") for place in places) == 7
    free = next(o for p in answer.problems for o in p.options if "Water" in o.label)
    assert free.line == "water,0.00,kg,assumed"


def test_every_question_of_an_empty_book_can_be_answered_at_once(write: Write, bare: Asked) -> None:
    path = write("Plain sponge\nTin: round 20 x 7 cm\n\n100 g white rice flour\n\nBake.\n")
    after = "prices.csv after line 1="
    answer = cost(
        path, bare,
        f"{after}white rice flour,3.20,kg,declared", f"{after}box and board,2.40,each,declared",
        f"{after}label,0.06,each,declared", f"{after}electricity,0.34,kWh,declared",
        "studio.toml [cost] fixed_a_month=620", "studio.toml [cost] tortes_a_month=24",
        "studio.toml [cost] own_work_h=2.2", "studio.toml [cost] own_work_rate=24",
        "studio.toml [cost] energy_kwh=1.8", "studio.toml [cost] boxes=1",
        "studio.toml [cost] labels=1",
    )  # fmt: skip
    assert (answer.exit_code, answer.result.full) == (0, Decimal("82.02"))


def test_a_price_list_beside_a_text_serves_where_the_book_has_none(
    write: Write, bare: Asked, tmp_path: Path
) -> None:
    path = write("Syrup\n\n100 g caster sugar\n100 g water\n")
    (tmp_path / "prices.csv").write_text("item,price,per\ncaster sugar,1.40,kg\nwater,0,kg\n")
    answer = cost(path, bare)
    assert (answer.exit_code, answer.result.material) == (0, Decimal("0.14"))
    assert answer.result.direct is None


def test_milk_is_paid_as_whole_milk_and_it_is_said(demo: Asked) -> None:
    said = [n.text for n in cost("F6", demo).notices if n.code == "price-of-other-name"]
    assert said == ["milk is paid as whole milk, 1.20 per kg."]


def test_two_currencies_are_never_added_up(own: Callable[[dict[str, str]], Asked]) -> None:
    prices = "item,price,per\ndark chocolate,€14,kg\nbutter,9.20,kg\nwhipping cream,5.60,kg\n"
    euros = own({"prices.csv": prices})
    assert cost("C3", euros).result.currency == "EUR"
    mixed = cost("C3", euros, "prices.csv after line 4=salt,£1,kg")
    assert "currency-mixed" in {p.code for p in mixed.problems}
    assert mixed.result.material is None
    foreign = cost("C3", euros, price="£9")
    assert [p.code for p in foreign.problems] == ["currency-differs"]
    assert foreign.result.price is None


def test_a_currency_of_the_price_alone_is_taken_and_said(demo: Asked) -> None:
    answer = cost("T1", demo, price="96 EUR")
    assert (answer.result.currency, answer.exit_code) == ("EUR", 0)
    assert "currency-taken" in codes(answer)


def test_old_prices_are_named_once_they_are_used(own: Callable[[dict[str, str]], Asked]) -> None:
    head = "item,price,per,date\nbutter,9.20,kg,2026-06-01\nmillet flour,3.60,kg,2026-06-01\n"
    asked = own({"prices.csv": f"{head}dark chocolate,14,kg,\nwhipping cream,5.60,kg,2027-06-01\n"})
    (old,) = [n.text for n in cost("C3", asked).notices if n.code == "price-old"]
    assert old.startswith("Older than 180 days: butter (2026-06-01).")


def test_an_open_line_of_a_formula_leaves_the_material_unknown(write: Write, demo: Asked) -> None:
    text = (
        "Sponge\nTin: round 20 x 7 cm\n\n100 g white rice flour\n{}\n120 g caster sugar\n\nBake.\n"
    )
    for line in ("3 brown eggs, size 9", "-30 g butter", "a lump of butter", "potato flour 40 g"):
        answer = cost(write(text.format(line)), demo)
        assert answer.result.material is None, line
        assert answer.result.labour == Decimal("52.80")
        assert "price-missing" not in {p.code for p in answer.problems}, line


def test_a_line_without_a_mass_leaves_the_material_unknown_and_is_named(
    write: Write, demo: Asked
) -> None:
    answer = cost(write("Syrup\n\n100 g caster sugar\nsome milk\n"), demo)
    assert answer.result.material is None
    assert "line-not-weighed" in codes(answer)


def test_eggs_in_grams_are_paid_as_eggs_of_the_size_that_is_bought(
    write: Write, demo: Asked
) -> None:
    answer = cost(write("Custard\n\n102 g eggs\n35 g egg yolks\n"), demo)
    assert answer.result.material == Decimal("0.96")
    assert [n.code for n in answer.notices].count("egg-by-grams") == 2


def test_a_torte_that_cannot_stand_has_no_material(demo: Asked, write: Write) -> None:
    text = "Tall\nRing: 22 x 1 cm\n\n2 layers of F4, 12 mm, trimmed to 21 cm\n"
    answer = cost(write(text), demo)
    assert answer.exit_code == 4
    assert (answer.result.material, answer.result.full) == (None, None)


def test_a_plan_that_is_not_read_whole_has_no_material(demo: Asked, write: Write) -> None:
    plan = (
        "Torte\n\n3 layers of F1, 14 mm, trimmed to 19.5 cm\n2 x 10 mm C1 between the layers\n{}\n"
    )
    assert cost(write(plan.format("")), demo).result.material == Decimal("4.98")
    for line in ("plenty of C5 around", "4 mm C9 around and on top", "some C5"):
        answer = cost(write(plan.format(line)), demo)
        assert answer.exit_code == 3
        assert answer.result.material is None, line


def test_an_order_with_a_name_nobody_knows_has_no_heads(write: Write, demo: Asked) -> None:
    head = "Order 7\nCustomer: A\nDate: 2027-06-12\nHand-over: 14:00\n\n"
    answer = cost(write(f"{head}1 T1\n2 Nothing\n"), demo)
    assert [p.code for p in answer.problems] == ["text-missing"]
    assert (answer.result.material, answer.result.labour) == (None, None)
    empty = cost(write(head), demo)
    assert [p.code for p in empty.problems] == ["empty"]
    assert (empty.result.material, empty.result.labour) == (None, None)


def test_two_of_a_torte_cost_twice_the_direct_and_fixed_of_one(write: Write, demo: Asked) -> None:
    head = "Order 7\nCustomer: A\nDate: 2027-06-12\nHand-over: 14:00\n\n"
    one, two = (cost(write(f"{head}{n} T1\n"), demo).result for n in (1, 2))
    assert amount(two.labour) == 2 * amount(one.labour)
    assert abs(amount(two.full) - 2 * amount(one.full)) <= Fraction(5, 100)
    assert (one.slices[-1].count, two.slices[-1].count) == (14, 28)
    assert one.break_even == two.break_even


def test_local_law_is_always_said_and_no_advice_is_given(demo: Asked) -> None:
    for name in ("F1", "C1", "T1", "101"):
        laws = [n.text for n in cost(name, demo).notices if n.code == "local-law"]
        assert laws == ["Tax and whether home baking may be sold: local law."]


def test_the_status_of_a_cost_is_that_of_its_weakest_figure(
    own: Callable[[dict[str, str]], Asked], demo: Asked
) -> None:
    assert cost("T1", demo).result.status == "invented"
    assert cost("C1", demo).result.status == "unknown"
    plans = "fixed_a_month = 1\ntortes_a_month = 1\nown_work_h = 1\nown_work_rate = 1\n"
    studio_text = f"[cost]\n{plans}energy_kwh = 0\nboxes = 0\nlabels = 0\nstatus = 'measured'\n"
    walnut = "item,price,per,status\nground walnuts,17,kg,declared\n"
    nut = "Sponge\nTin: round 20 x 7 cm\n\n100 g ground walnuts\n\nBake.\n"
    changed = {"studio.toml": studio_text, "prices.csv": walnut, "formulas/W.txt": nut}
    answer = cost("W", own(changed))
    assert (answer.exit_code, answer.result.status) == (0, "declared")
    assert answer.result.full == Decimal("3.70")  # 1.70 walnuts, 1.00 labour, 1.00 fixed
