"""What has no place in a kept file: this machine's folders, and where packages were fetched."""

import re
from pathlib import Path

import pytest

from tests.house.source import ROOT, kept_files

BINARY = {".ttf", ".otf", ".woff2", ".png", ".pdf", ".ico"}
PACKAGE_ADDRESS = re.compile(r"\w+://\S*/simple\b", re.IGNORECASE)
SHORTEST_FOLDER = 4


def machine_folders() -> tuple[str, ...]:
    """Folders of the machine the tests run on: where the checkout stands, and the home."""
    folders = {str(ROOT), str(ROOT.parent), str(Path.home())}
    return tuple(sorted(f"{f}/" for f in folders if len(f) > SHORTEST_FOLDER))


def out_of_place(path: Path, folders: tuple[str, ...]) -> list[str]:
    """What of a text file names a folder of the machine or an address of packages."""
    text = path.read_text(encoding="utf-8")
    return [f for f in folders if f in text] + PACKAGE_ADDRESS.findall(text)


def test_no_kept_file_names_this_machine_or_where_packages_were_fetched() -> None:
    folders = machine_folders()
    found = {
        str(path.relative_to(ROOT)): words
        for path in kept_files()
        if path.suffix not in BINARY and path != Path(__file__).resolve()
        if (words := out_of_place(path, folders))
    }
    assert found == {}


def test_the_list_of_kept_files_is_not_empty() -> None:
    assert Path(__file__).resolve() in kept_files()


@pytest.mark.parametrize("text", ["see {folder}x", "from a://b.example/simple/"])
def test_what_is_out_of_place_is_seen(text: str, tmp_path: Path) -> None:
    page = tmp_path / "page.md"
    page.write_text(text.format(folder=f"{ROOT}/"), encoding="utf-8")
    assert len(out_of_place(page, (f"{ROOT}/",))) == 1
