"""Eggs over several formulas: counted out one by one, and what is left of them weighed."""

import json
from pathlib import Path
from random import Random
from typing import Any, NamedTuple

import jsonschema
import pytest

from tests.contract.conftest import Many, Said
from tests.contract.shape import misfits, only_object
from tests.contract.whole_steps import fewest_eggs

YOLK_G, WHITE_G = 17.5, 33.5
SEEDS = range(20)


class Wants(NamedTuple):
    """The eggs EU M that one batch takes: whole ones, yolks and whites."""

    whole: int = 0
    yolks: float = 0
    whites: float = 0


DEMO = {
    "F1": Wants(5), "F2": Wants(5), "F3": Wants(4), "F5": Wants(0, 4, 5), "F6": Wants(3),
    "F7": Wants(1), "C1": Wants(0, 5), "T1": Wants(5, 2.5), "TART": Wants(1),
}  # fmt: skip
TWELVE = (
    "Order 12\nCustomer: Orl Bay Cafe\nDate: Saturday 2027-06-12\nHand-over: 09:00, pick-up\n"
    "For: 140 people\n\n12 T1\n"
)
MERINGUE = "Meringue\nEggs: EU sizes\n\n4 egg whites, medium\n200 g caster sugar\n"
ORDERS = {"101": {"eu-m": 8}, "102": {"eu-m": 9, "eu-l": 4}, "twelve.txt": {"eu-m": 90}}
ASKED = {
    "minus": ["F1", "--have", "-3 EU M"],
    "not a number": ["F1", "--have", "nan EU M"],
    "too many": ["F1", "--have", "1e9 EU M"],
    "nothing said": ["F1", "--have", ""],
    "ducks": ["F1", "--have", "5 duck"],
    "minus two cakes": ["F1*-2"],
    "no such text": ["nosuch"],
    "no size": ["nosize.txt"],
    "empty": ["empty.txt"],
}


def _chosen(seed: int) -> dict[str, int]:
    chance = Random(seed)  # noqa: S311
    names = chance.sample(sorted(DEMO), chance.randint(1, 5))
    return {name: chance.randint(1, 4) for name in names}


def _wanted(chosen: dict[str, int]) -> Wants:
    rows = [(DEMO[name], times) for name, times in chosen.items()]
    parts = [sum(wants[part] * times for wants, times in rows) for part in range(3)]
    return Wants(int(parts[0]), parts[1], parts[2])


def _fewest(wants: Wants) -> int:
    return fewest_eggs(
        whole=wants.whole,
        yolk_g=wants.yolks * YOLK_G,
        white_g=wants.whites * WHITE_G,
        yolk_of_one_g=YOLK_G,
        white_of_one_g=WHITE_G,
    )


def _in_house(seed: int) -> int:
    return seed % 3 * 4


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder with the texts of this page."""
    folder = tmp_path_factory.mktemp("eggs")
    (folder / "twelve.txt").write_text(TWELVE, encoding="utf-8")
    (folder / "meringue.txt").write_text(MERINGUE, encoding="utf-8")
    (folder / "nosize.txt").write_text("No size\n\n60 g white rice flour\n5 eggs\n", "utf-8")
    (folder / "empty.txt").write_text("", encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def found(many: Many, book: Path, folder: Path) -> dict[str, Said]:
    """Every call of this page that is answered."""
    calls: dict[str, list[str]] = {name: [name] for name in ORDERS}
    for seed in SEEDS:
        batches = [f"{name}*{times}" for name, times in _chosen(seed).items()]
        house = ["--have", f"{_in_house(seed)} EU M"] if _in_house(seed) else []
        calls[str(seed)] = [*batches, *house]
    calls["meringue and custard"] = ["meringue.txt", "C1"]
    words = [["eggs", *call, "--json", "--book", str(book)] for call in calls.values()]
    return dict(zip(calls, many(words, cwd=folder), strict=True))


def _result(said: Said) -> dict[str, Any]:
    assert said.code == 0, said.stdout[:1500] + said.stderr
    result: dict[str, Any] = said.answer["result"]
    return result


def _bought(result: dict[str, Any]) -> dict[str, int]:
    return {row["size"]: row["count"] for row in result["buy"] if row["count"]}


@pytest.mark.parametrize("name", ORDERS)
def test_an_order_buys_its_worked_eggs(found: dict[str, Said], name: str) -> None:
    result = _result(found[name])
    assert _bought(result) == ORDERS[name]
    assert result["proven"] is True


@pytest.mark.parametrize("seed", SEEDS)
def test_no_egg_fewer_would_do(found: dict[str, Said], seed: int) -> None:
    result = _result(found[str(seed)])
    fewest = _fewest(_wanted(_chosen(seed)))
    (cracked,) = result["crack"]
    assert (cracked["size"], cracked["count"]) == ("eu-m", fewest)
    assert sum(_bought(result).values()) == max(0, fewest - _in_house(seed))


@pytest.mark.parametrize("seed", SEEDS)
def test_what_is_cracked_is_in_a_bowl_or_left_over(found: dict[str, Said], seed: int) -> None:
    wants, result = _wanted(_chosen(seed)), _result(found[str(seed)])
    parted = _fewest(wants) - wants.whole
    left = {row["part"]: row["count"] for row in result["left"]}
    assert left.get("yolk", 0) == pytest.approx(parted - wants.yolks)
    assert left.get("white", 0) == pytest.approx(parted - wants.whites)
    for row in result["left"]:
        of_one = {"yolk": YOLK_G, "white": WHITE_G}[row["part"]]
        assert row["mass_g"] == pytest.approx(row["count"] * of_one)
        assert row["left_g"] == pytest.approx(row["mass_g"] - row["taken_g"])


def test_yolks_and_whites_of_one_egg_serve_two_formulas(found: dict[str, Said]) -> None:
    result = _result(found["meringue and custard"])
    assert _bought(result) == {"eu-m": 5}
    assert {row["part"]: row["count"] for row in result["left"]} == {"white": 1}


def test_whites_of_twelve_tortes_feed_the_buttercream(found: dict[str, Said]) -> None:
    result = _result(found["twelve.txt"])
    (white,) = result["left"]
    assert (white["part"], white["mass_g"]) == ("white", pytest.approx(1005))
    assert (white["taken_g"], white["left_g"]) == pytest.approx((600, 405))
    (ordered,) = [taker for taker in result["takers"] if taker["is_ordered"]]
    assert (ordered["formula"], ordered["heat_c"]) == ("C5", 71)


@pytest.fixture(scope="module")
def schema(many: Many) -> Any:
    """The schema that the program prints for eggs."""
    (said,) = many([["schema", "eggs"]])
    return json.loads(said.stdout)


def test_every_answer_about_eggs_fits_its_schema(found: dict[str, Said], schema: Any) -> None:
    for said in found.values():
        answer = only_object(said.stdout)
        jsonschema.validate(answer, schema)
        assert misfits(answer["result"]) == []


def test_eggs_that_nobody_can_count_are_asked(
    many: Many, book: Path, folder: Path, schema: Any
) -> None:
    calls = [["eggs", *words, "--json", "--book", str(book)] for words in ASKED.values()]
    for name, said in zip(ASKED, many(calls, cwd=folder), strict=True):
        assert said.code == 3, (name, said.stdout[:800])
        answer = only_object(said.stdout)
        jsonschema.validate(answer, schema)
        assert answer["problems"], name


def test_eggs_that_are_not_there_are_refused_by_number(
    many: Many, book: Path, folder: Path
) -> None:
    words = ["eggs", "F1", "--shop", "none", "--have", "4 EU M", "--json", "--book", str(book)]
    (said,) = many([words], cwd=folder)
    assert said.code == 4
    assert "1 EU M more" in said.answer["problems"][0]["ask"]
