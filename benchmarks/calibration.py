"""The fit of still-oven convection and wet skin to the trade's ranges, and each range left out."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from benchmarks.coverage import Asked

if TYPE_CHECKING:
    from krume.bake.grid import Array

# Convection over its row's value, and wet skin [mm], where bakes are run; between them the fit
# looks at splines.
FILMS = (0.70, 0.85, 1.0, 1.15, 1.30, 1.50)
SKINS_MM = (0.0, 0.3, 0.6, 1.0, 1.4, 1.8)
LOOKED_AT = 161


@dataclass(frozen=True, slots=True)
class Fit:
    """Convection [W/m2K at 0.2 m] and wet skin [mm] that fit best, and their rms in ln minutes."""

    heat_static: float
    wet_skin_mm: float
    rms: float


@dataclass(frozen=True, slots=True)
class Surfaces:
    """Ln of minutes over the middle of the range, (cases, films, skins), looked at finely."""

    films: "Array"
    skins_mm: "Array"
    ln_off: "Array"


def surfaces(cases: "Sequence[tuple[Asked, float]]") -> Surfaces:
    """Bakes of all cases over both figures, each against the middle of its range [min]."""
    import numpy as np
    from scipy.interpolate import RectBivariateSpline

    films = np.linspace(FILMS[0], FILMS[-1], LOOKED_AT)
    skins = np.linspace(SKINS_MM[0], SKINS_MM[-1], LOOKED_AT)
    found = [
        RectBivariateSpline(FILMS, SKINS_MM, np.log(_minutes(asked) / middle), kx=2, ky=2)(
            films, skins
        )
        for asked, middle in cases
    ]
    return Surfaces(films, skins, np.stack(found))


def _minutes(asked: Asked) -> "Array":
    from dataclasses import fields, replace

    import numpy as np

    from krume.bake import Draws, nominal, simulate_many

    one = nominal(asked.batter, asked.oven)
    film, skin = np.meshgrid(FILMS, np.array(SKINS_MM) / 1000, indexing="ij")
    many = Draws(**{f.name: np.repeat(getattr(one, f.name), film.size) for f in fields(Draws)})
    draws = replace(many, film=film.ravel(), wet_skin=skin.ravel())
    minutes: Array = simulate_many(asked.batter, asked.tin, asked.oven, draws).minutes
    return minutes.reshape(film.shape)


def fit(made: Surfaces, used: Sequence[int]) -> Fit:
    """Least squares over the cases used."""
    import numpy as np

    from krume.bake import figures

    rms = np.sqrt((made.ln_off[list(used)] ** 2).mean(axis=0))
    film, skin = np.unravel_index(int(rms.argmin()), rms.shape)
    row = figures()["heat-static"].value
    return Fit(float(made.films[film] * row), float(made.skins_mm[skin]), float(rms.min()))


def left_out(made: Surfaces, used: Sequence[int]) -> dict[int, float]:
    """Each case's minutes over the middle of its range, less 1, by the fit to the others."""
    import numpy as np

    found = {}
    for case in used:
        others = [each for each in used if each != case]
        rms = (made.ln_off[others] ** 2).mean(axis=0)
        film, skin = np.unravel_index(int(rms.argmin()), rms.shape)
        found[case] = float(np.exp(made.ln_off[case, film, skin]) - 1)
    return found
