"""How each batch and each queen with a name stands, replayed from the entries."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from typing import Final, Literal

from combwright.terms.entries import Batch, BatchCounts, Method, Noted, OwnQueen, OwnQueenNews

# the steps of a batch in their order: none can be more than the one before it
STEPS: Final = ("begun", "accepted", "sealed", "emerged", "laying")
COUNTED: Final = ("accepted", "sealed", "given", "emerged", "laying")
State = Literal["not noted", "cell", "virgin", "laying", "drone layer", "sold", "lost"]
BECOMES: Final[dict[str, State]] = {
    "cell given": "cell",
    "emerged": "virgin",
    "laying": "laying",
    "drone layer": "drone layer",
    "sold": "sold",
    "lost": "lost",
}


@dataclass(frozen=True, slots=True)
class KnownBatch:
    """One batch as the book knows it; ``None`` where nobody counted."""

    batch: str
    method: Method
    day_0: date
    begun: int | None
    mother: str | None
    colony: str | None
    brood_c: float | None
    accepted: int | None = None
    sealed: int | None = None
    given: int | None = None
    emerged: int | None = None
    laying: int | None = None
    counted: date | None = None

    def left(self, usual: tuple[float, float]) -> float:
        """Give the cells that can be expected of it, by usual shares accepted and sealed well.

        Examples
        --------
        >>> batch = KnownBatch("1", "graft", date(2027, 5, 10), 30, None, None, None)
        >>> batch.left((0.8, 0.95)), replace(batch, sealed=21, given=15).left((0.8, 0.95))
        (22.8, 6.0)

        """
        accepted, sealed = usual
        if self.sealed is not None:
            cells = float(self.sealed)
        elif self.accepted is not None:
            cells = sealed * self.accepted
        else:
            cells = accepted * sealed * (self.begun or 0)
        return max(0.0, round(cells - (self.given or 0), 6))


@dataclass(frozen=True, slots=True)
class KnownQueen:
    """One queen with a name as the book knows her."""

    queen: str
    batch: str | None
    mother: str | None
    year: int | None
    mark: str | None
    clipped: bool | None
    colony: str | None
    state: State = "not noted"
    since: date | None = None
    pattern: str | None = None
    seen: date | None = None

    @property
    def is_gone(self) -> bool:
        """Whether she is here no more."""
        return self.state in ("sold", "lost")


def known_batches(entries: Iterable[Noted]) -> dict[str, KnownBatch]:
    """Replay entries: every batch, by its day 0."""
    found: dict[str, KnownBatch] = {}
    for each in entries:
        if isinstance(each, Batch) and each.batch not in found:
            found[each.batch] = KnownBatch(
                **each.model_dump(exclude={"id", "kind", "on", "remark"})
            )
        elif isinstance(each, BatchCounts) and each.batch in found:
            told = each.model_dump(include=set(COUNTED), exclude_none=True)
            found[each.batch] = replace(found[each.batch], **told, counted=each.on)
    return dict(sorted(found.items(), key=lambda pair: (pair[1].day_0, pair[0])))


def known_queens(entries: Iterable[Noted]) -> dict[str, KnownQueen]:
    """Replay entries: every queen with a name, those gone too."""
    found: dict[str, KnownQueen] = {}
    for each in entries:
        if isinstance(each, OwnQueen) and each.queen not in found:
            told = each.model_dump(exclude={"id", "kind", "on", "remark"})
            found[each.queen] = KnownQueen(**told, seen=each.on)
        elif isinstance(each, OwnQueenNews) and each.queen in found:
            found[each.queen] = _after(found[each.queen], each)
    return found


def _after(now: KnownQueen, news: OwnQueenNews) -> KnownQueen:
    state = BECOMES.get(news.event, now.state)
    since = news.on if state != now.state else now.since
    return replace(
        now,
        colony=None if state in ("sold", "lost") else news.colony or now.colony,
        state=state,
        since=since,
        pattern=news.pattern or now.pattern,
        seen=now.seen if news.event == "lost" else news.on,
    )
