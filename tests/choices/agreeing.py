"""Holds what a page reckons for a choice against a recipe in which that choice is the stated value."""

from __future__ import annotations

import json
import re
import subprocess
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from pathlib import Path

from markupsafe import escape
from printing.tools import needs

from presscloth.choices.tracing import errors as errors_of
from presscloth.choices.tracing import stated_text
from presscloth.drawing.pieces import draw_pieces
from presscloth.drawing.tree import Drawing
from presscloth.handout.build import Drawn, WorkedOut, make_handout
from presscloth.handout.choosing import Choice, Followable, Offer, Taken
from presscloth.handout.sewn import step_figures
from presscloth.handout.tree import Figure, Handout, Publisher
from presscloth.measure import Kind, Quantity, Stated, System, measure_text, number_text
from presscloth.measure.followed import unmarked
from presscloth.pipeline import Proved, booklet, prove_source
from presscloth.printing import choosing
from presscloth.printing.choosing import Following, choosable_html, told
from presscloth.printing.choosing_nodes import Nodes
from presscloth.printing.choosing_places import place_of_size
from presscloth.printing.html import html
from presscloth.printing.markup import FRACTION
from presscloth.printing.theme import open_theme
from presscloth.problems import Problems, Severity
from presscloth.proof.size import work_out_chosen
from presscloth.source import Source
from presscloth.tongue import speaking, tongue_of

SCRIPTS = Path(__file__).parents[2] / "themes" / "plain-seam"
PUBLISHER = Publisher(name="Tidewrack sewing room", address="", papers=(), systems=(), theme="plain-seam")
THEME = open_theme("plain-seam", None)


def proved(text: str, path: Path = Path("recipe.md")) -> Proved:
    return prove_source(Source(path.as_posix(), text), path, Problems())


def handout(size, drawn=None) -> Handout:
    return make_handout(
        WorkedOut(size.sewn, size.evaluator, size.settled, size.buying.purchases, drawn), PUBLISHER
    )


@dataclass(frozen=True)
class Case:
    """A size with a typed text for each of its offers, and the system whose field it was typed into."""

    size: str
    typed: tuple[tuple[str, str], ...]


class Subject:
    """A recipe, followed; `says` are the answers of the page's script."""

    def __init__(self, text: str, path: Path = Path("recipe.md")) -> None:
        self.text, self.path = text, path
        self.proved = proved(text, path)
        assert self.proved.sound, [problem.message() for problem in self.proved.problems]
        self.booklet = booklet(self.proved, PUBLISHER)
        self.names = [size.edition.size.name for size in self.proved.sizes]

    def followable(self, size: str) -> Followable:
        found = self.booklet.choices[self.names.index(size)]
        assert found is not None
        return found

    @cached_property
    def following(self) -> Following:
        return Following(self.booklet, self.booklet.choices)

    @cached_property
    def pages(self) -> list[str]:
        """The page along each way, with its marks."""
        return [html(self.following.along(n), THEME, PUBLISHER) for n in range(self.following.most_ways())]

    @cached_property
    def told(self):
        return told(self.following, self.pages)

    @cached_property
    def data(self):
        _, written = choosable_html(self.booklet, THEME, PUBLISHER)
        return json.loads(written.partition("=")[2].rstrip().rstrip(";"))

    def says(self, cases: list[Case]) -> list[dict]:
        """What the page's script answers to each case."""
        asked = {
            "scripts": str(SCRIPTS),
            "data": self.data,
            "cases": [{"size": slug(case.size), "typed": case.typed} for case in cases],
        }
        done = subprocess.run(
            [needs("node"), str(Path(__file__).parent / "reckon.js")],
            input=json.dumps(asked),
            capture_output=True,
            text=True,
            check=False,
        )
        assert done.returncode == 0, done.stderr
        return json.loads(done.stdout)

    def stating(self, choices: dict[str, str]) -> Proved:
        """The recipe with other values stated."""
        text = self.text
        for name, stated in choices.items():
            text, count = re.subn(
                rf"(?m)^(- {re.escape(name)} = ).*?(, (?:about, )?yours to choose)",
                rf"\g<1>{stated}\g<2>",
                text,
            )
            assert count == 1, name
        return proved(text, self.path)

    def stated(self, offer: Offer, taken: Taken) -> str:
        """How an author would state what was taken: alone where it is carried over, else as a pair."""
        texts = {system: in_words(offer, system, taken[system]) for system in System}
        if len(taken.stated) == 1:
            return texts[taken.stated[0]]
        return f"{texts[System.METRIC]} ({texts[System.IMPERIAL]})"


def in_words(offer: Offer, system: System, value) -> str:
    unit = offer.units[system]
    return measure_text(value / offer.factor(system), unit) if unit else number_text(value)


def slug(name: str) -> str:
    return name.lower().replace(" ", "-")


def plain_quantity(offer: Offer, taken: Taken) -> Quantity:
    """What was taken as an author's quantity, of plain numbers."""
    texts = {
        system: stated_text(
            taken[system],
            Fraction(system in taken.stated),
            f"{offer.kind.value} {system.value}",
            offer.units[system],
        )
        for system in System
    }
    return Quantity(
        offer.kind,
        taken.metric,
        taken.imperial,
        about=offer.about,
        stated=None if offer.kind is Kind.NUMBER else Stated(texts[System.METRIC], texts[System.IMPERIAL]),
        origins=offer.own.origins,
    )


def worked_anew(of: Subject, case: Case, choice: Choice) -> Handout | list[str]:
    """A size worked out anew for a choice, nothing being followed: its handout, or what is wrong.

    What to buy stays, and so do layouts and templates; everything else is reckoned and drawn again.
    """
    number = of.names.index(case.size)
    size, own = of.proved.sizes[number], of.booklet.handouts[number]
    pairs = zip(of.followable(case.size).offers, choice, strict=True)
    problems = Problems()
    worked = work_out_chosen(
        size, {offer.name: plain_quantity(offer, each) for offer, each in pairs}, problems
    )
    wrong = [problem.message() for problem in errors_of(worked, problems)]
    if wrong:
        return wrong
    with speaking(tongue_of(own.language)):
        drawn = Drawn(
            pieces=tuple(map(Figure, draw_pieces(worked.edition.pieces, own.systems))),
            steps=step_figures(worked.construction, own.systems),
            layouts=own.layouts,
            templates=own.templates,
        )
    bought = size.buying.purchases
    return make_handout(WorkedOut(worked.sewn, worked.evaluator, worked.settled, bought, drawn), PUBLISHER)


DRAWN = re.compile(r"<figure>.*?</figure>\s*", re.DOTALL)
BOUGHT = re.compile(r'<td class="figures" data-label="Quantity">.*?</td>')


def words_of(page: str, size: str) -> str:
    """The part of a page that belongs to a size, without its drawings and without what is bought, which
    suffices for every choice and stays.
    """
    start, end = place_of_size(page, slug(size))
    return bare(page[start:end])


def bare(section: str) -> str:
    return BOUGHT.sub("", DRAWN.sub("", section))


def filled(of: Subject, case: Case, answer: dict) -> str:
    """The size's part of the page along the way that was found, with the script's words in its places."""
    (told,) = (each for each in of.told if each.name == slug(case.size))
    section = told.sections[answer["place"]]
    texts = [section.shown(place) for place in range(len(section.texts))]
    for place, parts in zip(told.places, answer["put"], strict=True):
        texts[place] = "".join(map(built, parts))
    both = [part for pair in zip(texts, (*section.tags, ""), strict=True) for part in pair]
    return bare("".join(both))


def built(text: str) -> str:
    return FRACTION.sub(lambda found: f'<span class="fraction">{found[0]}</span>', str(escape(text)))


def drawings(of: Handout) -> tuple[list[Drawing], list[Drawing]]:
    """The drawings of the pieces and of the steps."""
    steps = [
        block.of
        for stage in of.stages
        for step in stage.steps
        for block in step.content
        if isinstance(block, Figure) and isinstance(block.of, Drawing)
    ]
    return [figure.of for figure in of.pieces], steps


def as_data(drawing: Drawing) -> dict:
    """A plain drawing as the page has it."""
    return json.loads(json.dumps(choosing._drawing(drawing, Nodes(None))))


def errors(found: Proved, size: str) -> list[str]:
    return [
        problem.message()
        for problem in found.problems
        if problem.severity is Severity.ERROR and (not problem.sizes or size in problem.sizes)
    ]


__all__ = [
    "Case",
    "Subject",
    "as_data",
    "drawings",
    "errors",
    "filled",
    "handout",
    "unmarked",
    "words_of",
    "worked_anew",
]
