"""One tree of errors. Each class owns its exit code, its HTTP status and a fixed code."""

from typing import ClassVar


class KrumeError(Exception):
    """Root of what krume itself raises; the message says what to do next."""

    code: ClassVar[str] = "krume"
    exit_code: ClassVar[int] = 1
    http_status: ClassVar[int] = 500

    def __init__(
        self, message: str, *, field: str = "", got: str = "", want: str = "", where: str = ""
    ) -> None:
        super().__init__(message)
        self.message = message
        self.field = field
        self.got = got
        self.want = want
        self.where = where


class InputError(KrumeError):
    """Something typed cannot be used as it stands."""

    code = "input"
    exit_code = 3
    http_status = 422


class OutOfRangeError(InputError):
    """A value lies outside the range a sum or a model is valid for."""

    code = "out-of-range"


class NotFoundError(KrumeError):
    """A named thing is not there."""

    code = "not-found"
    exit_code = 3
    http_status = 404


class ConflictError(KrumeError):
    """A record changed since it was read."""

    code = "conflict"
    exit_code = 5
    http_status = 409


class DataError(KrumeError):
    """A packed table breaks its own rules: file, row, column, want and got are named."""

    code = "data"
    exit_code = 1


class StoreError(KrumeError):
    """The book refused: damage, no space, or another program's book."""

    code = "store"
    exit_code = 5
    http_status = 503
