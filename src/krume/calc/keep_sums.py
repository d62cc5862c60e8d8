"""Quick sums on keeping: mould, need of cold, lethality, cooling."""

from krume.base import OutOfRangeError
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.keep import (
    cooling,
    dew_point_c,
    egg_heat,
    frozen_value,
    lethality_min,
    mould_free_days,
    needs_cold,
)


def _mould(given: Given) -> Values:
    given.note("wheat-cakes", "Fitted to wheat cakes without preservative; mould only.")
    return {"days": mould_free_days(given.number("erh"), temp_c=given.number("temp"))}


def _tcs(given: Given) -> Values:
    packaged = given.yes("heat_treated_packaged", default=False)
    aw, ph = given.maybe("aw"), given.maybe("ph")
    if aw is None or ph is None:
        given.note("not-shown", "A number is unknown: keep it cold.")
    given.note("local-law", "Local law and licensed practice decide.")
    return {"verdict": needs_cold(aw, ph, heat_treated_packaged=packaged)}


def _lethality(given: Given) -> Values:
    minutes = lethality_min(
        given.numbers("times"),
        given.numbers("temps"),
        reference_c=given.number("reference"),
        z_k=given.number("z"),
    )
    given.note(
        "straight-lines",
        "Exact for straight lines between the readings; the trapezoid on the rate gives more.",
    )
    d = given.maybe("d")
    if d is not None and d <= 0:
        raise OutOfRangeError(
            f"d is {d:g} min; type the time that kills nine of ten, above 0.",
            field="d", got=f"{d:g}", want="more than 0 min",
        )  # fmt: skip
    return {"minutes": minutes, "log_reductions": None if d is None else minutes / d}


def _egg_heat(given: Given) -> Values:
    found = egg_heat(given.numbers("times"), given.numbers("temps"))
    given.note(
        "no-promise",
        "Plain yolk, after the lag, counted from 58 to 66 C only. Sugar, starch and salt protect: "
        "information, no promise.",
    )
    return {
        "minutes": found.minutes,
        "log_reductions": found.log_reduction_count,
        "is_more": found.is_more,
        "of_old_table": found.old_table_ratio,
    }


def _dew(given: Given) -> Values:
    humidity = given.maybe("humidity")
    if humidity is None:
        humidity = frozen_value("humidity")
    return {"dew_c": dew_point_c(given.number("temp"), humidity_pct=humidity)}


def _freezing_point(given: Given) -> Values:
    from krume.keep import freezing_point_c

    given.note("estimate", "Of an estimated water activity the point is an estimate too.")
    return {"temp_c": freezing_point_c(given.number("aw"))}


def _cooling(given: Given) -> Values:
    cooked = given.yes("cooked", default=True)
    found = cooling(given.numbers("times"), given.numbers("temps"), is_cooked=cooked)
    given.note("local-law", "Local law and licensed practice decide.")
    return {
        "stage_1_h": found.stage_1_h,
        "total_h": found.total_h,
        "verdict": found.verdict,
        "reason": found.reason,
    }


KEEP_SUMS = (
    Sum(
        "mould-free-days",
        "Days without mould of a plain cake without preservative.",
        (
            Input("erh", "equilibrium relative humidity, 74 to 90", "pct"),
            Input("temp", "21 or 27", "c"),
        ),
        (Output("days", "days without mould; says nothing of pathogens"),),
        _mould,
        ("fmbra-150", "adams-moss"),
        (("erh", "80"), ("temp", "21")),
    ),
    Sum(
        "tcs",
        "Whether a food must be kept cold, by water activity and acidity.",
        (
            Input("aw", "water activity, 0 to 1; ? when unknown", may_be_unknown=True),
            Input("ph", "acidity; ? when unknown", may_be_unknown=True),
            Input(
                "heat_treated_packaged",
                "heat treated and then packed (no unless said)",
                kind="yes-no",
                required=False,
            ),
        ),
        (Output("verdict", "non-tcs, assess (keep cold until a study says otherwise) or tcs"),),
        _tcs,
        ("fda-food-code-2022",),
        (("aw", "0.93"), ("ph", "5.2"), ("heat_treated_packaged", "no")),
    ),
    Sum(
        "lethality",
        "Minutes at a reference temperature that kill as much as a whole heating.",
        (
            Input("times", "times of the readings", "min", kind="numbers"),
            Input("temps", "temperatures at the coldest place", "c", kind="numbers"),
            Input("reference", "reference temperature", "c"),
            Input("z", "rise that kills ten times as fast", "k", difference=True),
            Input("d", "time at the reference that kills nine of ten", "min", required=False),
        ),
        (
            Output("minutes", "equivalent time at the reference temperature"),
            Output("log_reductions", "powers of ten killed; null without d"),
        ),
        _lethality,
        ("food-microbiology-2011",),
        (
            ("times", "0,2,4,6,8,10,12"), ("temps", "50,56,60,62,62,60,52"),
            ("reference", "60"), ("z", "4.7"),
        ),
    ),
    Sum(
        "egg-heat",
        "What a heating would kill of Salmonella in plain yolk, by its readings.",
        (
            Input("times", "times of the readings", "min", kind="numbers"),
            Input("temps", "temperatures at the coldest place", "c", kind="numbers"),
        ),
        (
            Output("minutes", "minutes at 60 C that kill as much"),
            Output("log_reductions", "powers of ten killed, no more than 7 told"),
            Output("is_more", "whether it is more than is told"),
            Output("of_old_table", "times the old table's 3.5 min at 63.3 C for sugared yolk"),
        ),
        _egg_heat,
        ("food-microbiology-2011", "us-9-cfr-590"),
        (("times", "0,6,8,9"), ("temps", "20,70,85,85")),
    ),
    Sum(
        "freezing-point",
        "Where something of a water activity begins to freeze.",
        (Input("aw", "water activity, 0.7 to 1"),),
        (Output("temp_c", "temperature at which ice begins to form"),),
        _freezing_point,
        ("mathematics",),
        (("aw", "0.96"),),
    ),
    Sum(
        "dew-point",
        "Where a cold cake sweats: the dew point of a room's air.",
        (
            Input("temp", "air of the room", "c"),
            Input("humidity", "water in it over what it can hold (50 unless said)", "pct",
                  required=False),
        ),
        (Output("dew_c", "a surface colder than this sweats"),),
        _dew,
        ("iapws-if97",),
        (("temp", "21"), ("humidity", "50")),
    ),
    Sum(
        "cooling",
        "Whether a log shows that a food was cooled in time.",
        (
            Input("times", "times of the readings", "h", kind="numbers"),
            Input("temps", "temperatures at the warmest place", "c", kind="numbers"),
            Input(
                "cooked",
                "cooked (yes unless said), or made of things at room temperature: 5 C within 4 h",
                kind="yes-no",
                required=False,
            ),
        ),
        (
            Output("stage_1_h", "from 57 to 21 C; null when not shown"),
            Output("total_h", "from 57 to 5 C; null when not shown"),
            Output("verdict", "pass or fail; what is not shown fails"),
            Output("reason", "empty, stage-1, total, both, or not-shown"),
        ),
        _cooling,
        ("fda-food-code-2022",),
        (("times", "0,1,2,4,6"), ("temps", "57,33,20,9,4")),
    ),
)  # fmt: skip
