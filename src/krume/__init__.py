"""krume: the sums of a gluten-free cake maker's whole job, from a written formula to a sheet."""

from importlib import import_module
from types import ModuleType

__version__ = "0.1.0"


def __getattr__(name: str) -> ModuleType:
    """A folder of krume, imported when it is first asked for (`krume.design`)."""
    folder = f"{__name__}.{name}"
    try:
        return import_module(folder)
    except ModuleNotFoundError as error:
        if error.name != folder:
            raise
        message = f"module {__name__!r} has no attribute {name!r}"
        raise AttributeError(message) from None
