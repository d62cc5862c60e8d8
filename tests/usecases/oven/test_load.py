"""A load as a row of the book: what is written is read back, older rows too."""

from krume.usecases.oven.load import HEAD, Load, cells_of, load_of

FULL = Load(
    "one", 0, "F1", "round 20 x 7 cm", "", None, 170.0, 182.0, 27.0, 36.2, 47.0, 88.5,
    "2027-06-10T08:30:00.000+00:00", 3.0, 4.0, 6.0, "said", 2, "170 C", 25.0, 32.9, 42.0, "why",
)  # fmt: skip


def test_what_is_kept_is_read_back() -> None:
    assert load_of(dict(zip(HEAD, cells_of(FULL), strict=True))) == FULL
    bare = Load("two", 0, "", "", "", None)
    assert load_of(dict(zip(HEAD, cells_of(bare), strict=True))) == bare


def test_a_row_of_fourteen_columns_is_one_tin_in_its_own_oven() -> None:
    row = dict(zip(HEAD[:14], cells_of(FULL), strict=False))
    found = load_of(row)
    assert HEAD[:2] == ("id", "formula")
    assert (found.tins, found.oven, found.why, found.alone) == (1, "", "", None)
    assert not found.is_moved
    assert found.check_min == 27


def test_a_load_is_moved_where_its_ends_are_not_those_alone() -> None:
    assert FULL.is_moved
    assert FULL.alone is not None
    assert FULL.alone.low == 25
    row = dict(zip(HEAD, cells_of(FULL), strict=True)) | {"tins": "some", "oven_c": "warm"}
    assert (load_of(row).tins, load_of(row).oven_c) == (1, None)
