"""A second factor by any standard authenticator (TOTP, RFC 6238), and codes for when it is lost."""

from base64 import b32encode
from dataclasses import dataclass, field
from datetime import datetime
from hmac import compare_digest
from secrets import token_bytes
from typing import Final

import pyotp
import segno

from combwright.records.store.book_handle import Book, Transaction
from combwright.records.store.people_rows import change_person, secrets_of, tell, use_step
from combwright.services.people.sessions import digest
from combwright.terms.errors import NotAllowedError, NotFoundError
from combwright.terms.person import Person

ISSUER: Final = "Combwright"
STEP_S: Final = 30  # RFC 6238, section 5.2, as is one step of delay
LATE: Final = (0, -1)
CODES: Final = 8  # for when the authenticator is lost; judgement
CODE_BYTES: Final = 15  # 120 bits: a plain hash keeps them safe (OWASP ASVS 5.0, 6.5.2)
GROUP: Final = 4


@dataclass(frozen=True, slots=True)
class OfferedSeed:
    """A seed for an authenticator, to be scanned or typed."""

    seed: str = field(repr=False)
    picture: str = field(repr=False)  # the address of a QR code as data


def offer(book: Book, person: Person, now: datetime) -> OfferedSeed:
    """Make a new seed; it counts once a code made from it has come back."""
    if person.has_second_factor:
        raise NotAllowedError("There is a second factor already.", remedy="End that one first.")
    seed = pyotp.random_base32()
    with book.writing() as db:
        change_person(db, person.id, seed=seed)
        tell(db, now, person.id, "was offered a second factor")
    address = pyotp.TOTP(seed).provisioning_uri(name=person.name, issuer_name=ISSUER)
    return OfferedSeed(seed, segno.make(address).svg_data_uri(scale=5, border=4, light="white"))


def confirm(book: Book, person: Person, code: str, now: datetime) -> list[str]:
    """Take a seed into use by a code made from it, and give the codes to be kept on paper."""
    with book.writing() as db:
        if not _fits(db, person, code, now):
            raise NotFoundError("The code does not fit.", remedy="Wait for the next one.")
        codes = [_recovery_code() for _ in range(CODES)]
        change_person(db, person.id, recovery=[digest(_plain(one)) for one in codes])
        tell(db, now, person.id, "set up a second factor")
    return codes


def passes(book: Book, person: Person, code: str, now: datetime) -> bool:
    """Use up a code of the authenticator, or one from paper; nobody passes twice with one."""
    with book.writing() as db:
        return _fits(db, person, code, now) or _recovers(db, person, code, now)


def end_second_factor(book: Book, person: Person, now: datetime, by: Person | None) -> None:
    """Let a person in by the passphrase alone again."""
    with book.writing() as db:
        change_person(db, person.id, seed=None, step=None, recovery=None)
        tell(db, now, by and by.id, f"ended the second factor of {person.name}")


def _fits(db: Transaction, person: Person, code: str, now: datetime) -> bool:
    seed, step = secrets_of(db, person.id).seed, int(now.timestamp()) // STEP_S
    if not seed:
        return False
    made = pyotp.TOTP(seed)
    told = "".join(code.split())
    return any(
        compare_digest(made.generate_otp(step + late).encode(), told.encode())
        and use_step(db, person.id, step + late)
        for late in LATE
    )


def _recovers(db: Transaction, person: Person, code: str, now: datetime) -> bool:
    left = secrets_of(db, person.id).recovery
    used = digest(_plain(code))
    if used not in left:
        return False
    change_person(db, person.id, recovery=[one for one in left if one != used])
    tell(db, now, person.id, f"used a code from paper; {len(left) - 1} are left")
    return True


def _recovery_code() -> str:
    letters = b32encode(token_bytes(CODE_BYTES)).decode()
    return "-".join(letters[at : at + GROUP] for at in range(0, len(letters), GROUP))


def _plain(code: str) -> str:
    return "".join(sign for sign in code.upper() if sign.isalnum())
