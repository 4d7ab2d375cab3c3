"""``combwright mix`` as a keeper types it."""

import json
import subprocess
import sys
from typing import Any

import pytest
from typer.testing import CliRunner

from combwright.cli.main import app


def answered(*words: str) -> dict[str, Any]:
    result = CliRunner().invoke(app, ["mix", *words, "--json"])
    assert result.exit_code == 0, result.output
    told: dict[str, Any] = json.loads(result.stdout)
    return told


def refused(*words: str) -> str:
    result = CliRunner().invoke(app, ["mix", *words])
    assert result.exit_code != 0
    return str(result.exception)


def test_two_to_one_warns_that_it_crystallises() -> None:
    told = answered("--ratio", "2", "--sugar-kg", "10")
    assert told["water_kg"] == 5.0
    assert told["sugar_percent"] == 66.7
    assert told["syrup_l"] == pytest.approx(11.306, abs=0.005)  # 2.2612 L for each 3 kg
    assert 19.0 <= told["crystallises_below_c"] <= 21.0  # Vavrinecz, Charles
    assert any("crystallises below about 20 °C" in sentence for sentence in told["warnings"])


def test_five_to_three_stays_clear() -> None:
    told = answered("--percent", "62.5", "--litres", "10")
    assert told["crystallises_below_c"] is None
    assert not any("crystallises" in sentence for sentence in told["warnings"])
    assert told["syrup_l"] == 10.0
    assert told["sugar_kg"] == pytest.approx(8.134, abs=0.005)  # 813.4 g in a litre


def test_pounds_to_the_pint_are_not_a_ratio_by_weight() -> None:
    told = answered("--pounds", "2", "--pints", "1")
    assert told["sugar_percent"] == 61.5
    assert any("not the 66.7 %" in sentence for sentence in told["warnings"])


def test_a_target_of_sugar_fed_is_the_sugar() -> None:
    fed = answered("--ratio", "1.5", "--feed-sugar-kg", "3")
    assert fed == answered("--ratio", "1.5", "--sugar-kg", "3")
    assert fed["stores_kg"] == 3.75  # the usual divisor of 0.8


def test_litres_and_kilograms_of_water_differ_a_little() -> None:
    by_litre = answered("--sugar-kg", "1", "--water-l", "1")
    by_kilogram = answered("--sugar-kg", "1", "--water-kg", "1")
    assert by_litre["sugar_percent"] == 50.0
    assert by_litre["sugar_fraction"] > by_kilogram["sugar_fraction"]


def test_weak_syrup_sours_soon() -> None:
    assert any("sours" in s for s in answered("--ratio", "1", "--litres", "5")["warnings"])


def test_cold_syrup_is_thicker_and_warned_of() -> None:
    cold = answered("--ratio", "2", "--litres", "5", "--at-c", "8")
    assert cold["viscosity_mpa_s"] > answered("--ratio", "2", "--litres", "5")["viscosity_mpa_s"]
    assert any("At 8 °C it holds more sugar" in sentence for sentence in cold["warnings"])


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("--ratio 62 --sugar-kg 1", "use --percent 62"),
        ("--percent 0.62 --litres 3", "write 62"),
        ("--ratio 2", "one amount is needed"),
        ("--ratio 2 --sugar-kg 10 --litres 3", "one amount is needed"),
        ("--sugar-kg 10", "strength is not known"),
        ("--ratio 2 --percent 60 --litres 1", "given twice"),
        ("--pounds 2", "both pounds of sugar and pints"),
        ("--pounds 2 --pints 1 --ratio 2", "nothing else"),
        ("--ratio 2 --sugar-kg 10 --at-c 68", "looks like Fahrenheit; that would be 20 °C"),
        ("--ratio 2 --sugar-kg -1", "The sugar cannot be -1 kg"),
        ("--ratio nan --sugar-kg 1", "The ratio cannot be nan"),
        ("--sugar-kg 10 --water-kg 1", "stronger is candy"),
        ("--sugar-kg 10 --water-l 0", "The water cannot be 0 L"),
        ("--percent 60 --litres inf", "The syrup cannot be inf"),
    ],
)
def test_confused_numbers_get_a_sentence(words: str, said: str) -> None:
    assert said in refused(*words.split())


def test_the_words_carry_the_cautions() -> None:
    shown = CliRunner().invoke(app, ["mix", "--ratio", "2", "--sugar-kg", "10"]).stdout
    for word in ("scalds", "Do not boil", "crystallises below 20 °C", "11.31 L"):
        assert word in shown


def test_a_refusal_is_one_sentence_and_exit_code_2() -> None:
    words = "from combwright.cli.main import main; main()"
    done = subprocess.run(
        [sys.executable, "-c", words, "mix", "--ratio", "62", "--litres", "1"],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 2
    assert done.stderr.startswith("combwright: The ratio cannot be 62")
    assert not done.stdout


def test_warm_syrup_in_a_feeder_is_shown_bare_and_under_a_cushion() -> None:
    words = ("--ratio", "2", "--sugar-kg", "10", "--poured-c", "40", "--outside-c", "0")
    told = answered(*words)["in_feeder"]
    assert told["under_cushion_c"][0] > told["bare_c"][0]
    shown = CliRunner().invoke(app, ["mix", *words]).stdout
    assert "Rapid feeder" in shown
    assert "cushion" in shown
    assert "in_feeder" not in answered("--ratio", "2", "--sugar-kg", "10")
