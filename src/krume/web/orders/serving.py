"""A sheet on its way to the browser: its kind, and a policy for its own style alone."""

import re
from html import unescape

from krume.usecases import SheetBytes

_META = re.compile(
    rb'<meta http-equiv="Content-Security-Policy" content="([^"<>\r\n]{1,600})">', re.IGNORECASE
)
_HEAD = 4096
_OUTSIDE = "frame-ancestors 'none'"
_NOTHING = f"default-src 'none'; base-uri 'none'; form-action 'none'; {_OUTSIDE}"
_PDF = f"default-src 'none'; object-src 'self'; base-uri 'none'; form-action 'none'; {_OUTSIDE}"


def sheet_headers(sheet: SheetBytes) -> dict[str, str]:
    """Headers of a sheet; a page that somebody changed since gets no style at all."""
    return {"Content-Type": sheet.media, "Content-Security-Policy": _policy(sheet)}


def _policy(sheet: SheetBytes) -> str:
    """The policy that the page itself states, which names its style by its hash."""
    if sheet.media == "application/pdf":
        return _PDF
    found = _META.search(sheet.data[:_HEAD]) if sheet.media.startswith("text/html") else None
    if found is None or not sheet.is_as_written:
        return _NOTHING
    stated = unescape(found[1].decode("ascii", errors="ignore"))
    return f"{stated.rstrip('; ')}; {_OUTSIDE}"
