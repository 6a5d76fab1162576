"""The presenter's cue sheet of one size: large type on paper, or plain text."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import fill

from presscloth.handout.cues import Cue, CueSheet, cue_sheet
from presscloth.handout.tree import Handout, Publisher
from presscloth.printing.pdf import print_page
from presscloth.printing.theme import Theme, environment
from presscloth.tongue import say, speaking, tongue_of

WIDTH = 88
_TIME, _STEP = 8, 4  # characters of the columns before what is said


def cues_pdf(handout: Handout, theme: Theme, publisher: Publisher, on: tuple[str, ...]) -> tuple[bytes, ...]:
    """Write the cue sheet of a size for each paper in `on`, in that order."""
    return print_page(cues_html(cue_sheet(handout), theme, publisher), theme, "cues.css", {}, on)


def cues_html(sheet: CueSheet, theme: Theme, publisher: Publisher) -> str:
    """The page as the PDF writer is given it."""
    with speaking(tongue_of(sheet.language)):
        template = environment(theme).get_template("cues.html")
        return template.render(sheet=sheet, heading=heading(sheet), publisher=publisher)


def cues_text(sheet: CueSheet) -> str:
    """The cue sheet in plain text: a column for times, one for steps, one for what is said."""
    with speaking(tongue_of(sheet.language)):
        return "\n".join(_lines(sheet))


def heading(sheet: CueSheet) -> str:
    """`Slipway Apron, Medium: cue sheet`; said in the language that is spoken."""
    title = f"{sheet.title}, {sheet.size}" if sheet.size else sheet.title
    return say("{title}: cue sheet", title=title)


def _lines(sheet: CueSheet) -> Iterator[str]:
    title = heading(sheet)
    yield from (title, "=" * len(title), "")
    for finished in sheet.finished:
        yield _filled(say("Finished size: {size}", size=finished), "")
    for stage in sheet.stages:
        if stage.title:
            yield from ("", stage.title, "-" * len(stage.title))
        for cue in stage.cues:
            yield ""
            yield from _cue(cue)
    yield ""


def _cue(cue: Cue) -> Iterator[str]:
    first = f"{cue.at:>{_TIME - 2}}  {cue.number:<{_STEP}}"
    labels = "".join(f"{label}. " for label in cue.marks)
    said = cue.said or ("",)
    for place, paragraph in enumerate(said):
        before = first if place == 0 else " " * len(first)
        yield _filled(f"{labels}{paragraph}" if place == 0 else paragraph, before)


def _filled(words: str, before: str) -> str:
    return fill(
        words,
        WIDTH,
        initial_indent=before,
        subsequent_indent=" " * len(before),
        break_long_words=False,
        break_on_hyphens=False,
    )
