"""Faults of the reader's choices that were found once."""

from __future__ import annotations

from choices.agreeing import PUBLISHER, handout, proved
from choices.recipes import TIES

from presscloth.choices import follow


def test_a_size_is_followed_the_same_each_time():
    """Cut sizes were remembered from one following to the next, whose nodes have other numbers."""
    size = proved(TIES).sizes[0]
    first, again = (follow(size, handout(size), PUBLISHER) for _ in range(2))
    assert first is not None and again is not None
    assert [way.guards for way in first.ways] == [way.guards for way in again.ways]
    assert [way.broken for way in first.ways] == [way.broken for way in again.ways]
