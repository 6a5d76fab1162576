"""Transform a handout into the presenter's cue sheet: steps with their times, measures as they are spoken."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import assert_never

from presscloth.drawing.tree import Drawing
from presscloth.frozen import dataclass
from presscloth.handout import tree
from presscloth.handout.spoken import spoken_amount, spoken_measures
from presscloth.tongue import say, say_as, speaking, tongue_of


@dataclass(frozen=True, slots=True)
class Cue:
    """A step: its number, its time in the video or nothing, and what is said, by paragraphs."""

    number: int
    at: str
    marks: tuple[str, ...]
    said: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CueStage:
    """A stage of the work; the first may have no title."""

    title: str
    cues: tuple[Cue, ...]


@dataclass(frozen=True, slots=True)
class CueSheet:
    """What a presenter has before them for one size. `size` is empty where there is only one.

    `finished` says the finished size.
    """

    slug: str
    title: str
    size: str
    version: str
    language: str
    finished: tuple[str, ...]
    stages: tuple[CueStage, ...]


def cue_sheet(handout: tree.Handout) -> CueSheet:
    """Word a handout for speaking, in its language. What another size does in between is left out."""
    with speaking(tongue_of(handout.language)):
        return _Speaker(handout.language).sheet(handout)


@dataclass(frozen=True, slots=True)
class _Speaker:
    """Says what a handout prints, in one language."""

    language: str

    def sheet(self, handout: tree.Handout) -> CueSheet:
        return CueSheet(
            slug=handout.slug,
            title=handout.title,
            size="" if handout.only_size else handout.size,
            version=handout.version,
            language=handout.language,
            finished=tuple(self._finished(article) for article in handout.finished),
            stages=tuple(
                CueStage(self.words(stage.title), tuple(self._cue(s) for s in stage.steps if not s.elsewhere))
                for stage in handout.stages
            ),
        )

    def _finished(self, article: tree.Finished) -> str:
        sides = ", ".join(f"{word} {spoken_amount(side, self.language)}" for word, side in article.sides)
        return f"{article.name}: {sides}" if article.name else sides

    def _cue(self, step: tree.StepText) -> Cue:
        return Cue(
            step.number, step.marks.at, tuple(_labels(step.marks)), tuple(self._paragraphs(step.content))
        )

    def _paragraphs(self, blocks: Sequence[tree.Block]) -> Iterator[str]:
        for block in blocks:
            match block:
                case tree.Paragraph(of=of, marks=marks):
                    at = (say("In the video at {time}", time=marks.at),) if marks.at else ()
                    before = "".join(f"{label}. " for label in (*_labels(marks), *at))
                    yield f"{before}{self._begun(of)}"
                case tree.Heading(of=of):
                    yield self.words(of)
                case tree.Listing(items=items):
                    for item in items:
                        yield from self._paragraphs(item)
                case tree.Quote(of=inside):
                    yield from self._paragraphs(inside)
                case tree.Verbatim(text=text):
                    yield text
                case tree.Grid(head=head, rows=rows):
                    for row in (head, *rows):
                        yield ", ".join(self.words(cell) for cell in row)
                case tree.Figure(of=shown, caption=caption):
                    if not isinstance(shown, Drawing):
                        yield say("Show: {words}", words=self.words(caption) or shown.alt)
                case tree.Divider():
                    pass
                case _:
                    assert_never(block)

    def _begun(self, of: Sequence[tree.Inline]) -> str:
        """A run of words, its first letter large where it begins with a measure, as figures have none."""
        words = self.words(of)
        return words[:1].upper() + words[1:] if of and isinstance(of[0], tree.Amount) else words

    def words(self, of: Sequence[tree.Inline]) -> str:
        """A run of words, its measures spoken."""
        return "".join(self._word(word) for word in of)

    def _word(self, word: tree.Inline) -> str:
        match word:
            case tree.Text(text=text):
                return spoken_measures(text, self.language)
            case tree.Code(text=text):
                return text
            case tree.Amount():
                return spoken_amount(word, self.language)
            case tree.Emphasis(of=of) | tree.Link(of=of):
                return self.words(of)
            case tree.Foreign(language=language, of=of):
                return _Speaker(language).words(of)
            case tree.Image(alt=alt):
                return alt
            case tree.NewLine():
                return " "
            case _:
                assert_never(word)


def _labels(marks: tree.Marks) -> Iterator[str]:
    if marks.alternative:
        yield say_as("mark", "Or")
    if marks.optional:
        yield say("Optional")
    if marks.care:
        yield say("Take care")
