"""No advice contradicts another on the same sheet: over random colonies and dates."""

from collections.abc import Callable

import pytest
from tests.advice.situations import drawn, situation

from combwright.advice.decisions.food import FEEDER_G, FONDANT_MOST_G
from combwright.advice.plan import Plan, plan
from combwright.advice.situation import Situation
from combwright.kit.geometry import frames_that_fit
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
    return any("keep out until" in job for job in decided.jobs)


def no_feed_under_supers(_: Situation, decided: Plan) -> bool:
    return decided.advised.grams == 0 or decided.advised.set_up.supers == 0


def a_new_super_takes_the_feeder_off(at: Situation, decided: Plan) -> bool:
    more = decided.advised.set_up.supers > at.standing.set_up.supers
    told = any("the feeder comes off" in job for job in decided.jobs)
    clean = decided.chances["syrup in honey"] <= at.limits.syrup_in_honey
    return not more or (told and clean and decided.advised.grams == 0)


def nothing_moves_when_signs_were_seen(at: Situation, decided: Plan) -> bool:
    told = decided.advised
    moves = told.supers_off or told.unite or told.give_queen or told.brood_frames_to_give
    return not has_signs(at) or (not moves and told.set_up == at.standing.set_up)


def nothing_moves_in_a_yard_with_signs(at: Situation, decided: Plan) -> bool:
    if at.signs_at is None:
        return True
    told, now = decided.advised, at.standing.set_up
    moves = told.supers_off or told.unite or told.brood_frames_to_give or told.requeen
    moves = moves or told.divide or told.give_queen
    same = (told.set_up.frames, told.set_up.supers) == (now.frames, now.supers)
    asks = [job for job in decided.jobs if "another healthy" in job or "Can " in job]
    return not moves and same and not asks


def branches_keep_what_the_plan_leaves_alone(at: Situation, decided: Plan) -> bool:
    opened = at.on.month not in WINTER and at.signs_at is None and not is_kept_shut(decided)
    lines = [line for each in decided.branches for line in each.do]
    stack = [line for line in lines if line.startswith("Leave it on")]
    foreign = [line for line in lines if "another healthy" in line]
    return (not stack or (opened and not has_signs(at))) and (not foreign or at.signs_at is None)


def air_goes_through_at_one_end_only(_: Situation, decided: Plan) -> bool:
    told = decided.advised.set_up
    return told.cover != "vented" or told.tray_open_mm == 0


def what_is_kept_shut_is_not_opened(at: Situation, decided: Plan) -> bool:
    told = decided.advised
    opens = told.supers_off or told.brood_frames_to_give or told.give_queen or told.treatment
    looks = any(job.startswith("Look for") for job in decided.jobs)
    shut = is_kept_shut(decided) or has_signs(at)
    return not shut or (not opens and not looks and told.set_up == at.standing.set_up)


def winter_has_no_inspection(at: Situation, decided: Plan) -> bool:
    if at.on.month not in WINTER:
        return True
    told, now = decided.advised, at.standing.set_up
    same = (told.set_up.frames, told.set_up.dummy_boards) == (now.frames, now.dummy_boards)
    looks = any(job.startswith(("Look for", "Look on")) for job in decided.jobs)
    return same and not looks and told.brood_frames_to_give == 0


def the_stack_fits_the_box(at: Situation, decided: Plan) -> bool:
    hive, told = at.standing.hive, decided.advised.set_up
    boxes = -(-at.standing.set_up.frames // hive.capacity)
    fits = frames_that_fit(hive, None, told.dummy_boards) * boxes
    return told.frames <= min(fits, 12 * boxes) and told.dummy_boards <= 2


def what_is_fed_fits_the_feeder(_: Situation, decided: Plan) -> bool:
    told = decided.advised
    most = FONDANT_MOST_G if decided.portion.feed == "fondant" else FEEDER_G
    return told.grams <= most


def what_is_united_gives_and_gets_nothing(_: Situation, decided: Plan) -> bool:
    told = decided.advised
    idle = told.grams == 0 and told.brood_frames_to_give == 0 and not told.give_queen
    return not told.unite or idle


def what_has_no_queen_gives_no_brood(_: Situation, decided: Plan) -> bool:
    return not decided.advised.give_queen or decided.advised.brood_frames_to_give == 0


def a_treatment_is_possible(at: Situation, decided: Plan) -> bool:
    told = decided.advised
    if told.treatment is None:
        return True
    high = float(at.conditions[:, :7, 2].mean())
    ways = [way for way in TREATMENTS if way.substance == told.treatment]
    warm = any((w.low_c or -50.0) <= high <= (w.high_c or 50.0) for w in ways)
    return warm and (told.set_up.supers == 0 or not any(w.supers_off for w in ways))


def the_tray_is_never_shut_in_season(at: Situation, decided: Plan) -> bool:
    told = decided.advised.set_up
    is_open = told.tray_open_mm > 0 or at.standing.hive.floor != "mesh"
    return is_open or told == at.standing.set_up


RULES: tuple[Callable[[Situation, Plan], bool], ...] = (
    no_feed_under_supers,
    a_new_super_takes_the_feeder_off,
    nothing_moves_when_signs_were_seen,
    nothing_moves_in_a_yard_with_signs,
    branches_keep_what_the_plan_leaves_alone,
    air_goes_through_at_one_end_only,
    what_is_kept_shut_is_not_opened,
    winter_has_no_inspection,
    the_stack_fits_the_box,
    what_is_fed_fits_the_feeder,
    what_is_united_gives_and_gets_nothing,
    what_has_no_queen_gives_no_brood,
    a_treatment_is_possible,
    the_tray_is_never_shut_in_season,
)


@pytest.mark.parametrize("first", range(0, CASES, SEVERAL))
def test_no_advice_contradicts_another(first: int) -> None:
    broken = [
        (rule.__name__, first + number, at.on, decided.advised)
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
