"""Words by which a line is known for a step, a heading, a key or chatter."""

import re

KEYS: dict[str, str] = {
    word: key
    for key, words in {
        "tin": "tin|tins|pan|pans|form|backform|kuchenform|springform|mould|mold|cake tin|"
               "baking tin|pan size|tin size",
        "oven": "oven|ofen|backofen|oven temperature|oven temp|temperature|temp|temperatur|"
                "backtemperatur|bake|bake at",
        "makes": "makes|yield|yields|serves|servings|serving|ergibt|menge|portionen|portions|"
                 "stückzahl|for",
        "eggs": "eggs|eier|egg size|egg sizes|eggs are|eiergröße",
        "family": "family|familie|kind of cake",
        "baked": "baked|gebacken",
        "density": "density|dichte",
        "core": "core|core temperature|kern|kerntemperatur",
        "minutes": "cook|baking time|bake time|cook time|cooking time|backzeit|time in the oven",
        "name": "title|name|rezept|recipe|titel",
        "other": "prep|rest|total|chill|cool|prep time|preparation time|total time|time|course|"
                 "cuisine|author|source|by|keyword|keywords|calories|"
        "difficulty|equipment|rating|print|category|zubereitungszeit|arbeitszeit|gesamtzeit|ruhezeit|schwierigkeit|"
        "schwierigkeitsgrad|zubereitungsdauer|level|from|quelle|von|adapted from|published|"
        "updated|date|posted|"
        "active time|inactive time|chill time|cost|diet|per serving|nutrition|"
        "parent|parent lines|parent was|own lines|own blend|sized|swap|less|with added|"
        "made up with",
    }.items()
    for word in words.split("|")
}  # fmt: skip
KEY_LINE = re.compile(r"^\s*([^\W\d_][^\d:=|\t]{0,28}?)\s*[:=]\s*(.*\S)?\s*$")
MAKES_LINE = re.compile(
    r"^\s*(makes|serves|yields?|ergibt|für ca\.?|enough for|quantity for)\s+(\S.*)$", re.IGNORECASE
)

LIST_HEADINGS = re.compile(
    r"^(?:the )?(?:ingredients?|ingredient list|zutaten|you(?:'ll| will)? need(?!.*\d)|what "
    r"you(?:'ll| will)? need|shopping list|formula|"
    r"wir brauchen|du brauchst|ihr braucht|man nehme|zutatenliste)\b.{0,40}$",
    re.IGNORECASE,
)
METHOD_HEADINGS = re.compile(
    r"^(?:the )?(?:method|directions?|instructions?|preparation|procedure|steps?|how to\b.*|"
    r"making it|to make|zubereitung|anleitung|"
    r"arbeitsschritte|so geht'?s.*|und so geht.*|process|what to do|let's bake.*|baking|backen)$",
    re.IGNORECASE,
)
NOTE_HEADINGS = re.compile(
    r"^(?:the )?(?:baker'?s |recipe |cook'?s )?(?:notes?|tips?(?: .{0,30})?|storage|storing|"
    r"nutrition(?: .{0,20})?|nutritional .*|faqs?|equipment|comments?|reviews?|"
    r"hinweise?|tipps?|anmerkung(?:en)?|aufbewahrung|nährwerte?.*|kommentare?|variations?|"
    r"substitutions?|related .*|you may also like.*|about (?:me|us|the|this)\b.*|video|special "
    r"equipment)$",
    re.IGNORECASE,
)
SECTION_WORDS = frozenset(
    "sponge filling cake batter dough base cream frosting icing topping glaze syrup crust "
    "streusel crumble ganache jelly "
    "meringue custard coating decoration garnish crumb buttercream mousse yolks whites dry wet "
    "assembly finish "
    "teig boden füllung creme guss belag glasur biskuit biskuitteig mürbeteig streusel tränke "
    "deko dekoration "
    "zum nut yolk white layer layers roll shell tart soak drizzle curd compote sauce batters "
    "doughs rührteig".split()
)
FOR_SECTION = re.compile(
    r"^(?:for|für|fuer)\s+(?:the|den|die|das|a|an)?\s*[^\W\d_]+(?:\s+[^\W\d_]+){0,3}\s*:?$",
    re.IGNORECASE,
)

VERBS = frozenset(
    "add allow arrange bake beat bind blend boil break bring brush carefully chill chop combine "
    "cook cool cover cut decorate "
    "deflate discard dissolve divide drain drop dry dust fill finish fit fold freeze garnish "
    "gently generously grate gradually grease "
    "grind heat hang in incorporate invert keep knead leave let lift line loosen lower make "
    "mash measure melt meanwhile mix "
    "once open pipe place pour preheat prepare press prick pull put quickly rap reduce "
    "refrigerate release remove repeat reserve rest "
    "return roll rub scatter scrape sandwich separate serve set shape sift simmer slice slide "
    "slowly soak soften spoon spread "
    "sprinkle stand start steam stir stop store strain switch take tap test tip to toast toss "
    "transfer trim turn unmould "
    "unmold use using warm wash weigh when whip whisk while with work wrap after all at before "
    "first finally next now off "
    "then and it the this tilt run rinse rotate score raise push pulse process peel pass "
    "microwave insert immediately if fold "
    "backen back den die das eier ofen backofen mehl teig form vorheizen anschließend danach "
    "zuerst zum alles nun dann im in auf mit "
    "eischnee eiweiß eigelb butter zucker beide wenn schale nach während inzwischen sofort "
    "herausnehmen".split()
)
NOUN_VERBS = frozenset(
    "butter flour sugar cream dust zest salt oil juice paper grease grate eggs ice spice pepper "
    "mehl zucker eier eigelb eiweiß schale "
    "the den die das all mit im in zum and with form teig first whites yolks sift it this to "
    "roll blend rest".split()
)
SENTENCE = re.compile(
    r"\b(?:until|then|oven|minutes?|mins?|preheat\w*|thoroughly|together until|bis|minuten|"
    r"verrühren|unterheben|schlagen|"
    r"backen|rühren|vorheizen|mixture|once|while|you|your|i|we|my|our|is|are|was|it's|i'm|goes|should|will)\b",
    re.IGNORECASE,
)
FINITE = re.compile(
    r"\b(?:is|are|was|were|go|goes|will|should|until|then|bake[sd]?|stir|fold|pour|preheat|you|your|i|we|my|our|ago|makes|"
    r"werden|wird|ist|sind|backen|rühren)\b",
    re.IGNORECASE,
)
CHATTER = re.compile(
    r"\b(?:i|i'm|i've|my|me|we|our|us|enjoy|comments?|subscribe|follow|newsletter|blog|love|hope|thanks?|instagram|pinterest|"
    r"ich|mein\w*|wir|unser\w*|viel spaß|guten appetit|lecker)\b",
    re.IGNORECASE,
)
NOT_COUNTED = frozenset(
    "serving servings slice slices portion portions people persons person cake cakes layer "
    "layers roll rolls muffin muffins "
    "cupcake cupcakes cookie cookies minute minutes min mins hour hours hrs year years day days "
    "week weeks tin tins pan pans "
    "comment comments review reviews star stars vote votes kcal calories cal kj loaf loaves "
    "tart tarts step steps people "
    "portionen personen stücke stück minuten stunden tage kuchen guests times time degrees "
    "votes months".split()
)
TABLE_WORDS = frozenset(
    "ingredient ingredients amount amounts quantity qty weight weights unit units grams gram g "
    "kg ml note notes zutat zutaten menge "
    "mengen einheit gramm gewicht name item percent bakers baker's % flour cost price total "
    "measure baker prozent anteil lot what was no nr pos position lfd number oz lb".split()
)
