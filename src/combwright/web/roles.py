"""What each role may ask of the page; what is not named here is the keepers' alone.

The book itself refuses once more what a person may not write: see `records.store.authorship`.
"""

from typing import Final

from combwright.terms.errors import NotAllowedError
from combwright.terms.person import Role

LOOKING: Final = frozenset({"GET", "HEAD", "OPTIONS"})
OWN: Final = ("/own-login", "/logout", "/login", "/join/")  # one's own login, whoever one is
NOTING: Final = ("/note", "/round/", "/enter/", "/mend/", "/api/entries")
KEEPERS: Final = ("/people", "/buyers")  # pages about persons


def refuse_beyond_role(role: Role, method: str, path: str) -> None:
    """Refuse what a role may not ask for."""
    if role.settles:
        return
    if path.startswith(KEEPERS):
        raise NotAllowedError("This page is for keepers.", remedy="Ask one of them.")
    if method in LOOKING or path.startswith(OWN):
        return
    if not role.notes:
        raise NotAllowedError(
            "You may read this book, not write to it.", remedy="Ask a keeper to make you a helper."
        )
    if not path.startswith(NOTING):
        raise NotAllowedError("This is for keepers to change.", remedy="Ask one of them.")
