"""The house plugin: cited tests, their table in docs/validation.md, and a quiet surrounding.

Several processes may share the tests (pytest-xdist). The rows of a cited test travel with its
report, and the process that hands out the tests judges the table when the others are done.
"""

from collections.abc import Iterator
from dataclasses import astuple
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests import validation
from tests.agreement import LEDGER
from tests.browser import browser, page

__all__ = ["browser", "page"]

# Examples are drawn the same way on every machine, and no test is judged by a clock.
settings.register_profile("house", derandomize=True, deadline=None, database=None)
settings.load_profile("house")

CITED = pytest.StashKey[validation.Cited]()


class Rows:
    """Gathers what the reports of cited tests bring along, and judges what several made."""

    def __init__(self, run: validation.Run) -> None:
        self.run = run
        self.shares_cover_all: list[bool] = []

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Keep a cited test's rows, or that it failed: its rows may be missing."""
        said: dict[str, Any] = dict(report.user_properties)
        if report.failed and "cited" in said:
            self.run.failed.append(report.nodeid)
        if report.when == "call":
            self.run.rows.extend(validation.Row(*row) for row in said.get("rows", ()))

    @pytest.hookimpl(optionalhook=True)
    def pytest_testnodedown(self, node: Any) -> None:
        """Whether one of the processes saw every test of the project."""
        self.shares_cover_all.append(getattr(node, "workeroutput", {}).get("covers_all", False))

    def pytest_sessionfinish(self, session: pytest.Session) -> None:
        """A share says what it saw; the process that handed them out judges the table."""
        if self.run.is_share:
            session.config.workeroutput["covers_all"] = self.run.covers_all()  # type: ignore[attr-defined]
        elif self.shares_cover_all:
            problem = self.run.judge(is_whole=all(self.shares_cover_all))
            if problem:
                _fail(session, str(validation.PAGE.relative_to(validation.ROOT)), problem)


def _fail(session: pytest.Session, place: str, problem: str) -> None:
    at = (place, None, "the table of published values")
    report = pytest.TestReport(place, at, {}, "failed", problem, "call")
    session.config.hook.pytest_runtest_logreport(report=report)
    session.exitstatus = pytest.ExitCode.TESTS_FAILED


@given(st.none())
def _first_draw(_: None) -> None:
    """Nothing is looked at: this only makes the source of chance."""


@pytest.fixture(scope="session", autouse=True)
def chance() -> None:
    """Draw once before any app runs.

    Hypothesis makes its source of chance at the first draw, and asks the interpreter who holds
    it. While the web app runs, what holds it is set aside and not seen, which makes a warning.
    """
    _first_draw()


def pytest_configure(config: pytest.Config) -> None:
    """Register the marks and give the run its empty table."""
    config.addinivalue_line("markers", "source(key, place): a published value, and where it stands")
    config.addinivalue_line("markers", "published: the expected value is printed in a cited source")
    config.addinivalue_line("markers", "pin: today's own output; not evidence")
    config.addinivalue_line("markers", "browser: needs a real browser")
    run = config.stash[validation.RUN] = validation.Run(is_share=hasattr(config, "workerinput"))
    config.pluginmanager.register(Rows(run))


def pytest_itemcollected(item: pytest.Item) -> None:
    """Mark what needs a real browser, early enough for `-m` to see it."""
    if "browser" in getattr(item, "fixturenames", ()):
        item.add_marker("browser")


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Read the citations, and put the test of the finished table last."""
    run = config.stash[validation.RUN]
    for item in items:
        mark = item.get_closest_marker("source")
        if mark is not None:
            cited = validation.read_citation(item.nodeid, mark)
            item.stash[CITED] = cited
            item.user_properties.append(("cited", cited.test))
            item.add_marker("published")
            run.citations.append(cited)
    items.sort(key=lambda item: item.path.name == "test_validation_is_current.py")


def pytest_collection_finish(session: pytest.Session) -> None:
    """Note which test files this run covers."""
    run = session.config.stash[validation.RUN]
    run.files = {item.path for item in session.items}


def pytest_deselected(items: list[pytest.Item]) -> None:
    """Note that a run leaves tests out."""
    if items:
        items[0].config.stash[validation.RUN].is_partial = True


@pytest.hookimpl(wrapper=True)
def pytest_runtest_call(item: pytest.Item) -> Iterator[None]:
    """Collect a cited test's comparisons; one that compares nothing fails."""
    cited = item.stash.get(CITED, None)
    if cited is None:
        return (yield)
    LEDGER.open()
    try:
        result = yield
    finally:
        rows = LEDGER.close()
        accepted = item.get_closest_marker("xfail")
        reason = "" if accepted is None else str(accepted.kwargs.get("reason", ""))
        made = [astuple(validation.row_of(cited, row, reason)) for row in rows]
        item.user_properties.append(("rows", made))
    if not rows:
        pytest.fail("the test cites a source but compares nothing with `agrees` or `reads`")
    return result


@pytest.fixture(autouse=True)
def own_surrounding(
    monkeypatch: pytest.MonkeyPatch, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """No test sees the user's own book or settings, in this process or in one it starts."""
    home = _scratch_home(tmp_path_factory)
    monkeypatch.delenv("KRUME_BOOK", raising=False)
    for name in ("XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME", "XDG_STATE_HOME"):
        monkeypatch.setenv(name, str(home / name.lower()))


def _scratch_home(factory: pytest.TempPathFactory) -> Path:
    return factory.getbasetemp() / "home"


@pytest.fixture
def validation_run(request: pytest.FixtureRequest) -> validation.Run:
    """The table of this run, as far as it has come."""
    return request.config.stash[validation.RUN]
