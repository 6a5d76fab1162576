"""The outlines of a recipe as they are written, before any size."""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum

from presscloth.frozen import dataclass
from presscloth.recipe.expression import Expression, Name
from presscloth.source import Span


class Towards(Enum):
    """A direction on the page; a piece's height, and so its grain, runs up and down."""

    RIGHT = "right"
    LEFT = "left"
    UP = "up"
    DOWN = "down"

    @property
    def step(self) -> tuple[int, int]:
        """To the right and downwards, as a step of one."""
        return {"right": (1, 0), "left": (-1, 0), "up": (0, -1), "down": (0, 1)}[self.value]


class Closed(Enum):
    """How the outline comes back to its start."""

    ROUND = "all round"
    FOLD = "on the fold"
    MIRRORED = "mirrored"


@dataclass(frozen=True, slots=True)
class Move:
    """`down 18 cm (7 in)`"""

    towards: Towards
    by: Expression


@dataclass(frozen=True, slots=True)
class Arched:
    """`arched by 3 cm`, `hollowed with radius 20 cm`: an arc instead of a straight line."""

    outwards: bool
    by_radius: bool
    amount: Expression
    span: Span


@dataclass(frozen=True, slots=True)
class Run:
    """One run of an outline, and the edge that it is, or belongs to.

    `legs` are the ways from point to point: one of a straight line or an arc, more of a curve; none
    of a run that goes `back to the start`, or `left to the fold`. `notches` are measured from its
    beginning, None in its middle. `bare` says that it has no seam allowance, `allowance` one of its own.
    """

    name: Name
    legs: tuple[tuple[Move, ...], ...]
    curved: bool
    to_fold: Towards | None
    arched: Arched | None
    leaving: Towards | None
    arriving: Towards | None
    notches: tuple[Expression | None, ...]
    allowance: Expression | None
    bare: bool
    span: Span


@dataclass(frozen=True, slots=True)
class OutlineText:
    """An outline as its author wrote it: the seam line, run by run. `name` is its heading."""

    name: Name
    runs: tuple[Run, ...]
    closed: Closed
    span: Span

    def edges(self) -> tuple[str, ...]:
        """The names of its edges, those of the second half too where it is mirrored."""
        own = tuple(dict.fromkeys(run.name.text for run in self.runs))
        if self.closed is Closed.ROUND:
            return own
        found = dict.fromkeys(own)
        for name in own[1:-1]:
            found.update(
                dict.fromkeys((over(name),) if is_sided(name) else (f"{side} {name}" for side in SIDES))
            )
        return tuple(found)


SIDES = ("left", "right", "upper", "lower")
"""What comes before the name of an edge that is there twice, once on either side of a fold."""

_OVER = {
    "left": "right",
    "right": "left",
    "top": "bottom",
    "bottom": "top",
    "upper": "lower",
    "lower": "upper",
}


def is_sided(name: str) -> bool:
    """Whether a name says on which side its edge lies."""
    return any(word in _OVER for word in name.split(" "))


def over(name: str) -> str:
    """The name of what lies on the other side: `left armhole` for `right armhole`."""
    return " ".join(_OVER.get(word, word) for word in name.split(" "))


def expressions(outline: OutlineText) -> Iterator[Expression]:
    """Every measure in an outline, in the order in which they stand."""
    for run in outline.runs:
        yield from (move.by for leg in run.legs for move in leg)
        if run.arched is not None:
            yield run.arched.amount
        yield from (notch for notch in run.notches if notch is not None)
        if run.allowance is not None:
            yield run.allowance
