"""Proving an edition: every way through its steps, and the paper in every system."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from presscloth.edition import CutPiece, Edition, make_edition
from presscloth.frozen import dataclass
from presscloth.measure import Quantity, System, decimal_text, length, printed
from presscloth.problems import Label, Problem, Problems
from presscloth.recipe.expression import Bought, Broken, PartOf
from presscloth.recipe.naming import definitions
from presscloth.sewing.carrying import sew, sew_on_paper
from presscloth.sewing.construction import Construction, Meeting
from presscloth.sewing.marked import left_out_with, where_left_out
from presscloth.sewing.meeting import opens
from presscloth.sewing.paper_problems import PaperMisses, PaperOpens, Rounding
from presscloth.sewing.places import tube_of_one
from presscloth.sewing.reckoning import Page
from presscloth.sewing.remembering import Memory
from presscloth.sewing.stock_problems import PieceLeftOver
from presscloth.sewing.verbs.folding_problems import FoldDiffers
from presscloth.sewing.ways import Way, ways
from presscloth.sewing.wording import difference, said
from presscloth.source import Span

PAPER_OPENS = length(2, Fraction(1, 16))
"""Beyond this a meeting that opens on paper is a warning."""

PAPER_MISSES = length(6, Fraction(1, 4))
"""From this on it is an error."""


@dataclass(frozen=True)
class Sewn:
    """An edition, sewn in every way. The first construction is the fullest: with all that is optional.

    `optional` says of each piece, by name and key, how many only some ways use; `memory` keeps what
    the statements came to. `sewing` is False where the steps have no statements at all: then nothing
    is proved.
    """

    constructions: tuple[Construction, ...]
    optional: Mapping[tuple[str, str], int]
    problems: tuple[Problem, ...]
    memory: Memory

    @property
    def fullest(self) -> Construction:
        return self.constructions[0]

    @property
    def edition(self) -> Edition:
        return self.fullest.edition

    @property
    def sewing(self) -> bool:
        return bool(self.fullest.events) or not self.fullest.certain


def prove_sewing(
    edition: Edition, choices: Mapping[str, Quantity] | None = None, before: Memory | None = None
) -> Sewn:
    """Carry out an edition in every way, exactly and on paper.

    `choices` sets measures that are the reader's to choose; `before` is what was remembered of the size
    earlier, when nothing was followed. Each problem is reported once; one that
    holds only where something is left out, or done another way, has a place that says so.
    """
    memory = Memory() if before is None else before.copy()
    sewn = _in_every_way(edition, choices, memory)
    found = dict.fromkeys(sewn.problems)
    known = {(type(problem), problem.span) for problem in found}
    for ends in chosen_ends(edition) if choices is None else ():
        quiet = Problems()
        chosen = make_edition(edition.recipe, edition.size, quiet, unasked, ends.choices)
        for problem in (*quiet.found(), *_in_every_way(chosen, ends.choices, memory).problems):
            if (type(problem), problem.span) not in known:
                known.add((type(problem), problem.span))
                found[replace(problem, labels=(*problem.labels, Label(ends.span, ends.words)))] = None
    return replace(sewn, problems=tuple(found))


def unasked(asked: PartOf | Bought) -> Broken:
    """The answer before anything is sewn: whatever speaks of things is worked out when they are there."""
    return Broken(asked.span)


@dataclass(frozen=True, slots=True)
class _End:
    """A measure that is the reader's to choose, at one end of its range."""

    choices: Mapping[str, Quantity]
    span: Span
    words: str


def chosen_ends(edition: Edition) -> Iterator[_End]:
    """Each measure of an edition that is the reader's to choose, at both its ends."""
    evaluator = edition.evaluator(unasked, Problems())
    for definition in definitions((edition.size,), edition.recipe.measures):
        for expression in definition.choice or ():
            value = evaluator.value(expression)
            if isinstance(value, Quantity):
                name = definition.name.text
                words = f"when `{name}` is chosen as {said(value, edition.recipe.front.systems)}"
                yield _End({name: replace(value, about=definition.about)}, definition.span, words)


def _in_every_way(edition: Edition, choices: Mapping[str, Quantity] | None, memory: Memory) -> Sewn:
    found: dict[Problem, None] = {}
    known: set[tuple[type[Problem], Span]] = set()
    constructions: list[Construction] = []
    for way in ways(edition):
        exact = sew(edition, way, choices, memory)
        constructions.append(exact)
        problems = [*exact.problems]
        for system in edition.recipe.front.systems:
            problems += _on_paper(exact, system, memory)
        for problem in problems:
            if (type(problem), problem.span) not in known:
                found[_in_way(problem, way)] = None
        known |= {(type(problem), problem.span) for problem in problems}
    sewn = Sewn(tuple(constructions), _optional(constructions), (), memory)
    if sewn.sewing and all(each.certain for each in constructions):
        for problem in _left_over(constructions):
            found[problem] = None
    return replace(sewn, problems=tuple(found))


def hold_sizes(sewn: Sequence[Sewn]) -> Iterator[Problem]:
    """Hold the sizes of a recipe against each other: a fold halves the same side in all of them."""
    spans = dict.fromkeys(span for each in sewn for span in each.fullest.folds)
    for span in spans:
        halves: dict[str, str] = {}
        for each in sewn:
            side = each.fullest.folds.get(span)
            if side is not None:
                halves.setdefault(side, each.edition.size.name)
        if len(halves) > 1:
            yield FoldDiffers(span=span, halves=tuple((size, side) for side, size in halves.items()))


def _in_way(problem: Problem, way: Way) -> Problem:
    """A problem that one way has and the fullest has not, with the place where the ways part."""
    if not way.words:
        return problem
    return replace(problem, labels=(*problem.labels, *(Label(span, way.words) for span in way.parting)))


def _optional(constructions: Sequence[Construction]) -> Mapping[tuple[str, str], int]:
    """How many of each piece are not used in every way."""
    pieces = dict.fromkeys(key for each in constructions for key in each.used)
    most = {key: max(each.used.get(key, 0) for each in constructions) for key in pieces}
    least = {key: min(each.used.get(key, 0) for each in constructions) for key in pieces}
    return {key: most[key] - least[key] for key in pieces if most[key] > least[key]}


def _left_over(constructions: Sequence[Construction]) -> Iterator[Problem]:
    """Pieces of which no way uses all that were cut."""
    edition = constructions[0].edition
    for piece in edition.pieces:
        wanted = piece.count - piece.spare
        for key in piece.keys or ("",):
            left = wanted - max(each.used.get((piece.name, key), 0) for each in constructions)
            if left > 0:
                under = left_out_with(piece.name, edition, constructions[0].way)
                one_used = under is None and 0 < left == wanted - 1
                tube, row = tube_of_one(piece.name, edition) if one_used else (None, "")
                made = () if tube is None else (Label(tube, f"makes a tube of one `{piece.name}`"),)
                problem = PieceLeftOver(
                    span=piece.row.name.span,
                    name=piece.name,
                    left=left,
                    cut=wanted,
                    under=under,
                    row=row,
                    labels=(*where_left_out(under), *made),
                )
                yield problem.in_size(edition.size.name)


def _on_paper(exact: Construction, system: System, memory: Memory) -> Iterator[Problem]:
    """The meetings that open when everything is cut and sewn as it is printed in a system."""
    if _printed_exactly(exact, memory.page(system)):
        return
    on_paper = sew_on_paper(exact, system, memory)
    exactly = {meeting.key: meeting for meeting in exact.meetings}
    for meeting in on_paper.meetings:
        first = exactly.get(meeting.key)
        if first is None or opens(first, system) or not opens(meeting, system):
            continue
        gap = abs(meeting.one[system] - meeting.other[system]) - meeting.allowed[system]
        if gap > PAPER_OPENS[system]:
            kind = PaperMisses if gap >= PAPER_MISSES[system] else PaperOpens
            piece = _most_rounded(exact, meeting, system)
            yield kind(
                span=meeting.span,
                rounding=Rounding(
                    left=meeting.left,
                    right=meeting.right,
                    apart=difference(meeting.one, meeting.other, (system,)),
                    piece=None if piece is None else piece.said,
                    printed="" if piece is None else piece.printed,
                    exact="" if piece is None else piece.exact,
                ),
                labels=tuple(Label(row, "cut here") for row in meeting.rows),
                systems=(system.value,),
                sizes=(exact.edition.size.name,),
            )


def _printed_exactly(exact: Construction, page: Page) -> bool:
    """Whether every size and amount stands on the page as it is, so that the paper can show nothing new."""
    amounts = exact.reckoned.amounts.values()
    return all(page.piece(piece) is piece for piece in exact.edition.pieces) and all(
        page.amount(amount) is amount for amount in amounts
    )


@dataclass(frozen=True, slots=True)
class _Rounded:
    """A side of a piece whose printed size differs from the exact one."""

    said: str
    printed: str
    exact: str
    by: Fraction


def _most_rounded(exact: Construction, meeting: Meeting, system: System) -> _Rounded | None:
    """Of the sides of the pieces that meet, the one that is rounded by most."""
    sides = [
        rounded
        for piece in exact.edition.pieces
        if piece.span in meeting.rows
        for rounded in _rounded(piece, system)
    ]
    most = max(sides, key=lambda side: side.by, default=None)
    return most if most is not None and most.by > 0 else None


def _rounded(piece: CutPiece, system: System) -> Iterator[_Rounded]:
    for word, side in (("width", piece.width), ("height", piece.height)):
        if side is not None:
            on_page = printed(side, system, cut=True)
            exactly = decimal_text(side[system], 3)
            unit = "mm" if system is System.METRIC else "in"
            by = abs(on_page.value - side[system])
            yield _Rounded(f"the {word} of `{piece.name}`", on_page.text, f"{exactly} {unit}", by)
