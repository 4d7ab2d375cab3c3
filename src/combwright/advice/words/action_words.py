"""The words of every action: the one place where a job is put into a sentence."""

from collections.abc import Iterable, Mapping
from datetime import date
from functools import singledispatch
from typing import Final

from combwright.advice import bee_acts, kit_acts
from combwright.advice.actions import Action
from combwright.advice.words.divide_words import divide_words
from combwright.advice.words.look_words import LOOKS, day_or_next
from combwright.advice.words.wording import amount_words, day_words, many, span_words
from combwright.science.mites.treatments import LABEL, VAPOURS

TRAY_OUT_MM: Final = 400  # drawn out so far, it is simply taken out
NEWSPAPER: Final = "through newspaper"
AGAIN: Final = "{0.again_by.day} {0.again_by:%b}"
# what an action says by its fields alone
ACT_WORDS: Final[Mapping[type[kit_acts.Act], str]] = {
    kit_acts.SuperOn: "Put on a super over the excluder; the feeder comes off.",
    kit_acts.Entrance: "Set the entrance to {0.width_mm} mm.",
    kit_acts.Respace: "{0.notice}",
    kit_acts.ProveRipe: "Test first: sealed by three quarters and nothing drips when a comb is "
    "jerked, or {0.water_percent_most:g} % water at most by refractometer (heather 23 %).",
    kit_acts.KeepHoney: "Fed syrup may be in it: do not sell this as honey; keep it for the bees.",
    kit_acts.CutDrones: "Cut out sealed drone brood, and again every three weeks: mites go with "
    "it, and no super forbids it. It slows them; it is not enough alone.",
    bee_acts.CutCells: "Look on every frame. Cells, and eggs: divide, or knock down every one as a "
    f"stop-gap, and again by {AGAIN}: it holds a swarm up, it does not end it.",
    bee_acts.Demaree: "Demaree: the queen with one frame of brood and {0.frames} drawn combs into "
    "a second brood box on the floor, excluder and supers over it, all other brood on top; knock "
    f"down every cell now, and above by {AGAIN}.",
    bee_acts.GoOnAlone: "Let it go on alone.",
    bee_acts.TakeIn: "Can take a frame of sealed brood for an empty one, bees shaken off and "
    "the frame marked, from a healthy colony that can give.",
    bee_acts.Rehouse: "It fills its box: sell it, or set its frames into a hive.",
    bee_acts.Heft: "Heft from behind; do not open.",
    bee_acts.ClearEntrance: "Clear dead bees from the entrance.",
    bee_acts.MakeFast: "Mouse guard on; strap; roof tight.",
    bee_acts.WashTools: "Wash tools and gloves in washing soda before the next hive.",
    bee_acts.AsForCharged: "The swarm goes with the next fine day: do today as for charged cells.",
}


def jobs_instead(actions: Iterable[Action]) -> tuple[str, ...]:
    """Put into words what a branch asks for: its portion by the day, to be told from the plan's."""
    return tuple(_instead(each) for each in actions)


def _instead(action: Action) -> str:
    if isinstance(action, kit_acts.Feeding) and action.per_day_g:
        amount = amount_words(action.grams, action.feed)
        return f"Give {amount}, {action.per_day_g} g a day."
    return words(action)


def jobs_of(actions: Iterable[Action]) -> tuple[str, ...]:
    """Put actions into words, in working order; some need none."""
    return tuple(said for each in actions if (said := words(each)))


@singledispatch
def words(action: kit_acts.Act) -> str:
    """Put one action into words.

    Examples
    --------
    >>> words(kit_acts.Boards(more=-1))
    'Take out 1 dummy board.'
    >>> words(bee_acts.Heft())
    'Heft from behind; do not open.'

    """
    return ACT_WORDS[type(action)].format(action)


@words.register
def _(action: kit_acts.Feeding) -> str:
    if not action.grams:
        return "Give no feed."
    amount = amount_words(action.grams, action.feed)
    if action.feed == "fondant":
        return f"Lay {amount} over the cluster."
    warm = "lukewarm, " if action.hand_warm else ""
    return f"Give {amount}, {warm}in the evening."


@words.register
def _(action: kit_acts.Treat) -> str:
    said = f"Treat with {action.substance} ({action.way}) today. {LABEL}"
    if action.substance not in VAPOURS:
        return said
    return f"{said} Set tray, top and entrance as it asks while it stands in the hive."


@words.register
def _(action: kit_acts.Frames) -> str:
    more = action.more
    if more < 0:
        return f"Take out {many(-more, 'empty frame')} from the edge."
    kind = "frame{s} of foundation" if action.comb == "foundation" else "drawn frame{s}"
    count = f"{'a' if more == 1 else more} {kind.format(s='' if more == 1 else 's')}"
    return f"Add {count} at the edge of the nest{', one a side' if more > 1 else ''}."


@words.register
def _(action: kit_acts.StoresOut) -> str:
    combs = "a comb" if action.combs == 1 else f"{action.combs} combs"
    place = "a drawn one in its place" if action.combs == 1 else "drawn ones in their place"
    return f"Take {combs} of stores out beside the brood, {place}; keep for autumn or a nuc."


@words.register
def _(action: kit_acts.Boards) -> str:
    verb = "Put in" if action.more > 0 else "Take out"
    return f"{verb} {many(abs(action.more), 'dummy board')}."


@words.register
def _(action: kit_acts.SuperOff) -> str:
    if action.why == "must be fed":
        return "Take off what is above the excluder: it must be fed, and not into honey."
    kilograms = span_words(action.honey_kg_low, action.honey_kg, action.honey_kg_high, "kg")
    return (
        f"Take {many(action.supers, 'super')}, the fullest: about {kilograms}. Clearer board the "
        "evening before; two to lift."
    )


@words.register
def _(action: kit_acts.Tray) -> str:
    if not action.there:
        return ""
    is_out = action.open_mm >= TRAY_OUT_MM
    return "Take the tray out." if is_out else f"Open the tray by {action.open_mm} mm."


@words.register
def _(action: kit_acts.TopCover) -> str:
    return f"{'Open' if action.cover == 'vented' else 'Close'} the holes of the crown board."


@words.register
def _(action: kit_acts.LeaveStack) -> str:
    beside = many(action.dummy_boards, "dummy board") if action.dummy_boards else "no board"
    above = many(action.supers, "super") if action.supers else "no super"
    return f"Leave it on {many(action.frames, 'frame')}, {beside}, {above}."


@words.register
def _(action: kit_acts.WriteDown) -> str:
    years = {5: "five"}.get(action.kept_years, str(action.kept_years))
    return f"Write product, batch and dates into the book: the law asks for it for {years} years."


@words.register
def _(action: kit_acts.TakeOut) -> str:
    by = "today" if action.is_due else f"by {day_words(action.by)}"
    what = action.substance
    return f"Take out what is left of the {what} {by}: no longer than its label says."


@words.register
def _(action: kit_acts.Counting) -> str:
    if not action.on_tray:
        return "Wash or shake a cup of bees from a brood comb, without the queen, for a mite count."
    spans = {5: "five", 7: "seven"}
    least, most = (spans.get(n, str(n)) for n in (action.days_least, action.days_most))
    return (
        f"Push the tray in for a mite count over {least} to {most} days (open about "
        f"{action.tray_open_mm} mm)."
    )


@words.register
def _(action: bee_acts.Look) -> str:
    return LOOKS[action.at](action)


@words.register
def _(action: bee_acts.LeaveShut) -> str:
    until = day_or_next(action.until)
    return {
        "queen is likely": f"A virgin or a cell is likely: keep out until {until}, or look before "
        "10 am or after 5 pm.",
        "virgin mates": f"{day_or_next(action.since)} to {until}: do not open; a virgin emerges "
        "and mates.",
        "swarmed": f"Do not open before {until}; then look for eggs.",
        "as planned": "Leave it shut, as planned.",
        "cold": "Do not open it: lid, weight, feed and entrance; the rest on a mild day.",
    }[action.why]


@words.register
def _(action: bee_acts.LeaveCells) -> str:
    return {
        "all": "They replace their queen: leave cells and queen alone.",
        "all for now": "Leave them and look again in 4 days.",
        "one good one": "It has swarmed: leave one good cell and knock down the rest, or casts "
        "follow.",
        "one in doubt": "Look for the queen; found: as for charged cells. Not found: leave one "
        "open cell, marked, and knock down the rest, and again after a week.",
    }[action.which]


@words.register
def _(action: bee_acts.KnockDown) -> str:
    if action.again_by is not None:
        return (
            "Charged cells are likely. Nothing is divided in this yard now, but no swarm should "
            "carry disease away: knock down every cell today, and again by "
            f"{day_words(action.again_by)}."
        )
    day = day_words(action.on)
    if action.look_for_queen:
        return f"{day}: knock down new cells; look whether she is free and lays."
    return f"{day}: knock down new cells, leave the marked one."


@words.register
def _(action: bee_acts.Divide) -> str:
    return divide_words(action)


@words.register
def _(action: bee_acts.EggFrame) -> str:
    if action.marked:
        return "No queen cell: put in a frame with eggs from another healthy colony, marked."
    return "Put in a frame with eggs; cells on it after 4 days: give a queen, a cell or leave one."


@words.register
def _(action: bee_acts.Requeen) -> str:
    if action.is_lost:
        return (
            "No eggs, no queen and no cells: give a young mated queen, caged, when you have one; "
            "knock down every cell first."
        )
    return "Replace the queen by a young mated one, when you have one; the old one goes first."


@words.register
def _(action: bee_acts.Wait) -> str:
    month = f"{date(2000, action.until_month, 1):%B}"
    return f"Wait: no eggs say little while it rests. Without any by {month}, unite it."


@words.register
def _(action: bee_acts.Uniting) -> str:
    if action.why == "queenless":
        return f"Unite it with a healthy neighbour {NEWSPAPER}, once sure that it is queenless."
    if action.why == "drone layer":
        return f"Find the drone layer and kill her; unite the bees with a neighbour {NEWSPAPER}."
    if action.why == "laying workers":
        return (
            "Give no brood and no queen, they would be lost: on a fine day shake the bees out in "
            "front of strong colonies, or unite them with a much stronger one."
        )
    return f"Unite it, if healthy, with a queenright neighbour {NEWSPAPER}."


@words.register
def _(action: bee_acts.Give) -> str:
    return f"Can give {many(action.frames_of_brood, 'frame')} of sealed brood with bees for a nuc."


@words.register
def _(action: bee_acts.MoveNothing) -> str:
    if action.found_now:
        return "Stop, close the hive, move nothing in or out of this yard."
    if action.signs_at is None:
        return (
            "Signs were noted: open it last, close it again, and move nothing in or out of this "
            "yard."
        )
    return (
        f"Signs of disease were noted at {action.signs_at} in this yard: no bees, frames, honey or "
        "kit in or out, nor from hive to hive, until the inspector allows it. Wash between hives."
    )


@words.register
def _(action: bee_acts.Reporting) -> str:
    if action.found_now:
        return "Report it to the bee inspectors of your country, and wash hands and tools."
    return (
        "Report to the bee inspectors of your country today (Ireland: the Department of "
        "Agriculture; Great Britain: the National Bee Unit); they decide, not this sheet."
    )


@words.register
def _(action: bee_acts.AsPlanned) -> str:
    if action.look_into is None:
        return "Do as planned."
    return "Do as planned, and look into them again at the next visit."
