"""Where the pages of the bench are."""

from urllib.parse import quote

from starlette.responses import RedirectResponse, Response

_SEE_OTHER = 303


def address_of(name: str) -> str:
    """The bench of a formula.

    >>> address_of("Orl base")
    '/bench/Orl%20base'
    """
    return f"/bench/{quote(name, safe='')}"


def to(address: str) -> Response:
    """On to another page, after something was kept."""
    return RedirectResponse(address, status_code=_SEE_OTHER)
