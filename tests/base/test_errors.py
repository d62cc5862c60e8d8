"""One tree of errors, each class with its exit code, status and fixed code."""

import pytest

from krume import base
from krume.base import KrumeError, OutOfRangeError

TREE = [KrumeError, *(v for n, v in vars(base).items() if n.endswith("Error") and v != KrumeError)]


@pytest.mark.parametrize("kind", TREE)
def test_an_error_belongs_to_the_tree_and_has_an_agreed_exit_code(kind: type[KrumeError]) -> None:
    assert issubclass(kind, KrumeError)
    assert kind.exit_code in {1, 3, 4, 5}
    assert 400 <= kind.http_status < 600


def test_no_two_errors_share_a_code() -> None:
    codes = [kind.code for kind in TREE]
    assert len(set(codes)) == len(codes) >= 7


def test_an_error_carries_its_fields_beside_its_message() -> None:
    error = OutOfRangeError("give 100 to 300 C", field="temp_c", got="900", want="100..300")
    assert str(error) == error.message == "give 100 to 300 C"
    assert (error.field, error.got, error.want, error.where) == ("temp_c", "900", "100..300", "")
