"""Transform a recipe and a size into an edition: what that size cuts and sews."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from presscloth.edition.evaluator import AskThings, Evaluator
from presscloth.edition.outlines import draft_piece
from presscloth.edition.problems import NotPositive, WrongKind
from presscloth.frozen import dataclass
from presscloth.measure import Kind, Quantity, printed
from presscloth.outline import Drafted
from presscloth.problems import Problems
from presscloth.recipe.expression import Broken, Expression, Name
from presscloth.recipe.matching import names_of
from presscloth.recipe.prose import Block
from presscloth.recipe.statement import SewBlock, Statement
from presscloth.recipe.tree import (
    Definition,
    Grain,
    NoteKind,
    Piece,
    Recipe,
    Shape,
    Size,
    Stage,
    Step,
)
from presscloth.recipe.words import look_up
from presscloth.source import Span

SEAM = "seam"
"""The measure that is a piece's allowance where its row does not say otherwise."""


@dataclass(frozen=True, slots=True)
class CutPiece:
    """A piece as it is cut in one size.

    `count` is the number from each of `keys`, `spare` how many of those are never wanted. `width`
    and `height` are cut sizes; a length has a `height` only, a circle a `width`, a notion neither.
    A piece that is cut by an `outline` has the sizes of the box around it, which are cut rounded up.
    `allowance` is None where neither the row nor a measure `seam` gives one.
    """

    name: str
    keys: tuple[str, ...]
    count: int
    spare: int
    width: Quantity | None
    height: Quantity | None
    shape: Shape
    outline: Drafted | None
    grain: Grain
    allowance: Quantity | None
    row: Piece

    @property
    def span(self) -> Span:
        return self.row.span


@dataclass(frozen=True, slots=True)
class Edition:
    """A recipe in one size.

    `stages` hold the steps and parts of steps that this size has; `pieces` what it cuts, in the
    order of the recipe; `without` the names of pieces that other sizes have and this one has not.
    """

    recipe: Recipe
    size: Size
    stages: tuple[Stage, ...]
    pieces: tuple[CutPiece, ...]
    without: tuple[str, ...]

    @property
    def steps(self) -> tuple[Step, ...]:
        return tuple(step for stage in self.stages for step in stage.steps)

    def evaluator(
        self, ask: AskThings, problems: Problems, choices: Mapping[str, Quantity] | None = None
    ) -> Evaluator:
        return Evaluator(self.recipe, self.size, ask, problems, choices)


def make_edition(
    recipe: Recipe,
    size: Size,
    problems: Problems,
    ask: AskThings,
    choices: Mapping[str, Quantity] | None = None,
) -> Edition:
    """Work out what a size cuts and sews.

    Reports cut sizes that are not greater than nothing, counts that are not whole, and whatever is
    wrong with the measures behind them. A piece whose size is broken is left out.
    """
    stages = tuple(_stages(recipe, size.name))
    has = _has_piece(recipe, size.name, stages)
    evaluator = Evaluator(recipe, size, ask, problems, choices)
    cut = (cut_piece(piece, evaluator) for piece in recipe.pieces if has(piece))
    return Edition(
        recipe=recipe,
        size=size,
        stages=stages,
        pieces=tuple(piece for piece in cut if piece is not None),
        without=tuple(piece.name.text for piece in recipe.pieces if not has(piece)),
    )


def _stages(recipe: Recipe, size: str) -> Iterator[Stage]:
    """The stages as this size has them. A step keeps its number, so that all sizes and the video agree."""
    for stage in recipe.stages:
        steps = []
        for step in stage.steps:
            if step.lead.holds_in(size):
                parts = tuple(part for part in step.parts if part.lead.holds_in(size))
                steps.append(replace(step, parts=parts))
        if steps:
            yield replace(stage, steps=tuple(steps))


def statements(content: tuple[Block | SewBlock, ...]) -> Iterator[Statement]:
    """The statements among what stands in a part of a step, those left out that could not be read."""
    for block in content:
        if isinstance(block, SewBlock):
            yield from (each for each in block.statements if isinstance(each, Statement))


def _spoken_of(stages: tuple[Stage, ...]) -> frozenset[str]:
    """The names that statements speak of, as they are typed."""
    return frozenset(
        name.text
        for stage in stages
        for step in stage.steps
        for part in step.parts
        for statement in statements(part.content)
        for slot in statement.slots.values()
        for name, _ in names_of(slot)
    )


def _has_piece(recipe: Recipe, size: str, stages: tuple[Stage, ...]) -> Callable[[Piece], bool]:
    """Which pieces a size has: as their rows say, else those that its statements speak of.

    A piece that no statement of any size speaks of belongs to all sizes.
    """
    by_name = {piece.name.text: piece for piece in recipe.pieces}

    def pieces_of(stages: tuple[Stage, ...]) -> frozenset[str]:
        found = (look_up(_without_key(name, by_name), by_name) for name in _spoken_of(stages))
        return frozenset(piece.name.text for piece in found if piece is not None)

    here, anywhere = pieces_of(stages), pieces_of(recipe.stages)

    def has(piece: Piece) -> bool:
        if piece.sizes is not None:
            return any(name.text.casefold() == size.casefold() for name in piece.sizes)
        return piece.name.text in here or piece.name.text not in anywhere

    return has


def _without_key(name: str, pieces: Mapping[str, Piece]) -> str:
    """`pocket` of `A pocket`, unless a piece is called that."""
    first, _, rest = name.partition(" ")
    return rest if rest and first.isupper() and look_up(name, pieces) is None else name


def cut_piece(piece: Piece, evaluator: Evaluator) -> CutPiece | None:
    """Work out one piece; None when a part of it is broken, which has been reported."""
    name = piece.name.text
    count = evaluator.count(piece.cut, f"the number of `{name}`")
    width = _side(piece, piece.width, "width", evaluator)
    height = _side(piece, piece.height, "height", evaluator)
    allowance = _allowance(piece, evaluator)
    spare = _spare(piece, evaluator)
    outline = _outline(piece, allowance, evaluator)
    for part in (count, width, height, allowance, spare, outline):
        if isinstance(part, Broken):
            return None
    assert not isinstance(count, Broken) and not isinstance(width, Broken)
    assert not isinstance(outline, Broken)
    assert not isinstance(height, Broken) and not isinstance(allowance, Broken)
    assert not isinstance(spare, Broken)
    return CutPiece(
        name=name,
        keys=tuple(key.text for key in piece.keys),
        count=count,
        spare=spare,
        width=width if outline is None else replace(outline.width, physical=True),
        height=height if outline is None else replace(outline.height, physical=True),
        shape=piece.shape,
        outline=outline,
        grain=piece.grain,
        allowance=allowance,
        row=piece,
    )


def _outline(
    piece: Piece, allowance: Quantity | Broken | None, evaluator: Evaluator
) -> Drafted | Broken | None:
    """The outline that a piece is cut by; one that could not be read has been reported."""
    if piece.shape is not Shape.OUTLINE or piece.outline is None:
        return None
    found = look_up(piece.outline, {outline.name.text: outline for outline in evaluator.outlines})
    if found is None or isinstance(allowance, Broken):
        return Broken(piece.span)
    return draft_piece(found, piece.name.text, allowance, evaluator)


def _side(piece: Piece, side: Definition | None, word: str, evaluator: Evaluator) -> Quantity | Broken | None:
    """A cut size: a length greater than nothing in both systems."""
    if side is None:
        return None
    value = evaluator.defined(side)
    if isinstance(value, Broken):
        return value
    place = side.expression.span
    what = f"the {word} of `{piece.name.text}`"
    if value.kind is not Kind.LENGTH:
        wrong = WrongKind(span=place, what=what, found=value.kind.value, wanted=Kind.LENGTH.value)
        return evaluator.report(wrong)
    less = [system for system in evaluator.systems if value[system] <= 0]
    for system in less:
        text = printed(value.computed(), system).text
        problem = NotPositive(span=place, piece=piece.name.text, side=word, value=text)
        evaluator.report(problem.in_systems(system.value))
    return Broken(place) if less else value


def _allowance(piece: Piece, evaluator: Evaluator) -> Quantity | Broken | None:
    if piece.allowance is not None:
        return evaluator.of_kind(piece.allowance, Kind.LENGTH, f"the allowance of `{piece.name.text}`")
    if not evaluator.defines(SEAM):
        return None
    return evaluator.of_kind(Name(SEAM, piece.span), Kind.LENGTH, "the seam allowance")


def _spare(piece: Piece, evaluator: Evaluator) -> int | Broken:
    amount: Expression | None = None
    for note in piece.notes:
        if note.kind is NoteKind.SPARE:
            amount = note.amount
    return 0 if amount is None else evaluator.count(amount, f"the number of spare `{piece.name.text}`")
