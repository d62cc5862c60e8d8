"""What the person wants done: one function for each intent, and the only door for the edges.

Each name is imported when it is first asked for, so that a small question stays a quick one.
"""

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from krume.evidence import data_version
    from krume.usecases.answer import Answer, Asked, Explanation, QuestionError
    from krume.usecases.as_json import Json, plain
    from krume.usecases.bake import BakeWish, bake_formula
    from krume.usecases.bake_result import BakeLine, BakeLines, BakeResult
    from krume.usecases.blend import choose_blend
    from krume.usecases.blend_request import BlendWish
    from krume.usecases.blend_result import BlendLine, BlendOther, BlendPremix, BlendResult
    from krume.usecases.book import BookResult, init_book, load_demo
    from krume.usecases.book_care import (
        back_up_book,
        export_book,
        import_book,
        restore_book,
        verify_book,
    )
    from krume.usecases.build import build_torte
    from krume.usecases.build_result import BuildLayer, BuildResult
    from krume.usecases.calc import SumList, SumRow, answer_sum, list_sums
    from krume.usecases.check import CheckBand, CheckFinding, CheckResult, check_formula
    from krume.usecases.cost import CostWish, cost_of
    from krume.usecases.cost_result import CostComponent, CostResult
    from krume.usecases.eggs import EggsWish, eggs_of
    from krume.usecases.eggs_result import EggBuy, EggPack, EggRow, EggsResult
    from krume.usecases.health import Health, health_of
    from krume.usecases.keep import KeepPart, KeepResult, keep_of
    from krume.usecases.label import LabelWish, label_of
    from krume.usecases.label_paper import label_sheets
    from krume.usecases.label_result import LabelOf, LabelPanel, LabelResult
    from krume.usecases.matters import CheckLine, CheckRanking, CheckTwice
    from krume.usecases.own_formulas import CheckOwn
    from krume.usecases.plan import PlanWish, plan_orders
    from krume.usecases.plan_result import PlanLoad, PlanResult, PlanTask
    from krume.usecases.read import (
        ReadBaked,
        ReadLine,
        ReadOven,
        ReadResult,
        ReadUse,
        TextLineRow,
        read_formula,
    )
    from krume.usecases.schema import ANSWERS, answer_type, command_schema
    from krume.usecases.sheet import make_sheets
    from krume.usecases.sheet_result import SheetFile, SheetResult
    from krume.usecases.size import SizeWish, size_formula
    from krume.usecases.size_result import SizeOption, SizeResult
    from krume.usecases.slip import SlipWish, rescue_slip
    from krume.usecases.slip_result import SlipOption, SlipResult
    from krume.usecases.texts import (
        LineChange,
        TextNow,
        TextRow,
        TextVersion,
        answered_text,
        bring_back,
        delete_text,
        differences,
        save_text,
        text_now,
        texts_of,
        versions_of,
    )
    from krume.usecases.vary import VaryWish, vary_each, vary_formula
    from krume.usecases.vary_family import FamilyWish, vary_children
    from krume.usecases.vary_result import VaryChange, VaryResult
    from krume.usecases.verify import verify_sheets

_HOMES = {
    "ANSWERS": "usecases.schema",
    "Answer": "usecases.answer",
    "Asked": "usecases.answer",
    "BakeLine": "usecases.bake_result",
    "BakeLines": "usecases.bake_result",
    "BakeResult": "usecases.bake_result",
    "BakeWish": "usecases.bake",
    "BlendLine": "usecases.blend_result",
    "BlendOther": "usecases.blend_result",
    "BlendPremix": "usecases.blend_result",
    "BlendResult": "usecases.blend_result",
    "BlendWish": "usecases.blend_request",
    "BookResult": "usecases.book",
    "BuildLayer": "usecases.build_result",
    "BuildResult": "usecases.build_result",
    "CheckBand": "usecases.check",
    "CheckFinding": "usecases.check",
    "CheckLine": "usecases.matters",
    "CheckOwn": "usecases.own_formulas",
    "CheckRanking": "usecases.matters",
    "CheckResult": "usecases.check",
    "CheckTwice": "usecases.matters",
    "CostComponent": "usecases.cost_result",
    "CostResult": "usecases.cost_result",
    "CostWish": "usecases.cost",
    "EggBuy": "usecases.eggs_result",
    "EggPack": "usecases.eggs_result",
    "EggRow": "usecases.eggs_result",
    "EggsResult": "usecases.eggs_result",
    "EggsWish": "usecases.eggs",
    "Explanation": "usecases.answer",
    "FamilyWish": "usecases.vary_family",
    "Health": "usecases.health",
    "Json": "usecases.as_json",
    "KeepPart": "usecases.keep",
    "KeepResult": "usecases.keep",
    "LabelOf": "usecases.label_result",
    "LabelPanel": "usecases.label_result",
    "LabelResult": "usecases.label_result",
    "LabelWish": "usecases.label",
    "LineChange": "usecases.texts",
    "PlanLoad": "usecases.plan_result",
    "PlanResult": "usecases.plan_result",
    "PlanTask": "usecases.plan_result",
    "PlanWish": "usecases.plan",
    "QuestionError": "usecases.answer",
    "ReadBaked": "usecases.read",
    "ReadLine": "usecases.read",
    "ReadOven": "usecases.read",
    "ReadResult": "usecases.read",
    "ReadUse": "usecases.read",
    "SheetFile": "usecases.sheet_result",
    "SheetResult": "usecases.sheet_result",
    "SizeOption": "usecases.size_result",
    "SizeResult": "usecases.size_result",
    "SizeWish": "usecases.size",
    "SlipOption": "usecases.slip_result",
    "SlipResult": "usecases.slip_result",
    "SlipWish": "usecases.slip",
    "SumList": "usecases.calc",
    "SumRow": "usecases.calc",
    "TextLineRow": "usecases.read",
    "TextNow": "usecases.texts",
    "TextRow": "usecases.texts",
    "TextVersion": "usecases.texts",
    "VaryChange": "usecases.vary_result",
    "VaryResult": "usecases.vary_result",
    "VaryWish": "usecases.vary",
    "answer_sum": "usecases.calc",
    "answer_type": "usecases.schema",
    "answered_text": "usecases.texts",
    "back_up_book": "usecases.book_care",
    "bake_formula": "usecases.bake",
    "bring_back": "usecases.texts",
    "build_torte": "usecases.build",
    "check_formula": "usecases.check",
    "choose_blend": "usecases.blend",
    "command_schema": "usecases.schema",
    "cost_of": "usecases.cost",
    "data_version": "evidence",
    "delete_text": "usecases.texts",
    "differences": "usecases.texts",
    "eggs_of": "usecases.eggs",
    "export_book": "usecases.book_care",
    "health_of": "usecases.health",
    "import_book": "usecases.book_care",
    "init_book": "usecases.book",
    "keep_of": "usecases.keep",
    "label_of": "usecases.label",
    "label_sheets": "usecases.label_paper",
    "list_sums": "usecases.calc",
    "load_demo": "usecases.book",
    "make_sheets": "usecases.sheet",
    "plain": "usecases.as_json",
    "plan_orders": "usecases.plan",
    "read_formula": "usecases.read",
    "rescue_slip": "usecases.slip",
    "restore_book": "usecases.book_care",
    "save_text": "usecases.texts",
    "size_formula": "usecases.size",
    "text_now": "usecases.texts",
    "texts_of": "usecases.texts",
    "vary_children": "usecases.vary_family",
    "vary_each": "usecases.vary",
    "vary_formula": "usecases.vary",
    "verify_book": "usecases.book_care",
    "verify_sheets": "usecases.verify",
    "versions_of": "usecases.texts",
}

__all__ = [
    "ANSWERS",
    "Answer",
    "Asked",
    "BakeLine",
    "BakeLines",
    "BakeResult",
    "BakeWish",
    "BlendLine",
    "BlendOther",
    "BlendPremix",
    "BlendResult",
    "BlendWish",
    "BookResult",
    "BuildLayer",
    "BuildResult",
    "CheckBand",
    "CheckFinding",
    "CheckLine",
    "CheckOwn",
    "CheckRanking",
    "CheckResult",
    "CheckTwice",
    "CostComponent",
    "CostResult",
    "CostWish",
    "EggBuy",
    "EggPack",
    "EggRow",
    "EggsResult",
    "EggsWish",
    "Explanation",
    "FamilyWish",
    "Health",
    "Json",
    "KeepPart",
    "KeepResult",
    "LabelOf",
    "LabelPanel",
    "LabelResult",
    "LabelWish",
    "LineChange",
    "PlanLoad",
    "PlanResult",
    "PlanTask",
    "PlanWish",
    "QuestionError",
    "ReadBaked",
    "ReadLine",
    "ReadOven",
    "ReadResult",
    "ReadUse",
    "SheetFile",
    "SheetResult",
    "SizeOption",
    "SizeResult",
    "SizeWish",
    "SlipOption",
    "SlipResult",
    "SlipWish",
    "SumList",
    "SumRow",
    "TextLineRow",
    "TextNow",
    "TextRow",
    "TextVersion",
    "VaryChange",
    "VaryResult",
    "VaryWish",
    "answer_sum",
    "answer_type",
    "answered_text",
    "back_up_book",
    "bake_formula",
    "bring_back",
    "build_torte",
    "check_formula",
    "choose_blend",
    "command_schema",
    "cost_of",
    "data_version",
    "delete_text",
    "differences",
    "eggs_of",
    "export_book",
    "health_of",
    "import_book",
    "init_book",
    "keep_of",
    "label_of",
    "label_sheets",
    "list_sums",
    "load_demo",
    "make_sheets",
    "plain",
    "plan_orders",
    "read_formula",
    "rescue_slip",
    "restore_book",
    "save_text",
    "size_formula",
    "text_now",
    "texts_of",
    "vary_children",
    "vary_each",
    "vary_formula",
    "verify_book",
    "verify_sheets",
    "versions_of",
]


def __getattr__(name: str) -> object:
    """A usecase, its module imported now."""
    if name not in _HOMES:
        message = f"module {__name__!r} has no attribute {name!r}"
        raise AttributeError(message)
    return getattr(import_module(f"krume.{_HOMES[name]}"), name)
