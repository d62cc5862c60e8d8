"""One quick sum, declared once for the command, the form and the page."""

from collections.abc import Callable
from dataclasses import dataclass

from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given


@dataclass(frozen=True, slots=True)
class Sum:
    """A quick sum: its inputs and outputs, its function, its sources, and an example."""

    name: str
    meaning: str
    inputs: tuple[Input, ...]
    outputs: tuple[Output, ...]
    compute: Callable[[Given], Values]
    sources: tuple[str, ...]
    example: tuple[tuple[str, str], ...]
    note: str = ""
