"""Passphrases: which are too weak to be taken, and how they are kept as Argon2id hashes."""

from typing import Final

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerifyMismatchError

from combwright.terms.errors import OutOfRangeError

SHORTEST: Final = 12
LONGEST: Final = 200
LOOKED_AT: Final = 72  # signs, beyond which guessing would take minutes to reckon
HARD_TO_GUESS: Final = 3  # of 4: ten thousand million guesses and more, by zxcvbn
HASHER = PasswordHasher()  # Argon2id by the second set of RFC 9106, section 4
OURS: Final = ("combwright", "beekeeper", "beekeeping", "passphrase")
WELL_KNOWN: Final = ("correct horse battery staple",)  # everybody’s example, https://xkcd.com/936


def refuse_weak(words: str, *own: str) -> None:
    """Refuse a passphrase that is short, well known or soon guessed, also from one's ``own`` name.

    Examples
    --------
    >>> refuse_weak("four unlikely words together")

    """
    if not SHORTEST <= len(words) <= LONGEST:
        raise OutOfRangeError(
            f"The passphrase has {len(words)} signs.",
            remedy=f"Take {SHORTEST} or more: four words that do not belong together are good.",
        )
    from zxcvbn import zxcvbn  # its lists of words are read only here

    is_known = words.casefold() in WELL_KNOWN
    if is_known or zxcvbn(words[:LOOKED_AT], user_inputs=[*OURS, *own])["score"] < HARD_TO_GUESS:
        raise OutOfRangeError(
            "The passphrase is among those that are guessed first.",
            remedy="Take four words that do not belong together.",
        )


def hashed(words: str) -> str:
    """Give the hash by which a passphrase is known again."""
    return HASHER.hash(words)


def fits(words: str, kept: str) -> bool:
    """Tell whether a passphrase is the one of a hash."""
    try:
        return HASHER.verify(kept, words[:LONGEST])
    except (VerifyMismatchError, InvalidHashError):
        return False
