"""A private server of PostgreSQL for the tests: its own folder, a socket in it, no port."""

import os
import pwd
import shutil
import signal
import subprocess
import tempfile
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from functools import cached_property
from pathlib import Path
from time import monotonic, sleep
from typing import Any, TypeAlias
from urllib.parse import quote

import psycopg

from combwright.records.store.book_handle import Book

Places: TypeAlias = Callable[[str], Path | str]
PROGRAMS = sorted(Path("/usr/lib/postgresql").glob("*/bin"))  # where Debian puts them
START_S = 60
TEMPLATE = "as_migrated"
QUICK = ("-c", "fsync=off", "-c", "full_page_writes=off", "-c", "max_wal_size=256MB")


def program(name: str) -> str | None:
    """Find a program of PostgreSQL, the newest there is."""
    found = [str(folder / name) for folder in PROGRAMS if (folder / name).exists()]
    return found[-1] if found else shutil.which(name)


def is_here() -> bool:
    return program("initdb") is not None and program("postgres") is not None


def owner() -> dict[str, Any]:
    """Say who runs the server, which refuses to be root's."""
    if os.geteuid() != 0:
        return {}
    names = {each.pw_name for each in pwd.getpwall()}
    found = pwd.getpwnam("postgres" if "postgres" in names else "nobody")
    return {"user": found.pw_uid, "group": found.pw_gid, "extra_groups": []}


class Server:
    """A server that runs, and a new empty place for a book in it whenever one is wanted."""

    def __init__(self, folder: Path) -> None:
        self.folder, self._number = folder, 0

    def address(self, schema: str) -> str:
        search = quote(f"-csearch_path={schema}")
        host = quote(str(self.folder), safe="")
        return f"postgresql+psycopg://keeper@/postgres?host={host}&options={search}"

    def ask(self, statements: str) -> None:
        wanted = f"host={self.folder} user=keeper dbname=postgres"
        with closing(psycopg.connect(wanted, autocommit=True)) as db:
            db.execute(statements.encode())

    def empty(self) -> str:
        """Give the address of a place where nothing is yet."""
        self._number += 1
        name = f"book_{self._number}"
        self.ask(f"CREATE SCHEMA {name}")
        return self.address(name)

    def new(self) -> str:
        """Give the address of an empty book: what the migrations made once, again."""
        self._number += 1
        name = f"book_{self._number}"
        self.ask(self._made.replace(TEMPLATE, name))
        return self.address(name)

    @cached_property
    def _made(self) -> str:
        self.ask(f"CREATE SCHEMA {TEMPLATE}")
        Book(self.address(TEMPLATE)).open().close()
        dump = program("pg_dump")
        assert dump is not None
        asked = [dump, "--inserts", "-n", TEMPLATE, "-h", str(self.folder), "-U", "keeper"]
        done = subprocess.run([*asked, "postgres"], check=True, capture_output=True, text=True)
        return "\n".join(line for line in done.stdout.split("\n") if not line.startswith("\\"))


@contextmanager
def running(*settings: str) -> Iterator[Server]:
    """Run a server while it is needed; its folder goes with it."""
    initdb, postgres = program("initdb"), program("postgres")
    assert initdb is not None
    assert postgres is not None
    who = owner()
    with tempfile.TemporaryDirectory(prefix="pg-") as name:
        if who:
            os.chown(name, who["user"], who["group"])
        told = [initdb, "-D", f"{name}/data", "-U", "keeper", "-A", "trust", "-E", "UTF8"]
        told += ["--no-sync", "--no-instructions", "--locale=C.UTF-8"]
        subprocess.run(told, check=True, capture_output=True, cwd="/", **who)
        told = [postgres, "-D", f"{name}/data", "-k", name, "-c", "listen_addresses=", *settings]
        with (Path(name) / "log").open("wb") as log:
            process = subprocess.Popen(told, stdout=log, stderr=log, cwd="/", **who)
        try:
            server = Server(Path(name))
            wait_for(server)
            yield server
        finally:
            process.send_signal(signal.SIGQUIT)  # at once: what it holds is thrown away
            process.wait(START_S)


def wait_for(server: Server) -> None:
    until = monotonic() + START_S
    while True:
        try:
            server.ask("SELECT 1")
        except psycopg.OperationalError:
            if monotonic() > until:
                raise AssertionError((server.folder / "log").read_text()) from None
            sleep(0.05)
        else:
            return
