"""Every way of writing a verb says where its geometry comes from."""

from __future__ import annotations

import pytest

from presscloth.sewing.verbs import VERBS

SOURCES = ("published", "geometry", "common practice", "as above")
"""`as above`: a second pattern of the same verb, which is reckoned as the first one."""

WAYS = [(verb.name, pattern, told) for verb in VERBS for pattern, told in verb.reference.items()]


@pytest.mark.parametrize(("verb", "pattern", "told"), WAYS, ids=[f"{v}: {p[:40]}" for v, p, _ in WAYS])
def test_names_a_source_or_says_that_there_is_none(verb: str, pattern: str, told: str) -> None:
    text = " ".join(told.split())
    assert any(source in text for source in SOURCES), f"`{pattern}` of {verb} does not say"


def test_what_is_as_above_stands_below_its_like() -> None:
    for verb in VERBS:
        first, *others = (" ".join(told.split()) for told in verb.reference.values())
        assert "as above" not in first
        assert all(any(source in first for source in SOURCES) for other in others if "as above" in other)
