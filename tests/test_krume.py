"""The door of the library: light, and each folder is there when it is asked for."""

import subprocess
import sys

import pytest

import krume


def test_a_folder_is_imported_when_it_is_first_asked_for() -> None:
    code = (
        "import sys, krume\n"
        "assert 'krume.design' not in sys.modules\n"
        "print(krume.design.family('separated').key)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout == "separated\n"


@pytest.mark.parametrize("name", ["recipes", "_design", "__path_of__"])
def test_what_is_not_there_is_no_attribute(name: str) -> None:
    assert not hasattr(krume, name)


def test_a_folder_that_misses_a_library_says_which(monkeypatch: pytest.MonkeyPatch) -> None:
    def missing(_: str) -> None:
        raise ModuleNotFoundError("No module named 'click'", name="click")

    monkeypatch.setattr(krume, "import_module", missing)
    with pytest.raises(ModuleNotFoundError, match="click"):
        krume.somewhere  # noqa: B018 - asking is the test
