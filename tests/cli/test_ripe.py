"""``combwright ripe`` as a keeper types it."""

import json
from typing import Any

import pytest
from typer.testing import CliRunner

from combwright.cli.main import app


def answered(*words: str) -> dict[str, Any]:
    result = CliRunner().invoke(app, ["ripe", *words, "--json"])
    assert result.exit_code == 0, result.output
    told: dict[str, Any] = json.loads(result.stdout)
    return told


def refused(*words: str) -> str:
    result = CliRunner().invoke(app, ["ripe", *words])
    assert result.exit_code != 0
    return str(result.exception)


# Chataway's table, read: index at 20 °C, water, legal as general honey under 2001/110/EC.
@pytest.mark.parametrize(
    ("index", "water", "legal"),
    [
        ("1.4940", 17.0, True),
        ("1.4915", 18.0, True),
        ("1.4865", 20.0, True),
        ("1.4840", 21.0, False),
        ("1.4740", 25.0, False),
    ],
)
def test_water_and_law_follow_the_table(index: str, water: float, *, legal: bool) -> None:
    told = answered("--index", index, "--at-c", "20")
    assert (told["water_percent"], told["legal"], told["kind"]) == (water, legal, "general")
    assert ("illegal" in told["says"]) is not legal


def test_a_reading_in_the_warm_means_less_water() -> None:
    # 17.55 % at 25 °C by the correction in Bogdanov, The Book of Honey, read.
    assert answered("--index", "1.4915", "--at-c", "25")["water_percent"] in {17.5, 17.6}


def test_heather_may_hold_more() -> None:
    assert answered("--water", "22.9", "--kind", "heather")["legal"]
    assert not answered("--water", "23.1", "--kind", "heather")["legal"]
    assert answered("--water", "22.9", "--law", "uk")["limits"]["heather"] == 23.0


def test_brix_is_not_a_hundred_less_water() -> None:
    assert answered("--brix", "80.28")["water_percent"] == 18.0


# Lochhead 1933, read second-hand.
@pytest.mark.parametrize(
    ("words", "verdict"),
    [
        ("--water 17", "safe"),
        ("--water 18.5", "depends on the yeasts"),
        ("--water 18.5 --yeasts-per-g 50", "at risk"),
        ("--water 18.5 --yeasts-per-g 5", "safe"),
        ("--water 20.5", "at risk"),
        ("--water 20.5 --yeasts-per-g 0", "at risk"),
    ],
)
def test_fermentation_follows_water_and_yeasts(words: str, verdict: str) -> None:
    assert answered(*words.split())["fermentation"]["verdict"] == verdict


def test_a_reading_at_the_limit_is_to_be_repeated() -> None:
    assert any("measure again" in sentence for sentence in answered("--water", "19.9")["warnings"])
    assert not answered("--water", "17.5")["warnings"]


def test_a_bucket_becomes_jars() -> None:
    jars = answered("--water", "18", "--bucket-kg", "15", "--jar-g", "454")["jars"]
    assert jars["full_jars"] == 33
    assert jars["left_g"] == pytest.approx(18.0)
    assert jars["volume_ml"] == pytest.approx(320.9, abs=0.1)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("--index 1.33", "That is the index of water"),
        ("--index 18", "lies between 1.46 and 1.515. That looks like percent of water"),
        ("--index 80.3", "That looks like a Brix reading"),
        ("--index 1.4915 --at-c 68", "looks like Fahrenheit; that would be 20 °C"),
        ("--brix 18", "looks like percent of water"),
        ("--water 0.18", "If that is a fraction, write 18"),
        ("--water 82", "looks like Brix"),
        ("--water 62", "lies between 11 and 30 %"),
        ("--index 1.49 --brix 80", "One reading is needed"),
        ("", "One reading is needed"),
        ("--index nan", "cannot be nan"),
        ("--water 18 --kind ling", "Kinds: general"),
        ("--water 18 --yeasts-per-g -1", "count of yeasts"),
        ("--water 18 --bucket-kg 15 --jar-g 0.34", "one jar in grams"),
    ],
)
def test_confused_numbers_get_a_sentence(words: str, said: str) -> None:
    assert said in refused(*words.split())


@pytest.mark.parametrize("water", ["11", "12.9", "25.1", "30"])
def test_outside_the_table_it_says_so_and_guesses_nothing_else(water: str) -> None:
    told = answered("--water", water)
    assert told["density_kg_per_l"] is None
    assert any("outside it" in sentence for sentence in told["warnings"])


def test_the_words_carry_the_cautions() -> None:
    shown = CliRunner().invoke(app, ["ripe", "--index", "1.4740"]).stdout
    for word in ("25.0 %", "illegal", "infants under one year", "test oil", "2001/110/EC"):
        assert word in shown
