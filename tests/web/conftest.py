from collections.abc import Iterator
from pathlib import Path

import pytest
from argon2 import PasswordHasher
from fastapi.testclient import TestClient
from tests.demo import copied
from tests.web.desks import Clock, client_of, desk_on

from combwright.services import passphrases
from combwright.services.demo import Paths
from combwright.web.desk import Desk


@pytest.fixture(autouse=True)
def quick_hashes(monkeypatch: pytest.MonkeyPatch) -> None:
    """Hash passphrases for a hundredth of the work; tests of services do it as it is."""
    monkeypatch.setattr(passphrases, "HASHER", PasswordHasher(1, 64, 1))


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def desk(demo: Paths, tmp_path: Path, clock: Clock) -> Iterator[Desk]:
    made = desk_on(copied(demo, tmp_path), clock)
    yield made
    made.close()


@pytest.fixture
def client(desk: Desk) -> Iterator[TestClient]:
    with client_of(desk) as made:
        yield made
