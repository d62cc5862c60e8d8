"""What a quick sum is: its name, its typed inputs, what it answers, and where it comes from."""

from dataclasses import dataclass
from typing import Protocol, TypeAlias

Json: TypeAlias = "bool | int | float | str | list[Json] | dict[str, Json] | None"
Values: TypeAlias = dict[str, Json]

KINDS = ("number", "count", "numbers", "text", "texts", "choice", "yes-no", "quantity", "parts")


@dataclass(frozen=True, slots=True)
class Input:
    """One input of a sum.

    `unit` is that of a bare number. Kinds: `number`, `count` (whole), `numbers` (a list),
    `text`, `texts` (a list), `choice` (one of `choices`), `yes-no`, `quantity` (a number that
    keeps its own unit) and `parts` (a list of texts with a mark of their own).
    """

    name: str
    meaning: str
    unit: str = ""
    kind: str = "number"
    required: bool = True
    choices: tuple[str, ...] = ()
    may_be_unknown: bool = False
    difference: bool = False


@dataclass(frozen=True, slots=True)
class Output:
    """One value a sum answers with; its name carries its unit."""

    name: str
    meaning: str


class Declared(Protocol):
    """What the inputs of a sum are matched against."""

    @property
    def name(self) -> str:
        """Name of the sum."""

    @property
    def inputs(self) -> tuple[Input, ...]:
        """Its inputs."""

    @property
    def example(self) -> tuple[tuple[str, str], ...]:
        """Inputs that answer."""
