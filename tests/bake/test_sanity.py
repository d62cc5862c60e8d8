"""At the library's door: an answer with numbers, a limit named, or a refusal that says why."""

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.bake import (
    JACKETS,
    RACKS,
    UNDERS,
    AirCourse,
    Around,
    Batter,
    Oven,
    Prediction,
    predict,
    sections,
    simulate,
)
from krume.base import Infeasible, KrumeError, OutOfRangeError
from krume.size import Tin
from tests.bake.cases import BUTTER18, batter, tin

WILD = st.one_of(
    st.sampled_from([math.nan, math.inf, -math.inf, 0.0, -1.0, 1e-9, 1e9, 5.0]),
    st.floats(allow_nan=True, allow_infinity=True),
)


def _is_told(found: Prediction | Infeasible) -> bool:
    if isinstance(found, Infeasible):
        return bool(found.clashes) and all(c.name and c.needs for c in found.clashes)
    span, loss = found.minutes, found.loss_pct
    numbers = (
        span.low, span.best, span.high, loss.low, loss.best, loss.high, found.core_c,
        found.depth_cm, found.discrepancy, found.bake.loss_pct, found.bake.boiling_c,
    )  # fmt: skip
    return all(math.isfinite(n) for n in numbers) and 0 <= span.low <= span.best <= span.high


def _asked(made: Batter, pan: Tin, oven: Oven) -> None:
    """An answer that holds, or an error of ours with words in it."""
    try:
        found: Prediction | Infeasible | KrumeError = predict(made, pan, oven, count=8)
    except KrumeError as error:
        found = error
    if isinstance(found, KrumeError):
        assert len(found.message) > 20 and found.message.endswith(".")
    else:
        assert _is_told(found)


FIELDS = ("mass_g", "density_g_ml", "water", "protein", "fat", "carbohydrate", "fibre", "ash",
          "sugar", "gas_ratio", "core_c", "core_altitude_m", "temp_c")  # fmt: skip


@settings(max_examples=60, deadline=None)
@given(field=st.sampled_from(FIELDS), amount=WILD)
def test_any_figure_of_a_batter_is_answered_or_refused(field: str, amount: float) -> None:
    changed = replace(BUTTER18.batter, **{field: amount})  # type: ignore[arg-type]
    _asked(changed, BUTTER18.tin, BUTTER18.oven)


@settings(max_examples=40, deadline=None)
@given(
    field=st.sampled_from(["temp_c", "altitude_m", "heat", "ln_heat_sd", "temp_half_width_c"]),
    amount=WILD,
)
def test_any_figure_of_an_oven_is_answered_or_refused(field: str, amount: float) -> None:
    changed = replace(BUTTER18.oven, **{field: amount})  # type: ignore[arg-type]
    _asked(BUTTER18.batter, BUTTER18.tin, changed)


@settings(max_examples=40, deadline=None)
@given(
    text=st.sampled_from(["round 18 x 7 cm", "loaf 21.5x11.5x7 cm", "tube 20 x 10 cm hole 6 cm"]),
    field=st.sampled_from(["diameter_cm", "length_cm", "width_cm", "height_cm", "hole_cm"]),
    amount=st.one_of(st.none(), WILD),
)
def test_any_side_of_a_tin_is_answered_or_refused(
    text: str, field: str, amount: float | None
) -> None:
    changed = replace(tin(text), **{field: amount})  # type: ignore[arg-type]
    _asked(BUTTER18.batter, changed, BUTTER18.oven)


@settings(max_examples=25, deadline=None)
@given(
    share=st.tuples(*[st.floats(0, 1) for _ in range(6)]),
    sweet=st.floats(0, 1), mass=st.floats(1, 5000), density=st.floats(0.2, 1.3),
    temp_c=st.floats(1, 40), oven_c=st.floats(100, 300), gas=st.floats(0, 1),
)  # fmt: skip
def test_any_batter_in_any_oven_ends_with_an_answer(
    share: tuple[float, ...], sweet: float, mass: float, density: float, temp_c: float,
    oven_c: float, gas: float,
) -> None:  # fmt: skip
    whole = sum(share) or 1.0
    water, protein, fat, carbohydrate, fibre, ash = (part / whole for part in share)
    made = Batter(
        mass, density, water, protein, fat, carbohydrate, fibre, ash,
        sugar=sweet * carbohydrate, gas_ratio=gas, temp_c=temp_c,
    )  # fmt: skip
    _asked(made, tin("round 20 x 7 cm"), Oven(oven_c))


@settings(max_examples=25, deadline=None)
@given(
    jacket=st.sampled_from(JACKETS), under=st.sampled_from(UNDERS), rack=st.sampled_from(RACKS),
    cold=st.one_of(st.none(), st.floats(0, 300)), doors=st.lists(st.floats(0, 90), max_size=3),
    course=st.one_of(st.none(), st.lists(st.floats(0, 300), min_size=1, max_size=4)),
)  # fmt: skip
def test_whatever_stands_round_the_tin_ends_with_an_answer(
    jacket: str, under: str, rack: str, cold: float | None, doors: list[float],
    course: list[float] | None,
) -> None:  # fmt: skip
    times = tuple(10.0 * place for place in range(len(course or ())))
    air = None if course is None else AirCourse(times, tuple(course))
    around = Around(jacket, under, rack, cold, tuple(doors), air)
    _asked(BUTTER18.batter, BUTTER18.tin, replace(BUTTER18.oven, around=around))


REFUSED = [
    (batter("butter", 640, temp_c=-18.0), Oven(165), "frozen"),
    (batter("butter", 640, temp_c=0.0), Oven(165), "frozen"),
    (batter("butter", math.nan), Oven(165), "weighs nan g"),
    (batter("butter", -640), Oven(165), "weighs -640 g"),
    (batter("butter", 640, water=0.0, ash=0.309), Oven(165), "water"),
    (batter("butter", 640, fat=0.9), Oven(165), "sum to"),
    (batter("butter", 640, sugar=0.9), Oven(165), "sugar"),
    (batter("butter", 640, density_g_ml=0.0), Oven(165), "density"),
    (batter("butter", 640, colour="blue"), Oven(165), "pale, golden, brown"),
    (BUTTER18.batter, Oven(math.nan), "oven"),
    (BUTTER18.batter, Oven(165, heat=0.0), "heat"),
    (BUTTER18.batter, Oven(165, around=Around(jacket="wool")), "none, wrapped, water"),
    (BUTTER18.batter, Oven(165, around=Around(door_min=(math.nan,))), "door"),
    (BUTTER18.batter, Oven(165, around=Around(course=AirCourse((0, 0), (20, 30)))), "rise"),
    (
        BUTTER18.batter,
        Oven(165, around=Around(course=AirCourse((0,), (20, 30)))),
        "one temperature",
    ),
]


@pytest.mark.parametrize(("made", "oven", "word"), REFUSED, ids=[r[2] for r in REFUSED])
def test_what_cannot_be_is_refused_in_words(made: Batter, oven: Oven, word: str) -> None:
    for call in (predict, simulate):
        with pytest.raises(KrumeError, match=word):
            call(made, BUTTER18.tin, oven)


def test_an_oven_of_400_degrees_is_a_limit_and_its_figure_is_named() -> None:
    found = predict(BUTTER18.batter, BUTTER18.tin, Oven(400))
    assert isinstance(found, Infeasible)
    assert (found.clashes[0].name, found.clashes[0].has) == ("oven", "400 °C")


def test_an_oven_colder_than_its_batter_never_bakes_it() -> None:
    bake = simulate(BUTTER18.batter, BUTTER18.tin, Oven(5))
    assert math.isinf(bake.minutes)
    assert math.isfinite(bake.loss_pct) and bake.curve.core_c[-1] < 21


def test_a_core_below_the_batter_is_there_at_once() -> None:
    warm = batter("butter", 640, temp_c=45.0, core_c=40.0)
    assert simulate(warm, BUTTER18.tin, BUTTER18.oven).rule_minutes[0] == 0


def test_a_bucket_of_batter_is_over_the_rim_and_a_film_of_it_is_refused() -> None:
    found = predict(batter("butter", 40_000), BUTTER18.tin, BUTTER18.oven)
    assert isinstance(found, Infeasible) and found.clashes[0].name == "tin height"
    with pytest.raises(OutOfRangeError, match="would stand"):
        predict(batter("butter", 1), tin("round 30 x 7 cm"), BUTTER18.oven)


@pytest.mark.parametrize("cells", [(0, 8), (6, 0), (-1, 3), (6, 5000), (2.5, 4)])
def test_a_grid_without_cells_is_refused(cells: tuple[int, int]) -> None:
    with pytest.raises(OutOfRangeError, match="whole numbers"):
        simulate(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, cells=cells)


@pytest.mark.parametrize("cells", [(1, 1), (1, 3), (2, 2), (3, 1)])
def test_the_coarsest_grids_still_bake(cells: tuple[int, int]) -> None:
    bake = simulate(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, cells=cells)
    assert 20 < bake.minutes < 120
    cut = sections(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, at_min=[10], cells=cells)[0]
    assert len(cut.temp_c) == cells[1]


def test_a_tin_without_a_height_is_answered_and_said() -> None:
    open_ = replace(BUTTER18.tin, height_cm=None)
    found = predict(BUTTER18.batter, open_, BUTTER18.oven, count=8)
    assert isinstance(found, Prediction) and "rim-unknown" in {n.code for n in found.notices}


@pytest.mark.parametrize("cells", [(6,), (), (6, 8, 2), (6, 0), (6.0, 8), (True, 8), 6])
def test_a_grid_that_is_no_pair_of_counts_is_refused_in_words(cells: object) -> None:
    with pytest.raises(OutOfRangeError, match="rings and as many rows, two whole numbers"):
        simulate(BUTTER18.batter, BUTTER18.tin, BUTTER18.oven, cells=cells)  # type: ignore[arg-type]
