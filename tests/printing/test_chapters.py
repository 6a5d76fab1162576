"""Chapters of a video: a WebVTT file by W3C's syntax, read by a small reader that is strict."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from printing.making import step, words
from printing.samples import BAG, MUG_MAT

from presscloth.handout.chapters import Chapter, chapters
from presscloth.handout.tree import Booklet, Marks, StageText, StepText
from presscloth.printing.chapters import vtt

# WebVTT (W3C), 4.1: a timestamp has two or more digits of hours, then minutes and seconds below 60 and
# three digits of a second; 4.2.2: an arrow between spaces; 4.1: cue text holds no "-->" and no line end.
TIMING = re.compile(r"(\d{2,}):([0-5]\d):([0-5]\d)\.(\d{3}) --> (\d{2,}):([0-5]\d):([0-5]\d)\.(\d{3})")


def read(file: str) -> list[tuple[float, float, str]]:
    """The cues of a file: from, to, text. Everything that the syntax forbids fails."""
    assert file.startswith("WEBVTT\n\n")
    assert file.endswith("\n") and "\r" not in file and "\0" not in file
    cues = []
    for block in file.removeprefix("WEBVTT\n\n").strip("\n").split("\n\n"):
        name, timing, text = block.split("\n")
        assert "-->" not in name and "-->" not in text
        found = TIMING.fullmatch(timing)
        assert found, timing
        h, m, s, ms, *end = (int(each) for each in found.groups())
        first = h * 3600 + m * 60 + s + ms / 1000
        last = end[0] * 3600 + end[1] * 60 + end[2] + end[3] / 1000
        assert last > first
        assert not re.search(r"<(?!/?[cibuv])|&(?!amp;|lt;|gt;|nbsp;|lrm;|rlm;)", text)
        cues.append((first, last, text.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")))
    assert [cue[0] for cue in cues] == sorted({cue[0] for cue in cues})
    return cues


def timed(number: int, at: str, elsewhere: str = "") -> StepText:
    if elsewhere:
        return StepText(number, Marks(), (), elsewhere=elsewhere)
    return step(number, "Sew.", marks=Marks(at=at))


def booklet(*sizes: tuple[StageText, ...]) -> Booklet:
    return Booklet(
        tuple(
            replace(MUG_MAT, size=name, only_size=len(sizes) == 1, stages=stages, video="https://v.example/x")
            for name, stages in zip(("Small", "Large", "Tall"), sizes, strict=False)
        )
    )


def test_a_chapter_for_each_step_with_a_time():
    stages = (
        StageText(words("The badge"), (timed(1, "0:40"), step(2, "Press."))),
        StageText(words("The bag"), (timed(3, "4:15"), timed(4, "1:02:05"))),
    )
    assert read(vtt(chapters(booklet(stages)))) == [
        (0, 40, "Mug Mat"),
        (40, 255, "The badge, step 1"),
        (255, 3725, "The bag, step 3"),
        (3725, 7325, "The bag, step 4"),
    ]


def test_a_first_step_at_the_beginning_needs_no_chapter_before_it():
    assert chapters(booklet((StageText((), (timed(1, "0:00"),)),))) == (Chapter(0, "step 1"),)


def test_steps_that_some_sizes_lack_say_for_which_they_are():
    small = StageText(words("Neck"), (timed(1, "1:00"), timed(2, "", "Large only"), timed(3, "3:00")))
    large = StageText(words("Neck"), (timed(1, "1:00"), timed(2, "2:00"), timed(3, "3:00")))
    found = chapters(booklet((small,), (large,), (large,)))
    assert [each.name for each in found] == [
        "Mug Mat", "Neck, step 1", "Neck, step 2 (Large and Tall)", "Neck, step 3",
    ]  # fmt: skip


def test_steps_at_one_time_share_a_chapter():
    small = StageText(words("Neck"), (timed(1, "1:00"), timed(2, "", "Large only")))
    large = StageText(words("Neck"), (timed(1, "", "Small only"), timed(2, "1:00")))
    names = [each.name for each in chapters(booklet((small,), (large,)))]
    assert names == ["Mug Mat", "Neck, steps 1 (Small) and 2 (Large)"]


def test_times_out_of_order_are_put_in_order():
    stages = (StageText(words("Neck"), (timed(1, "9:00"), timed(2, "4:00"))),)
    assert [cue[0] for cue in read(vtt(chapters(booklet(stages))))] == [0, 240, 540]


def test_without_a_video_or_without_times_there_are_none():
    stages = (StageText((), (timed(1, "1:00"),)),)
    assert chapters(Booklet((replace(MUG_MAT, stages=stages, video=""),))) == ()
    assert chapters(booklet((StageText((), (step(1, "Sew."),)),))) == ()


@pytest.mark.parametrize("name", ["a --> b", "<b>bold</b> & more", "two\nlines\n\nthree", "‒ 1/2″ –"])
def test_a_name_cannot_break_the_file(name):
    (cue,) = read(vtt([Chapter(0, name)]))
    assert cue[2] == " ".join(name.split())


def test_the_sample():
    cues = read(vtt(chapters(BAG)))
    assert [cue[0] for cue in cues] == [0, 255, 542]
    assert cues[0][2] == "Harbour Kit Bag"


# -- read by a browser -----------------------------------------------------------------------------

# Chromium's own parser of WebVTT is the oracle: what a cue's text is worth is `getCueAsHTML`.
READ_BY_A_BROWSER = """async (file) => {
  document.body.innerHTML = '<video><track kind="chapters"></video>';
  const track = document.querySelector("track");
  const done = new Promise((fine, fault) => { track.onload = fine; track.onerror = () => fault("unread"); });
  track.track.mode = "hidden";
  track.src = `data:text/vtt;charset=utf-8,${encodeURIComponent(file)}`;
  await done;
  const text = (cue) => cue.getCueAsHTML().textContent;
  return [...track.track.cues].map((cue) => [cue.id, cue.startTime, cue.endTime, text(cue)]);
}"""

ODD_NAMES = (
    "Cut --> and sew", "<c.red>red</c>", "R&D &amp; more", "a\n\nb", "NOTE this", "WEBVTT",
    "00:01.000 --> 00:02.000",
    "Säume & Kanten ½", "שלום", "<script>alert(1)</script>", "\u2028 lines \u2029", "1", "tab\there",
)  # fmt: skip


@pytest.mark.browser
def test_a_browser_reads_every_chapter(browser):
    page = browser.new_page()
    page.goto("about:blank")
    odd = tuple(Chapter(start, name) for start, name in enumerate(ODD_NAMES, start=3590))
    for known in (chapters(BAG), odd):
        found = page.evaluate(READ_BY_A_BROWSER, vtt(known))
        ends = [each.start for each in known[1:]]
        assert [cue[0] for cue in found] == [str(number) for number in range(1, len(known) + 1)]
        assert [cue[1] for cue in found] == [each.start for each in known]
        assert [cue[2] for cue in found][:-1] == ends and found[-1][2] > found[-1][1]
        assert [cue[3] for cue in found] == [" ".join(each.name.split()) for each in known]
    page.close()
