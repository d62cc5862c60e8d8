"""What every answer must look like, whatever was asked."""

import json
from collections.abc import Iterator
from datetime import datetime
from typing import Any

SUFFIXES = (
    "_g", "_ml", "_cm", "_mm", "_cm2", "_c", "_min", "_s", "_kj", "_kcal", "_mg", "_pct", "_ppm",
)  # fmt: skip
INTERVAL = {"low", "best", "high"}


def values(of: Any, key: str = "") -> Iterator[tuple[str, Any]]:
    """Each value with the key it stands under; those of a list under the list's key."""
    if isinstance(of, dict):
        yield key, of
        for name, value in of.items():
            yield from values(value, name)
    elif isinstance(of, list):
        for value in of:
            yield from values(value, key)
    else:
        yield key, of


def misfits(result: Any) -> list[str]:
    """Values that are not what their key's suffix says."""
    return [f"{key} = {value!r}" for key, value in values(result) if not _fits(key, value)]


def _fits(key: str, value: Any) -> bool:
    if isinstance(value, dict):
        return not value.keys() >= INTERVAL or _is_ordered(value)
    if not key.endswith(SUFFIXES):
        return True
    return value is None or (isinstance(value, int | float) and not isinstance(value, bool))


def _is_ordered(interval: dict[str, Any]) -> bool:
    low, best, high = interval["low"], interval["best"], interval["high"]
    known = [v for v in (low, best, high) if v is not None]
    return known == sorted(known)


def only_object(stdout: str) -> dict[str, Any]:
    """The one JSON object that stdout is; NaN and Infinity are not JSON."""

    def refuse(word: str) -> None:
        raise ValueError(f"{word} is no JSON number")

    value = json.loads(stdout, parse_constant=refuse)
    if not isinstance(value, dict):
        raise TypeError(f"stdout holds {type(value).__name__}, not one object")
    return value


def local_time(text: str) -> datetime:
    """A time of an answer, which must carry its offset."""
    time = datetime.fromisoformat(text)
    if time.tzinfo is None:
        raise ValueError(f"{text} has no offset")
    return time
