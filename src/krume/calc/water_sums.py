"""Quick sums on water: vapour pressure, boiling point, water activity."""

from krume.base import InputError
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.properties import (
    boiling_point_c,
    pressure_at_altitude_pa,
    ross_activity,
    solution_activity,
    vapour_pressure_pa,
)


def _vapour(given: Given) -> Values:
    return {"pressure_pa": vapour_pressure_pa(given.number("temp"))}


def _boiling(given: Given) -> Values:
    altitude, pressure = given.maybe("altitude"), given.maybe("pressure")
    if altitude is not None and pressure is not None:
        raise InputError(
            "Altitude and pressure were both given. Type one of them.",
            field="pressure", got="both", want="altitude or pressure",
        )  # fmt: skip
    if pressure is None:
        if altitude is None:
            raise given.missing("altitude", "pressure", either=True)
        pressure = pressure_at_altitude_pa(altitude)
        given.cite("us-standard-atmosphere-1976")
    temp = boiling_point_c(pressure, sugar_pct=given.or_zero("sugar_pct"))
    return {"temp_c": temp, "pressure_pa": pressure}


def _sucrose(given: Given) -> Values:
    return {"aw": solution_activity(given.number("percent"), solute="sucrose")}


def _glycerol(given: Given) -> Values:
    return {"aw": solution_activity(given.number("percent"), solute="glycerol")}


def _mix(given: Given) -> Values:
    given.note("ross", "The product lies some 0.01 above the mixture form: that is its doubt.")
    return {"aw": ross_activity(given.numbers("aw"))}


_PERCENT = Input("percent", "solute over solute and water, w/w", "pct")
_AW = Output("aw", "water activity, 0 to 1")

WATER_SUMS = (
    Sum(
        "vapour-pressure",
        "Vapour pressure of pure water.",
        (Input("temp", "temperature", "c"),),
        (Output("pressure_pa", "vapour pressure"),),
        _vapour,
        ("iapws-if97",),
        (("temp", "25"),),
    ),
    Sum(
        "boiling-point",
        "Where water or a sugar syrup boils, at a height or under a pressure.",
        (
            Input("altitude", "height above the sea", "m", required=False),
            Input("pressure", "pressure of the air", "pa", required=False),
            Input("sugar_pct", "sugar over sugar and water, w/w", "pct", required=False),
        ),
        (
            Output("temp_c", "boiling temperature"),
            Output("pressure_pa", "pressure it was reckoned at"),
        ),
        _boiling,
        ("iapws-if97", "starzak-peacock-1997"),
        (("altitude", "5000ft"),),
    ),
    Sum(
        "aw-sucrose",
        "Water activity of table sugar in water.",
        (_PERCENT,),
        (_AW,),
        _sucrose,
        ("norrish-1966", "baeza-2010"),
        (("percent", "50"),),
    ),
    Sum(
        "aw-glycerol",
        "Water activity of glycerol in water.",
        (_PERCENT,),
        (_AW,),
        _glycerol,
        ("norrish-1966", "baeza-2010"),
        (("percent", "30"),),
    ),
    Sum(
        "aw-mix",
        "Water activity of a mixture from each solute alone in all the water.",
        (Input("aw", "water activities, separated by commas", kind="numbers"),),
        (_AW,),
        _mix,
        ("ross-1975",),
        (("aw", "0.9348,0.9026"),),
    ),
)
