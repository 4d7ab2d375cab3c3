"""Findings as they come: what simulates colonies takes seconds, and nobody should wait for it."""

from collections.abc import Mapping
from threading import Event, Lock, Thread

from combwright.evidence.check_files import Check, read_checks
from combwright.evidence.running import Finding, run_all


class AtHand:
    """Runs the checks once, the topics that need no colonies first."""

    def __init__(self) -> None:
        self.topics: dict[str, list[Check]] = {}
        self._found: dict[str, list[Finding]] = {}
        self._ready: dict[str, Event] = {}  # in the order in which they are run
        self._begins = Lock()

    def findings(self, seconds: float, topic: str = "") -> Mapping[str, list[Finding]]:
        """Give by topic what is worked out, after so many seconds at most; begin if need be.

        With a topic it waits for no other.
        """
        with self._begins:
            if not self.topics:
                self._begin()
        self._ready.get(topic, [*self._ready.values()][-1]).wait(seconds)
        return {name: self._found[name] for name in self.topics if name in self._found}

    def _begin(self) -> None:
        for check in read_checks():
            self.topics.setdefault(check.topic, []).append(check)
        simulated = {name: sum(c.simulated for c in some) for name, some in self.topics.items()}
        self._ready = {name: Event() for name in sorted(simulated, key=lambda one: simulated[one])}
        Thread(target=self._run, daemon=True).start()  # the program may end meanwhile

    def _run(self) -> None:
        for topic, ready in self._ready.items():
            self._found[topic] = run_all(self.topics[topic])
            ready.set()
