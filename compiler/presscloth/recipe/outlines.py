"""Transform the section Outlines into outlines: a heading for each, and a list of its runs."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from presscloth.problems import Label, Problem, Problems
from presscloth.recipe.definitions import NameNotAllowed
from presscloth.recipe.expression import Broken, Expression, Name
from presscloth.recipe.markdown import HeadingBlock, ItemBlock, ListBlock, ParagraphBlock
from presscloth.recipe.matching import names_in
from presscloth.recipe.outline import Arched, Closed, Move, OutlineText, Run, Towards, expressions
from presscloth.recipe.outline_problems import (
    OutlineChosen,
    OutlineNotUsed,
    OutlineTwice,
    OutlineUnknown,
    RunUnclear,
)
from presscloth.recipe.reckoning import expression
from presscloth.recipe.sections import ContentUnexpected, SectionBlocks, split_items
from presscloth.recipe.tree import Definition, Piece, Shape
from presscloth.recipe.words import EDGES, look_up, why_no_name
from presscloth.source import Passage

WANTED = "a heading `### name` and a list of runs for each outline"

_WAYS = "right|left|up|down"
_MOVE = re.compile(rf"({_WAYS})\s+(?=\S)")
_AND = re.compile(rf"\s+and\s+(?=(?:{_WAYS})\s)")
_TO_FOLD = re.compile(rf"({_WAYS}) to the fold")
_THEN = re.compile(r"\s+then\s+")
_AS = re.compile(r"^(.*)\s+as\s+(.*)$", re.DOTALL)
_BEND = re.compile(r"(arched|hollowed)\s+(by|with\s+radius)\s+(?=\S)")
_ENDS = re.compile(rf"(leaving|arriving)\s+({_WAYS})")
_NOTCHED = re.compile(r"notched\s+at\s+(?=\S)")
_BETWEEN_NOTCHES = re.compile(r"\s+and\s+(?:at\s+)?")


class _Unclear(Exception):
    """A run cannot be read; caught in this module, never seen outside."""

    def __init__(self, problem: Problem | None = None) -> None:
        self.problem = problem


def read_outlines(section: SectionBlocks | None, problems: Problems) -> tuple[OutlineText, ...]:
    """The outlines; one with a run that cannot be read is reported and left out."""
    found: dict[str, OutlineText] = {}
    heading: HeadingBlock | None = None
    for block in section.content if section else ():
        match block:
            case HeadingBlock():
                heading = block
            case ListBlock() if heading is not None:
                outline = _outline(heading, block, problems)
                earlier = None if outline is None else look_up(outline.name.text, found)
                if outline is not None and earlier is not None:
                    label = Label(earlier.name.span, "drawn here first")
                    problems.add(
                        OutlineTwice(span=outline.name.span, outline=outline.name.text, labels=(label,))
                    )
                elif outline is not None:
                    found[outline.name.text] = outline
                heading = None
            case _:
                problems.add(ContentUnexpected(span=block.span, section="Outlines", wanted=WANTED))
    if heading is not None:
        problems.add(ContentUnexpected(span=heading.span, section="Outlines", wanted=WANTED))
    return tuple(found.values())


def _outline(heading: HeadingBlock, block: ListBlock, problems: Problems) -> OutlineText | None:
    name = _name(heading.text, problems)
    runs: list[Run] = []
    closed: Closed | None = None
    whole = name is not None
    for item in block.items:
        try:
            text = _text(item)
            if closed is not None:
                raise _Unclear(RunUnclear(span=text.span(), why="follows what closes the outline"))
            words = " ".join(text.text.split()).casefold()
            closed = next((c for c in (Closed.FOLD, Closed.MIRRORED) if c.value == words), None)
            if closed is None:
                runs.append(_run(text, runs, problems))
        except _Unclear as unclear:
            whole = False
            if unclear.problem is not None:
                problems.add(unclear.problem)
    for run in runs if closed is None else ():
        if run.to_fold is not None:
            problems.add(RunUnclear(span=run.span, why="goes to the fold, and no `on the fold` follows"))
            whole = False
    if whole and not runs:
        problems.add(ContentUnexpected(span=block.span, section="Outlines", wanted=WANTED))
    if not whole or not runs or name is None:
        return None
    return OutlineText(name, tuple(runs), closed or Closed.ROUND, heading.span.to(block.span))


def _name(passage: Passage, problems: Problems) -> Name | None:
    name = Name(" ".join(passage.text.split()), passage.span())
    why = why_no_name(name.text) if name.text else "it is empty"
    if why is None:
        return name
    problems.add(NameNotAllowed(span=name.span, name=name.text, why=why))
    return None


def _text(item: ItemBlock) -> Passage:
    match item.content:
        case (ParagraphBlock(text=text),):
            return text
        case _:
            raise _Unclear(
                ContentUnexpected(span=item.span, section="Outlines", wanted="a list of short items")
            )


def _run(text: Passage, before: Sequence[Run], problems: Problems) -> Run:
    first, *others = split_items(text)
    named = _AS.match(first.text)
    if named is None:
        raise _Unclear(RunUnclear(span=first.span(), why="does not say what the edge is called"))
    way = first[named.start(1) : named.end(1)].strip()
    name = _edge_name(first[named.start(2) : named.end(2)].strip())
    curved = re.match(r"curve\s+", way.text)
    to_fold = _TO_FOLD.fullmatch(" ".join(way.text.split()))
    legs: tuple[tuple[Move, ...], ...] = ()
    if to_fold is None:
        legs = _legs(way[curved.end() :] if curved else way, curved=curved is not None, problems=problems)
    options = _Options(problems)
    for option in others:
        options.read(option)
    run = Run(
        name=name,
        legs=legs,
        curved=curved is not None,
        to_fold=None if to_fold is None else Towards(to_fold[1]),
        arched=options.arched,
        leaving=options.ends.get("leaving"),
        arriving=options.ends.get("arriving"),
        notches=tuple(options.notches),
        allowance=options.allowance,
        bare=options.bare,
        span=text.span(),
    )
    _hold(run, before)
    return run


def _hold(run: Run, before: Sequence[Run]) -> None:
    """What stands in a run must go together."""
    why = None
    bent_ends = run.leaving is not None and run.arriving is not None
    if not run.curved and (run.leaving or run.arriving):
        why = "says how it leaves or arrives, and is no curve"
    elif run.curved and run.arched is not None:
        why = "is a curve and an arc at once"
    elif run.curved and len(run.legs) < 2 and not bent_ends:
        why = "is a curve without a point between; add one with `then`, or say `leaving` and `arriving`"
    elif (run.allowance is not None or run.bare) and any(run.name.text == each.name.text for each in before):
        why = f"belongs to the edge `{run.name.text}`, whose allowance stands with its first run"
    if why is not None:
        raise _Unclear(RunUnclear(span=run.span, why=why))


def _edge_name(passage: Passage) -> Name:
    name = Name(" ".join(passage.text.casefold().split()), passage.span())
    why = None if name.text in EDGES else why_no_name(name.text) if name.text else "it is empty"
    if why is not None:
        raise _Unclear(NameNotAllowed(span=name.span, name=name.text, why=why))
    return name


def _legs(way: Passage, *, curved: bool, problems: Problems) -> tuple[tuple[Move, ...], ...]:
    if " ".join(way.text.split()) == "back to the start" and not curved:
        return ()
    legs = [_leg(leg, problems) for leg in _parted(way, _THEN)]
    if len(legs) > 1 and not curved:
        raise _Unclear(RunUnclear(span=way.span(), why="goes on with `then`, which only a `curve` does"))
    return tuple(legs)


def _leg(leg: Passage, problems: Problems) -> tuple[Move, ...]:
    moves = []
    for part in _parted(leg, _AND):
        match = _MOVE.match(part.text)
        if match is None:
            raise _Unclear(RunUnclear(span=part.span(), why="does not begin with right, left, up or down"))
        moves.append(Move(Towards(match[1]), _measure(part[match.end() :].strip(), problems)))
    level = [move.towards.step[0] != 0 for move in moves]
    if len(moves) > 2 or len(set(level)) < len(level):
        raise _Unclear(RunUnclear(span=leg.span(), why="names one direction twice"))
    return tuple(moves)


def _parted(passage: Passage, between: re.Pattern[str]) -> Iterator[Passage]:
    start = 0
    for match in between.finditer(passage.text):
        yield passage[start : match.start()].strip()
        start = match.end()
    yield passage[start:].strip()


def _measure(passage: Passage, problems: Problems) -> Expression:
    found = expression(passage, problems)
    if isinstance(found, Broken):
        raise _Unclear
    return found


class _Options:
    """What stands after the commas of a run."""

    def __init__(self, problems: Problems) -> None:
        self._problems = problems
        self.arched: Arched | None = None
        self.ends: dict[str, Towards] = {}
        self.notches: list[Expression | None] = []
        self.allowance: Expression | None = None
        self.bare = False

    def read(self, option: Passage) -> None:
        words = " ".join(option.text.split())
        if match := _BEND.match(option.text):
            amount = _measure(option[match.end() :].strip(), self._problems)
            self.arched = Arched(match[1] == "arched", match[2] != "by", amount, option.span())
        elif match := _ENDS.fullmatch(words):
            self.ends[match[1]] = Towards(match[2])
        elif words == "notched in the middle":
            self.notches.append(None)
        elif match := _NOTCHED.match(option.text):
            places = _parted(option[match.end() :], _BETWEEN_NOTCHES)
            self.notches += [_measure(place, self._problems) for place in places]
        elif words == "no allowance":
            self.bare = True
        elif words.startswith("allowance "):
            self.allowance = _measure(option[len("allowance") :].strip(), self._problems)
        else:
            raise _Unclear(RunUnclear(span=option.span(), why="after the comma has no meaning for a run"))


def hold_outlines(
    outlines: Sequence[OutlineText], pieces: Sequence[Piece], *, whole: bool, problems: Problems
) -> None:
    """Every outline is used; one that a piece names is there. Not `whole`: some could not be read."""
    known: Mapping[str, OutlineText] = {outline.name.text: outline for outline in outlines}
    used: set[str] = set()
    for piece in pieces:
        if piece.shape is not Shape.OUTLINE or piece.outline is None:
            continue
        found = look_up(piece.outline, known)
        if found is not None:
            used.add(found.name.text)
        elif whole:
            problems.add(OutlineUnknown(span=piece.span, outline=piece.outline, known=tuple(known)))
    for outline in outlines:
        if outline.name.text not in used and whole:
            problems.add(OutlineNotUsed(span=outline.name.span, outline=outline.name.text))


def hold_choices(outlines: Sequence[OutlineText], measures: Sequence[Definition], problems: Problems) -> None:
    """No outline depends on what the reader chooses, since its template is printed once."""
    known = {definition.name.text: definition for definition in measures}
    for outline in outlines:
        for each in expressions(outline):
            chosen = _chosen(each, known, frozenset())
            if chosen is not None:
                name = outline.name.text
                label = Label(chosen.span, "to choose")
                problems.add(
                    OutlineChosen(span=each.span, outline=name, measure=chosen.name.text, labels=(label,))
                )
                break


def _chosen(of: Expression, known: Mapping[str, Definition], seen: frozenset[str]) -> Definition | None:
    """The first measure behind an expression that is the reader's to choose."""
    for name, is_measure in names_in(of):
        found = look_up(name.text, known) if is_measure else None
        if found is None or found.name.text in seen:
            continue
        if found.choice is not None:
            return found
        behind = _chosen(found.expression, known, seen | {found.name.text})
        if behind is not None:
            return behind
    return None
