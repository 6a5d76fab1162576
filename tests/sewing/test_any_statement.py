"""No statement brings sewing down: whatever a pattern allows is carried out or reported."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sewing.table import Table, sew

from presscloth.recipe.patterns import Element, Literal, Maybe, OneOf, Place, elements
from presscloth.sewing.verbs import VERBS

PIECES = """
    cloth   | A | 3 | 30 cm (12 in) | 40 cm (16 in) | |
    square  | A | 4 | 20 cm (8 in) | 20 cm (8 in) | |
    long    | A | 1 | 30 cm (12 in) | 80 cm (32 in) | |
    broad   | A | 1 | 60 cm (24 in) | 20 cm (8 in) | |
    disc    | A | 2 | 20 cm (8 in) | | circle |
    wedge   | A | 2 | 20 cm (8 in) | | half-square triangle |
    goose   | A | 2 | 20 cm (8 in) | | quarter-square triangle |
    arch    | A | 3 | | | outline |
    bib     | A | 2 | | | outline |
    cord    | C | 2 | | 90 cm (36 in) | |
    slide   | E | 1 | | 30 cm (12 in) | |
    button  | F | 2 | | | |
"""
OUTLINES = """\
## Outlines

### arch
- right 20 cm (8 in) as crown, arched by 5 cm (2 in)
- down 20 cm (8 in) as right
- left 20 cm (8 in) as foot
- back to the start as left

### bib
- right 10 cm (4 in) as top
- curve right 2 cm (3/4 in) and down 20 cm (8 in) then right 3 cm (1 1/4 in) and down 20 cm (8 in) as right
- left to the fold as bottom
- on the fold
"""
BEGIN = """
    pouch = fold long in half, join sides
    ring = join left of broad to right of broad
"""

THINGS = [
    "cloth",
    "square",
    "pouch",
    "ring",
    "disc",
    "wedge",
    "goose",
    "arch",
    "bib",
    "cord",
    "slide",
    "button",
]
EDGES = ["left", "right", "top", "bottom", "long side", "crown", "foot"]

things = st.builds(
    lambda number, name: f"{number}{name}", st.sampled_from(["", "", "", "2 ", "0 "]), st.sampled_from(THINGS)
)
lengths = st.sampled_from(
    ["1 cm (3/8 in)", "5 cm (2 in)", "30 cm (12 in)", "width of cloth", "exactly 100 mm"]
)
sides = st.lists(st.sampled_from([*EDGES[:4], "crown"]), min_size=1, max_size=3, unique=True).map(", ".join)
KINDS = {
    "thing": things,
    "things": st.lists(things, min_size=1, max_size=3).map(", ".join),
    "edge": st.builds(
        lambda edge, name: f"{edge} of {name}", st.sampled_from(EDGES), st.sampled_from(THINGS)
    ),
    "edges": st.builds(
        lambda edge, name: f"{edge} of {name}", sides | st.just("all"), st.sampled_from(THINGS)
    ),
    "sides": sides,
    "caught": st.builds(lambda edge, name: f"{edge} of {name}", st.sampled_from(EDGES), things),
    "measure": lengths,
    "number": st.sampled_from(["0", "1", "2", "4"]),
}


def written(element: Element) -> st.SearchStrategy[str]:
    """Ways of writing one element of a pattern."""
    match element:
        case Literal(word=word):
            return st.just(word)
        case OneOf(ways=ways):
            return st.sampled_from([" ".join(way) for way in ways])
        case Maybe(of=of):
            return st.just("") | whole(of)
        case Place(kind=kind):
            return KINDS[kind]


def whole(of: tuple[Element, ...]) -> st.SearchStrategy[str]:
    return st.tuples(*(written(element) for element in of)).map(" ".join)


results = st.sampled_from(["", "new = ", "2 new = ", *(f"{name} = " for name in THINGS)])
tails = st.sampled_from(
    ["", "", ", taking 1 cm (3/8 in)", ", leaving 5 cm (2 in) open", ", with 1 cm (3/8 in) ease"]
)
PATTERNS = [pytest.param(pattern, id=pattern) for verb in VERBS for pattern in verb.patterns]


@pytest.mark.parametrize("pattern", PATTERNS)
@settings(max_examples=12, deadline=None)
@given(st.data())
def test_what_a_pattern_allows_is_carried_out_or_reported(pattern: str, data: st.DataObject):
    statement = data.draw(whole(elements(pattern))) + data.draw(tails)
    made = "" if pattern.startswith("finish") else data.draw(st.sampled_from(["", "new = ", "2 new = "]))
    # A pattern may end in `, mitred`: what is left out leaves blanks before a comma.
    table = sew(
        PIECES,
        f"{BEGIN.strip()}\n{made}{' '.join(statement.split())}",
        columns=" Shape | Notes |",
        rest=OUTLINES,
    )
    hold(table)


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_what_patterns_allow_one_after_another_is_carried_out_or_reported(data: st.DataObject):
    lines = [BEGIN.strip()]
    for _ in range(data.draw(st.integers(2, 5))):
        pattern = data.draw(st.sampled_from([pattern for verb in VERBS for pattern in verb.patterns]))
        statement = data.draw(whole(elements(pattern))) + data.draw(tails)
        made = "" if pattern.startswith("finish") else data.draw(results)
        lines.append(f"{made}{' '.join(statement.split())}")
    hold(sew(PIECES, "\n".join(lines), columns=" Shape | Notes |", rest=OUTLINES))


def hold(table: Table) -> None:
    """Something came of it, and every part of it can be looked at."""
    assert table.sizes
    for problem in table.problems:
        assert problem.message() and problem.hint()
    for made in table.made.events:
        assert all(each.name for each in made.lying)
        if made.made is not None and made.made.thing is not None:
            assert all(part.name for part in made.made.thing.parts)


def test_more_than_anybody_sews_is_refused():
    table = sew(
        "patch | A | 4 | 10 cm (4 in) | 10 cm (4 in)", ("row = join 999999999 patch side by side\nfinish row")
    )
    assert table.names[0] == "too-many-at-once"


def test_none_at_all_is_nothing_to_join():
    table = sew("patch | A | 4 | 10 cm (4 in) | 10 cm (4 in)", "row = join 0 patch side by side\nfinish row")
    assert table.names[0] == "nothing-to-join"
