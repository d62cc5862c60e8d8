"""What goes on paper and out: bench cards as values, pages, PDF and JSON."""

from krume.publish.bake_drawing import BakeCourse, bake_drawing, bake_sentence
from krume.publish.bake_strip import ModelBake, bake_strip
from krume.publish.beside_drawing import NamedCourse, beside_drawing
from krume.publish.blend_card import Blend, BlendLot, BlendPart, blend_leaf
from krume.publish.card import BenchCard, CardRow, Hold, Imprint, bench_card, missing_signs
from krume.publish.cold_log import ColdLog, CoolingLimits, LoggedCooling, cold_log_leaf
from krume.publish.drawing_file import drawing_file
from krume.publish.facts import Fact
from krume.publish.heat_drawing import HeatCurves, heat_drawing, heat_sentence
from krume.publish.html import IndexPage, SheetFile, card_html, index_html, plan_html, sheet_css
from krume.publish.label_facts import FactsBox, FactsColumn, FactsRow
from krume.publish.label_layout import LabelLayout, label_layout, label_layouts
from krume.publish.label_print import label_html, label_pdf
from krume.publish.label_qr import qr_words
from krume.publish.label_sheet import (
    LabelSheet,
    NetWords,
    PanelLine,
    PanelTable,
    least_letter_mm,
    least_type_pt,
    missing_label_signs,
)
from krume.publish.label_text import label_json, label_text
from krume.publish.leaf import (
    Leaf,
    LeafPart,
    LeafTable,
    leaf_dict,
    leaf_html,
    leaf_pdf,
    missing_leaf_signs,
)
from krume.publish.moisture_drawing import WaterCourse, WaterLine, moisture_drawing
from krume.publish.oven_drawing import OvenBar, oven_drawing, oven_sentence
from krume.publish.pdf import PAPERS, PLAN_PAPERS, card_pdf, plan_pdf
from krume.publish.plot import at_minute
from krume.publish.section_drawing import (
    CakeCut,
    cuts_described,
    cuts_drawing,
    cuts_sentence,
    cuts_stretch,
)
from krume.publish.sheet import card_dict
from krume.publish.stacked_drawing import Shown, stacked_drawing
from krume.publish.swatch_drawing import (
    SCREEN_NOTE,
    TopAt,
    swatch_drawing,
    swatch_sentence,
    top_colour,
)
from krume.publish.timetable import (
    Day,
    DayMark,
    DayTask,
    Places,
    ShopGroup,
    ShopRow,
    TimetableSheet,
    missing_timetable_signs,
    timetable_dict,
)
from krume.publish.timetable_drawing import day_drawing
from krume.publish.timetable_print import timetable_html, timetable_pdf
from krume.publish.torte_plan import NeedRow, TorteSheet, missing_plan_signs, torte_sheet
from krume.publish.torte_words import plan_dict

__all__ = [
    "PAPERS",
    "PLAN_PAPERS",
    "SCREEN_NOTE",
    "BakeCourse",
    "BenchCard",
    "Blend",
    "BlendLot",
    "BlendPart",
    "CakeCut",
    "CardRow",
    "ColdLog",
    "CoolingLimits",
    "Day",
    "DayMark",
    "DayTask",
    "Fact",
    "FactsBox",
    "FactsColumn",
    "FactsRow",
    "HeatCurves",
    "Hold",
    "Imprint",
    "IndexPage",
    "LabelLayout",
    "LabelSheet",
    "Leaf",
    "LeafPart",
    "LeafTable",
    "LoggedCooling",
    "ModelBake",
    "NamedCourse",
    "NeedRow",
    "NetWords",
    "OvenBar",
    "PanelLine",
    "PanelTable",
    "Places",
    "SheetFile",
    "ShopGroup",
    "ShopRow",
    "Shown",
    "TimetableSheet",
    "TopAt",
    "TorteSheet",
    "WaterCourse",
    "WaterLine",
    "at_minute",
    "bake_drawing",
    "bake_sentence",
    "bake_strip",
    "bench_card",
    "beside_drawing",
    "blend_leaf",
    "card_dict",
    "card_html",
    "card_pdf",
    "cold_log_leaf",
    "cuts_described",
    "cuts_drawing",
    "cuts_sentence",
    "cuts_stretch",
    "day_drawing",
    "drawing_file",
    "heat_drawing",
    "heat_sentence",
    "index_html",
    "label_html",
    "label_json",
    "label_layout",
    "label_layouts",
    "label_pdf",
    "label_text",
    "leaf_dict",
    "leaf_html",
    "leaf_pdf",
    "least_letter_mm",
    "least_type_pt",
    "missing_label_signs",
    "missing_leaf_signs",
    "missing_plan_signs",
    "missing_signs",
    "missing_timetable_signs",
    "moisture_drawing",
    "oven_drawing",
    "oven_sentence",
    "plan_dict",
    "plan_html",
    "plan_pdf",
    "qr_words",
    "sheet_css",
    "stacked_drawing",
    "swatch_drawing",
    "swatch_sentence",
    "timetable_dict",
    "timetable_html",
    "timetable_pdf",
    "top_colour",
    "torte_sheet",
]
