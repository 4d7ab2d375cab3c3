"""``combwright people``: who shares the book, from the machine it lies on, where all is allowed."""

from datetime import datetime
from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from combwright.cli.options import BookOption, JsonOption, named_book, print_json, words_in
from combwright.terms.person import Role

commands = typer.Typer(no_args_is_help=True, help="Who shares the book, and who came in.")
NameArgument = Annotated[str, typer.Argument(help="Name of the person.")]
FileOption = Annotated[
    Path | None, typer.Option("--passphrase-file", help="Read the passphrase from a file.")
]
PageOption = Annotated[
    str, typer.Option("--page", help="Address of the page, for the link to be sent.")
]
HERE = "http://127.0.0.1:8321/"


class Lost(StrEnum):
    """What a person can lose, and be helped with."""

    LINK = "link"
    FACTOR = "factor"


@commands.command("list", epilog="Example: `combwright people list --book yard.book`")
def list_people(book: BookOption = None, as_json: JsonOption = False) -> None:
    """List who shares the book, and the sessions that go on."""
    from combwright.services.access import Access
    from combwright.services.people.sharing import people_of

    opened = named_book(book, must_exist=True)
    found = people_of(opened)
    sessions = [
        {"session": one.key, "name": who.person.name if who.person else "", "device": one.device}
        | {"began": one.began, "until": one.until}
        for one, who in Access(opened).going(_now())
    ]
    if as_json:
        print_json({"people": found, "sessions": sessions})
        return
    for one in found:
        told = f"left on {one.ended:%d %B %Y}" if one.ended else str(one.role)
        invited = "; invited, has not come in yet" if one.is_invited and not one.ended else ""
        typer.echo(f"{one.name}: {told}{invited}{'; second factor' * one.has_second_factor}")
    for session in sessions:
        typer.echo(f"Session {session['session']}: {session['name'] or 'keeper'} until "
                   f"{session['until']:%d %B}, {session['device'] or 'a device'}")  # fmt: skip
    if not found:
        typer.echo("One keeper alone keeps this book.")


@commands.command(epilog="Example: `combwright people begin Anna --passphrase-file words.txt`")
def begin(
    name: NameArgument,
    passphrase_file: FileOption = None,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Give the keeper of the book a name; its one passphrase then opens it no longer."""
    from combwright.services.access import Access

    access = Access(named_book(book, must_exist=True))
    caller = access.begin_people(name, _words(passphrase_file), _now())
    _say(f"{name} is the first of its people.", caller.person, as_json=as_json)


@commands.command(
    epilog="Example: `combwright people invite Ben --role helper --page https://bees.example.org/`"
)
def invite(
    name: NameArgument,
    role: Annotated[Role, typer.Option(help="What they may do.")] = Role.HELPER,
    page: PageOption = HERE,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Invite somebody by a link that works once and for seven days."""
    from combwright.services.people import sharing

    token = sharing.invite(named_book(book, must_exist=True), name, role, _now(), None)
    _link(name, page, token, as_json=as_json)


@commands.command(epilog="Example: `combwright people role Ben reader`")
def role(
    name: NameArgument,
    to: Annotated[Role, typer.Argument(help="What they may do from now on.")],
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Make somebody a keeper, a helper or a reader; it counts at once."""
    from combwright.services.people.sharing import change_role, person_named

    opened = named_book(book, must_exist=True)
    change_role(opened, person_named(opened, name), to, _now(), None)
    _say(f"{name} is a {to} now.", person_named(opened, name), as_json=as_json)


@commands.command(epilog="Example: `combwright people lost Ben link`")
def lost(
    name: NameArgument,
    what: Annotated[
        Lost, typer.Argument(help="link: a new one, to set a passphrase; factor: end the second.")
    ],
    page: PageOption = HERE,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Help who has lost the passphrase or link, or the second factor."""
    from combwright.services.people.second_factor import end_second_factor
    from combwright.services.people.sharing import invite_again, person_named

    opened = named_book(book, must_exist=True)
    person = person_named(opened, name)
    if what is Lost.LINK:
        _link(name, page, invite_again(opened, person, _now(), None), as_json=as_json)
        return
    end_second_factor(opened, person, _now(), None)
    _say(f"{name} comes in by the passphrase alone.", person, as_json=as_json)


@commands.command(epilog="Example: `combwright people passphrase Anna --passphrase-file words.txt`")
def passphrase(
    name: NameArgument,
    passphrase_file: FileOption = None,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Set a person's passphrase; they have to log in again everywhere."""
    from combwright.services.people.sharing import person_named, set_own_passphrase

    opened = named_book(book, must_exist=True)
    person = person_named(opened, name)
    set_own_passphrase(opened, person, _words(passphrase_file), _now())
    _say(f"The passphrase of {name} is set.", person, as_json=as_json)


@commands.command(epilog="Example: `combwright people end Ben`")
def end(
    name: NameArgument,
    session: Annotated[
        bool, typer.Option("--session", help="NAME is a session of “people list”: end that alone.")
    ] = False,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Let somebody in no longer, or end one session; the name stays beside what they noted.

    Of the last of all the book becomes a single keeper's again, without a passphrase.
    """
    from combwright.services.access import Access
    from combwright.services.people.sharing import end_person, person_named

    opened = named_book(book, must_exist=True)
    if session:
        Access(opened).sessions.end(name)
        _say(f"The session {name} is over.", {"session": name}, as_json=as_json)
        return
    person = person_named(opened, name)
    end_person(opened, person, _now(), None)
    _say(f"{name} can come in no longer.", person, as_json=as_json)


@commands.command(epilog="Example: `combwright people log --json`")
def log(
    lines: Annotated[int, typer.Option(help="How many, the newest.", min=1)] = 40,
    book: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Tell what happened at the door: logins, wrong tries, changes. It is kept for 400 days."""
    from combwright.services.people.sharing import door_lines

    found = door_lines(named_book(book, must_exist=True), lines)
    if as_json:
        print_json(found)
        return
    for one in found:
        who = f"{one.name}: " if one.name else ""
        typer.echo(f"{one.at:%Y-%m-%d %H:%M} UTC  {who}{one.what}")
    if not found:
        typer.echo("Nobody has come in, or tried to.")


def _now() -> datetime:
    return datetime.now().astimezone()


def _words(file: Path | None) -> str:
    if file is not None:
        return words_in(file)
    words: str = typer.prompt("New passphrase", hide_input=True, confirmation_prompt="Once more")
    return words


def _link(name: str, page: str, token: str, *, as_json: bool) -> None:
    link = f"{page.rstrip('/')}/join/{token}"
    told = f"Send this to {name}; it works once and for seven days:\n{link}"
    _say(told, {"name": name, "link": link}, as_json=as_json)


def _say(sentence: str, data: object, *, as_json: bool) -> None:
    if as_json:
        print_json(data)
    else:
        typer.echo(sentence)
