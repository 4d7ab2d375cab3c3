"""``combwright serve``: the page for phone and desk."""

import json
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from combwright.cli.options import BookOption, JsonOption, named_book, words_in
from combwright.terms.errors import CombwrightError, OutOfRangeError

if TYPE_CHECKING:
    from combwright.records.store.book_handle import Book
    from combwright.web.desk import Desk

LOCAL = "127.0.0.1"
GRACE_S = 10  # for requests that are being answered when the page is stopped

EXAMPLE = "Example: `combwright serve --book yard.book`"


def serve(
    host: Annotated[
        str, typer.Option(help="Address to listen on; others than this machine need a passphrase.")
    ] = LOCAL,
    port: Annotated[int, typer.Option(help="Port to listen on.")] = 8321,
    set_passphrase: Annotated[
        bool, typer.Option("--set-passphrase", help="Ask for a new passphrase, and stop.")
    ] = False,
    backup_to: Annotated[
        Path | None, typer.Option(help="Make a backup into this folder each night.")
    ] = None,
    keep: Annotated[int, typer.Option(help="How many backups to keep there.", min=1)] = 14,
    no_forecast: Annotated[
        bool, typer.Option("--no-forecast", help="Never ask a service for a forecast.")
    ] = False,
    log: Annotated[
        bool, typer.Option("--log", help="Tell each request as JSON, without names or addresses.")
    ] = False,
    measures: Annotated[
        bool, typer.Option("--measures", help="Give measures (OpenMetrics) at /measures, here.")
    ] = False,
    measures_key: Annotated[
        Path | None,
        typer.Option(help="File of the key with which they are given elsewhere too."),
    ] = None,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Open the page for phone and desk; without a book yet, it begins one or shows an example.

    It listens on this machine alone. A phone needs a passphrase and HTTPS: see docs/install.md.
    """
    opened = named_book(book)
    if set_passphrase:
        _set_passphrase(opened)
        return
    if not 0 < port < 65536:  # noqa: PLR2004  (what a port is)
        raise OutOfRangeError(f"There is no port {port}.", remedy="Give 1024 to 65535.")
    from datetime import datetime

    from combwright.web.desk import lay_out

    desk = lay_out(
        opened,
        clock=lambda: datetime.now().astimezone(),
        backups=backup_to,
        keep=keep,
        may_fetch=not no_forecast,
    )
    _refuse_open_house(desk, host)
    if log:
        _log()
    key = words_in(measures_key) if measures_key else ""
    _run(desk, host, port, key if measures or key else None, as_json=as_json)


def _set_passphrase(book: "Book") -> None:
    from combwright.services.access import Access

    book.open()
    words: str = typer.prompt("New passphrase", hide_input=True, confirmation_prompt="Once more")
    Access(book).set_passphrase(words)
    typer.echo("The passphrase is set. Whoever was logged in has to log in again.")


def _refuse_open_house(desk: "Desk", host: str) -> None:
    from combwright.web.this_machine import is_loopback

    if not is_loopback(host) and not desk.access.needs_passphrase:
        desk.close()
        raise CombwrightError(
            f"Listening on {host} would open the book to the whole network.",
            remedy="Set a passphrase first, with “combwright serve --set-passphrase”.",
        )


def _log() -> None:
    import logging

    logging.basicConfig(format='{"at": "%(asctime)s", "told": %(message)s}')
    logging.getLogger("combwright.page").setLevel(logging.INFO)


def _run(desk: "Desk", host: str, port: int, key: str | None, *, as_json: bool) -> None:
    import uvicorn

    from combwright.web.app import build
    from combwright.web.connections import Punctual
    from combwright.web.measures import Measures

    address = f"http://{f'[{host}]' if ':' in host else host}:{port}/"
    if as_json:
        told = {"address": address, "book": desk.book.place}
        typer.echo(json.dumps(told))
    else:
        typer.echo(f"Open {address} in a browser ({desk.book.place}). Ctrl-C stops.")
    try:
        uvicorn.run(
            build(desk, None if key is None else Measures(key)),
            host=host,
            port=port,
            log_level="warning",
            access_log=False,
            server_header=False,
            proxy_headers=True,
            http=Punctual,
            timeout_graceful_shutdown=GRACE_S,
        )
    except SystemExit as error:
        raise CombwrightError(
            f"The page could not be opened at {address}.",
            remedy="Another program may use the port: choose one with --port.",
        ) from error
