"""A disk that forgets what was not synced when the power is cut: a layer of our own.

``forgetting.c`` is loaded before the C library of the program that is tried, and keeps beside the
folder what was synced of it. Here a power cut is made of that: a folder with the names that were
synced, each file as it was at its last sync; or, as a disk may also do it, with some of the blocks
that were written since. No disk that lies about syncing is meant by it, and no broken sectors.
"""

import os
import shutil
import subprocess
from collections.abc import Mapping
from pathlib import Path
from random import Random
from typing import Final

LAYER: Final = Path(__file__).with_name("forgetting.c")
BLOCK: Final = 4096


class ForgettingDisk:
    """A folder, and what of it was synced."""

    def __init__(self, room: Path) -> None:
        self.live, self._kept, self._room = room / "live", room / "kept", room
        self._library = room / "forgetting.so"
        command = ["gcc", "-shared", "-fPIC", "-O1", "-o", str(self._library), str(LAYER), "-ldl"]
        subprocess.run(command, check=True)
        self.live.mkdir()
        self.sync_all()

    @property
    def environment(self) -> Mapping[str, str]:
        """What a program must be started with so that the disk forgets."""
        return {
            "LD_PRELOAD": str(self._library),
            "FORGETTING_LIVE": str(self.live),
            "FORGETTING_KEPT": str(self._kept),
        }

    def sync_all(self) -> None:
        """Take what is there for synced; no program writes now."""
        shutil.rmtree(self._kept, ignore_errors=True)
        for name in ("names", "data"):
            (self._kept / name).mkdir(parents=True)
        for folder in (self.live, *(each for each in self.live.rglob("*") if each.is_dir())):
            names = "".join(f"{each.stat().st_ino} {each.name}\n" for each in folder.iterdir())
            (self._kept / "names" / str(folder.stat().st_ino)).write_text(names)
        for file in self.live.rglob("*"):
            if file.is_file():
                shutil.copyfile(file, self._kept / "data" / str(file.stat().st_ino))
        for each in (self._kept, self._kept / "names", self._kept / "data"):
            each.chmod(0o777)  # whoever the program runs as

    def cut(self, luck: Random) -> None:
        """Cut the power: nobody writes any more, and what was not synced is gone, or in part."""
        made = self._room / "made"
        written = {each.stat().st_ino: each for each in self.live.rglob("*")}
        self._lay(self.live.stat().st_ino, made, written, luck if luck.random() < 0.5 else None)
        shutil.copystat(self.live, made)
        owner = self.live.stat()
        for each in (made, *made.rglob("*")):
            os.chown(each, owner.st_uid, owner.st_gid)
        shutil.rmtree(self.live)
        made.rename(self.live)
        self.sync_all()

    def _lay(
        self, folder: int, target: Path, written: Mapping[int, Path], luck: Random | None
    ) -> None:
        target.mkdir(mode=0o700)
        names = self._kept / "names" / str(folder)
        for line in names.read_text().splitlines() if names.exists() else ():
            inode, _, name = line.partition(" ")
            there = written.get(int(inode))
            if (self._kept / "names" / inode).exists() or (there and there.is_dir()):
                self._lay(int(inode), target / name, written, luck)
                continue
            data = self._kept / "data" / inode
            synced = data.read_bytes() if data.exists() else b""
            now = there.read_bytes() if there and luck else synced
            (target / name).write_bytes(synced if now == synced else some_of(synced, now, luck))
            (target / name).chmod(0o600)


def some_of(synced: bytes, now: bytes, luck: Random | None) -> bytes:
    """Give what was synced with some of the blocks that were written since."""
    assert luck is not None
    end = luck.choice([len(synced), len(now), luck.randint(0, max(len(synced), len(now)))])
    end = max(end, min(len(synced), len(now)))
    made = bytearray(synced.ljust(end, b"\0"))
    for at in range(0, end, BLOCK):
        if luck.random() < 0.5:
            until = min(at + BLOCK, end)
            made[at:until] = now[at:until].ljust(until - at, b"\0")
    return bytes(made)
