"""Transform a source into a recipe.

Everything is read that can be read; what cannot is reported, and later parts are read on. The verbs'
patterns are handed in, so that a verb stays one file in the room where sewing is known.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path

from presscloth.problems import Problem, Problems
from presscloth.recipe import markdown, steps, walking
from presscloth.recipe.braces import in_braces
from presscloth.recipe.definitions import ReadInlines, check
from presscloth.recipe.expression import Broken, Compared, Expression, Name
from presscloth.recipe.front import front_matter
from presscloth.recipe.lost import columns_left_out, left_out
from presscloth.recipe.markdown import HeadingBlock, MarkdownBlock
from presscloth.recipe.matching import Known, part_words, parts_in
from presscloth.recipe.materials import read_materials
from presscloth.recipe.misplaced import apart_from, sections_apart_from, without_heading
from presscloth.recipe.naming import circles, definitions, hold_names, known_names, one_name_one_thing
from presscloth.recipe.outline import expressions as outline_expressions
from presscloth.recipe.outlines import hold_choices, hold_outlines, read_outlines
from presscloth.recipe.patterns import VerbForm
from presscloth.recipe.pieces import read_pieces
from presscloth.recipe.prose import Measure
from presscloth.recipe.reading_problems import NameUnknown, PartUnknown
from presscloth.recipe.refused import under_refused_names, under_the_first_use, units_not_names
from presscloth.recipe.sections import (
    SectionNearlyKnown,
    cut,
    items,
    read_measures,
    sort_out,
    split_items,
    the_table,
)
from presscloth.recipe.sizes import SizeUnknown, hold_sizes, read_sizes
from presscloth.recipe.statements import result_name, sew_block, statement_passages
from presscloth.recipe.tree import Check, Lead, Recipe, Section, Stage
from presscloth.recipe.words import look_up
from presscloth.source import Source, Span


class TitleDiffers(Problem):
    """The first heading differs from the title in the front matter.

    The catalogue and the handout would call the article by two names.

    Fails:

        ---
        title: Plain Cloth
        ---

        # Fancy Cloth

    Passes:

        ---
        title: Plain Cloth
        ---

        # Plain Cloth
    """

    heading: str
    titled: str

    def message(self) -> str:
        return f"the heading says `{self.heading}`, and the title is `{self.titled}`"

    def hint(self) -> str:
        return "make them the same, or leave the heading out"


class NoSteps(Problem):
    """A recipe has no steps.

    Without steps there is nothing to sew along to.

    Fails:

        ## Steps

    Passes:

        ## Steps
        1. Done.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           finish cloth
           ```
    """

    def message(self) -> str:
        return "this recipe has no steps"

    def hint(self) -> str:
        return "add `## Steps` with a numbered list"


def read(
    source: Source, *, slug: str, folder: Path | None, verbs: Sequence[VerbForm], problems: Problems
) -> Recipe:
    """Read a whole recipe; its parts that could not be read are missing or `Broken`."""
    found = Problems()
    recipe, known = _read(source, slug, folder, verbs, found)
    named = tuple(under_the_first_use(tuple(units_not_names(found.found(), known))))
    problems.extend(list(under_refused_names(named)))
    unknown = {p.span for p in found.found() if isinstance(p, NameUnknown | SizeUnknown)}
    refused = {p.span for p in found.found() if isinstance(p, PartUnknown)}
    asked = (part for each in (*_expressions(recipe), *_printed(recipe)) for part in parts_in(each))
    unknown |= {part.of.span for part in asked if refused and part_words(part) in refused}
    return replace(recipe, unknown=frozenset(unknown))


def _read(
    source: Source, slug: str, folder: Path | None, verbs: Sequence[VerbForm], problems: Problems
) -> tuple[Recipe, Known]:
    front, start = front_matter(source, problems)
    read_brace = partial(in_braces, problems=problems)
    body = markdown.body(source, start, problems)
    inlines: ReadInlines = partial(
        markdown.inlines, expression=read_brace, problems=problems, references=body.references
    )
    blocks = partial(markdown.prose, expression=read_brace, problems=problems, references=body.references)

    intro, cut_out = cut(body.blocks)
    found, others, lost_sections = sort_out(cut_out, problems)
    misplaced = tuple(without_heading(intro, found))
    problems.extend(list(misplaced))
    intro, known = apart_from(intro, misplaced), sections_apart_from(found, misplaced)
    lost_whole = (*lost_sections, *(problem.span for problem in misplaced))
    beginning = source.span(start, start)

    def lost(section: str, kept: Sequence[Span]) -> tuple[Span, ...]:
        return left_out(known[section].content, kept) if section in known else ()

    sizes = read_sizes(known.get("Sizes"), beginning, problems)
    lost_columns = columns_left_out(known["Sizes"].content, sizes[0].measures) if "Sizes" in known else ()
    lost_sizes = lost("Sizes", [size.span for size in sizes])
    measures = read_measures(known.get("Measures"), inlines, problems)
    lost_measures = lost("Measures", [measure.span for measure in measures])
    table = the_table(known.get("Materials"), "Materials", problems)
    materials = read_materials(table, inlines, problems) if table else ()
    lost_materials = lost("Materials", [material.span for material in materials])
    table = the_table(known.get("Pieces"), "Pieces", problems)
    by_key = {material.key: material for material in materials}
    pieces = read_pieces(table, by_key, (*lost_whole, *lost_materials), inlines, problems) if table else ()
    lost_pieces = lost("Pieces", [piece.span for piece in pieces])
    drawn = known.get("Outlines")
    outlines = read_outlines(drawn, problems)
    headings = sum(isinstance(block, HeadingBlock) for block in drawn.content) if drawn else 0
    hold_outlines(outlines, pieces, whole=len(outlines) == headings, problems=problems)
    every_loss = (*lost_whole, *lost_columns, *lost_sizes, *lost_measures, *lost_materials, *lost_pieces)

    step_blocks = known["Steps"].content if "Steps" in known else ()
    results = tuple(_results(step_blocks))
    one_name_one_thing(sizes, measures, pieces, results, problems)
    names = replace(
        known_names(sizes, measures, pieces, materials, results, every_loss),
        edges=tuple(dict.fromkeys(edge for outline in outlines for edge in outline.edges())),
    )
    sew = partial(sew_block, verbs=verbs, known=names, problems=problems)
    stages = steps.read_stages(step_blocks, blocks, inlines, sew, problems)
    checks = tuple(
        check(text, inlines, problems) for _, text in items(known.get("Checks"), "Checks", problems)
    )
    if not any(stage.steps for stage in stages):
        place = known["Steps"].heading.span if "Steps" in known else beginning
        problems.add(NoSteps(span=place, cause=_nearly("Steps", problems)))

    recipe = Recipe(
        slug=slug,
        source=source,
        folder=folder,
        front=front,
        intro=blocks(_without_title(intro, front.title, problems)),
        sizes=sizes,
        measures=measures,
        tools=tuple(
            inlines(tool)
            for _, text in items(known.get("Tools"), "Tools", problems)
            for tool in split_items(text)
        ),
        materials=materials,
        pieces=pieces,
        outlines=outlines,
        stages=stages,
        checks=checks,
        lost=every_loss,
        notes=tuple(
            Section(inlines(section.heading.text), blocks(section.content), section.heading.span)
            for section in others
        ),
    )
    for content in (intro, *(section.content for section in others)):
        steps.sew_outside(content, problems)
    outside = tuple(each.span for each in problems.found() if isinstance(each, steps.TextOutsideSteps))
    names = replace(names, lost=(*names.lost, *outside))
    _hold(recipe, names, problems)
    return recipe, names


def _nearly(name: str, problems: Problems) -> Span | None:
    """The heading that was probably meant for a section that is not there."""
    nearly = (each for each in problems.found() if isinstance(each, SectionNearlyKnown))
    return next((each.span for each in nearly if each.meant == name), None)


def _results(content: Sequence[MarkdownBlock]) -> Iterator[Name]:
    for block in steps.statements_under(content):
        for statement in statement_passages(block):
            name = result_name(statement)
            if name is not None:
                yield name


def _without_title(
    intro: tuple[MarkdownBlock, ...], title: str, problems: Problems
) -> tuple[MarkdownBlock, ...]:
    match intro:
        case (HeadingBlock(level=1) as heading, *others):
            said = " ".join(heading.text.text.split())
            if title and said != title:
                problems.add(TitleDiffers(span=heading.text.span(), heading=said, titled=title))
            return tuple(others)
        case _:
            return intro


def _hold(recipe: Recipe, names: Known, problems: Problems) -> None:
    """Hold the recipe's names against each other: those in expressions, and those of sizes."""
    circles(recipe.sizes, recipe.measures, problems)
    hold_choices(recipe.outlines, recipe.measures, problems)
    for expression in (*_expressions(recipe), *_printed(recipe)):
        hold_names(expression, names, problems)
    hold_sizes(tuple(_named_sizes(recipe)), recipe.sizes, recipe.lost, problems)


def _expressions(recipe: Recipe) -> Iterator[Expression]:
    for definition in definitions(recipe.sizes, recipe.measures):
        yield definition.expression
        yield from definition.choice or ()
    for material in recipe.materials:
        yield from (e for e in (material.width, material.length, material.sold_by) if e is not None)
        yield from (note.amount for note in material.notes if note.amount is not None)
    for piece in recipe.pieces:
        yield piece.cut
        yield from (side.expression for side in (piece.width, piece.height) if side is not None)
        yield from (note.amount for note in piece.notes if note.amount is not None)
        if piece.allowance is not None:
            yield piece.allowance
    for outline in recipe.outlines:
        yield from outline_expressions(outline)
    for each in recipe.checks:
        match each.compared:
            case Compared(left=left, right=right, margin=margin):
                yield left
                yield right
                if margin is not None:
                    yield margin
            case Broken():
                pass


def _printed(recipe: Recipe) -> Iterator[Expression]:
    """What stands in braces, but for the names of pieces, which are printed as they are."""
    pieces = {piece.name.text: piece for piece in recipe.pieces}
    for run in walking.told(recipe):
        for inline in walking.inlines(run.of):
            if isinstance(inline, Measure):
                of = inline.expression
                if not (isinstance(of, Name) and look_up(of.text, pieces) is not None):
                    yield of


def _leads(stages: Sequence[Stage], checks: Sequence[Check]) -> Iterator[Lead]:
    for stage in stages:
        for step in stage.steps:
            yield step.lead
            yield from (part.lead for part in step.parts)
    for each in checks:
        yield each.lead


def _named_sizes(recipe: Recipe) -> Iterator[Name]:
    for lead in _leads(recipe.stages, recipe.checks):
        yield from lead.only
        yield from lead.without
    for piece in recipe.pieces:
        yield from piece.sizes or ()
    spans = recipe.front.spans
    listed = [*(size for size in recipe.front.audience if size is not None), *(recipe.front.sewn or ())]
    for size in listed:
        yield Name(size, spans.get(f"size {size}", recipe.source.span(0, 0)))
