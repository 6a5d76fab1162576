"""Transform everything that was worked out for one size into its handout."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from presscloth.cutting.buying import Purchase
from presscloth.cutting.chosen import reaches
from presscloth.drawing.pieces import draw_pieces
from presscloth.edition import Edition, Evaluator, statements
from presscloth.frozen import dataclass
from presscloth.handout import tree
from presscloth.handout.bought import layout_rows, longest_words, quantities
from presscloth.handout.cautions import cautions
from presscloth.handout.lists import cut_lines, material_lines, used_materials
from presscloth.handout.orders import cut_orders
from presscloth.handout.prose import Teller
from presscloth.handout.sewn import belongs, finished, optional_keys, step_figures
from presscloth.handout.templates import template_note, template_sets
from presscloth.handout.wording import audience_word, clock, systems_of
from presscloth.measure import System
from presscloth.proof.prose import Settled
from presscloth.recipe import prose
from presscloth.recipe.matching import names_of
from presscloth.recipe.statement import SewBlock
from presscloth.recipe.tree import Audience, Lead, Part, Recipe, Stage, Step
from presscloth.sewing import Sewn
from presscloth.tongue import Tongue, listed, named, say, speaking, tongue_of
from presscloth.translation.tree import Translation

Figures = Mapping[int, tuple[tree.Figure, ...]]
"""The drawings that stand in the steps, by step number."""


@dataclass(frozen=True, slots=True)
class Drawn:
    """All drawings of a size: its pieces, what its steps make, how its cloth is laid out, its templates."""

    pieces: tuple[tree.Figure, ...]
    steps: Figures
    layouts: tuple[tree.LayoutRow, ...]
    templates: tuple[tree.TemplateSet, ...]


@dataclass(frozen=True, slots=True)
class WorkedOut:
    """What the rooms before have worked out for one size.

    `sewn` are all ways through the steps; `purchases` what to buy, by key; `drawn` are drawings that
    have been made already. `translation` has what the recipe says in another language.
    """

    sewn: Sewn
    evaluator: Evaluator
    settled: Settled
    purchases: Mapping[str, Purchase]
    drawn: Drawn | None = None
    translation: Translation | None = None

    @property
    def edition(self) -> Edition:
        return self.sewn.edition


def drawings(worked: WorkedOut, systems: Sequence[System]) -> Drawn:
    """Draw all that a handout shows."""
    return Drawn(
        pieces=tuple(tree.Figure(drawing) for drawing in draw_pieces(worked.edition.pieces, systems)),
        steps=step_figures(worked.sewn.fullest, systems),
        layouts=layout_rows(worked.purchases, systems),
        templates=template_sets(worked.edition, systems),
    )


def make_handout(worked: WorkedOut, publisher: tree.Publisher) -> tree.Handout:
    """Word a recipe in one size, in its language.

    Nothing is checked here: what is broken has been reported before.
    """
    with speaking(tongue_in(worked.edition.recipe, worked.translation)):
        return _make_handout(worked, publisher)


def tongue_in(recipe: Recipe, translation: Translation | None) -> Tongue:
    """The language of a recipe, or of its translation with the author's names in it."""
    if translation is None:
        return tongue_of(recipe.front.language)
    return tongue_of(translation.language, translation.names)


def _make_handout(worked: WorkedOut, publisher: tree.Publisher) -> tree.Handout:
    edition, recipe = worked.edition, worked.edition.recipe
    front = recipe.front
    size = edition.size.name
    translation = worked.translation
    systems = systems_of(recipe, publisher.systems or leading(translation))
    bought = quantities(worked.purchases, systems)
    teller = Teller(worked.settled, systems, recipe.folder, bought, translation, front.language)
    materials = used_materials(recipe, edition, _keys_spoken_of(edition))
    audience = audience_of(recipe, size)
    drawn = worked.drawn or drawings(worked, systems)
    return tree.Handout(
        slug=slug_in(recipe.slug, translation),
        title=named(front.title),
        size=named(size),
        only_size=len(recipe.sizes) == 1,
        version=front.version,
        release=front.release,
        language=translation.language if translation else front.language,
        summary=named(front.summary),
        craft=", ".join(named(craft.strip()) for craft in front.craft.split(",")),
        skills=tuple(map(named, front.skills)),
        time=named(front.time),
        audience=audience_word(audience),
        credits=named(front.credits),
        video=front.video or "",
        draft=front.held,
        sewn=front.sewn is None or any(size.casefold() == each.casefold() for each in front.sewn),
        proved=worked.sewn.sewing,
        systems=tuple(teller.systems),
        finished=finished(worked.sewn.fullest, teller.systems),
        cautions=(*cautions(recipe, materials, audience), *template_note(drawn.templates)),
        intro=teller.blocks(recipe.intro),
        materials=material_lines(
            materials,
            worked.purchases,
            worked.evaluator,
            teller,
            optional_keys(worked.sewn),
        ),
        tools=tuple(teller.inlines(tool) for tool in recipe.tools),
        cutting=cut_lines(edition, {m.key: m for m in recipe.materials}, teller, belongs(worked.sewn)),
        pieces=drawn.pieces,
        stages=_stages(worked, teller, drawn.steps),
        notes=tuple(
            tree.SectionText(teller.inlines(section.title), teller.blocks(section.content))
            for section in recipe.notes
        ),
        layouts=drawn.layouts,
        longest=longest_words(reaches(edition), teller.systems),
        orders=cut_orders(worked.purchases, teller.systems),
        templates=drawn.templates,
        revised=front.revised,
        part_of=named(front.part_of),
        week=front.week,
    )


def slug_in(slug: str, translation: Translation | None) -> str:
    """The short name under which a recipe stands in a language: `runner`, `runner-de`."""
    return f"{slug}-{translation.language.lower()}" if translation else slug


def leading(translation: Translation | None) -> tuple[System, ...]:
    """The systems in the order of a translation that says which leads; empty to follow the recipe."""
    first = translation.leading if translation else None
    return (first, first.other) if first else ()


def audience_of(recipe: Recipe, size: str) -> Audience:
    """Who will use the article in this size."""
    by_size = recipe.front.audience
    for name, audience in by_size.items():
        if name is not None and name.casefold() == size.casefold():
            return audience
    return by_size.get(None, Audience.ADULT)


def _keys_spoken_of(edition: Edition) -> frozenset[str]:
    keys = {material.key for material in edition.recipe.materials}
    return frozenset(
        name.text
        for step in edition.steps
        for part in step.parts
        for statement in statements(part.content)
        for slot in statement.slots.values()
        for name, _ in names_of(slot)
        if name.text in keys
    )


def _stages(worked: WorkedOut, teller: Teller, figures: Figures) -> tuple[tree.StageText, ...]:
    """The stages with the steps of this size; what other sizes do in between is said in a line."""
    here = {step.number: step for step in worked.edition.steps}
    recipe = worked.edition.recipe
    found = (_stage(stage, here, figures, teller, recipe) for stage in recipe.stages)
    return tuple(stage for stage in found if any(not step.elsewhere for step in stage.steps))


def _stage(
    stage: Stage, here: Mapping[int, Step], figures: Figures, teller: Teller, recipe: Recipe
) -> tree.StageText:
    steps = tuple(
        _step(here[step.number], figures, teller, recipe)
        if step.number in here
        else tree.StepText(step.number, tree.Marks(), (), elsewhere=_elsewhere(step.lead))
        for step in stage.steps
    )
    return tree.StageText(teller.inlines(stage.title), steps)


def _elsewhere(lead: Lead) -> str:
    """Why a size has no such step: `Large only`, `Not for Small`."""
    if lead.only:
        return say("{sizes} only", sizes=listed([named(name.text) for name in lead.only]))
    return say("Not for {sizes}", sizes=listed([named(name.text) for name in lead.without]))


def _step(step: Step, figures: Figures, teller: Teller, recipe: Recipe) -> tree.StepText:
    video = recipe.front.video or ""
    content = [block for part in step.parts for block in _part(part, teller, video)]
    content += figures.get(step.number, ())
    return tree.StepText(step.number, marks(step.lead, video), tuple(content))


def _part(part: Part, teller: Teller, video: str) -> Iterator[tree.Block]:
    own = marks(part.lead, video)
    for block in part.content:
        match block:
            case SewBlock():
                continue
            case prose.Paragraph(of=of):
                yield teller.paragraph(of, own)
                own = tree.Marks()
            case _:
                yield teller.block(block)


def marks(lead: Lead, video: str) -> tree.Marks:
    """The lead words as marks; a time leads into the video where there is one.

    The address of a moment is written as W3C's Media Fragments URI 1.0 does: `#t=` and seconds.
    """
    at = "" if lead.at is None else clock(lead.at)
    link = f"{video}#t={lead.at}" if at and video else ""
    return tree.Marks(optional=lead.optional, care=lead.care, alternative=lead.instead, at=at, at_link=link)
