"""A public number that has a dimension says its unit in its name."""

import ast
from collections.abc import Iterator
from functools import cache

import pytest

from tests.house.source import SRC, Function, Module, modules

NUMBERS = {"float", "Interval", "ArrayLike", "NDArray"}
UNITS = {
    *("g", "kg", "mg", "ug", "ml", "l", "cm", "mm", "m", "cm2", "m2", "cm3", "m3", "c", "k", "f"),
    *("min", "s", "h", "kj", "kcal", "j", "w", "pa", "pct", "percent", "ppm", "fraction", "days"),
    "kwh",
    *(
        "hours",
        "g_ml",
        "g_cm2",
        "kg_m3",
        "w_mk",
        "w_m2k",
        "m2_s",
        "j_kgk",
        "in",
        "oz",
        "bloom",
        "deg",
    ),
}
# Names of what has no dimension, or has the one that a field beside it names.
PLAIN = {
    *("value", "amount", "factor", "digits", "low", "high", "best", "half_width", "size", "ratio"),
    *(
        "count",
        "turns",
        "biot",
        "fourier",
        "theta",
        "share",
        "distance",
        "bound",
        "loosened",
        "other",
        "weight",
        "score",
        # in half-widths of a band; of a figure whose unit stands beside it; of a share
        "effect",
        "change",
        "error",
    ),
    *("percent", "specific_gravity", "sg", "interval"),
    *("near", "by_volume", "by_area", "fill", "rise", "minutes", "total", "batches"),
    *("emissivity", "discrepancy", "grading", "ln", "heat", "activity", "hours", "places", "eggs"),
    # a measured colour, and how far two lie apart
    *("lightness", "red", "yellow", "delta_e"),
    # mass fractions of a mixture
    *("water", "protein", "fat", "carbohydrate", "fibre", "ash", "sugar"),
}


LEADING = {"sg", "ln"}


def says_its_unit(name: str) -> bool:
    """Whether a name ends in a unit, says one thing per another, or needs no unit."""
    parts = name.split("_")
    ends = {"_".join(parts[-n:]) for n in (1, 2, 3)} if len(parts) > 1 else set()
    if {"per", "to"} & set(parts[1:-1]):
        return True
    return bool(ends & UNITS) or name in PLAIN or parts[-1] in PLAIN or parts[0] in LEADING


@cache
def doors() -> dict[str, frozenset[str]]:
    """The names that each folder's door hands out."""
    found = [m for m in modules() if m.path == SRC / m.folder / "__init__.py"]
    return {door.folder: frozenset(_handed_out(door.tree)) for door in found}


def _handed_out(door: ast.Module) -> list[str]:
    for node in door.body:
        if isinstance(node, ast.Assign) and getattr(node.targets[0], "id", "") == "__all__":
            return [str(name) for name in ast.literal_eval(node.value)]
    return []


def is_number(annotation: ast.expr | None) -> bool:
    """Whether an annotation is a number or an interval, possibly unknown."""
    if isinstance(annotation, ast.BinOp):
        return is_number(annotation.left) or is_number(annotation.right)
    return isinstance(annotation, ast.Name) and annotation.id in NUMBERS


def public_numbers(module: Module) -> Iterator[tuple[ast.AST, str]]:
    """Each numeric argument and field of what a folder's door hands out."""
    handed_out = doors().get(module.folder, frozenset())
    for name, function in module.public_functions():
        if name.partition(".")[0] in handed_out:
            yield from ((arg, arg.arg) for arg in _arguments(function) if is_number(arg.annotation))
    for node in module.tree.body:
        if isinstance(node, ast.ClassDef) and node.name in handed_out:
            for item in node.body:
                if isinstance(item, ast.AnnAssign) and is_number(item.annotation):
                    yield item, getattr(item.target, "id", "")


def _arguments(function: Function) -> list[ast.arg]:
    listed = function.args
    return [*listed.posonlyargs, *listed.args, *listed.kwonlyargs]


def test_every_public_number_says_its_unit() -> None:
    silent = [
        f"{module.at(node)} {name}"
        for module in modules()
        if module.folder not in {"cli", "web"}
        for node, name in public_numbers(module)
        if not says_its_unit(name)
    ]
    assert silent == []


def test_the_doors_hand_out_numbers_to_look_at() -> None:
    assert sum(1 for module in modules() for _ in public_numbers(module)) > 50


@pytest.mark.parametrize("name", ["mass_g", "areal_g_cm2", "factor", "by_area_factor", "loss_pct"])
def test_a_unit_at_the_end_of_a_name_is_seen(name: str) -> None:
    assert says_its_unit(name)


@pytest.mark.parametrize("name", ["mass", "temp", "g", "volume", "depth", "sugar_mass"])
def test_a_number_without_a_unit_is_seen(name: str) -> None:
    assert not says_its_unit(name)
