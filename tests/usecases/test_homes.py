"""Every name of the door has a home, and is found there."""

from importlib import import_module

import krume.usecases
from krume.usecases.homes import HOMES


def test_the_door_names_what_has_a_home_and_nothing_else() -> None:
    assert sorted(krume.usecases.__all__) == sorted(HOMES)


def test_each_name_is_found_in_its_home_through_the_door() -> None:
    homes = {name: import_module(f"krume.{home}") for name, home in HOMES.items()}
    astray = [n for n, home in homes.items() if getattr(krume.usecases, n) is not vars(home)[n]]
    assert astray == []
