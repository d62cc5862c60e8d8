"""Tables that break their own rules stop at the first cell that does not fit, and say where."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import DataError
from krume.evidence import Row, column, data_version, load, optional, packed_files, packed_text
from krume.evidence.tables import read_table, source_rows

COLUMNS = (
    column("key", "key"),
    column("name"),
    optional("fat_g", "number"),
    column("status", "status"),
    column("source", "source"),
)
GOOD = "key,name,fat_g,status,source\nlard,Lard,100.0,published,usda-sr28\n"


def read(text: str) -> tuple[Row, ...]:
    return read_table(
        text, file="fats.csv", columns=COLUMNS, known_sources=frozenset({"usda-sr28"})
    )


def broken(text: str) -> DataError:
    with pytest.raises(DataError) as caught:
        read(text)
    return caught.value


def test_a_good_table_gives_typed_rows() -> None:
    (row,) = read(GOOD)
    assert (row.number, row.text("key"), row.number_of("fat_g")) == (2, "lard", 100.0)


BAD = [
    ("an unknown column", GOOD.replace("fat_g", "fat"), 1, "fat"),
    ("a missing column", "key,name,status,source\n", 1, "fat_g"),
    ("a column twice", "key,name,fat_g,fat_g,status,source\n", 1, "fat_g"),
    ("a word for a number", GOOD.replace("100.0", "much"), 2, "fat_g"),
    ("a comma for a point", GOOD.replace("100.0", '"99,5"'), 2, "fat_g"),
    ("an unknown status", GOOD.replace("published", "rumoured"), 2, "status"),
    ("an unknown source", GOOD.replace("usda-sr28", "a friend"), 2, "source"),
    ("a blank name", GOOD.replace("Lard", ""), 2, "name"),
    ("a key with a capital", GOOD.replace("lard,", "Lard,", 1), 2, "key"),
    ("a key twice", GOOD + "lard,Other,,published,usda-sr28\n", 3, "key"),
    ("a row too short", GOOD + "suet,Suet,94\n", 3, "key"),
    ("a row too long", GOOD + "suet,Suet,94,published,usda-sr28,more\n", 3, "key"),
    ("an empty file", "", 1, "key"),
]


@pytest.mark.parametrize(("what", "text", "row", "name"), BAD, ids=[b[0] for b in BAD])
def test_a_bad_table_names_file_row_and_column(what: str, text: str, row: int, name: str) -> None:
    error = broken(text)
    assert error.where == f"fats.csv, row {row}, column {name}", what
    assert error.where in error.message
    assert error.want


def test_a_duplicate_key_names_the_row_that_has_it() -> None:
    assert "row 2" in broken(GOOD + "lard,Other,,published,usda-sr28\n").want


def test_a_blank_figure_is_none_and_asking_for_it_as_a_number_fails() -> None:
    (row,) = read(GOOD.replace("100.0", ""))
    assert row.maybe("fat_g") is None
    with pytest.raises(DataError, match=r"fats\.csv, row 2, column fat_g"):
        row.number_of("fat_g")


@given(
    st.lists(
        st.tuples(
            st.text(st.characters(codec="utf-8", exclude_characters="\r\0"), min_size=1),
            st.floats(0, 1e6, allow_nan=False).map(lambda v: round(v, 3)),
        ),
        max_size=8,
    )
)
def test_what_is_written_is_read_back(cells: list[tuple[str, float]]) -> None:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["key", "name", "fat_g"])
    writer.writerows([f"k{i}", name, f"{fat:.3f}"] for i, (name, fat) in enumerate(cells))
    columns = (column("key", "key"), column("name"), optional("fat_g", "number"))
    rows = read_table(out.getvalue(), file="t.csv", columns=columns)
    assert [(r.text("name"), r.maybe("fat_g")) for r in rows] == cells


def test_every_packed_table_is_utf_8_with_plain_line_ends() -> None:
    for file in packed_files():
        assert "\r" not in packed_text(file), file
        assert packed_text(file).endswith("\n"), file


def test_the_data_version_is_short_and_stays() -> None:
    first = data_version()
    data_version.cache_clear()
    assert (len(first), data_version()) == (12, first)


def test_the_data_version_changes_with_any_cell(monkeypatch: pytest.MonkeyPatch) -> None:
    before = data_version()
    data_version.cache_clear()
    changed = {file: packed_text(file) for file in packed_files()}
    changed["portions.csv"] = changed["portions.csv"].replace("158", "159", 1)
    monkeypatch.setattr("krume.evidence.tables.packed_text", changed.__getitem__)
    assert data_version() != before
    monkeypatch.undo()
    data_version.cache_clear()


def test_a_packed_table_is_read_once() -> None:
    columns = (column("words"),)
    assert load("qualifiers.csv", columns, ("words",)) is load(
        "qualifiers.csv", columns, ("words",)
    )


def test_sources_are_rows_of_their_own_table() -> None:
    assert {"usda-sr28", "ciqual-2020", "mext-jp-2020", "usda-fdc-foundation"} <= {
        row.text("key") for row in source_rows()
    }
