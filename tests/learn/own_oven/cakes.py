"""Four cakes of the model's golden runs, as finished bakes of a made-up kitchen."""

from krume.bake import Batter
from krume.learn import FinishedBake, Prior
from krume.size import Tin, read_tin


def tin(text: str) -> Tin:
    found = read_tin(text).value
    assert found is not None
    return found


SPONGE = Batter(
    540, 0.48, 0.395, 0.084, 0.094, 0.399, 0.017, 0.011, 0.257, core_c=95.0, density_measured=True
)
BUTTER = Batter(
    700, 0.85, 0.22, 0.06, 0.26, 0.43, 0.02, 0.01, 0.25, core_c=96.0, density_measured=True
)
SHEET = Batter(
    430, 0.45, 0.45, 0.09, 0.07, 0.37, 0.01, 0.01, 0.27, core_c=95.0, density_measured=True
)
NUT = Batter(
    520, 0.50, 0.36, 0.10, 0.16, 0.34, 0.03, 0.01, 0.25, core_c=95.0, density_measured=True
)
CAKES = {
    "sponge": (SPONGE, tin("round 20 x 7 cm")),
    "butter": (BUTTER, tin("round 18 x 7 cm")),
    "sheet": (SHEET, tin("sheet 33 x 23 cm")),
    "nut": (NUT, tin("round 22 x 5 cm")),
}
PRIOR = Prior(ln_heat=0.0, ln_heat_sd=0.25, offset_sd_c=5.0, thermometer_sd_c=2.0)


def bake(
    key: str,
    cake: str,
    done_min: float,
    *,
    core_c: float | None = 95.0,
    test: str = "probe",
    oven_c: float | None = 170.0,
    dial_c: float | None = None,
    not_done_min: float | None = None,
    day: str = "",
    fan: bool = False,
    shelf: str = "middle",
    is_sure: bool = False,
) -> FinishedBake:
    batter, its_tin = CAKES[cake]
    return FinishedBake(
        key, cake, batter, its_tin, done_min, test, dial_c=dial_c, oven_c=oven_c,
        not_done_min=not_done_min, core_c=core_c, day=day, fan=fan, shelf=shelf, is_sure=is_sure,
    )  # fmt: skip
