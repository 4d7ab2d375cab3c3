"""A private server of PostgreSQL for the tests: its own folder, a socket in it, no port."""

import os
import pwd
import shutil
import signal
import subprocess
import tempfile
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import closing, contextmanager, suppress
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


def programs(name: str) -> str:
    found = program(name)
    assert found is not None
    return found


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

    def __init__(
        self, sockets: Path, data: Path, settings: Sequence[str], environment: Mapping[str, str]
    ) -> None:
        self._sockets, self._data, self._settings = sockets, data, settings
        self._environment, self._number = os.environ | environment, 0
        self._process: subprocess.Popen[bytes] | None = None

    def make(self) -> None:
        """Make the server's folder."""
        told = [programs("initdb"), "-D", str(self._data), "-U", "keeper", "-A", "trust"]
        told += ["-E", "UTF8", "--locale=C.UTF-8", "--no-sync", "--wal-segsize=1"]
        subprocess.run(told, check=True, capture_output=True, cwd="/", **owner())

    def start(self) -> None:
        """Start the server unless it runs, and wait until it answers."""
        until = monotonic() + START_S
        while True:
            if self._process is None or self._process.poll() is not None:
                self._begin()
            try:
                self.ask("SELECT 1")
            except psycopg.OperationalError:
                if monotonic() > until:
                    raise AssertionError((self._sockets / "log").read_text()) from None
                sleep(0.05)
            else:
                return

    def _begin(self) -> None:
        told = [programs("postgres"), "-D", str(self._data), "-k", str(self._sockets)]
        told += ["-c", "listen_addresses=", *self._settings]
        with (self._sockets / "log").open("ab") as log:
            self._process = subprocess.Popen(
                told, stdout=log, stderr=log, cwd="/", env=self._environment, **owner()
            )

    def stop(self) -> None:
        """Stop the server at once: what it holds is thrown away."""
        if self._process is not None:
            self._process.send_signal(signal.SIGQUIT)
            self._process.wait(START_S)

    def kill(self) -> None:
        """Kill all processes of the server in whatever they are doing."""
        assert self._process is not None
        leader = self._process.pid
        if self._process.poll() is not None:
            return
        below = Path(f"/proc/{leader}/task/{leader}/children").read_text().split()
        for each in (leader, *map(int, below)):
            with suppress(ProcessLookupError):
                os.kill(each, signal.SIGKILL)
        self._process.wait(START_S)

    def log_to(self, folder: Path) -> None:
        """Move what it writes ahead of all else to a folder, as to a disk of its own."""
        who, log = owner(), self._data / "pg_wal"
        os.chown(folder, who.get("user", -1), who.get("group", -1))
        self.stop()
        subprocess.run(["mv", log, folder], check=True, cwd="/", **who)
        log.symlink_to(folder / log.name)
        self.start()

    def address(self, schema: str) -> str:
        search = quote(f"-csearch_path={schema}")
        host = quote(str(self._sockets), safe="")
        return f"postgresql+psycopg://keeper@/postgres?host={host}&options={search}"

    def ask(self, statements: str) -> None:
        wanted = f"host={self._sockets} user=keeper dbname=postgres"
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
        asked = [
            programs("pg_dump"),
            "--inserts",
            "-n",
            TEMPLATE,
            "-h",
            str(self._sockets),
            "-U",
            "keeper",
        ]
        done = subprocess.run([*asked, "postgres"], check=True, capture_output=True, text=True)
        return "\n".join(line for line in done.stdout.split("\n") if not line.startswith("\\"))


@contextmanager
def running(
    *settings: str, folder: Path | None = None, environment: Mapping[str, str] | None = None
) -> Iterator[Server]:
    """Run a server while it is needed, in a folder that goes with it or in one that is there."""
    who = owner()
    with tempfile.TemporaryDirectory(prefix="pg-") as name:
        for each in (Path(name), *filter(None, [folder])):
            os.chown(each, who.get("user", -1), who.get("group", -1))
        data = (folder or Path(name)) / "data"
        server = Server(Path(name), data, settings, environment or {})
        server.make()
        try:
            server.start()
            yield server
        finally:
            server.stop()
