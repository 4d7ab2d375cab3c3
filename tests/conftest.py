"""What all tests share: no clock on generated cases, a data folder of their own, a count."""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

# A shared or slow machine must not turn a right answer into a failure.
settings.register_profile("any machine", deadline=None, max_examples=50)
settings.load_profile("any machine")


@pytest.fixture(autouse=True, scope="session")
def own_data_folder(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Keep every test away from the book of whoever runs them."""
    with pytest.MonkeyPatch.context() as patch:
        for name in ("XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_CONFIG_HOME"):
            patch.setenv(name, str(tmp_path_factory.mktemp(name)))
        yield


@pytest.fixture(scope="session")
def root() -> Path:
    """The top of the repository."""
    return Path(__file__).parent.parent


@pytest.hookimpl(trylast=True)
def pytest_sessionfinish(session: pytest.Session, exitstatus: int) -> None:
    """Fail when nothing passed: a run in which all is skipped has shown nothing."""
    if "PYTEST_XDIST_WORKER" in os.environ or session.config.option.collectonly:
        return
    reporter = session.config.pluginmanager.get_plugin("terminalreporter")
    if exitstatus == pytest.ExitCode.OK and reporter and not reporter.stats.get("passed"):
        session.exitstatus = pytest.ExitCode.NO_TESTS_COLLECTED
