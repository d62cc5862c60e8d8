"""Sources: each has a licence, those that ask for it an attribution, and none is made up."""

import pytest

from krume.base import NotFoundError
from krume.evidence import figures, source, sources


def test_every_source_says_who_published_it_and_under_what_licence() -> None:
    assert all(s.title and s.publisher and s.year and s.licence for s in sources())


@pytest.mark.parametrize("key", ["usda-sr28", "usda-fdc-foundation", "ciqual-2020", "mext-jp-2020"])
def test_the_composition_tables_carry_what_must_be_printed_with_them(key: str) -> None:
    assert source(key).attribution


def test_edited_content_of_a_table_that_asks_for_it_says_so() -> None:
    assert source("mext-jp-2020").attribution.startswith("Edited from")


def test_an_unknown_source_is_not_found() -> None:
    with pytest.raises(NotFoundError, match="no source is called 'hearsay'"):
        source("hearsay")


def test_sources_keep_the_order_of_their_table() -> None:
    assert [s.key for s in sources()][:2] == ["usda-sr28", "usda-fdc-foundation"]


def test_figures_keep_value_unit_and_source() -> None:
    found = figures("tins.csv")["water-density-20"]
    assert (found.value, found.unit) == (0.998207, "g/ml")
    assert source(found.source).title
