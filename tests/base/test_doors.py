"""A door gives a heavy name when it is asked for, once, and no other."""

import subprocess
import sys

import pytest

import krume.base
from krume.base.doors import on_first_use


def test_a_name_is_given_and_stays_at_the_door(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delattr(krume.base, "to_cent")
    found = on_first_use("krume.base", {"to_cent": "money"})("to_cent")
    assert krume.base.to_cent is found


def test_a_name_of_no_room_is_no_name_of_the_door() -> None:
    with pytest.raises(AttributeError, match=r"module 'krume\.base' has no attribute 'nothing'"):
        on_first_use("krume.base", {"to_cent": "money"})("nothing")


@pytest.mark.parametrize(
    ("door", "name"),
    [("krume.bake", "simulate"), ("krume.design", "solve_blend"), ("krume.learn", "learn_oven"),
     ("krume.keep", "custard_cooling")],
)  # fmt: skip
def test_a_heavy_room_stays_shut_until_it_is_asked_for(door: str, name: str) -> None:
    code = (
        f"import sys, {door} as door\n"
        f"assert 'numpy' not in sys.modules\ndoor.{name}\nassert 'numpy' in sys.modules"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
