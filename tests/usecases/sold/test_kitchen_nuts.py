"""The nuts of the whole book, by their declaring words."""

from krume.usecases import Asked
from krume.usecases.sold.kitchen_nuts import kitchen_nuts


def test_the_demo_kitchen_uses_hazelnut_and_walnut(demo: Asked) -> None:
    assert set(kitchen_nuts(demo, "eu")) == {"nuts (hazelnut)", "nuts (walnut)"}
    assert set(kitchen_nuts(demo, "us")) == {"tree nut (hazelnut)", "tree nut (walnut)"}
