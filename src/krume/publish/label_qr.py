"""The code of a label: the lot, or an address of the person's own with the lot behind it."""

from dataclasses import dataclass
from urllib.parse import quote, urlsplit

from krume.base import InputError
from krume.properties import constants

_SCHEMES = ("http", "https")


@dataclass(frozen=True, slots=True)
class QrDrawing:
    """A code drawn with its clear edge: what it says, its modules a side, its size on paper."""

    says: str
    modules: int
    side_mm: float
    svg: str


def qr_words(code: str, address: str = "") -> str:
    """What the code says: the lot alone, or the person's address with the lot as its fragment.

    A browser shows the page of the address and sends the fragment nowhere.

    >>> qr_words("270610-1"), qr_words("270610-1", "https://cakes.example/orl")
    ('270610-1', 'https://cakes.example/orl#270610-1')
    """
    if not address:
        return code
    _checked(address)
    return f"{address}#{quote(code)}" if code else address


def _checked(address: str) -> None:
    most = int(constants("label_print.csv")["qr-address-most"])
    is_plain = address.isascii() and address.isprintable() and " " not in address
    parts = urlsplit(address) if is_plain and len(address) <= most else None
    if parts is None or parts.scheme not in _SCHEMES or not parts.netloc or parts.fragment:
        message = (
            f"'{address[:60]}' cannot stand in the code. Type an address that begins with "
            f"https://, without a space or #, up to {most} signs."
        )
        raise InputError(message, field="link", got=address[:60], want="https://…")


def qr_drawing(says: str) -> QrDrawing:
    """The code of some words, with the clear edge its standard asks for."""
    import segno

    limits = constants("label_print.csv")
    edge = int(limits["qr-quiet-modules"])
    rows = segno.make_qr(says, error="m").matrix
    side = len(rows) + 2 * edge
    return QrDrawing(says, side, side * limits["qr-module-mm"], _svg(rows, edge, side))


def _svg(rows: tuple[bytearray, ...], edge: int, side: int) -> str:
    """Dark modules as one path, each row by its runs, on a white ground."""
    runs = "".join(_runs(row, edge, number + edge) for number, row in enumerate(rows))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side} {side}" '
        f'width="{side}" height="{side}" shape-rendering="crispEdges">'
        f'<path fill="#fff" d="M0 0h{side}v{side}h-{side}z"/><path fill="#000" d="{runs}"/></svg>'
    )


def _runs(row: bytearray, left: int, top: int) -> str:
    found, start = [], None
    for place, module in enumerate((*row, 0)):
        if module and start is None:
            start = place
        elif not module and start is not None:
            found.append(f"M{start + left} {top}h{place - start}v1h-{place - start}z")
            start = None
    return "".join(found)
