"""What may be otherwise, and the plan, as they are told in the terminal."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from tests.cli.typed import typed
from tests.noted import noted

from combwright.cli.supply import otherwise, show
from combwright.planning.supply.nuc_readiness import NucReady
from combwright.services.supply.asked import WhatIf
from combwright.services.supply.supply_sheet import (
    ColonyLine,
    GiveLine,
    InMoney,
    OrderLine,
    SupplySheet,
    WeekLine,
)
from combwright.terms.errors import CombwrightError


def test_a_price_a_lost_batch_and_a_cold_fortnight_may_be_told_together() -> None:
    told = otherwise(["nuc in June=180", "lost First graft", "cold 2027-05-20", "lost B2"])
    assert told == WhatIf(
        (("nuc in June", 180.0),), frozenset({"First graft", "B2"}), date(2027, 5, 20)
    )
    assert otherwise([]) == WhatIf()


@pytest.mark.parametrize("told", ["lost", "cold tomorrow", "rain"])
def test_what_is_not_understood_is_said_with_an_example(told: str) -> None:
    with pytest.raises(CombwrightError) as error:
        otherwise([told])
    assert error.value.remedy


WEEK = date(2027, 5, 3)
PLAN = SupplySheet(
    on=date(2027, 4, 24),
    orders=(
        OrderLine("A7", "Byrne", "nuc", 2, date(2027, 6, 20), None, WEEK, 0.92, "cells of B1"),
        OrderLine(
            "A8", "Hall", "nuc", 1, WEEK, WEEK, None, None, "refused: too early",
            possible_with=("a queen more to buy",), ring="cannot be ready",
        ),
    ),
    gives=(GiveLine(WEEK, "Oak", "Top", 1, 2.0, 1.5, 31.4),),
    nucs=(NucReady("Ash", "Top", (), WEEK, 0.9, "feed"),),
    colonies=(ColonyLine("A9", "Kane", 1, date(2027, 6, 12), 250.0, ("Elm",), 180.0),),
    weeks=(
        WeekLine(WEEK, 2, 0, 1, 0, 30, 0.456, 0.3),
        WeekLine(date(2027, 5, 10), 0, 0, 0, 0, 0, 0.5, 0.3),
    ),
    can_give_now={}, queens_sure=3, kept_for_winter=4.0, next_spring=("Spring is kept for.",),
    money=InMoney(566.4, 283.0, 0.9, 0.75, 0.0),
    gap=0.0, own_factor=1.0, weather="Dublin Airport", notices=("Nobody counted nuc boxes.",),
)  # fmt: skip


def test_the_plan_is_told_from_whom_to_ring_to_what_it_brings(
    capsys: pytest.CaptureFixture[str],
) -> None:
    show(PLAN)
    told = capsys.readouterr().out.splitlines()
    assert told[0] == "Ring Hall (A8): cannot be ready"
    for line in (
        "  A7, 2 nucs for Byrne: by 3 May, 92 %; cells of B1",
        "  A8, 1 nuc for Hall: refused: too early",
        "    possible with a queen more to buy",
        f"  {PLAN.colonies[0].said}",
        "  3 May: 2 nucs with a cell, 1 mating nuc (a cell lays with 46 %)",
        "  10 May: nothing (a cell lays with 50 %)",
        f"  Ash (Top): {PLAN.nucs[0].said}",
        "  3 May: Oak (Top) gives 2 frames of brood and 1.5 of bees, at a loss of 31",
    ):
        assert line in told
    brings = "Brings 566 on average, plain rules 283 (promises kept 75 %); 4 nucs are left for"
    assert told[-3].startswith(brings)
    assert told[-2:] == ["Spring is kept for.", "Nobody counted nuc boxes."]


def test_what_there_is_none_of_is_said_so(capsys: pytest.CaptureFixture[str]) -> None:
    show(replace(PLAN, orders=(), colonies=(), gives=(), nucs=()))
    told = capsys.readouterr().out
    for title in ("Orders", "Nucs that stand", "Donors"):
        assert f"{title}\n  none\n" in told


def test_what_cannot_be_planned_is_refused_before_anything_is_followed(tmp_path: Path) -> None:
    oak = "2027-04-03,Top,Oak,national timber,2026,Dublin Airport,7,3,yes,1"
    refused = typed("supply", "--weeks", "40", "--book", str(noted(tmp_path, oak)))
    assert refused.returncode == 2
    assert "40 weeks cannot be planned" in refused.stderr
