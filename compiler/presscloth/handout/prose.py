"""Transform a recipe's prose into a handout's: every pair of braces is worded."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import field
from pathlib import Path
from typing import assert_never

from presscloth.frozen import dataclass
from presscloth.handout import tree
from presscloth.handout.wording import amount
from presscloth.measure import System
from presscloth.proof.prose import Named, Settled
from presscloth.recipe import prose
from presscloth.recipe.expression import Bought
from presscloth.tongue import named
from presscloth.translation.tree import Translation, place_of
from presscloth.translation.wanted import has_words


@dataclass(frozen=True, slots=True)
class Teller:
    """Words the prose of one size: what its braces hold, in which systems, with pictures from where.

    `quantities` are what to buy, by key, as the list of materials words them. `translation` has the
    words of another language; what it lacks stays in `original`, the language of the recipe.
    """

    settled: Settled
    systems: Sequence[System]
    folder: Path | None
    quantities: Mapping[str, tree.Amount] = field(default_factory=dict)
    translation: Translation | None = None
    original: str = ""

    def inlines(self, of: Sequence[prose.Inline]) -> tuple[tree.Inline, ...]:
        """A run of prose: a paragraph, a cell, a heading."""
        own = self._translated(tuple(of))
        words = self._words(of if own is None else own)
        if own is None and self.translation is not None and has_words(tuple(of)):
            return (tree.Foreign(self.original, words),)
        return words

    def _translated(self, of: tuple[prose.Inline, ...]) -> tuple[prose.Inline, ...] | None:
        if self.translation is None or not of:
            return None
        return self.translation.runs.get(place_of(of))

    def _words(self, of: Sequence[prose.Inline]) -> tuple[tree.Inline, ...]:
        return tuple(inline for each in of for inline in self._inline(each))

    def _inline(self, inline: prose.Inline) -> Iterator[tree.Inline]:
        match inline:
            case prose.Words(text=text):
                yield tree.Text(text)
            case prose.Measure():
                yield self._measure(inline)
            case prose.Emphasis(of=of, strong=strong):
                yield tree.Emphasis(self._words(of), strong)
            case prose.Code(text=text):
                yield tree.Code(text)
            case prose.Link(to=to, of=of):
                yield tree.Link(to, self._words(of))
            case prose.Picture():
                yield self._image(inline)
            case prose.LineBreak(hard=hard):
                yield tree.NewLine() if hard else tree.Text(" ")
            case _:
                assert_never(inline)

    def _measure(self, measure: prose.Measure) -> tree.Inline:
        value = self.settled[measure.span]
        if isinstance(value, Named):
            return tree.Text(named(value.piece.name))
        match measure.expression:
            case Bought(key=key) if key.text in self.quantities and not measure.how:
                return self.quantities[key.text]
            case expression:
                bought = isinstance(expression, Bought)
                return amount(value, self.systems, measure.how, bought=bought)

    def _image(self, picture: prose.Picture) -> tree.Image:
        folder = self.folder or Path()
        return tree.Image(folder / picture.file, picture.file, said(self._words(picture.alt)))

    def blocks(self, of: Sequence[prose.Block]) -> tuple[tree.Block, ...]:
        return tuple(self.block(each) for each in of)

    def block(self, block: prose.Block) -> tree.Block:
        match block:
            case prose.Paragraph(of=of):
                return self.paragraph(of, tree.Marks())
            case prose.Heading(level=level, of=of):
                return tree.Heading(max(1, level - 2), self.inlines(of))
            case prose.Listing(items=items, start=start):
                return tree.Listing(tuple(self.blocks(item) for item in items), start)
            case prose.Quote(of=inner):
                return tree.Quote(self.blocks(inner))
            case prose.Verbatim(text=text):
                return tree.Verbatim(text)
            case prose.Grid(head=head, rows=rows):
                cells = tuple(tuple(self.inlines(cell) for cell in row) for row in rows)
                return tree.Grid(tuple(self.inlines(cell) for cell in head), cells)
            case prose.Rule():
                return tree.Divider()
            case _:
                assert_never(block)

    def paragraph(self, of: Sequence[prose.Inline], marks: tree.Marks) -> tree.Block:
        """A paragraph; a picture on a line of its own is a figure, and what follows below it its caption."""
        own = self._translated(tuple(of))
        match tuple(of) if own is None else own:
            case (prose.Picture() as picture,) if marks == tree.Marks():
                return tree.Figure(self._image(picture))
            case (prose.Picture() as picture, prose.LineBreak(), *caption) if marks == tree.Marks():
                words = self._words(caption)
                if own is None and self.translation is not None:
                    words = (tree.Foreign(self.original, words),)
                return tree.Figure(self._image(picture), words)
            case _:
                return tree.Paragraph(self.inlines(of), marks)


def said(of: Sequence[tree.Inline]) -> str:
    """The words alone, as one would say them."""
    return "".join(_said(inline) for inline in of)


def _said(inline: tree.Inline) -> str:
    match inline:
        case tree.Text(text=text) | tree.Code(text=text):
            return text
        case tree.Amount():
            return inline.text
        case tree.Emphasis(of=of) | tree.Link(of=of) | tree.Foreign(of=of):
            return said(of)
        case tree.Image(alt=alt):
            return alt
        case tree.NewLine():
            return " "
        case _:
            assert_never(inline)
