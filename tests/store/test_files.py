"""Files are read whole and written whole, whatever happens in between."""

import errno
import os
from pathlib import Path

import pytest

from krume.base import InputError, NotFoundError, StoreError
from krume.store import FILE_LIMIT, is_file, is_folder, place_all, read_bytes, write_whole


def listing(folder: Path) -> dict[str, bytes]:
    return {
        p.relative_to(folder).as_posix(): p.read_bytes() for p in folder.rglob("*") if p.is_file()
    }


def test_a_file_is_read_as_it_is(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_bytes(b"\xff\x00 85 g\r\n")
    assert read_bytes(tmp_path / "a.txt") == b"\xff\x00 85 g\r\n"


@pytest.mark.parametrize("name", ["missing.txt", "no-folder/missing.txt"])
def test_a_missing_file_is_not_found_and_named(tmp_path: Path, name: str) -> None:
    with pytest.raises(NotFoundError, match=r"There is no file .*missing\.txt"):
        read_bytes(tmp_path / name)


def test_a_folder_is_no_text(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"is a folder\. Name the text inside it\."):
        read_bytes(tmp_path)


def test_a_file_below_a_file_is_not_found(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_text("x", encoding="utf-8")
    with pytest.raises(NotFoundError):
        read_bytes(tmp_path / "a.txt" / "b.txt")


def test_a_name_the_system_cannot_hold_is_refused_in_one_sentence(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="could not be read"):
        read_bytes(tmp_path / ("n" * 5000))
    with pytest.raises(InputError, match="it is no name of a file"):
        read_bytes(Path("a\0b"))


def test_permission_denied_is_told_as_such(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(errno.EACCES, "denied")

    monkeypatch.setattr(Path, "open", refuse)
    with pytest.raises(InputError, match="may not be read by this user"):
        read_bytes(tmp_path / "a.txt")


def test_a_file_at_the_limit_is_read_and_one_byte_more_is_not(tmp_path: Path) -> None:
    file = tmp_path / "a.txt"
    file.write_bytes(b"x" * FILE_LIMIT)
    assert len(read_bytes(file)) == FILE_LIMIT
    file.write_bytes(b"x" * (FILE_LIMIT + 1))
    with pytest.raises(InputError, match="larger than 8 MB"):
        read_bytes(file)


def test_asking_whether_a_strange_name_is_a_file_never_raises(tmp_path: Path) -> None:
    for name in ("a\0b", "n" * 5000):
        assert not is_file(tmp_path / name)
        assert not is_folder(tmp_path / name)


def test_a_new_file_is_written_with_the_folders_it_needs(tmp_path: Path) -> None:
    write_whole(tmp_path / "deep" / "new.txt", b"85 g")
    assert listing(tmp_path) == {"deep/new.txt": b"85 g"}


def test_an_existing_file_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_bytes(b"hers")
    with pytest.raises(StoreError, match="is there already and was left as it is"):
        write_whole(tmp_path / "a.txt", b"ours")
    assert listing(tmp_path) == {"a.txt": b"hers"}


def test_an_existing_file_is_replaced_when_that_is_wanted(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_bytes(b"old")
    write_whole(tmp_path / "a.txt", b"new", replace=True)
    assert listing(tmp_path) == {"a.txt": b"new"}


def test_a_file_system_without_links_still_refuses_to_overwrite(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise OSError(errno.EPERM, "no links here")

    monkeypatch.setattr(os, "link", refuse)
    write_whole(tmp_path / "a.txt", b"first")
    with pytest.raises(StoreError, match="is there already"):
        write_whole(tmp_path / "a.txt", b"second")
    assert listing(tmp_path) == {"a.txt": b"first"}


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (errno.ENOSPC, "Make room on the disk"),
        (errno.EACCES, "Choose a folder you may write to"),
        (errno.EIO, "Choose another place"),
    ],
)
def test_a_refusal_in_the_middle_of_writing_leaves_nothing_half(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int, words: str
) -> None:
    (tmp_path / "a.txt").write_bytes(b"old")

    def refuse(_: int) -> None:
        raise OSError(number, "refused")

    monkeypatch.setattr(os, "fsync", refuse)
    with pytest.raises(StoreError, match=words):
        write_whole(tmp_path / "a.txt", b"new", replace=True)
    assert listing(tmp_path) == {"a.txt": b"old"}


def test_a_set_of_files_appears_in_one_move(tmp_path: Path) -> None:
    out = tmp_path / "new" / "out"
    placed = place_all(out, {"a.txt": b"1", "deep/b.txt": b"2"})
    assert placed == (out / "a.txt", out / "deep" / "b.txt")
    assert listing(tmp_path / "new") == {"out/a.txt": b"1", "out/deep/b.txt": b"2"}


def test_a_set_joins_what_is_there_and_leaves_other_files_alone(tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "hers.txt").write_bytes(b"hers")
    (tmp_path / "out" / "a.txt").write_bytes(b"old")
    place_all(tmp_path / "out", {"a.txt": b"1", "b.txt": b"2"})
    assert listing(tmp_path) == {"out/hers.txt": b"hers", "out/a.txt": b"1", "out/b.txt": b"2"}


@pytest.mark.parametrize("broken_move", [1, 2, 3])
@pytest.mark.parametrize("error", [OSError(errno.EIO, "refused"), KeyboardInterrupt()])
def test_when_one_move_fails_the_whole_set_is_taken_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, broken_move: int, error: BaseException
) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / "b.txt").write_bytes(b"old")
    before = listing(tmp_path)
    move, moves = Path.replace, 0

    def breaking(self: Path, target: Path) -> Path:
        nonlocal moves
        moves += 1
        if moves == broken_move:
            raise error
        return move(self, target)

    monkeypatch.setattr(Path, "replace", breaking)
    expected = KeyboardInterrupt if isinstance(error, KeyboardInterrupt) else StoreError
    with pytest.raises(expected):
        place_all(out, {"a.txt": b"1", "b.txt": b"2", "c.txt": b"3"})
    assert listing(tmp_path) == before
    assert [p.name for p in tmp_path.iterdir()] == ["out"]


def test_a_full_disk_while_staging_leaves_no_trace(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(_: int) -> None:
        raise OSError(errno.ENOSPC, "full")

    monkeypatch.setattr(os, "fsync", refuse)
    with pytest.raises(StoreError, match="Make room on the disk"):
        place_all(tmp_path / "out", {"a.txt": b"1"})
    assert list(tmp_path.iterdir()) == []


def test_a_file_where_the_folder_should_be_is_kept(tmp_path: Path) -> None:
    (tmp_path / "out").write_bytes(b"hers")
    with pytest.raises(StoreError, match="Something else has that name"):
        place_all(tmp_path / "out", {"a.txt": b"1"})
    assert listing(tmp_path) == {"out": b"hers"}
