from collections.abc import Iterator
from pathlib import Path

import pytest
from fastapi.testclient import TestClient
from tests.web.desks import Clock, client_of, copied, demo_book, desk_on

from combwright.web.desk import Desk


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return demo_book(tmp_path_factory.mktemp("demo"))


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def desk(demo: Path, tmp_path: Path, clock: Clock) -> Iterator[Desk]:
    made = desk_on(copied(demo, tmp_path), clock)
    yield made
    made.close()


@pytest.fixture
def client(desk: Desk) -> Iterator[TestClient]:
    with client_of(desk) as made:
        yield made
