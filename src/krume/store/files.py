"""Files read whole and written whole: a file is the old one or the new one, never half of either.

Every write goes to a temporary file beside its target, is flushed to the disk and then renamed.
"""

import contextlib
import errno
import os
import secrets
import shutil
import tempfile
from collections.abc import Iterator, Mapping
from pathlib import Path

from krume.base import InputError, KrumeError, NotFoundError, StoreError
from krume.store.reads import note_file

FILE_LIMIT = 8 * 1024 * 1024
"""Bytes a text may have at most; a baker's whole note-book is a hundredth of it."""


def is_file(path: Path) -> bool:
    """Whether a file stands at a path; a path the system cannot even ask about has none."""
    note_file(path)
    try:
        return path.is_file()
    except (OSError, ValueError):
        return False


def is_folder(path: Path) -> bool:
    """Whether a folder stands at a path."""
    note_file(path)
    try:
        return path.is_dir()
    except (OSError, ValueError):
        return False


def read_bytes(path: Path) -> bytes:
    """Bytes of a file, or one sentence on why it cannot be read."""
    note_file(path)
    try:
        with path.open("rb") as file:
            data = file.read(FILE_LIMIT + 1)
    except (OSError, ValueError) as error:
        raise _unreadable(path, error) from error
    if len(data) > FILE_LIMIT:
        limit = f"{FILE_LIMIT // 1024 // 1024} MB"
        raise InputError(
            f"{path} is larger than {limit}, the most a text may have. Nothing was read; "
            "take out what is no formula and try again.",
            where=str(path),
            got=f"more than {limit}",
            want=f"at most {limit}",
        )
    return data


def _unreadable(path: Path, error: OSError | ValueError) -> KrumeError:
    number = error.errno if isinstance(error, OSError) else None
    if number in (errno.ENOENT, errno.ENOTDIR):
        return NotFoundError(f"There is no file {path}.", where=str(path), got=str(path))
    if number == errno.EISDIR:
        message = f"{path} is a folder. Name the text inside it."
    elif number in (errno.EACCES, errno.EPERM):
        message = f"{path} may not be read by this user. Change its permissions and try again."
    else:
        message = f"{path} could not be read ({_reason(error)})."
    return InputError(message, where=str(path), got=str(path), want="a text file")


def _reason(error: OSError | ValueError) -> str:
    if isinstance(error, OSError) and error.errno is not None:
        return os.strerror(error.errno).lower()
    return "it is no name of a file"


def write_whole(path: Path, data: bytes, *, replace: bool = False) -> None:
    """Write a file so that it is whole or not there; an existing one only with `replace`."""
    with refusals(path):
        path.parent.mkdir(parents=True, exist_ok=True)
        staged = _staged(path.parent, data)
        try:
            if replace:
                staged.replace(path)
            else:
                _place_new(staged, path)
            _flush_folder(path.parent)
        except FileExistsError as error:
            raise _exists(path) from error
        finally:
            staged.unlink(missing_ok=True)


def _place_new(staged: Path, path: Path) -> None:
    try:
        os.link(staged, path)
    except OSError as error:
        if error.errno not in (errno.EPERM, errno.EOPNOTSUPP, errno.ENOSYS):
            raise
        if os.path.lexists(path):
            raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(path)) from error
        staged.replace(path)


def _exists(path: Path) -> StoreError:
    return StoreError(
        f"{path} is there already and was left as it is. Name a file that does not exist yet, "
        "or ask for this one to be replaced.",
        where=str(path),
        got="an existing file",
        want="a new name",
    )


def _staged(folder: Path, data: bytes) -> Path:
    staged = folder / f".krume-{secrets.token_hex(6)}"
    try:
        handle = os.open(staged, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
    except BaseException:
        staged.unlink(missing_ok=True)
        raise
    return staged


def _flush_folder(folder: Path) -> None:
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def place_all(folder: Path, files: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Write files into a folder, all of them or none.

    They are staged beside the folder first. A new folder appears in one move; in an existing one
    each file is moved into place, and when one move fails the earlier ones are taken back.
    Whatever else is in the folder stays untouched.
    """
    with refusals(folder):
        folder.parent.mkdir(parents=True, exist_ok=True)
        stage = Path(tempfile.mkdtemp(prefix=".krume-", dir=folder.parent))
        try:
            _stage(stage / "new", files)
            if folder.exists():
                _move_each(stage, folder, tuple(files))
            else:
                (stage / "new").rename(folder)
            _flush_folder(folder.parent)
        finally:
            shutil.rmtree(stage, ignore_errors=True)
    return tuple(folder / name for name in files)


def _stage(stage: Path, files: Mapping[str, bytes]) -> None:
    stage.mkdir()
    for name, data in files.items():
        target = stage / name
        target.parent.mkdir(parents=True, exist_ok=True)
        _staged(target.parent, data).rename(target)


def _move_each(stage: Path, folder: Path, names: tuple[str, ...]) -> None:
    moved: list[str] = []
    try:
        for name in names:
            target, kept = folder / name, stage / "old" / name
            target.parent.mkdir(parents=True, exist_ok=True)
            kept.parent.mkdir(parents=True, exist_ok=True)
            if target.exists():
                shutil.copy2(target, kept)
            moved.append(name)
            (stage / "new" / name).replace(target)
    except BaseException:
        _take_back(stage, folder, moved)
        raise


def _take_back(stage: Path, folder: Path, moved: list[str]) -> None:
    for name in reversed(moved):
        kept, staged = stage / "old" / name, stage / "new" / name
        if kept.exists():
            kept.replace(folder / name)
        elif not staged.exists():
            (folder / name).unlink(missing_ok=True)


@contextlib.contextmanager
def refusals(path: Path, *, doing: str = "written") -> Iterator[None]:
    """Turn what the system refuses into one sentence; nothing was lost."""
    try:
        yield
    except (OSError, ValueError) as error:
        raise StoreError(
            f"{path} could not be {doing} ({_reason(error)}). {_way_out(error)} "
            "What was there before is unchanged.",
            where=str(path),
            got=_reason(error),
        ) from error


def _way_out(error: OSError | ValueError) -> str:
    number = error.errno if isinstance(error, OSError) else None
    if number in (errno.ENOSPC, errno.EDQUOT):
        return "Make room on the disk and try again."
    if number in (errno.EACCES, errno.EPERM, errno.EROFS):
        return "Choose a folder you may write to."
    if number in (errno.ENOTDIR, errno.EEXIST, errno.EISDIR):
        return "Something else has that name; choose another."
    return "Choose another place and try again."
