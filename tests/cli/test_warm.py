"""``combwright warm`` as a keeper types it."""

import json

import pytest
from tests.cli.typed import Done, typed


def run(*words: str) -> Done:
    return typed("warm", *words)


def test_the_saving_of_one_and_two_boards_is_told_as_a_range_with_its_doubts() -> None:
    done = run("--frames-of-bees", "7", "--outside-c", "5")
    assert done.returncode == 0, done.stderr
    assert "one dummy board" in done.stdout
    assert "a dummy board on each side" in done.stdout
    assert "0.8 to over 2.5 W/K" in done.stdout
    assert "syrup a day" in done.stdout


def test_json_holds_the_same() -> None:
    told = json.loads(run("--json", "--hive", "national polystyrene", "--cover", "vented").stdout)
    assert told["loss_w_per_k"]["low"] < told["loss_w_per_k"]["high"]
    assert told["set_up"]["cover"] == "vented"
    words = [change["instead"] for change in told["changes"]]
    assert "a closed crown board" in words


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--outside-c", "50"], "50 looks like Fahrenheit; that would be 10 °C."),
        (["--hive", "natonal timber"], "Did you mean “national timber”"),
        (["--dummy-boards", "5"], "dummy boards cannot be 5"),
        (["--frames", "3"], "Give the frames that stand in the box with --frames."),
    ],
)
def test_what_can_be_put_right_is_said_in_a_sentence(arguments: list[str], says: str) -> None:
    done = run(*arguments)
    assert done.returncode == 2
    assert done.stderr.startswith("combwright: ")
    assert says in done.stderr
