"""The keeper's word for a place with colonies, for every face."""

from combwright.records.store.book_handle import Book
from combwright.terms.errors import CombwrightError
from combwright.terms.place_word import USUAL, PlaceWord


def place_word(book: Book) -> PlaceWord:
    """Give the keeper's word for a place with colonies; ours where the book cannot be read."""
    try:
        return book.now().place_word
    except CombwrightError:
        return USUAL
