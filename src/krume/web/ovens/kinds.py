"""The tables of this page: tins, readings of an oven thermometer, finished bakes."""

from collections.abc import Mapping

from krume.usecases import tin_words
from krume.web.tables.kinds import Field, TableKind


def _tin_cells(typed: Mapping[str, str]) -> dict[str, str]:
    """The water goes into the tin's own text."""
    cells = {name: value for name, value in typed.items() if name != "water_g"}
    return {**cells, "tin": tin_words(cells.get("tin", "").strip(), typed.get("water_g", ""))}


TINS = TableKind(
    place="tins.csv",
    address="/ovens/tins",
    home="/ovens#tins",
    section="ovens",
    title="Tins",
    word="tin",
    required=("tin", "count"),
    fields=(
        Field("tin", "Tin", "inside: round 20 x 7 cm; dark sheet 13x9 in, 1 in high; tube 20 x 10 "
              "cm, hole 6 cm", is_required=True,
              codes=("tin-not-read", "tin-shape", "tin-mass", "tin-two-sizes", "tin-rim-narrow")),
        Field("count", "How many", "1", is_required=True, codes=("tin-count-unread",)),
        Field("status", "Known how", "measured where you measured it yourself",
              ("declared", "measured", "assumed", "invented")),
    ),
    extra=(
        Field("water_g", "Filled with water it weighs",
              "tin on the scale, tare, fill to the rim: 2186", unit="g"),
    ),
    cells=_tin_cells,
    offers_words=True,
)  # fmt: skip

_SURE = Field("sure", "Looked at again", "yes: it is right, however odd it looks", ("yes", "no"),
              codes=("oven-sure",))  # fmt: skip
_SHELF = Field("shelf", "Shelf", "the middle where it is left empty", ("low", "middle", "high"),
               codes=("oven-shelf",))  # fmt: skip
_FAN = Field("fan", "With the fan", "as you always bake where it is left empty", ("yes", "no"),
             codes=("oven-fan",))  # fmt: skip
_STATUS = Field("status", "Known how", "", ("measured", "declared", "invented"),
                codes=("oven-status",))  # fmt: skip
_DAY = Field("day", "Day", "2027-06-10", codes=("oven-day",))
_OVEN = Field("oven", "Oven", "your own where it is left empty")
_NOTE = Field("note", "Note")

READINGS = TableKind(
    place="oven_readings.csv",
    address="/ovens/readings",
    home="/ovens#oven",
    section="ovens",
    title="Readings",
    word="reading",
    required=("dial_c", "read_c"),
    fields=(
        Field("dial_c", "Dial", "what it was set to: 160, or 325 F", unit="°C", is_required=True,
              codes=("dial-unread", "dial-missing", "dial-unit")),
        Field("read_c", "What the thermometer showed", "a few looks over ten minutes: 148; 152; "
              "145", unit="°C", is_required=True, codes=("reading-unread", "reading-missing")),
        Field("after_min", "Minutes since switching on", "40", unit="min", codes=("after-unread",)),
        _FAN, _SHELF, _DAY, _OVEN, _SURE, _STATUS, _NOTE,
    ),
    offers_words=True,
)  # fmt: skip

BAKES = TableKind(
    place="bakes.csv",
    address="/ovens/bakes",
    home="/ovens#oven",
    section="ovens",
    title="Finished bakes",
    word="bake",
    required=("formula", "done_min"),
    fields=(
        Field("formula", "Formula", "F1", is_required=True,
              codes=("formula-missing", "formula-unknown", "formula-open")),
        Field("tin", "Tin", "the formula's own where it is left empty: round 20 x 7 cm",
              codes=("tin-missing", "tin-unread")),
        Field("batter_g", "Batter in the tin", "540; the formula's whole where it is left empty",
              unit="g", codes=("batter-unread", "bake-rim")),
        Field("dial_c", "Dial", "what it was set to: 170, or 325 F", unit="°C",
              codes=("dial-unread", "dial-missing", "dial-unit", "bake-oven")),
        Field("done_min", "Done at", "38", unit="min", is_required=True,
              codes=("minutes-unread", "minutes-missing", "bake-minutes")),
        Field("not_done_min", "Not done yet at", "34: the last look before", unit="min",
              codes=("not-done-unread", "bake-order")),
        Field("core_c", "Core at the end", "95", unit="°C",
              codes=("core-unread", "core-missing", "core-unit", "bake-core")),
        Field("test", "What called it done", "", ("probe", "skewer", "colour"),
              codes=("bake-test",)),
        Field("density_g_ml", "Batter, a millilitre weighs", "0.48, by a level cup",
              unit="g", codes=("density-unread", "density-missing")),
        _FAN, _SHELF, _DAY, _OVEN,
        Field("oven_c", "True temperature", "where a thermometer stood in it", unit="°C"),
        _SURE, _STATUS, _NOTE,
    ),
    offers_words=True,
)  # fmt: skip
