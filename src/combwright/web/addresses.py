"""Names of colonies in addresses: whatever a name holds, it stays one part of its address."""

import re
from typing import Annotated, Final
from urllib.parse import quote

from pydantic import AfterValidator

# a server, proxy or browser would take these for its own, even where they are written as %2F
ODD: Final = re.compile(r"[/\\%=]|^\.{1,2}$")
WRITTEN: Final = re.compile(r"=([0-9A-F]{2})")


def segment(name: str) -> str:
    """Write a name into an address; `named` reads it again.

    Examples
    --------
    >>> segment("Hive 3"), segment("a/b"), segment("..")
    ('Hive%203', 'a=2Fb', '=2E=2E')

    """
    plain = ODD.sub(lambda found: "".join(f"={ord(sign):02X}" for sign in found[0]), name)
    return quote(plain, safe="=")


def named(part: str) -> str:
    """Read a name out of an address.

    Examples
    --------
    >>> named("a=2Fb"), named("=2E=2E"), named("=3D1")
    ('a/b', '..', '=1')

    """
    return WRITTEN.sub(lambda found: chr(int(found[1], 16)), part)


ColonyName = Annotated[str, AfterValidator(named)]
