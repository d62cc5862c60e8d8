"""The name a sheet goes by, and that name as part of a file's name."""

import re
import unicodedata

from krume.usecases.asking.read import FormulaRead

_SLUG_LENGTH = 60


def slug(name: str) -> str:
    """A name as part of a file's name: small letters, digits and hyphens, nothing else.

    >>> slug("../../etc/passwd"), slug("Grüß Gott: CON"), slug("שלום")
    ('etc-passwd', 'gruss-gott-con', 'formula')
    """
    letters = unicodedata.normalize("NFKD", name.casefold()).encode("ascii", "ignore").decode()
    words = re.sub(r"[^a-z0-9]+", "-", letters).strip("-")
    return words[:_SLUG_LENGTH].strip("-") or "formula"


def short_name(read: FormulaRead) -> str:
    """The name a sheet of a formula goes by: the book's, else the one on its first line."""
    if read.source.kind is not None:
        return read.source.name
    return read.formula.name or read.source.name
