import json
import sys
from typing import Any

import pytest

from combwright.cli.main import main


def told(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, line: str) -> str:
    """Run the command as a person does and give what it printed."""
    monkeypatch.setattr(sys, "argv", ["combwright", "mites", *line.split()])
    with pytest.raises(SystemExit) as ended:
        main()
    printed = capsys.readouterr()
    assert ended.value.code in (0, None) or not printed.out
    return printed.out if ended.value.code in (0, None) else printed.err


@pytest.fixture
def ask(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Any:  # noqa: ANN401
    return lambda line: told(capsys, monkeypatch, line)


def test_a_tray_in_august(ask: Any) -> None:  # noqa: ANN401  # UK: times 30, limit 33 a day
    report = json.loads(ask("--tray 33 --days 1 --month 8 --json"))
    assert report["mites"]["mid"] == pytest.approx(990, rel=0.1)
    assert report["mites"]["low"] < 990 < report["mites"]["high"]
    assert report["level"] == "act"
    estimates = {source["name"]: source["estimate"] for source in report["sources"]}
    assert estimates["German July rule"] == 10 * estimates["UK leaflet, summer"]
    assert all(source["verified"] for source in report["sources"])
    assert {"mites", "per_100_bees", "sources", "level", "advice", "options", "warnings"} <= set(
        report
    )


def test_a_wash(ask: Any) -> None:  # noqa: ANN401  # Lee et al. 2010: 1800 mites
    line = "--washed 9 --bees 300 --bees-in-colony 30000 --brood yes --month 8 --json"
    report = json.loads(ask(line))
    assert report["mites"]["mid"] == 1800
    assert report["per_100_bees"] == 3.0
    assert report["per_100_bees_range"]["low"] == pytest.approx(1.37, abs=0.01)


def test_a_sugar_shake_finds_fewer(ask: Any) -> None:  # noqa: ANN401
    line = "--bees 300 --bees-in-colony 30000 --brood yes --month 8 --json"
    shaken = json.loads(ask(f"--sugar 6 {line}"))
    washed = json.loads(ask(f"--washed 6 {line}"))
    assert shaken["mites"]["mid"] > washed["mites"]["mid"]
    assert "low recovery" in {source["name"] for source in shaken["sources"]}


def test_winter_without_brood_allows_oxalic_acid(ask: Any) -> None:  # noqa: ANN401
    line = "--tray 14 --days 7 --date 2026-12-20 --brood no --supers 0 --temperature-c 6 --json"
    report = json.loads(ask(line))
    possible = [each["way"] for each in report["options"] if each["possible"] == "yes"]
    assert "trickled" in possible
    assert report["expected_without_treatment"][0]["on"] == "2027-01-19"


def test_law_label_and_recount_are_always_told(ask: Any) -> None:  # noqa: ANN401
    advice = " ".join(json.loads(ask("--tray 1 --days 3 --month 6 --json"))["advice"])
    for said in ("label", "2013", "2019/6", "5 years", "14 days"):
        assert said in advice


def test_the_page_for_a_person(ask: Any) -> None:  # noqa: ANN401
    page = ask("--tray 33 --days 1 --month 8")
    for title in ("Sources disagree", "Levels of the month", "Without treatment", "What to do"):
        assert title in page
    assert "[from memory]" in page


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        ("--tray 3 --days 0 --month 8", "Days of the tray cannot be 0 days"),
        ("--tray 3 --days 1 --month 13", "The month cannot be 13"),
        ("--washed 300 --bees 200 --month 8", "are mites and bees mixed up"),
        ("--tray -1 --days 1 --month 8", "Mites fallen cannot be -1"),
        ("--tray 3 --days nan --month 8", "Days of the tray cannot be nan"),
        ("--washed 9 --bees 300 --bees-in-colony 11 --month 8", "Give bees, not frames"),
        ("--tray 3 --days 2 --temperature-c 68 --month 8", "Fahrenheit"),
        ("--tray 3 --days 2 --supers 20 --month 8", "The number of supers cannot be 20"),
        ("--month 8", "No count is given"),
        ("--tray 3", "--tray needs --days"),
        ("--washed 3", "--washed needs --bees"),
        ("--tray 3 --washed 2 --bees 300", "are two counts"),
        ("--tray 3 --days 2 --bees 300", "do not go together"),
        ("--tray 3 --days 2 --date 2026-02-03 --month 5", "differ"),
        ("--tray 3 --days 2 --date 2026-02-30", "2026-02-30 is no day of the calendar"),
        ("--tray 3 --days 2 --brood some", "--brood cannot be some"),
    ],
)
def test_what_a_person_can_put_right_gets_a_sentence(ask: Any, line: str, sentence: str) -> None:  # noqa: ANN401
    said = ask(line)
    assert said.startswith("combwright: ")
    assert sentence in said


def test_amounts_of_mites_are_written_alike_throughout(ask: Any) -> None:  # noqa: ANN401
    shown = ask("--washed 9 --bees 300 --brood yes --bees-in-colony 30000 --month 8")
    assert "About 1,800 mites" in shown
    assert "United Kingdom, 1,000 mites" in shown
    assert "Canada, 1 mite per 100 bees" in ask("--tray 33 --days 1 --month 8")
