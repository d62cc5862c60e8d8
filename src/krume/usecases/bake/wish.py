"""What is wished of a bake."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class BakeWish:
    """What is wished of the bake; None takes the formula's own tin and oven.

    `lines` asks for what a slip of each line does to it, `doubt` for what makes the doubt,
    `cooling` for the minutes after the oven; `beside` is a second tin; what stands round the tin
    is said by the words of krume.bake's Around.
    """

    tin: str | None = None
    oven: str | None = None
    fan: bool = False
    altitude_m: float = 0.0
    oven_name: str | None = None
    lines: bool = False
    jacket: str = "none"
    under: str = "rack"
    rack: str = "middle"
    cold_start_c: float | None = None
    door_min: tuple[float, ...] = ()
    beside: str | None = None
    doubt: bool = False
    cooling: bool = False
