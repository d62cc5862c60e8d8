"""Where sources differ both are shown, and the first is what this program goes by."""

from krume.evidence import source
from krume.keep import differences


def test_every_subject_has_two_sayings_or_more_with_their_papers() -> None:
    for each in differences():
        assert len(each.sayings) > 1
        assert all(said.says and source(said.source).title for said in each.sayings)


def test_the_three_known_subjects_are_there() -> None:
    assert [each.of for each in differences()] == ["sponge", "custard", "gelatine"]
    assert all(each.sayings[0].source == "common-practice" for each in differences())
