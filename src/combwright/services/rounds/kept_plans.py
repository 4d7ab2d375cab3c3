"""Plans of colonies, kept as long as all that they rest on stands.

After a new note only the colonies are planned again whose belief, stack, book, weather or prices it
touched.
"""

from collections import OrderedDict
from collections.abc import Callable
from dataclasses import fields
from hashlib import blake2b
from threading import Lock
from typing import Final

from combwright.advice.situation import Situation
from combwright.belief.following.replay import Followed
from combwright.kit.standing import Standing
from combwright.planning.sheet import ColonySheet
from combwright.services.rounds.situations import Situations

MOST: Final = 1200  # colonies; a plan takes some twenty kilobytes
# Told apart otherwise: arrays by their bytes, what lies ahead by yard, year and day.
APART: Final = frozenset({"colonies", "conditions", "luck", "season", "standing"})
PLAIN: Final = tuple(each.name for each in fields(Situation) if each.name not in APART)

Make = Callable[[Followed, Situation], ColonySheet]


class KeptPlans:
    """Sheets of single colonies by what they rest on; those not asked for longest go first."""

    def __init__(self) -> None:
        self._known: OrderedDict[bytes, ColonySheet] = OrderedDict()
        self._lock = Lock()

    def __len__(self) -> int:
        return len(self._known)

    def sheet(
        self, followed: Followed, situations: Situations, order: int, make: Make
    ) -> ColonySheet:
        """Give the sheet of a colony, made now if anything it rests on is new."""
        situation = situations.of(followed)
        key = rests_on(followed, situation, situations)
        with self._lock:
            known = self._known.get(key)
        if known is None:
            known = make(followed, situation)
        with self._lock:
            self._known[key] = known
            self._known.move_to_end(key)
            while len(self._known) > MOST:
                self._known.popitem(last=False)
        return known.model_copy(update={"order": order})


def rests_on(followed: Followed, situation: Situation, situations: Situations) -> bytes:
    """Give the fingerprint of all that a colony's plan rests on."""
    belief, asked = followed.belief, situations.asked
    plain = tuple(getattr(situation, name) for name in PLAIN)
    stands = [_in_order(getattr(situation.standing, each.name)) for each in fields(Standing)]
    beside = (followed.yard, followed.last_visit, followed.notices, belief.questions)
    said = repr((plain, stands, beside, asked.days, asked.seed)).encode()
    digest = blake2b(said, digest_size=16)
    digest.update(belief.colonies.tobytes())
    digest.update(belief.shared["year"].tobytes())
    digest.update(situations.around.fingerprint(followed.yard))
    return digest.digest()


def _in_order(value: object) -> object:
    """Give a set in one order, and anything else as it is."""
    return sorted(value) if isinstance(value, set | frozenset) else value
