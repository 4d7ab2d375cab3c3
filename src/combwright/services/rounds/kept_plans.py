"""Plans of colonies, kept as long as all that they rest on stands.

After a new note only the colonies are planned again whose belief, stack, book, weather or prices it
touched. In a folder they outlive the program: what is kept there can be thrown away at any time.
"""

from collections import OrderedDict
from collections.abc import Callable
from dataclasses import fields
from functools import cache
from hashlib import blake2b
from pathlib import Path
from threading import Lock
from typing import Final

from platformdirs import user_cache_path
from pydantic import ValidationError

from combwright.advice.situation import Situation
from combwright.belief.following.replay import Followed
from combwright.kit.standing import Standing
from combwright.planning.sheet import ColonySheet
from combwright.services.beliefs.kept_beliefs import version
from combwright.services.kept_files import keep_file, leave_the_newest, read_kept
from combwright.services.rounds.situations import Situations
from combwright.terms.fingerprint import fingerprint

ENDING: Final = ".plan"
MOST: Final = 1200  # colonies; a plan takes some twenty kilobytes
# Told apart otherwise: arrays by their bytes, what lies ahead by yard, year and day.
APART: Final = frozenset({"colonies", "conditions", "luck", "season", "standing"})
PLAIN: Final = tuple(each.name for each in fields(Situation) if each.name not in APART)

Make = Callable[[Followed, Situation], ColonySheet]


def plans_folder() -> Path:
    """Give the folder in the user's cache in which plans are kept, whatever book they are of."""
    return user_cache_path("combwright", appauthor=False) / "plans"


class KeptPlans:
    """Sheets of single colonies by what they rest on; those not asked for longest go first."""

    def __init__(self, folder: Path | None = None) -> None:
        self._known: OrderedDict[bytes, ColonySheet] = OrderedDict()
        self._lock = Lock()
        self._folder = folder
        self.made = 0
        if folder is not None:
            leave_the_newest(folder, ENDING, MOST)

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
        known = known or self._read(key)
        if known is None:
            known = make(followed, situation)
            self.made += 1
            self._write(key, known)
        with self._lock:
            self._known[key] = known
            self._known.move_to_end(key)
            while len(self._known) > MOST:
                self._known.popitem(last=False)
        return known.model_copy(update={"order": order})

    def _read(self, key: bytes) -> ColonySheet | None:
        """Give a plan that lies in the folder; a damaged file counts as none."""
        if self._folder is None:
            return None
        content = read_kept(self._folder / f"{key.hex()}{ENDING}")
        try:
            return None if content is None else ColonySheet.model_validate_json(content)
        except ValidationError:
            return None

    def _write(self, key: bytes, sheet: ColonySheet) -> None:
        if self._folder is not None:
            content = sheet.model_dump_json().encode()
            keep_file(self._folder / f"{key.hex()}{ENDING}", content)


@cache
def _maker() -> str:
    """Tell one version of all that makes a plan from another."""
    return f"{version()} {fingerprint('advice', 'planning')}"


def rests_on(followed: Followed, situation: Situation, situations: Situations) -> bytes:
    """Give the fingerprint of all that a colony's plan rests on."""
    belief, asked = followed.belief, situations.asked
    plain = tuple(getattr(situation, name) for name in PLAIN)
    stands = [_in_order(getattr(situation.standing, each.name)) for each in fields(Standing)]
    beside = (followed.yard, followed.last_visit, followed.notices, belief.questions)
    said = repr((_maker(), plain, stands, beside, asked.days, asked.seed)).encode()
    digest = blake2b(said, digest_size=16)
    digest.update(belief.colonies.tobytes())
    digest.update(belief.shared["year"].tobytes())
    digest.update(situations.around.fingerprint(followed.yard))
    return digest.digest()


def _in_order(value: object) -> object:
    """Give a set in one order, and anything else as it is."""
    return sorted(value) if isinstance(value, set | frozenset) else value
