"""Sealing a backup with a passphrase: Argon2id makes the key, AES-GCM the seal of each content."""

import os
from dataclasses import dataclass
from typing import Final, Self

from argon2.low_level import Type, hash_secret_raw
from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from pydantic import BaseModel, ConfigDict, Field

from combwright.services.passphrases import refuse_weak
from combwright.terms.errors import BookError

NONCE: Final = 12  # bytes, as NIST SP 800-38D has it
SALT: Final = 16


class Making(BaseModel):
    """How the key was made: the second of the two ways that RFC 9106 (section 4) recommends.

    The bounds keep a file that somebody made up from asking for all the memory there is.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    salt: str = Field(min_length=2 * SALT, max_length=2 * SALT, pattern="^[0-9a-f]+$")
    passes: int = Field(default=3, ge=1, le=20)
    memory_kib: int = Field(default=65536, ge=8192, le=1048576)
    lanes: int = Field(default=4, ge=1, le=16)


@dataclass(frozen=True)
class Seal:
    """A key, and how it was made."""

    making: Making
    key: AESGCM

    @classmethod
    def new(cls, passphrase: str) -> Self:
        """Make a seal of its own for one backup."""
        refuse_weak(passphrase)
        return cls.as_made(passphrase, Making(salt=os.urandom(SALT).hex()))

    @classmethod
    def as_made(cls, passphrase: str, making: Making) -> Self:
        """Make the seal again by which a backup was sealed."""
        key = hash_secret_raw(
            passphrase.encode(),
            bytes.fromhex(making.salt),
            time_cost=making.passes,
            memory_cost=making.memory_kib,
            parallelism=making.lanes,
            hash_len=32,
            type=Type.ID,
        )
        return cls(making, AESGCM(key))

    def close(self, content: bytes, name: str) -> bytes:
        """Seal a content under its name, so that no two can change places."""
        nonce = os.urandom(NONCE)
        return nonce + self.key.encrypt(nonce, content, name.encode())

    def open(self, sealed: bytes, name: str) -> bytes:
        """Open what was sealed under a name."""
        try:
            return self.key.decrypt(sealed[:NONCE], sealed[NONCE:], name.encode())
        except (InvalidTag, ValueError) as error:
            raise BookError(
                "The passphrase does not fit, or the backup is damaged.",
                remedy="Type it again, or take another backup.",
            ) from error
