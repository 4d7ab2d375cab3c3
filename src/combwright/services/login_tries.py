"""How often passphrases may be tried: a limit for each address, and a slower pace for all.

A try counts from its beginning, so that many at the same moment are no way round the limit. All
together are only slowed down, never shut out: nobody elsewhere can lock the keeper out.
All bounds are judgement.
"""

from collections import deque
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from ipaddress import ip_address, ip_network
from threading import Lock
from typing import Final

TRIES: Final = 5  # of one address ...
WITHIN: Final = timedelta(minutes=10)
QUICK: Final = 50  # of all together within that time; from then on each waits a while
LONGEST_S: Final = 5.0
REMEMBERED: Final = 5000  # tries; a bound on memory
HOME_BITS: Final = 64  # what one connection to the network is given of IPv6 (RFC 6177)


@dataclass
class LoginTries:
    """The tries of late that were wrong, or still go on."""

    _tries: deque[tuple[datetime, str]] = field(default_factory=lambda: deque(maxlen=REMEMBERED))
    _lock: Lock = field(default_factory=Lock)

    def begin(self, address: str, now: datetime) -> bool:
        """Count a try, and tell whether it may be made."""
        home = home_of(address)
        with self._lock:
            while self._tries and now - self._tries[0][0] > WITHIN:
                self._tries.popleft()
            if sum(each == home for _, each in self._tries) >= TRIES:
                return False
            self._tries.append((now, home))
            return True

    def succeed(self, address: str) -> None:
        """Forget the tries of an address that had the right one."""
        home = home_of(address)
        with self._lock:
            left = [each for each in self._tries if each[1] != home]
            self._tries.clear()
            self._tries.extend(left)

    @property
    def pause_s(self) -> float:
        """How long a try waits while many are made from everywhere."""
        tries = len(self._tries)
        return 0.0 if tries <= QUICK else min(LONGEST_S, tries / QUICK)


def home_of(address: str) -> str:
    """Give what an address counts as: of IPv6 one connection has very many.

    Examples
    --------
    >>> home_of("2001:db8:1:2:3:4:5:6") == home_of("2001:db8:1:2::9"), home_of("203.0.113.9")
    (True, '203.0.113.9')

    """
    try:
        found = ip_address(address)
    except ValueError:
        return address
    if found.version == 4:  # noqa: PLR2004  (IPv4)
        return address
    return str(ip_network((int(found), HOME_BITS), strict=False))
