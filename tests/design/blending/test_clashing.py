"""Limits that clash: the set is as small as can be, and each tells how far it must give way."""

from dataclasses import replace
from typing import Any

import pytest

from krume.design import (
    BlendLimit,
    BlendTask,
    ClashingLimit,
    PropertyLimit,
    clashing_limits,
)
from krume.design.blending.clashing import told
from krume.design.blending.feasible import blend_within
from krume.design.blending.limits import limits_of
from tests.design.blending.every_blend import plain_best
from tests.design.blending.random_tasks import small_task

COVERS = ("feasible", "limits")

FLOURS = BlendTask(
    names=("rice", "potato starch", "maize starch", "buckwheat", "millet"),
    composition=(
        (7.0, 1.0, 2.0),
        (0.0, 0.0, 0.0),
        (0.0, 0.0, 1.0),
        (12.0, 3.0, 10.0),
        (10.0, 4.0, 8.0),
    ),
    properties=("protein", "fat", "fibre"),
    target=(5.4, 1.08, 2.58),
    total_g=105.0,
)
STARCH = BlendLimit("starch", (1, 2), 30.0, 50.0)
POTATO = BlendLimit("potato starch", (1,), 51.0, None)
RICE = BlendLimit("rice", (0,), None, 40.0)
FAT = PropertyLimit("fat", tuple(row[1] for row in FLOURS.composition), None, 1.0)
MUCH = (BlendLimit("rice", (0,), 20.0), BlendLimit("millet", (4,), 20.0))


def named(task: BlendTask) -> dict[tuple[str, str], float | None]:
    """The clashing limits of a task, each with what it would have to be alone."""
    return {(each.name, each.side): each.loosened for each in clashing_limits(task)}


@pytest.mark.parametrize(
    ("change", "clash"),
    [
        ({"limits": (STARCH,)}, {}),
        (
            {"limits": (STARCH, POTATO, RICE)},
            {("starch", "high"): 100 * 54 / 105, ("potato starch", "low"): 100 * 52 / 105},
        ),
        (
            {"limits": (replace(STARCH, low_pct=50.0, high_pct=30.0),)},
            {("starch", "low"): 100 * 31 / 105, ("starch", "high"): 100 * 53 / 105},
        ),
        (
            {"limits": (replace(STARCH, high_pct=30.1),)},
            {
                ("starch", "low"): 100 * 31 / 105,
                ("starch", "high"): 100 * 32 / 105,
                ("total", "exact"): 103.0,
            },
        ),
        ({"total_g": 105.5, "limits": (STARCH,)}, {("total", "exact"): 105.0}),
        (
            {"most_g": (10.0, 20.0, 30.0, 15.0, None), "limits": (MUCH[0],)},
            {("rice", "low"): 100 * 10 / 105, ("rice", "high"): 21.0, ("total", "exact"): 50.0},
        ),
        (
            {"limits": (BlendLimit("starch", (1, 2), 10.0), *MUCH), "most_parts": 2},
            {
                ("starch", "low"): 0.0,
                ("rice", "low"): 0.0,
                ("millet", "low"): 0.0,
                ("flours used", "high"): 3.0,
            },
        ),
        (
            {
                "limits": MUCH,
                "price_per_kg": (2.0, 2.0, 3.0, 10.0, 9.5),
                "most_price_per_kg": 2.5,
            },
            {("millet", "low"): 100 * 7 / 105, ("price", "high"): 3.5},
        ),
        (
            {
                "limits": (replace(STARCH, low_pct=None, high_pct=20.0), RICE),
                "property_limits": (FAT,),
            },
            {
                ("starch", "high"): 40.0,
                ("rice", "high"): 100 * 74 / 105,
                ("fat", "high"): 1.6,
            },
        ),
        (
            {"limits": (BlendLimit("starch", (1, 2), 10.0, 40.0),), "least_part_g": 60.0},
            {
                ("starch", "low"): 0.0,
                ("starch", "high"): 100.0,
                ("least part", "low"): 42.0,
                ("total", "exact"): 150.0,
            },
        ),
    ],
    ids=[
        "none",
        "member-above-its-class",
        "low-above-high",
        "between-two-steps",
        "total-between-steps",
        "stock",
        "most-flours",
        "price",
        "property",
        "least-part",
    ],
)
def test_the_limits_that_clash_are_named_with_the_least_that_helps(
    change: dict[str, Any], clash: dict[tuple[str, str], float]
) -> None:
    assert named(replace(FLOURS, **change)) == pytest.approx(clash, abs=1e-9)


def test_each_clash_of_a_small_task_needs_all_its_limits() -> None:
    seen = 0
    for seed in range(60):
        task = small_task(seed)
        clash = clashing_limits(task)
        assert (clash == ()) == (plain_best(task) is not None), seed
        if clash:
            seen += 1
            assert blend_within(task, clash) is None, seed
            for at in range(len(clash)):
                assert blend_within(task, clash[:at] + clash[at + 1 :]) is not None, seed
    assert seen > 15


def test_no_smaller_set_clashes() -> None:
    # Two clashes at once: of three limits, and of two.
    task = replace(
        FLOURS,
        limits=(BlendLimit("starch", (1, 2), 10.0), *MUCH, replace(RICE, low_pct=60.0)),
        most_parts=2,
    )
    assert {(each.name, each.side) for each in clashing_limits(task)} == {
        ("rice", "low"),
        ("rice", "high"),
    }


def test_what_is_told_to_help_helps_and_a_little_less_does_not() -> None:
    seen = 0
    for seed in range(60):
        task = small_task(seed)
        for limit in clashing_limits(task):
            if limit.loosened is None:
                continue
            seen += 1
            assert plain_best(_with(task, limit, limit.loosened)) is not None, (seed, limit)
            less = limit.loosened + 1e-6 * (limit.value - limit.loosened)
            if limit.kind not in ("parts", "total"):
                assert plain_best(_with(task, limit, less)) is None, (seed, limit)
    assert seen > 15


def test_a_limit_that_cannot_help_alone_says_so() -> None:
    task = replace(FLOURS, limits=(STARCH,), most_g=(10.0, 20.0, 30.0, 15.0, 15.0))
    assert named(task)["starch", "high"] is None


def _with(task: BlendTask, limit: ClashingLimit, value: float) -> BlendTask:
    """The task with another value of one limit."""
    place = limit.place or 0
    if limit.kind == "share":
        limits = list(task.limits)
        change: dict[str, Any] = {f"{limit.side}_pct": value}
        limits[place] = replace(limits[place], **change)
        return replace(task, limits=tuple(limits))
    if limit.kind == "property":
        held = list(task.property_limits)
        end: dict[str, Any] = {limit.side: value}
        held[place] = replace(held[place], **end)
        return replace(task, property_limits=tuple(held))
    if limit.kind == "stock":
        most = list(task.most_g or ())
        most[place] = value
        return replace(task, most_g=tuple(most))
    field = {
        "price": "most_price_per_kg",
        "parts": "most_parts",
        "least-part": "least_part_g",
        "total": "total_g",
    }[limit.kind]
    other: dict[str, Any] = {field: round(value) if limit.kind == "parts" else value}
    return replace(task, **other)


def test_every_limit_is_listed_once() -> None:
    task = replace(
        FLOURS,
        limits=(STARCH, POTATO),
        property_limits=(FAT,),
        most_g=(None, 30.0, None, None, None),
        most_parts=3,
        least_part_g=5.0,
        price_per_kg=(1.0,) * 5,
        most_price_per_kg=2.0,
    )
    assert [(each.kind, each.name, each.side) for each in limits_of(task)] == [
        ("share", "starch", "low"),
        ("share", "starch", "high"),
        ("share", "potato starch", "low"),
        ("property", "fat", "high"),
        ("stock", "potato starch", "high"),
        ("price", "price", "high"),
        ("parts", "flours used", "high"),
        ("least-part", "least part", "low"),
        ("total", "total", "exact"),
    ]


@pytest.mark.parametrize(
    ("loosened", "needs"), [(51.42857, "51.43 %"), (None, "more than this limit to give way")]
)
def test_a_clash_is_told_in_words(loosened: float | None, needs: str) -> None:
    clash = told(ClashingLimit("share", "starch", "high", 50.0, "%", loosened, 0))
    assert (clash.name, clash.limit, clash.needs, clash.has) == (
        "starch",
        "at most 50 %",
        needs,
        "50 %",
    )
