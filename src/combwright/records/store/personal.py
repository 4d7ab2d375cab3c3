"""What entries say of buyers, kept apart from them, so that it can be deleted and they stay whole.

In its place an entry holds which fields there were and a hash of what they said, salted, so that
nobody finds a name by trying once it is deleted. The seals are over that, not over the names.
"""

from collections.abc import Collection, Iterator, Mapping
from hashlib import sha256
from types import MappingProxyType
from typing import Any, Final
from uuid import UUID

import sqlalchemy as sa

from combwright.records.store.id_batches import in_batches
from combwright.records.store.seals import canonical
from combwright.records.store.tables import entry, personal
from combwright.terms.entries import KINDS
from combwright.terms.entries.fields import fields_of

DELETED: Final = "(deleted)"
KEY: Final = "personal"


def _personal_fields() -> Iterator[tuple[str, tuple[str, ...]]]:
    for kind in KINDS:
        names = [name for name, field in fields_of(kind).items() if field.about.personal]
        if names:  # what is remarked beside a name may be about the person
            yield kind.model_fields["kind"].default, (*names, "remark")


FIELDS: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType(dict(_personal_fields()))


def taken_out(body: dict[str, Any], salt: str) -> tuple[dict[str, Any], dict[str, str]]:
    """Take what is personal out of an entry as it is stored; nothing of most.

    Examples
    --------
    >>> body = {"kind": "order", "order": "7", "customer": "Byrne", "remark": ""}
    >>> kept, told = taken_out(body, "00")
    >>> told, kept["personal"]["of"], "customer" in kept
    ({'customer': 'Byrne'}, ['customer'], False)
    >>> put_back(kept, told) == body
    True

    """
    inner = _inner(body)
    told = {name: inner[name] for name in FIELDS.get(inner["kind"], ()) if inner.get(name)}
    if not told:
        return body, {}
    key = {"of": list(told), "hash": hash_of(told, salt)}
    return _with(body, {name: inner[name] for name in inner if name not in told} | {KEY: key}), told


def put_back(body: dict[str, Any], told: Mapping[str, str] | None) -> dict[str, Any]:
    """Put what was taken out into its place again; a word for what was deleted since."""
    inner = _inner(body)
    if KEY not in inner:
        return body
    whole = {name: value for name, value in inner.items() if name != KEY}
    return _with(body, whole | dict(told or dict.fromkeys(inner[KEY]["of"], DELETED)))


def fits(body: dict[str, Any], told: Mapping[str, str], salt: str) -> bool:
    """Tell whether what is kept apart is what the entry was sealed with."""
    key = _inner(body).get(KEY)
    return key is not None and hash_of(told, salt) == key["hash"]


def hash_of(told: Mapping[str, str], salt: str) -> str:
    """Hash what is personal, with a salt that goes when it is deleted."""
    return sha256(canonical({"salt": salt, "told": dict(told)})).hexdigest()


def _inner(body: dict[str, Any]) -> dict[str, Any]:
    """Give the note that an entry is, or that a correction puts in the place of another."""
    found: dict[str, Any] = body.get("replacement") or body
    return found


def _with(body: dict[str, Any], inner: dict[str, Any]) -> dict[str, Any]:
    return body | {"replacement": inner} if body.get("replacement") else inner


def forget(db: sa.Connection, entries: Collection[UUID]) -> int:
    """Delete what some entries say of buyers, and tell of how many it was."""
    gone = 0
    for some in in_batches(entries):
        wanted = sa.select(entry.c.sequence).where(entry.c.id.in_(some))
        gone += db.execute(sa.delete(personal).where(personal.c.sequence.in_(wanted))).rowcount
    return gone


def misfits(db: sa.Connection) -> Iterator[int]:
    """Give the places of entries whose personal data are not what they were sealed with."""
    rows = sa.select(personal, entry.c.body).outerjoin(
        entry, entry.c.sequence == personal.c.sequence
    )
    for one in db.execute(rows.order_by(personal.c.sequence)):
        if one.body is None or not fits(one.body, one.told, one.salt):
            yield one.sequence
