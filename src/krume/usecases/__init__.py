"""What the person wants done: one function for each intent, and the only door for the edges.

Each name is imported when it is first asked for, so that a small question stays a quick one.
"""

from importlib import import_module
from typing import TYPE_CHECKING

from krume.usecases.homes import HOMES

# Names in packed lines: a door of so many stays one page.
# fmt: off
# isort: off
if TYPE_CHECKING:
    from krume.evidence import data_version
    from krume.keep import Difference
    from krume.label import MOST_SLICES
    from krume.store import KeptStep, KeptTrial, one_look
    from krume.usecases.asking.answer import Answer, Asked, Explanation, QuestionError
    from krume.usecases.asking.as_json import Json, plain
    from krume.usecases.bake.bake import bake_formula
    from krume.usecases.bake.more import bake_with_more
    from krume.usecases.bake.other import OTHERWISE
    from krume.usecases.bake.page import BakePage, bake_shown
    from krume.usecases.bake.picture import bake_svg, draw_bake
    from krume.usecases.bake.places import BakePlaces, places_to_bake
    from krume.usecases.bake.result import BakeBeside, BakeLine, BakeLines, BakeResult, BakeUnknown
    from krume.usecases.bake.wish import BakeWish
    from krume.usecases.bench.bench import (
        begin_at_bench, bench_of, ground_at_bench, say_at_bench, set_aside, weighing_of,
    )
    from krume.usecases.bench.clocks import (
        REASONS, BenchClock, BenchClocks, clocks_at_bench, clocks_beside, start_at_bench,
        stop_at_bench,
    )
    from krume.usecases.bench.cup import CupNow, cup_at_bench, cup_limits, keep_cup
    from krume.usecases.bench.heard import ClockSaid, CupSaid, EndSaid, hear_at_bench, moment_said
    from krume.usecases.bench.result import Bench, BenchSaid
    from krume.usecases.bench.state import Spot
    from krume.usecases.bench.ways import BenchSlip, BenchWay
    from krume.usecases.blend.blend import choose_blend
    from krume.usecases.blend.hand import BlendHand, flours_at_hand
    from krume.usecases.blend.request import BlendWish
    from krume.usecases.blend.result import (
        BlendGluten, BlendLine, BlendOther, BlendPremix, BlendRecord, BlendResult,
    )
    from krume.usecases.book.book import BookResult, init_book, load_demo
    from krume.usecases.book.care import (
        back_up_book, export_book, import_book, restore_book, verify_book,
    )
    from krume.usecases.torte.build import build_torte
    from krume.usecases.torte.fill import FillWish, fill_ring
    from krume.usecases.torte.fill_result import FillResult
    from krume.usecases.torte.in_time import TorteInTime, build_in_time, torte_in_time
    from krume.usecases.torte.moisture_result import (
        MoistureBase, MoisturePart, MoistureResult, MoistureUntil,
    )
    from krume.usecases.torte.standing_result import StandingPart, StandingResult
    from krume.usecases.torte.result import BuildLayer, BuildResult
    from krume.usecases.calc import SumList, SumRow, answer_sum, list_sums
    from krume.usecases.formula.check import CheckBand, CheckFinding, CheckResult, check_formula
    from krume.usecases.class_day import ClassCream, ClassDay, ClassKits, ClassLoads, SeatNote
    from krume.usecases.bake.cooling import CoolingResult, RollWindow, cooling_after
    from krume.usecases.bake.cooling_page import cooling_of
    from krume.usecases.bake.core_now import CoreNow, core_left
    from krume.usecases.cost.cost import CostWish, cost_of
    from krume.usecases.cost.result import CostComponent, CostResult
    from krume.usecases.custard_page import CustardLog, CustardShown, custard_shown
    from krume.usecases.keep.custard_way import KeepCooling, KeepDepth, KeepVessel, custard_way
    from krume.usecases.plan.day_plan import BookPlan, DayView, PlannedDay, day_view, plan_day_today
    from krume.usecases.eggs.eggs import EggsWish, eggs_of
    from krume.usecases.eggs.result import EggBuy, EggPack, EggRow, EggsResult
    from krume.usecases.health import Health, health_of
    from krume.usecases.pantry.ingredient_page import (
        Content, IngredientNow, IngredientsFound, NamedIngredient, ingredient_now,
        ingredients_found,
    )
    from krume.usecases.keep.frozen_way import KeepFreezePart, KeepFreezing
    from krume.usecases.keep.heated import KeepHeat
    from krume.usecases.keep.road_way import KeepRoad
    from krume.usecases.keep.shown import differences_of, keep_shown
    from krume.usecases.keep.typed import typed_number
    from krume.usecases.keep.wished import KeepWish, keep_wished
    from krume.usecases.keep.fridge_off import FridgeWish, fridge_off
    from krume.usecases.keep.fridge_result import (
        FridgeGrams, FridgeOrder, FridgePart, FridgeRemake, FridgeResult, FridgeRule,
        FridgeThing,
    )
    from krume.usecases.keep.keep import (
        KeepPart, KeepPlace, KeepResult, keep_and_cool, keep_of,
    )
    from krume.usecases.label.label import LabelWish, label_of
    from krume.usecases.label.paper import label_sheets
    from krume.usecases.label.paper_sheet import PrintWish
    from krume.usecases.label.nutrition import NutritionWish
    from krume.usecases.label.result import (
        LabelCarbohydrate,
        LabelNutrition,
        LabelOf,
        LabelPanel,
        LabelResult,
        LabelRow,
    )
    from krume.usecases.oven.load_text import read_load
    from krume.usecases.formula.matters import CheckLine, CheckRanking, CheckTwice
    from krume.usecases.label_page import LayoutName, label_bytes, layout_names
    from krume.usecases.order_page import OrderPiece, OrderQuestion, OrderView, order_view
    from krume.usecases.sheets.order_sheets import (
        KeptSheet, SheetBytes, make_order_sheets, sheet_bytes, sheets_of_order,
    )
    from krume.usecases.sold.standing import OrderStanding, orders_of, standing_of, standings_of
    from krume.usecases.oven.oven import OvenMoved, OvenNext, OvenReady, OvenView, oven_view
    from krume.usecases.oven.at_bench import Awaited
    from krume.usecases.oven.choice import (
        OvenChoice, OvenChoices, choice_for_oven, others_if_in, oven_choices, tins_at_hand,
    )
    from krume.usecases.oven.load import Load
    from krume.usecases.oven.loads import (
        loads_now, probe_load, put_back, put_in, take_out, time_load,
    )
    from krume.usecases.oven.ovens_page import (
        OvenNow, OvensNow, TinRow, oven_now, oven_settings, ovens_now, save_oven, tin_words,
    )
    from krume.usecases.formula.own_formulas import CheckOwn
    from krume.usecases.own_oven.own_oven import KnownOven, known_oven
    from krume.usecases.own_oven.result import OvenRecordShown, OvenResult, OvenShown
    from krume.usecases.own_oven.shown import OvenWish, ovens_of, trial_counts
    from krume.usecases.pantry.page import (
        AskedTable, LotRow, PantryNow, RoomNow, asked_table, evidence_words, pantry_now, room_now,
    )
    from krume.usecases.pantry.stops import LotStop, OrderStopped, StockStop, Stops
    from krume.usecases.plan.plan import PlanWish, plan_orders
    from krume.usecases.plan.result import PlanLoad, PlanResult, PlanTask
    from krume.usecases.asking.read import (
        ReadBaked, ReadLine, ReadOven, ReadResult, ReadUse, TextLineRow, read_formula,
    )
    from krume.usecases.book.rows import (
        RowConflictError, RowNow, TableNow, add_row, delete_row, save_row, table_now,
    )
    from krume.usecases.schema import ANSWERS, answer_type, command_schema
    from krume.usecases.sheets.sheet import card_bytes, make_sheets
    from krume.usecases.sheets.result import SheetFile, SheetResult
    from krume.usecases.formula.size import SizeWish, size_formula
    from krume.usecases.formula.size_keep import (
        ParentNow, SizeChoice, is_new_size, keep_size, parent_now,
    )
    from krume.usecases.formula.size_result import SizeOption, SizeResult
    from krume.usecases.slip.slip import SlipWish, rescue_slip, slip_sheet
    from krume.usecases.slip.lines import SlipRow, slip_rows
    from krume.usecases.slip.result import SlipDeclined, SlipHeld, SlipOption, SlipResult
    from krume.usecases.book.studio_settings import (
        StudioSettings, save_settings, settings_now, settings_text, settings_wished, units_of,
    )
    from krume.usecases.book.studio_tins import keep_tins, tins_typed
    from krume.usecases.tables.questions import questions_of_table, row_questions
    from krume.usecases.tables.upload import TableChange, keep_table, table_change
    from krume.usecases.teach_page import TeachFormula, TeachHeat, TeachLine, TeachView, teach_view
    from krume.usecases.book.texts import (
        LineChange, TextNow, TextRow, TextVersion, answered_text, bring_back, delete_text,
        differences, save_text, text_now, texts_of, versions_of,
    )
    from krume.usecases.pantry.to_buy import ToBuy
    from krume.usecases.today import NextThing, Today, today_of
    from krume.usecases.oven.together import LoadWish, TogetherWish, bakes_together
    from krume.usecases.oven.together_result import TogetherLoad, TogetherResult
    from krume.usecases.torte.heights import (
        Handle, Heights, HeightsNow, asked_with_heights, heights_of, keep_heights,
    )
    from krume.usecases.torte_page import TortePage, TorteRow, TorteSaid, TorteUse, torte_shown
    from krume.usecases.bench.trials import (
        TrialRow, drafted, edit_trial, end_as_trial, trial_limits, trial_numbers, trial_row,
        trial_rows, trial_sheet,
    )
    from krume.usecases.trace.bags import BagLine, Bags, BagsSaid, marks_said
    from krume.usecases.trace.codes import lot_code, lot_codes
    from krume.usecases.trace.page import (
        BatchNow, CakeNow, TraceHome, batch_now, cake_now, trace_home, trial_bags,
    )
    from krume.usecases.trace.record import (
        Making, correct_batch, correct_cake, earlier_batches, last_code, making_of, write_making,
        write_trial_batch,
    )
    from krume.usecases.trace.result import (
        TraceBatch, TraceCake, TraceChange, TraceFile, TraceLine, TraceRecall, TraceResult,
    )
    from krume.usecases.trace.trace import TraceWish, trace_of
    from krume.usecases.vary.vary import VaryWish, vary_each, vary_formula
    from krume.usecases.vary.choices import VaryChoices, choices_of
    from krume.usecases.vary.family import FamilyWish, vary_children
    from krume.usecases.vary.result import VaryChange, VaryChild, VaryResult
    from krume.usecases.label.gluten import GlutenWish, gluten_of
    from krume.usecases.label.gluten_result import (
        GlutenLot, GlutenPaper, GlutenPiece, GlutenResult, GlutenRoom,
    )
    from krume.usecases.sheets.gluten_page import gluten_page_bytes, gluten_sheets
    from krume.usecases.sheets.trace_lists import list_bytes, trace_lists
    from krume.usecases.pantry.room_list import (
        RoomListResult, RoomThing, room_list_now, room_list_of, say_of_room,
    )
    from krume.usecases.sheets.verify import verify_sheets

__all__ = [
    "ANSWERS", "MOST_SLICES", "OTHERWISE", "REASONS", "Answer", "Asked", "AskedTable", "Awaited",
    "BagLine", "Bags", "BagsSaid", "BakeBeside", "BakeLine", "BakeLines", "BakePage", "BakePlaces",
    "BakeResult", "BakeUnknown", "BakeWish", "BatchNow", "Bench", "BenchClock", "BenchClocks",
    "BenchSaid", "BenchSlip", "BenchWay", "BlendGluten", "BlendHand", "BlendLine", "BlendOther",
    "BlendPremix", "BlendRecord", "BlendResult", "BlendWish", "BookPlan", "BookResult",
    "BuildLayer", "BuildResult", "CakeNow", "CheckBand", "CheckFinding", "CheckLine", "CheckOwn",
    "CheckRanking", "CheckResult", "CheckTwice", "ClassCream", "ClassDay", "ClassKits",
    "ClassLoads", "ClockSaid", "Content", "CoolingResult", "CoreNow", "CostComponent", "CostResult",
    "CostWish", "CupNow", "CupSaid", "CustardLog", "CustardShown", "DayView", "Difference",
    "EggBuy", "EggPack", "EggRow", "EggsResult", "EggsWish", "EndSaid", "Explanation", "FamilyWish",
    "FillResult", "FillWish", "FridgeGrams", "FridgeOrder", "FridgePart", "FridgeRemake",
    "FridgeResult", "FridgeRule", "FridgeThing", "FridgeWish", "GlutenLot", "GlutenPaper",
    "GlutenPiece", "GlutenResult", "GlutenRoom", "GlutenWish", "Handle", "Health", "Heights",
    "HeightsNow", "IngredientNow", "IngredientsFound", "Json", "KeepCooling", "KeepDepth",
    "KeepFreezePart", "KeepFreezing", "KeepHeat", "KeepPart", "KeepPlace", "KeepResult", "KeepRoad",
    "KeepVessel", "KeepWish", "KeptSheet", "KeptStep", "KeptTrial", "KnownOven",
    "LabelCarbohydrate", "LabelNutrition", "LabelOf", "LabelPanel", "LabelResult", "LabelRow",
    "LabelWish", "LayoutName", "LineChange", "Load", "LoadWish", "LotRow", "LotStop", "Making",
    "MoistureBase", "MoisturePart", "MoistureResult", "MoistureUntil", "NamedIngredient",
    "NextThing", "NutritionWish", "OrderPiece", "OrderQuestion", "OrderStanding", "OrderStopped",
    "OrderView", "OvenChoice", "OvenChoices", "OvenMoved", "OvenNext", "OvenNow", "OvenReady",
    "OvenRecordShown", "OvenResult", "OvenShown", "OvenView", "OvenWish", "OvensNow", "PantryNow",
    "ParentNow", "PlanLoad", "PlanResult", "PlanTask", "PlanWish", "PlannedDay", "PrintWish",
    "QuestionError", "ReadBaked", "ReadLine", "ReadOven", "ReadResult", "ReadUse", "RollWindow",
    "RoomListResult", "RoomNow", "RoomThing", "RowConflictError", "RowNow", "SeatNote",
    "SheetBytes", "SheetFile", "SheetResult", "SizeChoice", "SizeOption", "SizeResult", "SizeWish",
    "SlipDeclined", "SlipHeld", "SlipOption", "SlipResult", "SlipRow", "SlipWish", "Spot",
    "StandingPart", "StandingResult", "StockStop", "Stops", "StudioSettings", "SumList", "SumRow",
    "TableChange", "TableNow", "TeachFormula", "TeachHeat", "TeachLine", "TeachView", "TextLineRow",
    "TextNow", "TextRow", "TextVersion", "TinRow", "ToBuy", "Today", "TogetherLoad",
    "TogetherResult", "TogetherWish", "TorteInTime", "TortePage", "TorteRow", "TorteSaid",
    "TorteUse", "TraceBatch", "TraceCake", "TraceChange", "TraceFile", "TraceHome", "TraceLine",
    "TraceRecall", "TraceResult", "TraceWish", "TrialRow", "VaryChange", "VaryChild", "VaryChoices",
    "VaryResult", "VaryWish", "add_row", "answer_sum", "answer_type", "answered_text",
    "asked_table", "asked_with_heights", "back_up_book", "bake_formula", "bake_shown", "bake_svg",
    "bake_with_more", "bakes_together", "batch_now", "begin_at_bench", "bench_of", "bring_back",
    "build_in_time", "build_torte", "cake_now", "card_bytes", "check_formula", "choice_for_oven",
    "choices_of", "choose_blend", "clocks_at_bench", "clocks_beside", "command_schema",
    "cooling_after", "cooling_of", "core_left", "correct_batch", "correct_cake", "cost_of",
    "cup_at_bench", "cup_limits", "custard_shown", "custard_way", "data_version", "day_view",
    "delete_row", "delete_text", "differences", "differences_of", "drafted", "draw_bake",
    "earlier_batches", "edit_trial", "eggs_of", "end_as_trial", "evidence_words", "export_book",
    "fill_ring", "flours_at_hand", "fridge_off", "gluten_of", "gluten_page_bytes", "gluten_sheets",
    "ground_at_bench", "health_of", "hear_at_bench", "heights_of", "import_book", "ingredient_now",
    "ingredients_found", "init_book", "is_new_size", "keep_and_cool", "keep_cup", "keep_heights",
    "keep_of", "keep_shown", "keep_size", "keep_table", "keep_tins", "keep_wished", "known_oven",
    "label_bytes", "label_of", "label_sheets", "last_code", "layout_names", "list_bytes",
    "list_sums", "load_demo", "loads_now", "lot_code", "lot_codes", "make_order_sheets",
    "make_sheets", "making_of", "marks_said", "moment_said", "one_look", "order_view", "orders_of",
    "others_if_in", "oven_choices", "oven_now", "oven_settings", "oven_view", "ovens_now",
    "ovens_of", "pantry_now", "parent_now", "places_to_bake", "plain", "plan_day_today",
    "plan_orders", "probe_load", "put_back", "put_in", "questions_of_table", "read_formula",
    "read_load", "rescue_slip", "restore_book", "room_list_now", "room_list_of", "room_now",
    "row_questions", "save_oven", "save_row", "save_settings", "save_text", "say_at_bench",
    "say_of_room", "set_aside", "settings_now", "settings_text", "settings_wished", "sheet_bytes",
    "sheets_of_order", "size_formula", "slip_rows", "slip_sheet", "standing_of", "standings_of",
    "start_at_bench", "stop_at_bench", "table_change", "table_now", "take_out", "teach_view",
    "text_now", "texts_of", "time_load", "tin_words", "tins_at_hand", "tins_typed", "today_of",
    "torte_in_time", "torte_shown", "trace_home", "trace_lists", "trace_of", "trial_bags",
    "trial_counts", "trial_limits", "trial_numbers", "trial_row", "trial_rows", "trial_sheet",
    "typed_number", "units_of", "vary_children", "vary_each", "vary_formula", "verify_book",
    "verify_sheets", "versions_of", "weighing_of", "write_making", "write_trial_batch",
]
# fmt: on


def __getattr__(name: str) -> object:
    """A usecase, its module imported now."""
    if name not in HOMES:
        message = f"module {__name__!r} has no attribute {name!r}"
        raise AttributeError(message)
    return getattr(import_module(f"krume.{HOMES[name]}"), name)
