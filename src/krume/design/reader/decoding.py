"""Bytes as text: UTF-8 with or without a mark, UTF-16, Windows-1252; which one is said."""

import codecs

from krume.base import Notice, Problem, Read

_MARKS = (
    (codecs.BOM_UTF8, "utf-8-sig", "UTF-8"),
    (codecs.BOM_UTF32_LE, "utf-32", "UTF-32"),
    (codecs.BOM_UTF16_LE, "utf-16", "UTF-16"),
    (codecs.BOM_UTF16_BE, "utf-16", "UTF-16"),
)
_CONTROLS = bytes(sorted(frozenset(range(32)) - {9, 10, 12, 13, 27}))
_MOST_CONTROLS = 0.02


def decode_text(data: bytes) -> Read[str]:
    """Text of a file's bytes; a notice says which encoding was taken, a problem that it is none.

    >>> decode_text("½ tsp".encode("cp1252")).value
    '½ tsp'
    """
    for mark, encoding, name in _MARKS:
        if data.startswith(mark):
            text = _decoded(data, encoding)
            return _taken(text, name, "by its mark") if text is not None else _binary()
    wide = _unmarked_utf16(data)
    if wide is not None:
        return _taken(wide, "UTF-16", "by its zero bytes")
    if _is_binary(data):
        return _binary()
    text = _decoded(data, "utf-8")
    if text is not None:
        return Read(text)
    text = _decoded(data, "cp1252")
    return _taken(text, "Windows-1252", "it is not UTF-8") if text is not None else _binary()


def _decoded(data: bytes, encoding: str) -> str | None:
    try:
        return data.decode(encoding)
    except UnicodeDecodeError:
        return None


def _unmarked_utf16(data: bytes) -> str | None:
    """UTF-16 without a mark: plain letters have a zero in every second byte."""
    if len(data) < 4 or len(data) % 2:
        return None
    sample = data[:2000]
    for odd, encoding in ((1, "utf-16-le"), (0, "utf-16-be")):
        zeros, others = sample[odd::2].count(0), sample[1 - odd :: 2].count(0)
        if zeros > len(sample) // 3 and others == 0:
            return _decoded(data, encoding)
    return None


def _is_binary(data: bytes) -> bool:
    sample = data[:8000]
    controls = len(sample) - len(sample.translate(None, _CONTROLS))
    return 0 in sample or controls > _MOST_CONTROLS * len(sample)


def _taken(text: str, name: str, why: str) -> Read[str]:
    return Read(text, (), (Notice("encoding", f"read as {name}: {why}"),))


def _binary() -> Read[str]:
    ask = (
        "This is no text: its bytes fit no encoding read here. "
        "Save it as plain text (UTF-8) and read that."
    )
    return Read("", (Problem("not-text", "file", "binary data", ask),))
