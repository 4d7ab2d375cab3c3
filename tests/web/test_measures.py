"""Measures are told to who may have them, in a form that other programs read, without names."""

import pytest
from fastapi.testclient import TestClient
from prometheus_client.openmetrics.parser import text_string_to_metric_families
from tests.web.desks import client_of

from combwright.web.app import build
from combwright.web.desk import Desk
from combwright.web.measures import Measures

KEY = {"Authorization": "Bearer of-bees"}
OPEN_TEXT = {"Accept": "application/openmetrics-text; version=1.0.0"}


def test_they_count_answers_and_hold_no_name(desk: Desk) -> None:
    client = TestClient(
        build(desk, Measures()), base_url="http://localhost", client=("127.0.0.1", 5000)
    )
    client.get("/colony/Bramble")
    client.get("/no-such-page/Bramble")
    client.request("BRAMBLE", "/yards")
    answer = client.get("/measures", headers=OPEN_TEXT)
    assert "Bramble" not in answer.text
    assert "BRAMBLE" not in answer.text
    samples = [
        one
        for family in text_string_to_metric_families(answer.text)  # type: ignore[no-untyped-call]
        for one in family.samples
    ]
    told = {(one.name, one.labels.get("route")): one.value for one in samples}
    assert told["combwright_answers_total", "/colony/{name:path}"] == 1
    assert told["combwright_answer_seconds_count", "/colony/{name:path}"] == 1
    assert told["combwright_entries", None] == desk.book.now().last
    assert told["combwright_book_well", None] == 1
    desk.access.set_passphrase("four unlikely words together")
    assert client.get("/measures").status_code == 200
    assert client.get("/measures", headers={"X-Forwarded-For": "::1"}).status_code == 404


@pytest.mark.parametrize("sent", [{}, {"Authorization": "Bearer of-wasps"}])
def test_elsewhere_they_want_the_key(desk: Desk, sent: dict[str, str]) -> None:
    desk.access.set_passphrase("four unlikely words together")
    with TestClient(build(desk, Measures("of-bees")), client=("203.0.113.9", 5000)) as elsewhere:
        assert elsewhere.get("/measures", headers=sent).status_code == 404
        assert elsewhere.get("/measures", headers=KEY).status_code == 200


def test_without_being_asked_for_there_are_none(desk: Desk) -> None:
    assert client_of(desk).get("/measures").status_code == 404
