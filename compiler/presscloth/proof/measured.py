"""Gathering every measure of a size under its name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from presscloth.edition import CutPiece, Edition, Evaluator
from presscloth.edition.asking import part_of_piece
from presscloth.edition.problems import NotInThisSize
from presscloth.measure import Quantity
from presscloth.problems import Problem, Problems
from presscloth.recipe.naming import definitions
from presscloth.sewing import Construction, Stood
from presscloth.sewing.measuring import measured

SIDES = ("width", "height")
THING_PARTS = ("width", "height", "depth", "around")


def unneeded(edition: Edition, evaluator: Evaluator, problems: Problems) -> Mapping[str, Quantity]:
    """All defined measures of a size, also those that nothing needs there.

    What is wrong with a measure is reported even when nothing needs it, except that something
    behind it does not exist in this size: then it does not exist either.
    """
    quiet = Problems()
    found: dict[str, Quantity] = {}
    with evaluator.reporting_to(quiet):
        for definition in definitions((edition.size,), edition.recipe.measures):
            value = evaluator.measure(definition.name)
            if isinstance(value, Quantity):
                found[definition.name.text] = value
    problems.extend([problem for problem in quiet.found() if _matters(problem)])
    return found


def _matters(problem: Problem) -> bool:
    return not isinstance(problem, NotInThisSize)


def of_things(construction: Construction) -> Mapping[str, Quantity]:
    """`width of bag`, `depth of bag`: what every thing measured in the end."""
    return {
        f"{part} of {name}": value
        for name in dict.fromkeys(state.name for state in construction.states)
        for part, value in of_state(construction.at(name)).items()
    }


def of_state(stood: Stood | None) -> Mapping[str, Quantity]:
    """What a thing measures as it stands, part by part."""
    if stood is None or stood.thing is None:
        return {}
    shape = stood.thing.shape
    found = {part: measured(shape, part, finished=False) for part in THING_PARTS}
    return {part: value for part, value in found.items() if value is not None}


def of_pieces(pieces: tuple[CutPiece, ...]) -> Mapping[str, Quantity]:
    """`width of back`, `height of back`: the cut sizes of the pieces."""
    return dict(pair for piece in pieces for pair in _of_piece(piece))


def _of_piece(piece: CutPiece) -> Iterator[tuple[str, Quantity]]:
    only_one = piece.width is None or piece.height is None
    for part in (*SIDES, "length") if only_one else SIDES:
        value = part_of_piece(piece, part, finished=False)
        if value is not None:
            yield f"{part} of {piece.name}", value
