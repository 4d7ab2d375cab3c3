"""No advice contradicts another on the same sheet: over random colonies and dates."""

import re
from collections.abc import Callable
from datetime import timedelta

import pytest
from tests.advice.situations import drawn, situation

from combwright.advice.actions import days_asked_for, of_kind
from combwright.advice.bee_acts import (
    Divide,
    EggFrame,
    Give,
    LeaveShut,
    Look,
    Requeen,
    TakeIn,
    Uniting,
)
from combwright.advice.decisions.food import FEEDER_G, FONDANT_MOST_G
from combwright.advice.kit_acts import Act, Counting, Feeding, LeaveStack, SuperOff, Tray, Treat
from combwright.advice.plan import Plan, plan
from combwright.advice.situation import Situation
from combwright.advice.stacking import set_up_after
from combwright.kit.fits import frames_that_fit
from combwright.science.mites.treatments import TREATMENTS
from combwright.terms.entries import Visit

SEVERAL = 24
CASES = 12 * SEVERAL
WINTER = (11, 12, 1)


def _planned(first: int) -> list[tuple[Situation, Plan]]:
    made = [situation(drawn(number)) for number in range(first, first + SEVERAL)]
    return [(each, plan(each)) for each in made]


def has_signs(at: Situation) -> bool:
    return any(isinstance(entry, Visit) and entry.disease_signs for entry in at.history)


def is_kept_shut(decided: Plan) -> bool:
    return any(each.until and not each.since for each in decided.asks(LeaveShut))


def asks(decided: Plan, *kinds: type[Act]) -> bool:
    return any(isinstance(each, kinds) for each in decided.actions)


def takes_honey(decided: Plan) -> bool:
    return any(each.why != "must be fed" for each in decided.asks(SuperOff))


def looks_inside(decided: Plan) -> bool:
    inside = {"health", "queen cells", "every frame"}
    return any(each.at in inside for each in decided.asks(Look))


def no_feed_under_supers(_: Situation, decided: Plan) -> bool:
    return decided.portion.grams == 0 or decided.set_up.supers == 0


def a_new_super_takes_the_feeder_off(at: Situation, decided: Plan) -> bool:
    more = decided.set_up.supers > at.standing.set_up.supers
    told = any("the feeder comes off" in job for job in decided.jobs)
    clean = decided.chances["syrup in honey"] <= at.limits.syrup_in_honey
    return not more or (told and clean and decided.portion.grams == 0)


def nothing_moves_when_signs_were_seen(at: Situation, decided: Plan) -> bool:
    moves = asks(decided, SuperOff, Uniting, EggFrame, Give, TakeIn, Requeen, Divide)
    return not has_signs(at) or (not moves and decided.set_up == at.standing.set_up)


def nothing_moves_in_a_yard_with_signs(at: Situation, decided: Plan) -> bool:
    if at.signs_at is None:
        return True
    told, now = decided.set_up, at.standing.set_up
    moves = asks(decided, Uniting, Give, TakeIn, Requeen, Divide, EggFrame) or takes_honey(decided)
    return not moves and (told.frames, told.supers) == (now.frames, now.supers)


def branches_keep_what_the_plan_leaves_alone(at: Situation, decided: Plan) -> bool:
    opened = at.on.month not in WINTER and at.signs_at is None and not is_kept_shut(decided)
    asked = [action for each in decided.branches for action in each.actions]
    stack = of_kind(asked, LeaveStack)
    foreign = of_kind(asked, EggFrame)
    return (not stack or (opened and not has_signs(at))) and (not foreign or at.signs_at is None)


def air_goes_through_at_one_end_only(_: Situation, decided: Plan) -> bool:
    return decided.set_up.cover != "vented" or decided.set_up.tray_open_mm == 0


def what_is_kept_shut_is_not_opened(at: Situation, decided: Plan) -> bool:
    opens = asks(decided, SuperOff, Give, TakeIn, EggFrame, Treat, Divide) or looks_inside(decided)
    shut = is_kept_shut(decided) or has_signs(at)
    return not shut or (not opens and decided.set_up == at.standing.set_up)


def nothing_inside_is_looked_for_while_it_is_left_shut(at: Situation, decided: Plan) -> bool:
    """No “look for eggs” beside “do not open”, today or on a day told for later."""
    inside = [each for each in decided.asks(Look) if each.at not in {"life", "colony"}]
    return not any(
        (shut.since or at.on) <= (look.on or look.by or at.on) < shut.until
        for shut in decided.asks(LeaveShut)
        if shut.until and shut.why != "swarmed"  # it is shut after one cell is left
        for look in inside
    )


def winter_has_no_inspection(at: Situation, decided: Plan) -> bool:
    if at.on.month not in WINTER:
        return True
    told, now = decided.set_up, at.standing.set_up
    same = (told.frames, told.dummy_boards) == (now.frames, now.dummy_boards)
    return same and not looks_inside(decided) and not asks(decided, Give)


def the_stack_fits_the_box(at: Situation, decided: Plan) -> bool:
    hive, told = at.standing.hive, decided.set_up
    boxes = told.brood_boxes
    fits = frames_that_fit(hive, None, told.dummy_boards, boxes)
    return told.frames <= min(fits, 12 * boxes) and told.dummy_boards <= 2


def what_is_fed_fits_the_feeder(_: Situation, decided: Plan) -> bool:
    most = FONDANT_MOST_G if decided.portion.feed == "fondant" else FEEDER_G
    return decided.portion.grams <= most


def what_is_fed_is_worth_carrying(_: Situation, decided: Plan) -> bool:
    told = [decided.portion, *(each.portion for each in decided.branches if each.portion)]
    return not any(0 < portion.grams < 300 for portion in told)


def what_is_united_gives_and_gets_nothing(_: Situation, decided: Plan) -> bool:
    idle = not asks(decided, Feeding, Give, TakeIn, EggFrame, Requeen, Treat)
    saved = {"no eggs", "charged cells"} & {branch.code for branch in decided.branches}
    return not asks(decided, Uniting) or (idle and not saved)


def what_has_no_queen_gives_no_brood(_: Situation, decided: Plan) -> bool:
    return not (asks(decided, EggFrame) and asks(decided, Give))


def what_is_divided_keeps_its_queen(_: Situation, decided: Plan) -> bool:
    return not (asks(decided, Divide) and asks(decided, Requeen))


def a_treatment_is_possible(at: Situation, decided: Plan) -> bool:
    high = float(at.conditions[:, :7, 2].mean())
    for told in decided.asks(Treat):
        ways = [way for way in TREATMENTS if way.substance == told.substance]
        warm = any((w.low_c or -50.0) <= high <= (w.high_c or 50.0) for w in ways)
        if not warm or (decided.set_up.supers and any(w.supers_off for w in ways)):
            return False
    return True


def the_tray_is_never_shut_in_season(at: Situation, decided: Plan) -> bool:
    told = decided.set_up
    is_open = told.tray_open_mm > 0 or at.standing.hive.floor != "mesh"
    return is_open or told == at.standing.set_up


def the_actions_lead_to_the_set_up(at: Situation, decided: Plan) -> bool:
    return set_up_after(at.standing.set_up, decided.actions) == decided.set_up


def the_next_visit_is_the_first_day_asked_for(at: Situation, decided: Plan) -> bool:
    days = [day for day in days_asked_for(decided.actions) if day > at.on]
    return decided.next_visit == min([*days, decided.pays_best]) or is_kept_shut(decided)


def the_next_visit_is_not_while_it_is_left_shut(at: Situation, decided: Plan) -> bool:
    return not any(
        (each.since or at.on) <= decided.next_visit < (each.until or at.on)
        for each in decided.asks(LeaveShut)
    )


def no_date_is_told_that_lies_before_the_next_visit(at: Situation, decided: Plan) -> bool:
    days = [day for day in days_asked_for(decided.actions) if day > at.on]
    return at.on < decided.next_visit <= min(days, default=decided.next_visit)


def a_visit_decided_upon_is_the_one_told(_: Situation, decided: Plan) -> bool:
    looks = [each.by for each in decided.asks(Look) if each.at == "colony" and each.by]
    return all(decided.next_visit <= by for by in looks)


def an_early_look_has_something_to_do(at: Situation, decided: Plan) -> bool:
    """Within four days it is for food or a swarm; never for room that nobody can give."""
    soon = at.on + timedelta(days=4)
    early = [each for each in decided.asks(Look) if each.by is not None and each.by <= soon]
    told = decided.set_up
    is_full = told.frames >= at.standing.hive.frames * told.brood_boxes
    return not any(each.due == "the queen may be short of room" for each in early) or not is_full


def the_tray_is_set_one_way(_: Situation, decided: Plan) -> bool:
    return len(decided.asks(Tray)) + sum(c.on_tray for c in decided.asks(Counting)) <= 1


def its_words_are_written_one_way(_: Situation, decided: Plan) -> bool:
    """A space before each percent sign, and a capital behind each full stop."""
    told = [*decided.jobs, *(reason for each in decided.decisions for reason in each.because)]
    for branch in decided.branches:
        told += [*branch.do, branch.because]
    odd = re.compile(r"\d%|(?:^|[.!?] )[a-z]|[^.!?]$")
    return not any(odd.search(each) for each in told)


RULES: tuple[Callable[[Situation, Plan], bool], ...] = (
    no_feed_under_supers,
    a_new_super_takes_the_feeder_off,
    nothing_moves_when_signs_were_seen,
    nothing_moves_in_a_yard_with_signs,
    branches_keep_what_the_plan_leaves_alone,
    air_goes_through_at_one_end_only,
    what_is_kept_shut_is_not_opened,
    nothing_inside_is_looked_for_while_it_is_left_shut,
    winter_has_no_inspection,
    the_stack_fits_the_box,
    what_is_fed_fits_the_feeder,
    what_is_fed_is_worth_carrying,
    what_is_united_gives_and_gets_nothing,
    what_has_no_queen_gives_no_brood,
    a_treatment_is_possible,
    the_tray_is_never_shut_in_season,
    what_is_divided_keeps_its_queen,
    the_actions_lead_to_the_set_up,
    an_early_look_has_something_to_do,
    the_tray_is_set_one_way,
    the_next_visit_is_the_first_day_asked_for,
    the_next_visit_is_not_while_it_is_left_shut,
    no_date_is_told_that_lies_before_the_next_visit,
    a_visit_decided_upon_is_the_one_told,
    its_words_are_written_one_way,
)


@pytest.mark.parametrize("first", range(0, CASES, SEVERAL))
def test_no_advice_contradicts_another(first: int) -> None:
    broken = [
        (rule.__name__, first + number, at.on, decided.actions)
        for number, (at, decided) in enumerate(_planned(first))
        for rule in RULES
        if not rule(at, decided)
    ]
    assert not broken, broken


def test_the_same_job_is_not_told_twice() -> None:
    for _, decided in _planned(1000):
        assert len(set(decided.jobs)) == len(decided.jobs), decided.jobs
        fondant = [job for job in decided.jobs if "fondant" in job]
        assert len(fondant) <= 1, fondant
