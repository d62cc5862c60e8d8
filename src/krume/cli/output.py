"""Standard output and standard input, and what is said when they are not there."""

import json
import os
import sys

from krume.base import InputError, StoreError


class OutputError(StoreError):
    """Standard output cannot be written to."""

    code = "output"


def write_json(value: object) -> None:
    """Write one object to standard output as UTF-8, whatever the terminal's own encoding."""
    text = json.dumps(value, ensure_ascii=False, allow_nan=False, indent=1)
    write_stdout(text.encode("utf-8", errors="replace") + b"\n")


def write_text(text: str) -> None:
    """Write text to standard output; a sign the terminal cannot show becomes a question mark."""
    encoding = getattr(sys.stdout, "encoding", None) or "utf-8"
    write_stdout(text.encode(encoding, errors="replace"))


def write_stdout(data: bytes) -> None:
    """Write bytes to standard output and see them out; a reader that has left is no error."""
    if sys.stdout is None:
        raise OutputError("Standard output is closed, so the answer could not be shown.")
    try:
        sys.stdout.flush()
        sys.stdout.buffer.write(data)
        sys.stdout.buffer.flush()
    except BrokenPipeError:
        let_go_of_stdout()
    except OSError as error:
        let_go_of_stdout()
        reason = os.strerror(error.errno).lower() if error.errno else "it is closed"
        message = f"Standard output could not be written to ({reason}). Nothing else was lost."
        raise OutputError(message, got=reason) from error


def let_go_of_stdout() -> None:
    """Point standard output at nothing, so that the interpreter's last flush cannot fail."""
    quiet = os.open(os.devnull, os.O_WRONLY)
    try:
        os.dup2(quiet, sys.stdout.fileno())
    finally:
        os.close(quiet)


def typed_text(name: str) -> bytes | None:
    """Bytes of standard input when a text is called `-`; None for any other name."""
    from krume.store import FILE_LIMIT

    if name != "-":
        return None
    if sys.stdin is None:
        raise InputError("Standard input is closed; name a file in place of -.", where="-")
    try:
        data = sys.stdin.buffer.read(FILE_LIMIT + 1)
    except OSError as error:
        message = "Standard input could not be read; name a file in place of -."
        raise InputError(message, where="-") from error
    if len(data) > FILE_LIMIT:
        limit = f"{FILE_LIMIT // 1024 // 1024} MB"
        message = f"Standard input is longer than {limit}, the most a text may have."
        raise InputError(message, where="-", got=f"more than {limit}", want=f"at most {limit}")
    return data
