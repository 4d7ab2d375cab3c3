"""A moment in which nothing is looked for that may go: it ends, whatever happens in it."""

import gc

import pytest

from combwright.services.unswept import unswept


def test_it_ends_also_within_another_and_when_something_fails() -> None:
    with unswept():
        with unswept():
            assert not gc.isenabled()
        assert not gc.isenabled()
    assert gc.isenabled()
    with pytest.raises(ValueError, match="wrong"), unswept():
        raise ValueError("wrong")
    assert gc.isenabled()
