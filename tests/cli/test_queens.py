"""``combwright queens`` as a keeper types it."""

import json

import pytest
from typer.testing import CliRunner

from combwright.cli.main import app


def test_a_graft_becomes_a_calendar() -> None:
    shown = CliRunner().invoke(app, ["queens", "--from", "graft", "--on", "2027-05-20"]).stdout
    assert "emerges  Tue 01 Jun" in shown
    assert "three weeks of her laying" in shown


def test_json_holds_the_same_days() -> None:
    words = ["queens", "--from", "walk-away", "--on", "2027-05-20", "--json"]
    told = json.loads(CliRunner().invoke(app, words).stdout)
    stages = {each["stage"]: each for each in told["stages"]}
    assert told["day_0"] == "2027-05-20"
    assert stages["emerges"]["usual"] == "2027-06-01"
    assert stages["lays"]["early"] < stages["lays"]["usual"] < stages["lays"]["late"]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--from", "swarm", "--on", "2027-05-20"], "It can be: egg, egg in a cup, graft"),
        (["--from", "graft", "--on", "2027-02-30"], "2027-02-30"),
    ],
)
def test_what_can_be_put_right_is_said_in_a_sentence(words: list[str], says: str) -> None:
    assert says in str(CliRunner().invoke(app, ["queens", *words]).exception)
