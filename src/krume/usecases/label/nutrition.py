"""The nutrition of a label as its answer holds it."""

from krume.label import NutrientSum, Panel, atwater_kcal, eu_panel, salt_g
from krume.usecases.label.result import LabelNutrition, LabelPanel, LabelRow


def nutrition_of(
    sums: dict[str, NutrientSum], panel: Panel | None, portion: Panel | None, market: str
) -> LabelNutrition:
    """Figures per 100 g where they are settled, and the panels as printed."""
    printed = None if panel is None else panel_of(panel)
    settled = _settled(sums, panel, market)
    sodium = settled.get("sodium")
    return LabelNutrition(
        energy_kj=settled.get("energy-kj"),
        energy_kcal=settled.get("energy-kcal"),
        fat_g=settled.get("fat"),
        saturated_g=settled.get("saturated"),
        trans_g=settled.get("trans"),
        cholesterol_mg=settled.get("cholesterol"),
        carbohydrate_g=settled.get("carbohydrate"),
        sugars_g=settled.get("sugars"),
        added_sugars_g=settled.get("added-sugars"),
        fibre_g=settled.get("fibre"),
        protein_g=settled.get("protein"),
        sodium_mg=sodium,
        salt_g=None if sodium is None else salt_g(sodium),
        vitamin_d_ug=settled.get("vitamin-d"),
        calcium_mg=settled.get("calcium"),
        iron_mg=settled.get("iron"),
        potassium_mg=settled.get("potassium"),
        panel=printed,
        portion=None if portion is None else panel_of(portion),
    )


def _settled(sums: dict[str, NutrientSum], panel: Panel | None, market: str) -> dict[str, float]:
    """Values per 100 g that are known, or whose doubt moves no printed digit of the panel."""
    open_rows = {row.key for row in panel.rows if row.text is not None} if panel else set()
    found = {
        key: (each.span.low + each.span.high) / 2
        for key, each in sums.items()
        if each.span.is_known or key in open_rows or (key == "sodium" and "salt" in open_rows)
    }
    return found | _energy(sums, found, market)


def _energy(sums: dict[str, NutrientSum], found: dict[str, float], market: str) -> dict[str, float]:
    if market == "us":
        parts = [found.get(key) for key in ("protein", "fat", "carbohydrate")]
        known = [part for part in parts if part is not None]
        return {"energy-kcal": atwater_kcal(*known)} if len(known) == len(parts) else {}
    rows = {row.key: row for row in eu_panel(sums).rows}
    return {
        key: (rows[key].low + rows[key].high) / 2
        for key in ("energy-kj", "energy-kcal")
        if rows[key].text is not None
    }


def panel_of(panel: Panel) -> LabelPanel:
    """A panel with its rows as printed."""
    return LabelPanel(
        panel.basis_text,
        panel.basis_g,
        panel.is_open,
        tuple(
            LabelRow(r.key, r.label, r.text, r.low, r.high, r.unit, r.percent, r.open_goods)
            for r in panel.rows
        ),
    )
