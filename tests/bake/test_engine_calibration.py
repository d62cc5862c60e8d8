"""What was fitted to the trade's ranges, fitted again, and each range predicted without itself."""

from functools import cache
from pathlib import Path

import numpy as np
import pytest

from benchmarks.calibration import Surfaces, fit, left_out, surfaces
from benchmarks.coverage import Asked
from krume.bake import figures
from tests.bake.cases import CASES
from tests.bake.test_prediction import TRADE

KEPT_OUT = ("nut22", "chiffon")
USED = [at for at, case in enumerate(CASES) if case.name not in KEPT_OUT]


@cache
def _made() -> Surfaces:
    return surfaces([(Asked(c.batter, c.tin, c.oven), sum(TRADE[c.name]) / 2) for c in CASES])


def _shipped_off() -> dict[str, float]:
    """Minutes over the middle of the range, less 1, with the figures as they stand."""
    film = int(np.abs(_made().films - 1).argmin())
    skin = int(np.abs(_made().skins_mm - 1000 * figures()["wet-skin"].value).argmin())
    return {
        case.name: float(np.exp(_made().ln_off[at, film, skin]) - 1)
        for at, case in enumerate(CASES)
    }


def test_the_figures_as_they_stand_fit_nearly_as_well_as_the_best() -> None:
    used = [_shipped_off()[CASES[at].name] for at in USED]
    rms = float(np.sqrt(np.mean(np.log1p(used) ** 2)))
    assert fit(_made(), USED).rms < rms < 0.095


def test_the_ranges_alone_would_take_hardly_any_wet_skin() -> None:
    best = fit(_made(), USED)
    assert best.wet_skin_mm < 0.3
    assert best.heat_static == pytest.approx(4.9, abs=0.3)


WORDS = {"sponge20": "sponge", "roulade": "roulade", "sheet": "sheet", "butter18": "butter cake",
         "cupcake": "cup", "loaf": "loaf"}  # fmt: skip


def _page() -> str:
    page = Path(__file__).parents[2] / "docs" / "models" / "bake.md"
    return page.read_text(encoding="utf-8")


def _told(off: float) -> str:
    return f"{100 * off:+.0f} %".replace("-", "−")


@pytest.mark.pin
def test_a_range_left_out_of_the_fit_is_missed_as_the_page_says() -> None:
    found = left_out(_made(), USED)
    off = {CASES[at].name: part for at, part in found.items()}
    told = ", ".join(f"{word} {_told(off[name])}" for name, word in WORDS.items())
    rms = float(np.sqrt(np.mean(np.log1p(list(off.values())) ** 2)))
    assert f"is predicted: {told}, together {rms:.2f} in ln minutes" in _page()
    nut, tube = (_told(_shipped_off()[name]) for name in KEPT_OUT)
    assert f"nut cake {nut}, chiffon in a tube {tube}." in _page()


def test_what_is_left_out_is_missed_by_about_what_the_model_says_it_leaves_out() -> None:
    off = np.log1p(list(left_out(_made(), USED).values()))
    rms = float(np.sqrt((off**2).mean()))
    batter_and_crust = 0.10  # scatter of ln minutes of the eight cakes with heat and oven known
    said = np.hypot(figures()["discrepancy"].value, batter_and_crust)
    assert rms == pytest.approx(said, abs=0.03)


@pytest.mark.pin
def test_of_the_two_kept_out_the_nut_cake_fits_and_the_tube_is_a_quarter_early() -> None:
    off = _shipped_off()
    assert off["nut22"] == pytest.approx(0.04, abs=0.03)
    assert off["chiffon"] == pytest.approx(-0.28, abs=0.03)
