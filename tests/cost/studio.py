"""The demo studio's cost worked out by hand with fractions, apart from the program.

Prices per kg, formulas in grams, what goes into each torte: typed here, not read from the texts.
"""

from fractions import Fraction

KG = {
    "rice": "3.20", "teff": "7.50", "buckwheat": "4.10", "millet": "3.60", "potato": "2.90",
    "maize": "2.80", "sweet": "5.40", "hazel": "16.00", "walnut": "17.00", "caster": "1.40",
    "icing": "2.10", "butter": "9.20", "oil": "3.00", "milk": "1.20", "cream": "5.60",
    "yoghurt": "4.20", "white": "7.00", "chocolate": "14.00", "gelatine": "38.00",
    "currant": "9.50", "vanilla": "150.00", "lemon": "4.00", "zest": "20.00", "orange": "2.00",
    "salt": "0.80", "xanthan": "28.00", "psyllium": "24.00", "powder": "9.00", "water": "0",
}  # fmt: skip
EGG_M, EGG_L = Fraction("0.32"), Fraction("0.38")

# Eggs are paid by the piece: yolks and whites alone at half an egg.
EGGS = {
    "F1": 5 * EGG_M, "F2": 5 * EGG_M, "F3": 4 * EGG_M, "F4": 4 * EGG_L,
    "F5": (4 + 5) * EGG_M / 2, "F6": 3 * EGG_M, "F7": EGG_M, "C1": 5 * EGG_M / 2,
}  # fmt: skip
GRAMS: dict[str, dict[str, str]] = {
    "F1": {"buckwheat": "50", "rice": "12", "potato": "34", "sweet": "8", "hazel": "40",
           "caster": "135", "salt": "1", "lemon": "4", "vanilla": "3"},
    "F2": {"rice": "40", "teff": "20", "potato": "30", "sweet": "9", "maize": "6",
           "caster": "130", "butter": "20", "salt": "1", "lemon": "4", "vanilla": "4"},
    "F3": {"rice": "26", "millet": "16", "potato": "22", "sweet": "6", "xanthan": "0.25",
           "caster": "100", "oil": "10", "lemon": "10", "zest": "3", "salt": "0.75"},
    "F4": {"walnut": "115", "rice": "20", "potato": "16", "sweet": "4", "caster": "120",
           "salt": "1", "lemon": "4", "zest": "2"},
    "F5": {"rice": "42", "millet": "12", "potato": "28", "sweet": "8", "powder": "2.7",
           "caster": "108", "oil": "45", "orange": "65", "zest": "4", "salt": "1"},
    "F6": {"butter": "150", "caster": "150", "rice": "64", "teff": "22", "potato": "52",
           "sweet": "12", "powder": "4.8", "xanthan": "0.4", "milk": "30", "vanilla": "4",
           "salt": "1.5"},
    "F7": {"rice": "100", "buckwheat": "50", "potato": "50", "butter": "110", "icing": "65",
           "salt": "1.5", "psyllium": "4"},
    "C1": {"milk": "400", "caster": "80", "maize": "35", "butter": "40", "salt": "1",
           "gelatine": "8", "water": "40", "cream": "250"},
    "C2": {"cream": "420", "yoghurt": "260", "caster": "85", "lemon": "40", "gelatine": "8",
           "water": "40"},
    "C3": {"chocolate": "180", "cream": "180", "butter": "20"},
    "C4": {"currant": "300", "caster": "60", "gelatine": "5", "water": "25"},
    "C5": {"white": "120", "caster": "190", "butter": "300", "salt": "1", "vanilla": "4"},
    "S1": {"caster": "100", "water": "100", "lemon": "20"},
}  # fmt: skip
BATCH_G = {"C1": "941.5", "C2": "853", "C3": "380", "C4": "390", "C5": "615", "S1": "220"}

# What goes in: cakes whole, the rest in grams.
TORTES: dict[str, tuple[dict[str, int], dict[str, str]]] = {
    "T1": ({"F1": 1}, {"C1": "448.0", "S1": "134.4", "C5": "227.6"}),
    "T2": ({"F3": 1}, {"C2": "347.2", "S1": "75.5"}),
    "T3": ({"F4": 1}, {"C2": "824.7", "S1": "103.9", "C4": "328.4"}),
    "TART": ({"F7": 1}, {"C3": "380"}),
    "101": ({"F1": 1}, {"C1": "448.0", "S1": "134.4", "C5": "227.6"}),
    "102": ({"F3": 2, "F4": 1, "F7": 1},
            {"C2": "1519.0", "S1": "254.9", "C4": "328.4", "C3": "380"}),
}  # fmt: skip
COUNT = {"T1": 1, "T2": 1, "T3": 1, "TART": 1, "101": 1, "102": 4}


def cents(amount: Fraction) -> Fraction:
    """Half up to the cent, of an amount of 0 or more."""
    return Fraction(int(amount * 100 + Fraction(1, 2)), 100)


def batch(name: str) -> Fraction:
    """What one whole batch of a formula costs, not rounded."""
    weighed = [Fraction(g) * Fraction(KG[what]) / 1000 for what, g in GRAMS[name].items()]
    return sum(weighed, EGGS.get(name, Fraction(0)))


def components(name: str) -> dict[str, Fraction]:
    """Rounded heads of a torte's or an order's formulas."""
    cakes, creams = TORTES[name]
    whole = {what: cents(count * batch(what)) for what, count in cakes.items()}
    shares = {w: cents(batch(w) * Fraction(g) / Fraction(BATCH_G[w])) for w, g in creams.items()}
    return whole | shares


def heads(name: str) -> dict[str, Fraction]:
    """All heads of a torte or an order, with their sums."""
    count = COUNT[name]
    found = {
        "material": sum(components(name).values(), Fraction(0)),
        "labour": cents(count * Fraction("2.2") * 24),
        "energy": cents(count * Fraction("1.8") * Fraction("0.34")),
        "packaging": cents(count * Fraction("2.40")) + cents(count * Fraction("0.06")),
    }
    found["direct"] = sum(found.values(), Fraction(0))
    found["fixed_share"] = cents(count * Fraction(620, 24))
    found["full"] = found["direct"] + found["fixed_share"]
    return found
