"""The words people use for tins: shapes, materials, and what a number beside a word means."""

SHAPE_WORDS: dict[str, str] = {
    "round": "round", "rund": "round", "runde": "round", "rundes": "round", "runder": "round",
    "rounds": "round", "circular": "round", "tortenform": "round", "sandwich": "round",
    "springform": "springform", "springforms": "springform", "spring-form": "springform",
    "square": "square", "quadratisch": "square", "quadratische": "square",
    "sheet": "sheet", "sheets": "sheet", "blech": "sheet", "backblech": "sheet",
    "bleche": "sheet", "rectangular": "sheet", "rectangle": "sheet", "oblong": "sheet",
    "rechteckig": "sheet", "rechteckige": "sheet", "traybake": "sheet", "roulade": "sheet",
    "brownie": "sheet", "jelly-roll": "sheet", "swiss-roll": "sheet",
    "loaf": "loaf", "loaves": "loaf", "kastenform": "loaf", "kasten": "loaf",
    "kastenkuchenform": "loaf", "königskuchenform": "loaf", "bread": "loaf",
    "ring": "ring", "rings": "ring", "hoop": "ring", "tart-ring": "ring", "cake-ring": "ring",
    "tortenring": "ring", "backring": "ring",
    "ring-mould": "ring-mould", "ring-moulds": "ring-mould", "ringmould": "ring-mould",
    "savarin": "ring-mould", "kranzform": "ring-mould", "ringform": "ring-mould",
    "tube": "tube", "tubes": "tube", "chiffon": "tube", "angel": "tube", "rohrform": "tube",
    "rohrbodenform": "tube", "gugelhupf": "tube", "gugelhupfform": "tube",
    "napfkuchenform": "tube", "bundt": "tube", "kugelhopf": "tube", "fluted": "tube",
    "skillet": "round", "pfanne": "round", "pie": "round", "tart": "round", "quiche": "round",
    "flan": "round", "obstbodenform": "round", "tarteform": "round",
    "tray": "tray", "trays": "tray", "muffin": "tray", "muffinform": "tray",
    "muffinblech": "tray", "cupcake": "tray", "bun": "tray",
}  # fmt: skip

# Words that speak of more than one round tin.
MANY_ROUND = frozenset({"rounds", "springforms"})

FLUTED = frozenset({"gugelhupf", "gugelhupfform", "napfkuchenform", "bundt", "kugelhopf", "fluted"})

PHRASES: tuple[tuple[str, str], ...] = (
    ("ring mould", "ring-mould"), ("ring mold", "ring-mould"), ("ring-mold", "ring-mould"),
    ("half torus", "ring-mould"), ("half-torus", "ring-mould"),
    ("tart ring", "tart-ring"), ("cake ring", "cake-ring"), ("spring form", "springform"),
    ("jelly roll", "jelly-roll"), ("swiss roll", "swiss-roll"), ("roll sheet", "sheet"),
    ("angel food", "angel"), ("baking sheet", "sheet"), ("baking tray", "sheet"),
    ("sheet tray", "sheet"), ("stainless steel", "steel"), ("dark steel", "dark"),
    ("not greased", "ungreased"), ("nicht gefettet", "ungreased"), ("non-stick", "nonstick"),
    ("loose bottom", "loose-bottomed"), ("removable bottom", "loose-bottomed"),
    ("loser boden", "loose-bottomed"),
)  # fmt: skip

MATERIAL_WORDS: dict[str, str] = {
    "aluminium": "aluminium", "aluminum": "aluminium", "alu": "aluminium", "shiny": "aluminium",
    "steel": "steel", "stainless": "steel", "stahl": "steel", "edelstahl": "steel",
    "tinned": "steel", "weissblech": "steel", "weißblech": "steel",
    "dark": "dark", "black": "dark", "dunkel": "dark", "dunkle": "dark", "dunkles": "dark",
    "schwarz": "dark", "schwarzes": "dark", "schwarzblech": "dark",
    "glass": "glass", "glas": "glass", "glasform": "glass",
    "ceramic": "ceramic", "stoneware": "ceramic", "porcelain": "ceramic",
    "keramik": "ceramic", "porzellan": "ceramic", "earthenware": "ceramic",
    "silicone": "silicone", "silikon": "silicone", "silikonform": "silicone",
}  # fmt: skip

# What a number beside the word is. An adjective follows its number ("5 cm deep"); a noun may stand
# on either side ("height 5 cm", "5 cm height").
ADJECTIVES: dict[str, str] = {
    "high": "height", "deep": "height", "tall": "height", "hoch": "height", "tief": "height",
    "long": "length", "lang": "length", "wide": "width", "breit": "width",
    "across": "diameter",
}  # fmt: skip
NOUNS: dict[str, str] = {
    "height": "height", "depth": "height", "höhe": "height", "tiefe": "height",
    "diameter": "diameter", "dia": "diameter", "durchmesser": "diameter",
    "ø": "diameter", "⌀": "diameter",
    "length": "length", "länge": "length", "width": "width", "breite": "width",
    "hole": "hole", "holes": "hole", "core": "hole", "funnel": "hole", "chimney": "hole",
    "loch": "hole",
    "rim": "top", "top": "top", "oben": "top",
    "bottom": "bottom", "base": "bottom", "floor": "bottom", "unten": "bottom", "boden": "bottom",
}  # fmt: skip

COUNT_WORDS: dict[str, int] = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "twelve": 12,
    "zwei": 2, "drei": 3, "vier": 4, "sechs": 6, "zwölf": 12,
}  # fmt: skip
CUP_WORDS = frozenset(
    {"cup", "cups", "muffins", "cupcakes", "mulden", "förmchen", "stück", "wells", "moulds"}
)

# Where one of these stands between a number and its word they still belong together.
BRIDGES = frozenset({"at", "the", "of", "is", "am", "an", "der", "in", "central", "centre"})

IGNORED = BRIDGES | {
    "a", "and", "with", "for", "to", "by", "one", "ein", "eine", "einer", "mit", "und", "für",
    "each", "je", "inside", "innen", "about", "approx", "approximately", "circa", "ca", "etwa",
    "tin", "tins", "pan", "pans", "dish", "dishes", "mould", "moulds", "mold", "molds", "form",
    "backform", "kuchenform", "cake", "cakes", "baking", "torte", "kuchen", "food", "my", "our",
    "loose-bottomed", "nonstick", "lined", "unlined", "paper", "standard", "size", "sized", "x",
    "water", "wasser", "holds", "holding", "filled", "full", "capacity", "volume", "fasst",
    "open", "half", "hollow", "layer", "medium", "large", "small", "deep-sided", "or", "oder",
    "iron", "cast", "base-lined", "loose",
}  # fmt: skip

# Shapes without a formula here: their water has to be weighed.
NO_FORMULA = frozenset(
    {"oval", "heart", "heart-shaped", "herz", "herzform", "star", "stern", "hexagonal", "octagonal",
     "sphere", "spheres", "half-sphere", "half-spheres", "dome", "kugel", "halbkugel", "lamb"}
)  # fmt: skip

WATER_WORDS = frozenset({"water", "wasser"})
