"""A recipe in all its sizes as one web page."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import takewhile

from markupsafe import Markup

from presscloth.frozen import dataclass
from presscloth.handout.chapters import chapters
from presscloth.handout.tree import Booklet, Caution, Handout, Publisher, TemplateSet
from presscloth.handout.wording import system_word
from presscloth.measure.followed import MARKED
from presscloth.printing.chapters import CHAPTERS_FILE
from presscloth.printing.howto import howto, page_address
from presscloth.printing.markup import Marker
from presscloth.printing.names import slugs
from presscloth.printing.preview import preview_words
from presscloth.printing.theme import Theme, environment
from presscloth.tongue import say, speaking, tongue_of


@dataclass(frozen=True, slots=True)
class StandingLink:
    """A page that every page leads to: its file's name without `.html`, and its title.

    `language` is empty where it is that of the page that leads there.
    """

    name: str
    title: str
    language: str = ""


@dataclass(frozen=True, slots=True)
class PaperLink:
    """A PDF beside a page: the paper's name and the file."""

    name: str
    file: str


@dataclass(frozen=True, slots=True)
class SizePart:
    """What the template needs for one size."""

    handout: Handout
    slug: str
    marker: Marker
    papers: tuple[PaperLink, ...]


@dataclass(frozen=True, slots=True)
class Common:
    """What is the same in all sizes and stands only once: these cautions, and the tools and notes or not."""

    cautions: tuple[Caution, ...]
    tools: bool
    notes: bool


def html(
    booklet: Booklet,
    theme: Theme,
    publisher: Publisher,
    papers: tuple[str, ...] = (),
    standing: tuple[StandingLink, ...] = (),
) -> str:
    """Write a booklet as a page that lies in a folder of its own, one below the site's first page.

    All sizes stand in it in the order of the recipe. `papers` names the papers whose PDFs lie beside
    it, `standing` the standing pages. All links are relative.
    """
    with speaking(tongue_of(booklet.first.language)):
        return _page(booklet, theme, publisher, papers, standing)


def _page(
    booklet: Booklet,
    theme: Theme,
    publisher: Publisher,
    papers: tuple[str, ...],
    standing: tuple[StandingLink, ...],
) -> str:
    first = booklet.first
    names = slugs(tuple(handout.size for handout in booklet.handouts))
    marker = Marker(theme.look, web=True, ids="")
    sizes = tuple(
        SizePart(handout, name, marker.within(f"{name}-"), paper_links(handout, name, papers))
        for handout, name in zip(booklet.handouts, names, strict=True)
    )
    several = len(sizes) > 1
    template = environment(theme).get_template("recipe.html")
    return template.render(
        booklet=booklet,
        sizes=sizes,
        marker=marker,
        publisher=publisher,
        standing=standing,
        language=first.language,
        here="",
        up="../",
        howto=Markup(howto(booklet, publisher)),
        address=page_address(publisher, first.slug),
        preview_words=preview_words(booklet, publisher),
        chapters=CHAPTERS_FILE if chapters(booklet) else "",
        cue_sheets=cue_links(sizes, papers),
        shared=several and any((first.skills, first.time, first.craft, first.video, first.credits)),
        intro_above=_same_beginning(booklet, marker) if several else 0,
        common=_common(booklet, marker) if several else None,
    )


def _common(booklet: Booklet, marker: Marker) -> Common:
    first, *others = booklet.handouts
    return Common(
        tuple(each for each in first.cautions if all(each in other.cautions for other in others)),
        tools=_same(booklet, lambda handout: Markup().join(map(marker.inline, handout.tools))),
        notes=_same(booklet, lambda handout: _notes(handout, marker)),
    )


def _notes(handout: Handout, marker: Marker) -> Markup:
    return Markup().join(marker.inline(note.title) + marker.blocks(note.content, 3) for note in handout.notes)


def _same_beginning(booklet: Booklet, marker: Marker) -> int:
    """How many blocks at the beginning of the intro are the same in all sizes."""
    least = min(len(handout.intro) for handout in booklet.handouts)

    def same(place: int) -> bool:
        return _same(booklet, lambda handout: marker.blocks(handout.intro[place : place + 1], 2))

    return sum(1 for _ in takewhile(same, range(least)))


def _same(booklet: Booklet, written: Callable[[Handout], Markup]) -> bool:
    """Whether a part is written alike in all sizes; a number of the reader's choice is its size's own."""
    parts = {str(written(handout)) for handout in booklet.handouts}
    return len(parts) == 1 and not any(MARKED.search(part) for part in parts)


def pdf_name(handout: Handout, size_slug: str, paper: str) -> str:
    """The file of one size on one paper: `harbour-kit-bag-small-a4.pdf`."""
    return f"{handout.slug}-{size_slug}-{paper.lower()}.pdf"


def paper_links(handout: Handout, size_slug: str, papers: tuple[str, ...]) -> tuple[PaperLink, ...]:
    """The PDFs beside a page: the handout on every paper, then the templates."""
    handouts = (PaperLink(paper, pdf_name(handout, size_slug, paper)) for paper in papers)
    templates = (
        PaperLink(_templates_words(handout, each, paper), templates_name(handout, size_slug, each, paper))
        for each in handout.templates
        for paper in papers
    )
    return (*handouts, *templates)


def _templates_words(handout: Handout, templates: TemplateSet, paper: str) -> str:
    if len(handout.templates) == 1:
        return say("Templates to print at full size, {paper}", paper=paper)
    system = system_word(templates.system)
    return say("Templates to print at full size, {system}, {paper}", system=system, paper=paper)


def cue_links(sizes: Sequence[SizePart], papers: tuple[str, ...]) -> tuple[PaperLink, ...]:
    """The presenter's cue sheets, where there is a video: `Small, A4` and its file."""
    return tuple(
        PaperLink(
            paper if size.handout.only_size else f"{size.handout.size}, {paper}",
            cues_name(size.handout, size.slug, paper),
        )
        for size in sizes
        if size.handout.video
        for paper in papers
    )


def cues_name(handout: Handout, size_slug: str, paper: str) -> str:
    """The file of a cue sheet: `slipway-apron-medium-cue-sheet-a4.pdf`."""
    return f"{handout.slug}-{size_slug}-cue-sheet-{paper.lower()}.pdf"


def templates_name(handout: Handout, size_slug: str, templates: TemplateSet, paper: str) -> str:
    """`lobster-pot-basket-small-templates-metric-a4.pdf`; without the system where there is one only."""
    system = f"-{templates.system.value}" if len(handout.templates) > 1 else ""
    return f"{handout.slug}-{size_slug}-templates{system}-{paper.lower()}.pdf"
