"""`krume fill`: litres, grams and cartons, and one JSON object that fits its schema."""

from tests.cli.conftest import Run


def test_what_a_ring_wants_is_said(run: Run) -> None:
    said = run("fill", "C2", "--ring", "24 x 6 cm", "--disc", "2 x 22 cm x 12 mm", "--waste", "4")
    assert said.code == 0
    for words in ("1.8 l of cream, 1297.5 g", "4 of 200 ml; 138 ml left", "by the ratio rule"):
        assert words in " ".join(said.out.split())


def test_the_answer_fits_its_schema_when_it_can_and_when_it_cannot(run: Run) -> None:
    assert run("fill", "C2", "--ring", "24 x 6 cm", "--json").json["result"]["cartons"]
    said = run("fill", "C2", "--ring", "20 x 2 cm", "--disc", "2 x 19 cm x 12 mm", "--json")
    assert said.code == 4
    assert said.json["result"]["cream_ml"] is None
