"""A book's database goes out as plain texts and tables, and comes in again equal."""

from pathlib import Path

from krume.store.contents import add_all, bytes_at, is_sheet, places
from krume.store.database import reading, writing
from tests.store.database_of import empty

FILES = {
    "studio.toml": b'name = "Somewhere"\n',
    "formulas/F1.txt": b"\xef\xbb\xbfOrl hazel sponge\r\n\r\n85 g flour\r\n",
    "orders/101.txt": b"Order 101\n\xbd",
    "lots.csv": b'lot,ingredient,text\r\nL-001,rice,"a, b"\r\nL-002,teff,,one more\r\n',
}


def _held(path: Path) -> dict[str, bytes | None]:
    with reading(path) as book:
        return {place: bytes_at(book, place) for place in places(book)}


def test_what_goes_out_comes_in_again_equal(tmp_path: Path) -> None:
    first, second = empty(tmp_path / "a"), empty(tmp_path / "b")
    with writing(first) as book:
        add_all(book, FILES)
    out = {place: data for place, data in _held(first).items() if data is not None}
    assert out["formulas/F1.txt"] == FILES["formulas/F1.txt"]
    with writing(second) as book:
        add_all(book, out)
    assert _held(second) == out


def test_a_cell_beyond_the_head_is_not_lost(tmp_path: Path) -> None:
    path = empty(tmp_path)
    with writing(path) as book:
        add_all(book, FILES)
    assert _held(path)["lots.csv"] == (
        b'lot,ingredient,text,more_1\nL-001,rice,"a, b",\nL-002,teff,,one more\n'
    )


def test_what_is_there_and_differs_is_kept(tmp_path: Path) -> None:
    path = empty(tmp_path)
    with writing(path) as book:
        assert set(add_all(book, FILES).added) == set(FILES)
        mine = {**FILES, "orders/101.txt": b"Another order\n"}
        loaded = add_all(book, mine)
    assert (loaded.added, loaded.kept) == ((), ("orders/101.txt",))
    assert set(loaded.same) == set(FILES) - {"orders/101.txt"}


def test_a_table_is_a_csv_beside_the_folders() -> None:
    assert is_sheet("lots.csv")
    assert not is_sheet("suppliers/lots.csv")
