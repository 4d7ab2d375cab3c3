"""What weather a book holds, for which places, from where and how old."""

from dataclasses import dataclass
from datetime import date

from combwright.records.store.book_handle import Book
from combwright.records.store.weather_days import places_with_weather


@dataclass(frozen=True, slots=True)
class Known:
    """Weather of one place as the book has it."""

    place: str
    first: date
    last: date
    source: str
    days: int


def weather_places(book: Book) -> list[Known]:
    """List the places of which the book has weather."""
    with book.reading() as db:
        return [
            Known(place, date.fromisoformat(first), date.fromisoformat(last), source, days)
            for place, first, last, source, days in places_with_weather(db)
        ]
