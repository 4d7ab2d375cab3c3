"""``combwright book find``, ``history``, ``photo``: what was noted, looked at again."""

from pathlib import Path
from typing import Annotated, Final

import typer

from combwright.cli.options import BookOption, JsonOption, day_of, named_book, print_json
from combwright.terms.dated import dated

EXAMPLES: Final = {
    "find": "Example: `combwright book find wasps` or `combwright book find --photos`",
    "photo": "Example: `combwright book photo 3f2a91 label.jpg`",
    "history": "Example: `combwright book history --colony Bramble`",
}


def find(
    words: Annotated[
        list[str] | None, typer.Argument(help="Words that begin so stand in the note.")
    ] = None,
    on: Annotated[str | None, typer.Option(help="Of this day alone, 2027-04-03.")] = None,
    photos: Annotated[bool, typer.Option("--photos", help="Only notes with a photo.")] = False,
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Find notes of any year by their words, their day or their photo, newest first."""
    from combwright.services.book.finding import find as found_by

    day = day_of(on) if on else None
    book = named_book(named, must_exist=True)
    found = found_by(book, " ".join(words or ()), on=day, only_photos=photos)
    if as_json:
        print_json(found)
        return
    for one in found:
        photo = ", photo" if one.has_photo else ""
        typer.echo(f"{one.on} {one.about}, {one.kind}: {one.says} [{str(one.entry)[:8]}{photo}]")
    if not found:
        typer.echo("No note is like this.")


def photo(
    entry: Annotated[str, typer.Argument(help="The note’s id, or its first letters.")],
    picture: Annotated[
        Path | None, typer.Argument(help="A photo to keep with it: JPEG, PNG or WebP.")
    ] = None,
    out: Annotated[
        Path | None, typer.Option("--out", help="Write the photo that is kept to this file.")
    ] = None,
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Keep a photo with a note, such as that of a medicine’s label, or write it out again."""
    from combwright.services.book.book import contents, save
    from combwright.services.book.mending import entry_named
    from combwright.services.book.photos import Photos

    book = named_book(named, must_exist=True)
    found, photos = entry_named(book, entry), Photos(book)
    if picture is not None:
        photos.keep_of(found.id, contents(picture))
    has_photo = bool(photos.among([found.id]))
    if out is not None:
        save(out, photos.of(found.id)[0], mode=0o600)
    if as_json:
        print_json({"entry": found.id, "has_photo": has_photo})
    else:
        typer.echo(
            f"{found.kind} of {dated(found.on)}: {'a' if has_photo else 'no'} photo is kept."
        )


def history(
    colony: Annotated[str, typer.Option(help="Of this colony alone.")] = "",
    yard: Annotated[str, typer.Option(help="Of the colonies of this yard.")] = "",
    year: Annotated[int | None, typer.Option(help="Of this year alone.")] = None,
    named: BookOption = None,
    as_json: JsonOption = False,
) -> None:
    """Tell what was seen and done, one line a visit with what changed, newest first."""
    from combwright.services.book.history import visit_lines

    lines = visit_lines(named_book(named, must_exist=True), colony=colony, yard=yard, year=year)
    if as_json:
        print_json(lines)
        return
    for line in lines:
        remarks = f" “{line.remarks}”" if line.remarks else ""
        typer.echo(f"{line.on} {line.colony}: {line.says}{remarks}")
    if not lines:
        typer.echo("Nothing is noted of this yet.")
