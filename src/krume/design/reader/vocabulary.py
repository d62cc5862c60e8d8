"""Words of the kitchen that are no ingredient: numbers, measures, sizes, verbs, headings."""

from krume.base import UNITS, Unit

NUMBER_WORDS: dict[str, float] = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "half": 0.5, "quarter": 0.25,
    "quarters": 0.25, "third": 1 / 3, "thirds": 1 / 3, "fourth": 0.25, "fourths": 0.25,
    "eighth": 0.125, "eighths": 0.125, "viertel": 0.25, "drittel": 1 / 3,
    "halbe": 0.5, "halber": 0.5, "halben": 0.5, "halbes": 0.5, "zwei": 2, "drei": 3, "vier": 4,
    "fünf": 5, "sechs": 6, "sieben": 7, "acht": 8, "neun": 9, "zehn": 10, "elf": 11, "zwölf": 12,
    "anderthalb": 1.5, "eineinhalb": 1.5,
}  # fmt: skip
ARTICLES: dict[str, float] = dict.fromkeys(
    ("a", "an", "ein", "eine", "einer", "einem", "einen", "eines"), 1.0
)
ABOUT = frozenset(
    "about approx approximately ca circa etwa ungefähr ungefaehr roughly around rund nearly "
    "almost approx. cca".split()
)
HOW_FULL = frozenset(
    "scant heaped heaping level rounded generous good large small big medium full short packed "
    "gestrichen gestrichene gestrichener gestr gehäuft gehäufte gehäufter geh knapp knappe knapper "
    "gut gute guter leicht kleine kleiner kleines große großer großes grosse grosser lightly "
    "firmly even rounding".split()
)
SOME = frozenset(
    "few some several little etwas wenig einige paar bit bisschen enough genug".split()
)


def _count(name: str) -> Unit:
    return UNITS.get(name) or Unit(name, "count", None)


COUNT_WORDS: dict[str, Unit] = {
    word: _count(name)
    for name, words in {
        "grain": "grain grains",
        "square": "sq sqs",
        "grating": "grating gratings",
        "shaving": "shaving shavings",
        "packet": "pkg pkgs pkt pk pck packung packungen packerl pckg beutel päckli pack packs "
        "tütchen"
        " tüte briefchen envelope envelopes paeckchen",
        "can": "tin tins dose dosen",
        "jar": "jar jars",
        "box": "box boxes",
        "bottle": "bottle bottles flasche flaschen fläschchen",
        "bunch": "bunch bunches bund",
        "bar": "bar bars tafel tafeln riegel",
        "cube": "cube cubes würfel",
        "knifepoint": "messerspitze messerspitzen msp",
        "splash": "splash schuss spritzer",
        "tub": "tub tubs becher",
        "sheet": "blättern",
        "slice": "scheibe scheiben",
        "handful": "handvoll",
        "glass": "tumbler tumblers wineglass wineglassful wineglasses glas gläser",
        "piece": "stk stueck stücke",
        "stick": "stange stangen",
        "pod": "schote schoten",
        "sprig": "zweig zweige",
        "clove": "zehe zehen",
        "pinch": "pr",
        "dash": "dashes dust dusting",
        "head": "head heads",
        "lump": "lump lumps",
        "cake": "cake cakes",
        "strip": "strip strips",
    }.items()
    for word in words.split()
}
MASS_WORDS: dict[str, Unit] = dict.fromkeys(("dag", "dkg", "deka"), Unit("dag", "mass", 10.0))
VOLUME_WORDS: dict[str, Unit] = {
    **dict.fromkeys(("teacup", "teacups", "teacupful", "coffeecup", "coffee-cup"), UNITS["cup"]),
    **dict.fromkeys(
        ("tbl", "tb", "tablesp", "eßlöffel", "table-spoonful", "table-spoonfuls"), UNITS["tbsp"]
    ),
    **dict.fromkeys(("teasp", "ts", "tea-spoonful", "kaffeelöffel", "teel"), UNITS["tsp"]),
    **dict.fromkeys(
        ("dessertspoon", "dessertspoons", "dessertspoonful"), Unit("dessertspoon", "volume", 10.0)
    ),
}
