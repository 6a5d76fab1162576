"""Words and blocks of a handout as HTML, for a page on the web or for paper.

Every text is escaped here or by the templates; nothing that an author wrote becomes a tag.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import field, replace
from urllib.parse import quote

from markupsafe import Markup, escape

from presscloth.drawing.tree import Drawing, Lettering
from presscloth.frozen import dataclass
from presscloth.handout.tree import (
    Amount,
    Block,
    Code,
    Divider,
    Emphasis,
    Figure,
    Foreign,
    Grid,
    Handout,
    Heading,
    Image,
    Inline,
    LayoutRow,
    Link,
    Listing,
    Marks,
    NewLine,
    Paragraph,
    Quote,
    StepText,
    Text,
    Verbatim,
)
from presscloth.measure import System
from presscloth.printing.in_step import kind_of, parted
from presscloth.printing.keyed import Keys, keyed
from presscloth.printing.look import Look
from presscloth.printing.photographs import for_page, on_paper
from presscloth.printing.svg import scale_of, svg
from presscloth.tongue import say, say_as, unbroken

FRACTION = re.compile(r"\b\d+/\d+\b")
SAFE_LINK = re.compile(r"(?:https?://|mailto:)", re.IGNORECASE)
WITHIN_SITE = re.compile(r"[A-Za-z0-9_.#-][^:]*")
PICTURE_SIZES = "(max-width: 42rem) 94vw, 38rem"  # how wide a picture stands on a page of the site
LEAST_CAPTION = 40.0  # mm: no caption stands in a column that is narrower
NARROW = 41.0  # mm: four drawings that are no wider stand in a row
NOTHING = Markup("")
PIXELS = 96 / 25.4  # CSS pixels in a millimetre


@dataclass
class Marker:
    """Writes the words of one page; `ids` begins every id, `web` tells a web page from paper."""

    look: Look
    web: bool
    ids: str
    pictures: str = ""
    _drawn: int = field(default=0, init=False)

    def within(self, ids: str) -> Marker:
        """The same for a part of the page with ids of its own."""
        return replace(self, ids=ids)

    # -- words ---------------------------------------------------------------------------------

    def inline(self, words: tuple[Inline, ...]) -> Markup:
        return _joined(self._word(word) for word in words)

    def _word(self, word: Inline) -> Markup:
        match word:
            case Text(text):
                return escape(text)
            case Amount():
                return self.amount(word)
            case Emphasis(of, strong):
                tag = "strong" if strong else "em"
                return Markup("<{0}>{1}</{0}>").format(Markup(tag), self.inline(of))
            case Code(text):
                return Markup("<code>{}</code>").format(text)
            case Link(to, of):
                return self.link(to, self.inline(of))
            case Image():
                return self._image(word)
            case NewLine():
                return Markup("<br>")
            case Foreign(language, of):
                return Markup('<span lang="{}">{}</span>').format(language, self.inline(of))

    def link(self, to: str, words: Markup) -> Markup:
        """A link, or only its words where it would lead nowhere: on paper, within the site."""
        return Markup('<a href="{}">{}</a>').format(to, words) if self._leads(to) else words

    def _leads(self, to: str) -> bool:
        return bool(SAFE_LINK.match(to) or (self.web and WITHIN_SITE.fullmatch(to)))

    def amount(self, amount: Amount) -> Markup:
        """A quantity: the leading system first, the other in brackets; no measure is ever broken."""
        # The space goes with the bracket when the reader drops a system, or a comma would stand off.
        dropped = self.web and all(system is not None for _, system in amount.texts)
        opening = " (" if dropped else "("
        parts = [
            _measure(text, opening if place else "", web=self.web, system=system)
            for place, (text, system) in enumerate(amount.texts)
        ]
        before = Markup("{} ").format(amount.before) if amount.before else Markup("")
        return before + Markup("" if dropped else " ").join(parts)

    def sides(self, sides: tuple[tuple[str, Amount], ...]) -> Markup:
        """The sides of a thing, one line per system: `12 cm × 30 cm`, `4 3/4 in × 12 in`."""
        lines = by_system(sides)
        if lines is None:
            return Markup(" × ").join(self.amount(amount) for _, amount in sides)
        before = next((amount.before for _, amount in sides if amount.before), "")
        about = Markup("{} ").format(before) if before else Markup("")
        alone = self.web and len(sides) == 1  # its line is never broken

        def written(text: str) -> Markup:
            return _built(text) if alone else _measure(text, "", web=self.web)

        return _joined(
            Markup('<span class="line{}">{}</span>').format(
                f" {system.value}" if system is not None and self.web else "",
                about + Markup(" × ").join(map(written, texts)),
            )
            for system, texts in lines
        )

    def sides_in(self, system: System, sides: tuple[tuple[str, Amount], ...], leading: bool) -> Markup:
        """The sides of a thing in one system, for a column of its own.

        What has no text in that system (a number of pieces, a measure asked for in the other one)
        stands as a whole in the leading system's column.
        """
        for held, texts in by_system(sides) or ():
            if held is system:
                about = Markup("{} ").format(sides[0][1].before) if sides[0][1].before else Markup("")
                # a cell of a page is never broken, so its measures need not say so
                measures = (_built(text) if self.web else _measure(text, "", web=False) for text in texts)
                return about + Markup(" × ").join(measures)
        whole = Markup(" × ").join(self.amount(amount) for _, amount in sides)
        return whole if leading else Markup("")

    # -- blocks --------------------------------------------------------------------------------

    def step(self, step: StepText, level: int) -> WrittenStep:
        """The words and the drawings of a step, and on paper how these stand to each other.

        On paper its time in the video ends its first paragraph, where it costs no line of its own; on
        the web it is a line that a thumb meets.
        """
        if self.web:
            return WrittenStep(self.marks(step.marks), self.blocks(step.content, level), NOTHING, "")
        words, drawings = parted(step.content)
        at = self._time(step.marks)
        match words:
            case (Paragraph(of, marks), *others) if at:
                before = self.marks(replace(step.marks, at=""))
                ending = Markup("<p>{} {}</p>\n").format(self.inline(of), at)
                said = self._marked(marks) + ending + self.blocks(tuple(others), level)
            case _:
                before, said = self.marks(step.marks), self.blocks(words, level)
        kind = kind_of(words, drawings, self.look, len(said.striptags()))
        shown = _joined(self.figure(each, self.look.drawings.in_text) for each in drawings)
        return WrittenStep(before, said, shown, kind)

    def blocks(self, blocks: tuple[Block, ...], level: int) -> Markup:
        """Blocks in order; `level` is the rank of a first heading among them."""
        return _joined(self._block(block, level) for block in blocks)

    def _block(self, block: Block, level: int) -> Markup:
        match block:
            case Paragraph(of, marks):
                return self._marked(marks) + Markup("<p>{}</p>\n").format(self.inline(of))
            case Heading(below, of):
                rank = min(level + below - 1, 6)
                return Markup("<h{0}>{1}</h{0}>\n").format(rank, self.inline(of))
            case Listing(items, start):
                return self._listing(items, start, level)
            case Quote(of):
                return Markup("<blockquote>{}</blockquote>\n").format(self.blocks(of, level))
            case Verbatim(text):
                return Markup("<pre><code>{}</code></pre>\n").format(text)
            case Grid():
                return self._grid(block)
            case Figure():
                return self.figure(block, self.look.drawings.in_text)
            case Divider():
                return Markup("<hr>\n")

    def _listing(self, items: tuple[tuple[Block, ...], ...], start: int | None, level: int) -> Markup:
        inner = _joined(Markup("<li>{}</li>\n").format(self._item(item, level)) for item in items)
        if start is None:
            return Markup("<ul>\n{}</ul>\n").format(inner)
        return Markup('<ol start="{}">\n{}</ol>\n').format(start, inner)

    def _item(self, item: tuple[Block, ...], level: int) -> Markup:
        match item:
            case (Paragraph(of, marks),) if marks == Marks():
                return self.inline(of)
        return self.blocks(item, level)

    def _grid(self, grid: Grid) -> Markup:
        head = _joined(Markup('<th scope="col">{}</th>').format(self.inline(cell)) for cell in grid.head)
        rows = _joined(
            Markup("<tr>{}</tr>\n").format(
                _joined(Markup("<td>{}</td>").format(self.inline(cell)) for cell in row)
            )
            for row in grid.rows
        )
        table = Markup("<table>\n<thead><tr>{}</tr></thead>\n<tbody>\n{}</tbody>\n</table>").format(
            head, rows
        )
        return Markup('<div class="table">{}</div>\n').format(table)

    def beside(self, figure: Figure, name: str) -> Markup:
        """A drawing by itself; on the web a file beside the page, which is read when it is looked at."""
        if not self.web or not isinstance(figure.of, Drawing):
            return self.figure(figure, self.look.drawings.alone)
        drawing = figure.of
        pixels = PIXELS * scale_of(drawing, self.look, self.look.drawings.alone)
        picture = Markup('<img src="{}" width="{}" height="{}" alt="{}" loading="lazy">').format(
            file_beside(self.ids, name),
            round(drawing.width * pixels),
            round(drawing.height * pixels),
            drawing.alt or drawing.caption,
        )
        return self._with_caption(picture, self.inline(figure.caption) or escape(unbroken(drawing.caption)))

    def narrow(self, row: LayoutRow) -> bool:
        """Whether the layouts of a material leave room for those of another beside them on paper."""
        scales = ((each.of, self.look) for _, each in row if isinstance(each.of, Drawing))
        return all(
            drawing.width * scale_of(drawing, look, look.drawings.alone) <= NARROW for drawing, look in scales
        )

    def figure(self, figure: Figure, widest: float) -> Markup:
        match figure.of:
            case Drawing() as drawing:
                self._drawn += 1
                words = escape(unbroken(caption_below(drawing)))
                drawing, keys = (drawing, ()) if self.web else keyed(drawing, self.look, widest)
                ident = f"{self.ids}drawing-{self._drawn}"
                picture = Markup(svg(drawing, self.look, ident, widest, self.web)) + _keys(keys)
            case Image() as image:
                picture, words = self._image(image), Markup("")
        return self._with_caption(picture, self.inline(figure.caption) or words, self._room(figure, widest))

    def _room(self, figure: Figure, widest: float) -> Markup:
        """How wide a drawing and its caption are on paper, where drawings may stand in a row."""
        if self.web or not self.look.drawings.beside or not isinstance(figure.of, Drawing):
            return Markup("")
        wide = max(figure.of.width * scale_of(figure.of, self.look, widest), LEAST_CAPTION)
        return Markup(' style="width: {:.1f}mm"').format(wide)

    def _with_caption(self, picture: Markup, caption: Markup, room: Markup = NOTHING) -> Markup:
        below = Markup("<figcaption>{}</figcaption>").format(caption) if caption else Markup("")
        return Markup("<figure{}>{}{}</figure>\n").format(room, picture, below)

    def _image(self, image: Image) -> Markup:
        """A picture: on paper at its printed size, on the web with one for screens of finer pixels."""
        if not self.web:
            wide, high = on_paper(image, self.look.drawings.in_text)
            style = f"width: {wide:.2f}mm; height: {high:.2f}mm"
            return Markup('<img src="{}{}" style="{}" alt="{}">').format(
                self.pictures, image.name, style, image.alt
            )
        plain, *finer = for_page(image)
        more = ", ".join(f"{quote(each.name)} {each.width}w" for each in (plain, *finer))
        return Markup('<img src="{}"{} width="{}" height="{}" alt="{}" loading="lazy">').format(
            quote(plain.name),
            Markup(' srcset="{}" sizes="{}"').format(more, PICTURE_SIZES) if finer else "",
            plain.width,
            plain.height,
            image.alt,
        )

    def _marked(self, marks: Marks) -> Markup:
        shown = self.marks(marks)
        return Markup('<p class="marks">{}</p>\n').format(shown) if shown else Markup("")

    def marks(self, marks: Marks) -> Markup:
        """What stands before a step, each as a label of its own."""
        labels = [
            Markup('<span class="mark {}">{}</span>').format(kind, words)
            for holds, kind, words in (
                (marks.alternative, "or", say_as("mark", "Or")),
                (marks.optional, "optional", say("Optional")),
                (marks.care, "care", say("Take care")),
            )
            if holds
        ]
        return Markup(" ").join([*labels, at] if (at := self._time(marks)) else labels)

    def _time(self, marks: Marks) -> Markup:
        """Where a step is in the video; empty where it is not."""
        if not marks.at:
            return NOTHING
        words = escape(say("In the video at {time}", time=marks.at))
        if not self._leads(marks.at_link):
            return Markup('<span class="at">{}</span>').format(words)
        return Markup('<a class="at" href="{}">{}</a>').format(marks.at_link, words)


@dataclass(frozen=True, slots=True)
class WrittenStep:
    """A step: what stands before it, its words, with the drawings in them on the web; on paper the
    drawings by themselves. `kind` is how they stand (`kind_of`).
    """

    labels: Markup
    words: Markup
    shown: Markup
    kind: str


def caption_below(drawing: Drawing) -> str:
    """A drawing's caption, empty where it stands in the drawing already as the name of what is shown."""
    named = any(isinstance(shape, Lettering) and shape.text == drawing.caption for shape in drawing.shapes)
    return "" if named else drawing.caption


def file_beside(ids: str, name: str) -> str:
    """The file of a drawing beside its page; `ids` begins the ids of its size: `small-pieces-1.svg`."""
    return f"{ids}{name}.svg"


def names_beside(handout: Handout) -> Iterator[tuple[str, Figure]]:
    """The drawings that a page has beside it, each with its name: of the pieces, and of their layouts."""
    for number, figure in enumerate(handout.pieces, start=1):
        yield f"pieces-{number}", figure
    for number, row in enumerate(handout.layouts, start=1):
        for system, figure in row:
            yield f"layout-{number}-{system.value}", figure


def by_system(
    sides: tuple[tuple[str, Amount], ...],
) -> tuple[tuple[System | None, tuple[str, ...]], ...] | None:
    """The texts of all sides, system by system; None where the sides do not have the same systems."""
    systems = {tuple(system for _, system in amount.texts) for _, amount in sides}
    befores = {amount.before for _, amount in sides}
    if len(systems) != 1 or len(befores) != 1:
        return None
    return tuple(
        (system, tuple(amount.texts[place][0] for _, amount in sides))
        for place, system in enumerate(next(iter(systems)))
    )


def _keys(keys: Keys) -> Markup:
    """What the letters in a drawing stand for."""
    items = _joined(
        Markup("<li><strong>{}</strong> {}</li>\n").format(letter, words) for letter, words in keys
    )
    return Markup('<ul class="keys">\n{}</ul>').format(items) if keys else Markup("")


def _measure(text: str, opening: str, web: bool, system: System | None = None) -> Markup:
    """One measure, unbreakable, its fraction built; `opening` is a bracket before it, or nothing.

    On the web a measure of one system is marked, so that a reader who chose the other does not see it,
    and brackets go when the reader drops a system.
    """
    built = _built(text)
    if opening:
        bracket = Markup('<span class="both">{}</span>') if web else Markup("{}")
        built = bracket.format(opening) + built + bracket.format(")")
    kind = system.value if web and system is not None else "measure"
    return Markup('<span class="{}">{}</span>').format(kind, built)


def _built(text: str) -> Markup:
    """A text with its fractions built."""
    built = Markup("")
    place = 0
    for found in FRACTION.finditer(text):
        built += escape(text[place : found.start()])
        built += Markup('<span class="fraction">{}</span>').format(found.group())
        place = found.end()
    return built + escape(text[place:])


def _joined(parts: Iterable[Markup]) -> Markup:
    return Markup("").join(parts)
