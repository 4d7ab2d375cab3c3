"""Plans of colonies, kept as long as all that they rest on stands.

After a new note only the colonies are followed and planned again whose notes, weather, neighbours'
lessons, prices or limits it touched. In a folder plans outlive the program: what is kept there can
be thrown away at any time.
"""

from collections import OrderedDict
from functools import cache, lru_cache
from hashlib import blake2b
from pathlib import Path
from threading import Lock
from typing import Final

from platformdirs import user_cache_path
from pydantic import ValidationError

from combwright.planning.sheet import ColonySheet, Shown
from combwright.services.beliefs.kept_beliefs import version
from combwright.services.kept_files import keep_file, leave_the_newest, read_kept
from combwright.services.rounds.situations import Situations
from combwright.terms.fingerprint import fingerprint

ENDING: Final = ".plan"
TOLD_APART: Final = {"history", "prices", "limits"}  # of what a book says beside a belief
MOST: Final = 1200  # colonies; a plan takes some twenty kilobytes


class Planned(Shown):
    """The plan of a colony, if it still stands, and what else the round asks of it."""

    sheet: ColonySheet | None
    is_asked_about: bool = False
    frame_mm: tuple[float, float] = (0.0, 0.0)


class KeptPlans:
    """Plans of single colonies by what they rest on; those not asked for longest go first."""

    def __init__(self, folder: Path | None = None) -> None:
        self._known: OrderedDict[str, Planned] = OrderedDict()
        self._lock = Lock()
        self._folder = folder
        self.made = 0
        if folder is not None:
            leave_the_newest(folder, ENDING, MOST)

    def __len__(self) -> int:
        return len(self._known)

    def get(self, key: str) -> Planned | None:
        """Give what was put there, if it still is; a damaged file counts as none."""
        with self._lock:
            known = self._known.get(key)
        if known is None:
            known = self._read(key)
        if known is not None:
            self._remember(key, known)
        return known

    def put(self, key: str, planned: Planned) -> None:
        """Keep the plan of a colony."""
        self.made += 1
        self._remember(key, planned)
        if self._folder is not None:
            keep_file(self._folder / f"{key}{ENDING}", planned.model_dump_json().encode())

    def _remember(self, key: str, planned: Planned) -> None:
        with self._lock:
            self._known[key] = planned
            self._known.move_to_end(key)
            while len(self._known) > MOST:
                self._known.popitem(last=False)

    def _read(self, key: str) -> Planned | None:
        if self._folder is None:
            return None
        content = read_kept(self._folder / f"{key}{ENDING}")
        try:
            return None if content is None else Planned.model_validate_json(content)
        except ValidationError:
            return None


def plans_folder() -> Path:
    """Give the folder in the user's cache in which plans are kept, whatever book they are of."""
    return user_cache_path("combwright", appauthor=False) / "plans"


@cache
def _maker() -> str:
    """Tell one version of all that makes a plan from another."""
    return f"{version()} {fingerprint('advice', 'planning')}"


@lru_cache(maxsize=8)
def _said(*values: object) -> str:
    """Write out what is the same for all colonies, once."""
    return repr(values)


def rests_on(colony: str, situations: Situations) -> str:
    """Give the fingerprint of all that a colony's plan rests on, without following it."""
    asked = situations.asked
    notes, yard = situations.replay.key(colony, asked.on)
    beside = situations.beside(colony, yard)
    ids = b"".join(entry.id.bytes for entry in beside.history)
    shared = _said(_maker(), asked.on, beside.prices, beside.limits)
    own = [value for name, value in vars(beside).items() if name not in TOLD_APART]
    said = (shared + repr((colony, yard, notes, own))).encode()
    digest = blake2b(said + ids, digest_size=16)
    digest.update(situations.around.fingerprint(yard))
    return digest.hexdigest()
