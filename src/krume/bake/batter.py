"""What goes into the oven, and the oven: plain frozen values, the model's only inputs."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Batter:
    """A batter as the oven meets it; the parts are mass fractions and sum to about 1.

    `sugar` is total sugars and part of `carbohydrate` (which is without fibre). `gas_ratio` is
    leavening gas over whipped-in gas, 0 for a foam alone. `core_c` is the core the formula
    states, None where it states none. `density_measured` narrows the doubt.
    """

    mass_g: float
    density_g_ml: float
    water: float
    protein: float
    fat: float
    carbohydrate: float
    fibre: float
    ash: float
    sugar: float
    gas_ratio: float = 0.0
    egg: bool = True
    gluten_free: bool = True
    core_c: float | None = None
    core_altitude_m: float = 0.0
    colour: str = "golden"
    temp_c: float = 21.0
    density_measured: bool = False

    @property
    def sugar_share(self) -> float:
        """Sugar over sugar and water: what decides water activity and boiling point."""
        return self.sugar / (self.sugar + self.water)

    @property
    def parts(self) -> tuple[float, float, float, float, float, float]:
        """Water, protein, fat, carbohydrate, fibre, ash, scaled to sum to 1."""
        six = (self.water, self.protein, self.fat, self.carbohydrate, self.fibre, self.ash)
        total = sum(six)
        return tuple(part / total for part in six)  # type: ignore[return-value]


JACKETS = ("none", "wrapped", "water")
UNDERS = ("rack", "tray", "insulated", "stone")
RACKS = ("low", "middle", "high")


@dataclass(frozen=True, slots=True)
class AirCourse:
    """Oven air over time: straight between the points, constant before the first, after the last.

    Where it is given it is the air as it was or will be: no door, no warming is added to it.
    """

    time_min: tuple[float, ...]
    temp_c: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Around:
    """What stands round the tin, and what the oven does meanwhile.

    `jacket`: none, wrapped (a wet strip or paper round the wall), water (the tin stands in water).
    `under`: rack, tray, insulated (a double tray), stone (as hot as the oven). `rack`: low, middle,
    high. `warming_from_c` is the air at the door where the oven is not hot yet; `door_min` are
    minutes at which the door is opened on the way; `course` is the air over time instead of both.
    """

    jacket: str = "none"
    under: str = "rack"
    rack: str = "middle"
    warming_from_c: float | None = None
    door_min: tuple[float, ...] = ()
    course: AirCourse | None = None


@dataclass(frozen=True, slots=True)
class Oven:
    """The oven as it is, not as its dial says; `heat` multiplies every surface coefficient.

    `ln_heat_sd` is the doubt about `heat`: 0.25 for an oven never calibrated.
    """

    temp_c: float
    fan: bool = False
    altitude_m: float = 0.0
    heat: float = 1.0
    ln_heat_sd: float = 0.25
    temp_half_width_c: float = 5.0
    around: Around = Around()
