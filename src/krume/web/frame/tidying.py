"""The interpreter's own tidying, so that it does not stop a page: what stays is looked at once."""

import contextlib
import gc
from collections.abc import Iterator

_WHOLE = 2
"""The generation in which everything is looked at."""


@contextlib.contextmanager
def tidying() -> Iterator[None]:
    """While the app runs, what outlives a whole look is not looked at again.

    Tables and what is kept in mind are hundreds of thousands of things that live as long as the
    app does; going through them all again would stop a page for a tenth of a second.
    """
    gc.collect()
    gc.freeze()
    gc.callbacks.append(_set_aside)
    try:
        yield
    finally:
        gc.callbacks.remove(_set_aside)
        gc.unfreeze()


def _set_aside(phase: str, info: dict[str, int]) -> None:
    if phase == "stop" and info["generation"] == _WHOLE:
        gc.freeze()
