"""The demo studio's formulas as a torte knows them, and its plans."""

from dataclasses import replace
from importlib.resources import files
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from krume.base import Infeasible
from krume.build import ComponentFormula, EggUse, Torte, TortePlan, build_torte, read_torte
from krume.size import Tin

ROUND_20 = Tin("round 20 x 7 cm", "round", diameter_cm=20.0, height_cm=7.0)
ROUND_22 = Tin("round 22 x 5 cm", "round", diameter_cm=22.0, height_cm=5.0)
SHEET = Tin("sheet 13x9 in", "sheet", length_cm=33.02, width_cm=22.86, height_cm=2.54)
TART_RING = Tin("tart ring 24 x 2.5 cm", "ring", diameter_cm=24.0, height_cm=2.5)

F1 = ComponentFormula(
    "F1", "Orl hazel sponge", "separated", 542.0, ROUND_20, 50.0, 482.0,
    eggs=(EggUse("eu-m", "whole", 5.0),),
)  # fmt: skip
F3 = ComponentFormula("F3", "Lighthouse lemon roulade", "roulade", 398.0, SHEET, 13.0, 358.0)
F4 = ComponentFormula("F4", "Net-loft walnut sponge", "nut", 522.0, ROUND_22, 32.0, 465.0)
F7 = ComponentFormula(
    "F7", "Buckwheat tart base", "tart", 431.5, TART_RING, 25.0, 214.0, baked_thickness_mm=3.0
)
C1 = ComponentFormula(
    "C1", "Vanilla custard cream", "custard-lightened", 941.5, density_g_ml=0.75,
    gelatine_g_kg=8.497, eggs=(EggUse("eu-m", "yolk", 5.0),),
)  # fmt: skip
C2 = ComponentFormula(
    "C2", "Set yoghurt cream", "set-cream", 853.0, density_g_ml=0.72, gelatine_g_kg=9.379
)
C3 = ComponentFormula("C3", "Dark ganache", "ganache", 380.0, density_g_ml=1.15)
C4 = ComponentFormula("C4", "Blackcurrant jelly", "jelly", 390.0, density_g_ml=1.08)
C5 = ComponentFormula(
    "C5", "Cooked-white buttercream", "cooked-white-buttercream", 615.0, density_g_ml=0.80
)
S1 = ComponentFormula("S1", "Lemon syrup", "syrup", 220.0)
PARTS = {part.name: part for part in (F1, F3, F4, F7, C1, C2, C3, C4, C5, S1)}


def plan_of(text: str) -> TortePlan:
    """A plan that leaves nothing open."""
    read = read_torte(text)
    assert read.problems == (), read.problems
    return read.value


def demo_plan(name: str) -> TortePlan:
    """A plan of the demo studio."""
    folder = files("krume").joinpath("data", "demo", "tortes")
    return plan_of(folder.joinpath(f"{name}.txt").read_text("utf-8"))


def built(plan: TortePlan, **changed: ComponentFormula) -> Torte:
    """A torte about which nothing is asked."""
    read = build_torte(plan, {**PARTS, **changed})
    assert not isinstance(read, Infeasible), read
    assert read.problems == (), read.problems
    return read.value


def torte_of(text: str, **changed: ComponentFormula) -> Torte:
    """A torte of a plan's lines below a name."""
    return built(plan_of(f"A torte\n\n{text}"), **changed)


def demo(name: str) -> Torte:
    """A torte of the demo studio."""
    return built(demo_plan(name))


def without_density(part: ComponentFormula) -> ComponentFormula:
    """A cream of which nobody knows what it weighs."""
    return replace(part, density_g_ml=None)


def tree(drawing: str) -> Element:
    """A drawing's elements; it is made here, so nothing foreign is read."""
    return ElementTree.fromstring(drawing)  # noqa: S314
