"""What a round asks for at a colony in one line, which stands first on page and overview."""

from collections.abc import Sequence
from dataclasses import dataclass

from combwright.advice.actions import of_kind
from combwright.advice.bee_acts import Divide, LeaveShut, Requeen, Uniting
from combwright.advice.kit_acts import SuperOff, SuperOn, Treat
from combwright.advice.words.wording import many
from combwright.planning.sheet import ColonySheet
from combwright.planning.task_minutes import TaskMinutes

PRESSING = ((Divide, "split"), (Uniting, "unite"), (Requeen, "requeen"), (Treat, "treat"))


@dataclass(frozen=True, slots=True)
class Glance:
    """One colony's part of a round in amounts; what is put in counts up, what comes out down."""

    litres: float
    fondant_g: int
    supers: int
    frames: int
    boards: int
    questions: int
    is_shut: bool
    minutes: float
    work: tuple[str, ...]

    @property
    def feed(self) -> str:
        """Say the feed as it is measured out."""
        if self.fondant_g:
            return f"{self.fondant_g:,} g fondant"
        return f"{self.litres:.1f} L" if self.litres else "no feed"

    @property
    def boxes(self) -> str:
        """Say what goes in and comes out, or nothing where the box stays as it is."""
        moved = (
            (self.supers, "super", ("on", "off")),
            (self.frames, "frame", ("in", "out")),
            (self.boards, "dummy board", ("in", "out")),
        )
        return ", ".join(
            f"{many(abs(number), what)} {ways[number < 0]}"
            for number, what, ways in moved
            if number
        )

    @property
    def asked(self) -> str:
        """Say how much the book asks about, if anything."""
        return many(self.questions, "question") if self.questions else ""

    @property
    def rest(self) -> str:
        """Say what there is beside the feed, for a line in a list."""
        parts = [*(["leave shut"] if self.is_shut else []), *self.work, self.boxes]
        return ", ".join(part for part in (*parts, self.asked) if part)

    @property
    def line(self) -> str:
        """Say all of it in one line."""
        feed = f"{self.feed} of syrup" if self.litres else self.feed
        if self.is_shut and not self.work:
            parts = ["leave it shut", *([feed] if self.litres or self.fondant_g else [])]
        else:
            parts = [*self.work, feed, self.boxes or "boxes stay"]
        whole = ", ".join([*parts, *([self.asked] if self.questions else [])])
        return whole[0].upper() + whole[1:]


def glance(colony: ColonySheet, own: TaskMinutes) -> Glance:
    """Sum up one colony's part of a round; ``own`` are the keeper's own minutes."""
    now, then, given = colony.set_up_now, colony.set_up, colony.portion
    acts = colony.actions
    taken = sum(each.supers for each in of_kind(acts, SuperOff))
    put = sum(each.supers for each in of_kind(acts, SuperOn))
    return Glance(
        litres=given.litres,
        fondant_g=given.syrup_g if given.feed == "fondant" else 0,
        supers=put - taken or then.supers - now.supers,
        frames=then.frames - now.frames,
        boards=then.dummy_boards - now.dummy_boards,
        questions=len(colony.questions),
        is_shut=bool(of_kind(acts, LeaveShut)),
        minutes=own.of(acts),
        work=tuple(word for kind, word in PRESSING if of_kind(acts, kind)),
    )


def minutes_in_words(glances: Sequence[Glance]) -> str:
    """Say how long the hives take together, without the way."""
    minutes = round(sum(each.minutes for each in glances))
    hours, rest = divmod(minutes, 60)
    return f"{hours} h {rest:02d} min" if hours else f"{rest} min"
