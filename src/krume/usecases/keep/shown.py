"""What the page of a keeping shows: the answer, remembered, and where sources differ on it."""

from krume.keep import Difference, differences
from krume.store import book_at
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.remembering import Remembered, day_key
from krume.usecases.keep.keep import KeepResult, keep_of
from krume.usecases.keep.wished import KeepWish, keep_wished
from krume.usecases.sold.product import families_of, sold_of

_SHOWN: Remembered[Answer[KeepResult]] = Remembered(64)
_OF_SPONGE = ("separated", "genoise", "chiffon", "angel", "roulade")


def keep_shown(name: str, wish: KeepWish, asked: Asked) -> Answer[KeepResult]:
    """How long it keeps; nothing is predicted before something is asked."""
    book = book_at(asked.book)
    key = (day_key(book, asked), name, wish)
    if wish == KeepWish():
        return _SHOWN.of(book, key, lambda: keep_of(name, asked))
    return _SHOWN.of(book, key, lambda: keep_wished(name, wish, asked))


def differences_of(name: str, asked: Asked) -> tuple[Difference, ...]:
    """Subjects on which sources differ and that are in a thing."""
    sold = sold_of(name, asked).sold
    kinds = {kind or "" for each in sold for kind in families_of(each).values()}
    keys = " ".join(each.key or "" for one in sold for each in one.product.used)
    has = {
        "sponge": any(kind in _OF_SPONGE for kind in kinds),
        "custard": any(kind.startswith("custard") for kind in kinds),
        "gelatine": "gelatin" in keys,
    }
    return tuple(each for each in differences() if has[each.of])
