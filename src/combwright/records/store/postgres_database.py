"""A book that is a database of PostgreSQL: where several people or programs write all day.

One schema holds one book; ``?options=-csearch_path=NAME`` in the address names another than the
usual one. What is no part of the database (photos, settings) lies in a folder of its own.
"""

import re
from hashlib import blake2b
from pathlib import Path
from typing import Any, Final

import sqlalchemy as sa
from platformdirs import user_data_path

from combwright.records.store.sqlite_file import make_folder
from combwright.terms.errors import BookError

SCHEME: Final = "postgresql"
DRIVER: Final = f"{SCHEME}+psycopg"
LOCK_TIMEOUT_MS = 5000
CONNECT_TIMEOUT_S: Final = "10"
SHOWN: Final = ("host", "port", "dbname", "service", "options")  # of an address; no secret is
SCHEMA: Final = re.compile(r"search_path=([^\s,]+)")
HERE: Final = ("", "localhost", "127.0.0.1", "::1")  # or a socket, which is a path
AT_ONCE: Final = 10  # connections of one program that stay open
LOCK: Final = 0xC0B  # the first half of the lock’s number, so that it is nobody else’s


class BookDatabase:
    """Where the book is, what it is called, and how it is opened."""

    is_gone = False

    def __init__(self, address: str) -> None:
        try:
            self._url = sa.make_url(address)
        except (sa.exc.ArgumentError, ValueError) as error:
            raise no_address() from error
        if self._url.drivername not in {SCHEME, DRIVER}:
            raise no_address()
        query = {name: told for name, told in self._url.query.items() if name in SHOWN}
        shown = self._url.set(drivername=DRIVER, password=None, query=query)
        # without the password, which may also stand among the options
        self.place = self.key = sa.URL.create(
            DRIVER, shown.username, None, shown.host, shown.port, shown.database, query
        ).render_as_string()
        schema = SCHEMA.search(str(query.get("options", "")))
        named = [self._url.database or "postgresql", *(schema.groups() if schema else ())]
        self.name = re.sub(r"[^\w.-]", "_", ".".join(named))

    def beside(self, what: str) -> Path:
        """Say where things lie that go with the book; their folder is made."""
        digest = blake2b(self.key.encode(), digest_size=4).hexdigest()
        folder = user_data_path("combwright", appauthor=False) / f"{self.name}-{digest}"
        make_folder(folder)
        return folder / what

    def engine(self) -> sa.Engine:
        """Make ready to open it; there is nothing in a new one."""
        wanted = {"connect_timeout": CONNECT_TIMEOUT_S, "application_name": "combwright"}
        if is_elsewhere(self._url):
            wanted["sslmode"] = "require"  # left to itself the driver would also go without
        book = sa.create_engine(
            self._url.set(drivername=DRIVER, query={**wanted, **self._url.query}),
            pool_size=AT_ONCE,
            max_overflow=AT_ONCE,
            pool_pre_ping=True,  # the server may have been started again meanwhile
            execution_options={"place": self.place},
        )
        sa.event.listen(book, "connect", prepare)
        sa.event.listen(book, "begin", begin)
        return book

    def make_ready(self, book: sa.Engine) -> None:
        """Do nothing: reading and writing never wait for each other."""


def is_elsewhere(url: sa.URL) -> bool:
    """Tell whether a server may be on another machine than this."""
    told = url.query.get("host", "")
    hosts = [url.host or "", *(told.split(",") if isinstance(told, str) else told)]
    return any(host not in HERE and not host.startswith(("/", "@")) for host in hosts)


def no_address() -> BookError:
    """Say that what was given is no address; it is not repeated, for a password may be in it."""
    return BookError(
        "This is not the address of a book on PostgreSQL.",
        remedy=f"Write it as {DRIVER}://USER@HOST/DATABASE; the password into ~/.pgpass.",
    )


def prepare(connection: Any, _record: object) -> None:  # noqa: ANN401  (the driver's own type)
    """Set up one connection: what is acknowledged is on the disk, whatever the server’s habit."""
    connection.autocommit = True
    connection.execute(f"SET lock_timeout = {LOCK_TIMEOUT_MS}")
    connection.execute("SET synchronous_commit = on")
    connection.autocommit = False


def begin(db: sa.Connection) -> None:
    """Let writers queue for one lock before they look; readers see one moment of the book."""
    if db.get_execution_options().get("writes", False):
        db.exec_driver_sql(f"SELECT pg_advisory_xact_lock({LOCK}, hashtext(current_schema()))")
    else:
        db.exec_driver_sql("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY")
