"""A folder's door that opens its heavy rooms only when somebody asks for what is in them."""

import sys
from collections.abc import Callable, Mapping
from importlib import import_module
from typing import Any


def on_first_use(door: str, homes: Mapping[str, str]) -> Callable[[str], Any]:
    """What a door writes as its `__getattr__`: each name is imported when it is first asked for.

    `homes` tells the module of each name, from the door downwards.

    >>> opened = on_first_use("krume.base", {"exact": "money"})
    >>> opened("exact")(0.1)
    Fraction(1, 10)
    >>> opened("inexact")
    Traceback (most recent call last):
    AttributeError: module 'krume.base' has no attribute 'inexact'
    """

    def opened(name: str) -> Any:
        if name not in homes:
            raise AttributeError(f"module {door!r} has no attribute {name!r}")
        found = getattr(import_module(f"{door}.{homes[name]}"), name)
        setattr(sys.modules[door], name, found)
        return found

    return opened
