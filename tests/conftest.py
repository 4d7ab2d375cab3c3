"""What all tests share: no clock on generated cases, a data folder of their own, a count."""

import os
from collections.abc import Iterator
from pathlib import Path
from shutil import copyfile
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

if TYPE_CHECKING:
    from tests.postgres import Places, Server

    from combwright.services.demo import Paths

# A shared or slow machine must not turn a right answer into a failure, and a second run shows
# what the first did; `make explore` goes where no run has been, from a seed that it says.
settings.register_profile("any machine", deadline=None, max_examples=50, derandomize=True)
settings.register_profile("exploring", deadline=None, max_examples=500, print_blob=True)
settings.load_profile("any machine")

# Worked out before any test gives itself another environment.
IN_CI = os.environ.get("CI", "").lower() in {"1", "true"}


def pytest_configure(config: pytest.Config) -> None:
    """Compile once for all workers, and for the programs that they start."""
    if config.cache is not None:
        os.environ.setdefault("NUMBA_CACHE_DIR", str(config.cache.mkdir("compiled")))


@pytest.fixture(autouse=True, scope="session")
def own_data_folder(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Keep every test away from the book of whoever runs them."""
    with pytest.MonkeyPatch.context() as patch:
        for name in ("XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_CONFIG_HOME"):
            patch.setenv(name, str(tmp_path_factory.mktemp(name)))
        yield


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> "Paths":
    """The demo's files, the same for all workers: a test that writes takes a copy."""
    from tests.demo import written_once

    room = tmp_path_factory.getbasetemp()
    return written_once((room.parent if "PYTEST_XDIST_WORKER" in os.environ else room) / "demo")


@pytest.fixture(scope="session")
def server() -> "Iterator[Server]":
    """A server of PostgreSQL of the tests' own."""
    from tests import postgres

    if not postgres.is_here():
        pytest.skip("no PostgreSQL here")
    with postgres.running(*postgres.QUICK) as found:
        yield found


@pytest.fixture(scope="session")
def empty_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A book without a note: what the migrations made once."""
    from combwright.records.store.book_handle import Book

    path = tmp_path_factory.mktemp("empty") / "a.book"
    Book(path).open().close()
    return path


@pytest.fixture(params=["sqlite", pytest.param("postgresql", marks=pytest.mark.postgresql)])
def places(request: pytest.FixtureRequest, tmp_path: Path) -> "Places":
    """Where an empty book of a name is: in a file, and then the same test in a database."""
    known: dict[str, Path | str] = {}
    if request.param == "sqlite":
        empty: Path = request.getfixturevalue("empty_file")
        return lambda name: (
            known.get(name) or known.setdefault(name, copyfile(empty, tmp_path / name))
        )
    server: Server = request.getfixturevalue("server")
    return lambda name: known.get(name) or known.setdefault(name, server.new())


@pytest.fixture(scope="session")
def some_evidence() -> None:
    """Pages of evidence with two topics: what simulates colonies takes long, and is run once."""
    from combwright.evidence import at_hand
    from combwright.evidence.check_files import read_checks
    from combwright.web.pages.reading import AT_HAND

    quick = [*read_checks("mites"), *read_checks("syrup")]
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(at_hand, "read_checks", lambda: quick)
        AT_HAND.findings(60.0)


@pytest.fixture(scope="session")
def root() -> Path:
    """The top of the repository."""
    return Path(__file__).parent.parent


WANTED = {
    "browser": "tests of the pages (tests/browser), as no Chromium or Chrome starts here. Install "
    "one, or let `make browser` fetch it; CHROMIUM=/path/to/it names another.",
    "postgresql": "tests of books on PostgreSQL, as its server is not here. On Debian and Ubuntu: "
    "apt-get install postgresql.",
}
"""What some tests want of a machine, by their mark, and how it is to be had."""


def left_out(config: pytest.Config, mark: str) -> int:
    """How many tests wanted something of the machine, and it was not there."""
    reporter = config.pluginmanager.get_plugin("terminalreporter")
    skipped = reporter.stats.get("skipped", []) if reporter else []
    return sum(mark in report.keywords for report in skipped)


@pytest.hookimpl(trylast=True)
def pytest_sessionfinish(session: pytest.Session, exitstatus: int) -> None:
    """Fail when nothing passed, and in CI when a browser or a server was missing."""
    if "PYTEST_XDIST_WORKER" in os.environ or session.config.option.collectonly:
        return
    reporter = session.config.pluginmanager.get_plugin("terminalreporter")
    if exitstatus == pytest.ExitCode.OK and reporter and not reporter.stats.get("passed"):
        session.exitstatus = pytest.ExitCode.NO_TESTS_COLLECTED
    if IN_CI and any(left_out(session.config, mark) for mark in WANTED):
        session.exitstatus = pytest.ExitCode.TESTS_FAILED


@pytest.hookimpl(trylast=True)
def pytest_terminal_summary(
    terminalreporter: pytest.TerminalReporter, config: pytest.Config
) -> None:
    """Say which tests were left out, and how to get them."""
    for mark, told in WANTED.items():
        if number := left_out(config, mark):
            failing = " In CI this is a failure." if IN_CI else ""
            terminalreporter.write_line(f"Left out: {number} {told}{failing}")
