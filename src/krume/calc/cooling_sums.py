"""Quick sums on cooling: a cake on its rack, from readings or from its size, and custard."""

from krume.bake import cool_left
from krume.base import Interval
from krume.calc.declaring import Input, Json, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum

_VESSELS = ("tray-fridge", "tray-fan", "tray-ice", "cups-fridge", "bowl-fridge", "bowl-ice")
_UNCOMPARED = "By a model that was compared with no cake: a probe in the middle decides."
_NO_EVIDENCE = (
    "A prediction is no evidence: the verdict of a batch stays not shown until its log shows it. "
    "Your local law decides."
)


def _span(found: Interval | None, digits: int) -> Json:
    if found is None:
        return None
    low, best, high = (round(end, digits) for end in (found.low, found.best, found.high))
    return {"low": low, "best": best, "high": high}


def _cool_down(given: Given) -> Values:
    found = cool_left(
        given.numbers("times"), given.numbers("temps"),
        room_c=given.number("room"), goal_c=given.number("goal"),
    )  # fmt: skip
    given.note(
        "two-laws",
        "Early by Newton's law, late by still air whose film weakens as the cake cools.",
    )
    return {"at_min": _span(found.at_min, 1), "left_min": _span(found.left_min, 1)}


def _cake_cooling(given: Given) -> Values:
    from krume.bake import plain_cake_minutes

    found = plain_cake_minutes(
        given.number("diameter"), given.number("height"), given.number("mass"),
        room_c=given.maybe("room"), start_c=given.maybe("start"), goal_c=given.maybe("goal"),
    )  # fmt: skip
    given.note("cooling-is-a-range", _UNCOMPARED)
    return {"rack_min": _span(found, 1)}


def _custard_cooling(given: Given) -> Values:
    from krume.keep import custard_depth

    found = custard_depth(
        given.text("vessel"), given.number("depth"), fridge_c=given.maybe("fridge"),
        room_c=given.maybe("room"), stand_min=given.maybe("stand"), start_c=given.maybe("start"),
    )  # fmt: skip
    given.note("no-evidence", _NO_EVIDENCE)
    return {
        "first_h": _span(found.first_h, 2),
        "total_h": _span(found.total_h, 2),
        "prediction": found.verdict,
        "verdict": "not-shown",
    }


COOLING_SUMS = (
    Sum(
        "cool-down",
        "When a cooling cake's middle will be at a temperature, by two or more readings of it.",
        (
            Input("times", "times of the readings", "min", kind="numbers"),
            Input("temps", "temperatures of the middle", "c", kind="numbers"),
            Input("room", "air round it", "c"),
            Input("goal", "temperature wanted", "c"),
        ),
        (
            Output("at_min", "when it is there, on the readings' own clock, as an interval"),
            Output("left_min", "from the last reading on, as an interval"),
        ),
        _cool_down,
        ("mathematics",),
        (("times", "20,40"), ("temps", "70,52"), ("room", "21"), ("goal", "30")),
        "Take the readings in the middle, the first not before 20 minutes after the oven.",
    ),
    Sum(
        "cake-cooling",
        "How long a round cake stands on a rack until its middle is at a temperature.",
        (
            Input("diameter", "diameter", "cm"),
            Input("height", "baked height", "cm"),
            Input("mass", "mass of the baked cake", "g"),
            Input("goal", "warmest place wanted (30 unless said: cut it)", "c", required=False),
            Input("room", "air of the room (21 unless said)", "c", required=False),
            Input("start", "temperature at the oven's door (95 unless said)", "c", required=False),
        ),
        (Output("rack_min", "on the rack, out of its tin, as an interval"),),
        _cake_cooling,
        ("mcadams-1954", "churchill-chu-1975", "choi-okos-1986"),
        (("diameter", "20"), ("height", "5"), ("mass", "482")),
        "A cake of no known formula; the bake of a formula says it for that formula.",
    ),
    Sum(
        "custard-cooling",
        "Whether a depth of custard is predicted to cool in time, and in how many hours.",
        (
            Input("depth", "depth of the custard", "cm"),
            Input("vessel", "what it cools in", kind="choice", choices=_VESSELS),
            Input("fridge", "air of the fridge (3 unless said)", "c", required=False),
            Input("room", "air of the room (21 unless said)", "c", required=False),
            Input("stand", "minutes in the room first (10 unless said)", "min", required=False),
            Input("start", "temperature when poured (90 unless said)", "c", required=False),
        ),
        (
            Output("first_h", "from 57 to 21 C, as an interval; unknown is later than 8 hours"),
            Output("total_h", "from 57 to 5 C, as an interval; unknown is later than 8 hours"),
            Output("prediction", "within (nine of ten keep both limits), may, or over"),
            Output("verdict", "of the batch: not-shown, until its log shows it"),
        ),
        _custard_cooling,
        ("fda-food-code-2022", "choi-okos-1986", "mcadams-1954", "churchill-chu-1975"),
        (("depth", "2"), ("vessel", "tray-fan")),
        "Thick custard that does not flow; covered on its surface.",
    ),
)
