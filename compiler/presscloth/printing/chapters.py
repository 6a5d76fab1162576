"""Chapters of a video as a WebVTT file, which players read.

The syntax is W3C's (WebVTT, 4.5 "Chapter cues" and 4.1 "Syntax"): a line `WEBVTT`, then cues in the order of
their beginnings, each with an end after its beginning.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from presscloth.handout.chapters import Chapter

CHAPTERS_FILE = "chapters.vtt"
LAST = 60 * 60
"""Seconds of the last chapter. How long the video is stands nowhere; a player ends the chapter with it."""


def vtt(chapters: Sequence[Chapter]) -> str:
    """Write chapters, which begin one after another, as a WebVTT file."""
    return "WEBVTT\n\n" + "\n".join(_cues(chapters))


def _cues(chapters: Sequence[Chapter]) -> Iterator[str]:
    ends = [*(chapter.start for chapter in chapters[1:]), chapters[-1].start + LAST] if chapters else []
    for number, (chapter, end) in enumerate(zip(chapters, ends, strict=True), start=1):
        yield f"{number}\n{_time(chapter.start)} --> {_time(end)}\n{_text(chapter.name)}\n"


def _time(seconds: int) -> str:
    minutes, second = divmod(seconds, 60)
    hours, minute = divmod(minutes, 60)
    return f"{hours:02}:{minute:02}:{second:02}.000"


def _text(name: str) -> str:
    """A name as cue text: on one line, and nothing in it that could begin a tag, an escape or an arrow."""
    line = " ".join(name.split())
    return line.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
