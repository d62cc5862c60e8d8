"""Which weighing matters, on the page of a formula: shown when it is asked for."""

from pathlib import Path

from starlette.testclient import TestClient

from krume.usecases import Asked, check_formula
from krume.web.formulas.weighing import weigh_table


def test_the_table_is_only_drawn_when_it_is_asked_for(client: TestClient) -> None:
    bare = client.get("/formulas/F3").text
    assert "Which weighing matters" not in bare
    assert 'href="/formulas/F3?lines=1#weighing"' in bare
    asked = client.get("/formulas/F3", params={"lines": "1"}).text
    assert "Which weighing matters</h3>" in asked
    table = asked[asked.index("Which weighing matters</h3>") :]
    assert table.index("xanthan gum") < table.index("white rice flour")


def test_each_line_stands_once_where_it_moves_a_figure_or_among_the_still_ones(
    demo_book: Path,
) -> None:
    check = check_formula("F3", Asked(book=demo_book), lines=True).result
    table = weigh_table(check)
    assert table is not None
    assert check.lines is not None
    assert len(table.rows) + len(table.still) == len(check.lines)
    marks = {row.name: row.mark for row in table.rows if row.mark}
    assert marks == {"xanthan gum": "twice", "caster sugar": "twice", "eggs": "weigh them"}
    assert weigh_table(check_formula("F3", Asked(book=demo_book)).result) is None


def test_what_is_less_than_a_digit_is_never_nothing(demo_book: Path) -> None:
    for name in ("F1", "F2", "F3", "F6"):
        table = weigh_table(check_formula(name, Asked(book=demo_book), lines=True).result)
        assert table is not None
        assert all(row.does != "0.00" for row in table.rows)


def test_the_page_leads_to_slip_blend_and_variation(client: TestClient) -> None:
    text = client.get("/formulas/F2").text
    for job in ("slip", "blend", "vary"):
        assert f'href="/{job}/F2"' in text
        assert client.get(f"/{job}/F2").status_code == 200
