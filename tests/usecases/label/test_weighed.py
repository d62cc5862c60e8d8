"""The finished mass by a bake that was weighed, where the Baked: line only plans."""

from pathlib import Path

import pytest

from krume.store import place_all
from krume.usecases import Asked, LabelOf, LabelWish, label_of, load_demo
from krume.usecases.bench.bench import bench_of, say_at_bench
from krume.usecases.bench.result import BenchSaid
from krume.usecases.bench.trials import end_as_trial
from krume.usecases.book.book import demo_files

EU = LabelWish(market="eu")
HEAD = "trial,formula,batter_g,baked_g,status\n"


@pytest.fixture
def demo_book(tmp_path: Path) -> Asked:
    """A demo book in a database, without trials of F4."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


@pytest.fixture
def plain(tmp_path: Path) -> Asked:
    """A demo book of plain texts, whose tables a test may write."""
    asked = Asked(book=tmp_path / "plain")
    place_all(asked.book or Path(), demo_files())
    return asked


def weigh(asked: Asked, name: str, baked: str, *, leave_out: int = 0) -> None:
    """Weigh every row of a formula as planned, but for the last ones, and bake it."""
    rows = bench_of(name, asked).plan.rows
    kinds = {"tare": "tare"}
    said = tuple(
        BenchSaid(f"{name}-{row.position}", kinds.get(row.kind, "in"), row.position)
        for row in rows[: len(rows) - leave_out]
    )
    say_at_bench(name, "w", said, asked)
    end_as_trial(name, "w", asked, key="t", typed={"baked": baked, "word": "good"})


def labelled(name: str, asked: Asked) -> tuple[LabelOf, dict[str, str]]:
    """Label of a formula, and its notices by code."""
    answer = label_of(name, EU, asked)
    return answer.result.labels[0], {each.code: each.text for each in answer.notices}


def carbohydrate(label: LabelOf) -> float:
    """Carbohydrate per 100 g, of a label whose figure is settled."""
    assert label.nutrition is not None
    assert label.nutrition.carbohydrate_g is not None
    return label.nutrition.carbohydrate_g


def test_a_bake_weighed_at_the_bench_goes_before_the_plan(demo_book: Asked) -> None:
    plan, said = labelled("F4", demo_book)
    assert plan.finished_status == "assumed"
    assert "planned-mass" in said
    weigh(demo_book, "F4", "440")
    weighed, told = labelled("F4", demo_book)
    assert weighed.finished_status == "measured"
    assert weighed.finished_g == pytest.approx(440, abs=1)
    assert "weighed 440 g baked" in told["weighed-mass"]
    assert "planned-mass" not in told
    assert plan.finished_g is not None
    assert weighed.finished_g is not None
    drier = plan.finished_g / weighed.finished_g
    assert carbohydrate(weighed) == pytest.approx(carbohydrate(plan) * drier)


@pytest.mark.parametrize(("baked", "leave_out"), [("440", 2), ("900", 0), ("20", 0)])
def test_a_bake_that_was_not_weighed_whole_leaves_the_plan(
    demo_book: Asked, baked: str, leave_out: int
) -> None:
    weigh(demo_book, "F4", baked, leave_out=leave_out)
    label, said = labelled("F4", demo_book)
    assert label.finished_g == 465
    assert "weighed-mass" not in said


@pytest.mark.parametrize(
    ("row", "grams"),
    [
        ("t9,F4,260,230,measured", True), ("t9,F4,260,230,invented", False),
        ("t9,F1,260,230,measured", False), ("t9,F4,,230,measured", False),
        ("t9,F4,260,much,measured", False), ("t9,F4,0,0,measured", False),
        ("t9,F4,260,261,measured", False),
    ],
)  # fmt: skip
def test_a_row_of_the_table_counts_by_its_share_where_both_masses_were_measured(
    plain: Asked, row: str, *, grams: bool
) -> None:
    assert plain.book is not None
    (plain.book / "trials.csv").write_text(f"{HEAD}{row}\n", encoding="utf-8")
    label, said = labelled("F4", plain)
    assert ("weighed-mass" in said) == grams
    assert label.finished_g is not None
    mixed = sum(item.mass_g or 0.0 for item in label.items)
    wanted = mixed * 230 / 260 if grams else 465
    assert label.finished_g == pytest.approx(wanted, rel=1e-3)


def test_a_baked_line_that_was_measured_itself_stands(plain: Asked) -> None:
    assert plain.book is not None
    place = plain.book / "formulas" / "F4.txt"
    text = place.read_text(encoding="utf-8").replace("465 g (plan)", "470 g (measured)")
    place.write_text(text, encoding="utf-8")
    (plain.book / "trials.csv").write_text(f"{HEAD}t9,F4,260,230,measured\n", encoding="utf-8")
    label, said = labelled("F4", plain)
    assert (label.finished_g, label.finished_status) == (470, "measured")
    assert "weighed-mass" not in said


def test_a_weighed_bake_opens_the_panel_of_a_formula_without_a_baked_line(plain: Asked) -> None:
    assert plain.book is not None
    place = plain.book / "formulas" / "F4.txt"
    lines = place.read_text(encoding="utf-8").splitlines()
    place.write_text("\n".join(x for x in lines if not x.startswith("Baked:")), encoding="utf-8")
    closed, _ = labelled("F4", plain)
    assert closed.nutrition is None
    (plain.book / "trials.csv").write_text(f"{HEAD}t9,F4,260,230,measured\n", encoding="utf-8")
    opened, said = labelled("F4", plain)
    assert opened.nutrition is not None
    assert opened.finished_status == "measured"
    assert "weighed-mass" in said


def test_a_torte_stands_as_its_plan_has_it(plain: Asked) -> None:
    assert plain.book is not None
    before, _ = labelled("T1", plain)
    (plain.book / "trials.csv").write_text(f"{HEAD}t9,F1,460,400,measured\n", encoding="utf-8")
    after, _ = labelled("T1", plain)
    assert after.finished_g == before.finished_g
