"""Handouts written by hand, as the handout room would make them: the Tidewrack sewing room's."""

from __future__ import annotations

from dataclasses import replace

from printing.making import cut, layout_drawing, pair, para, piece_drawing, plain, step, wide_high, words

from presscloth.handout.tree import (
    Amount,
    Booklet,
    Caution,
    CutLine,
    Emphasis,
    Figure,
    Finished,
    Grid,
    Handout,
    Link,
    Listing,
    Marks,
    MaterialLine,
    Publisher,
    Quote,
    SectionText,
    StageText,
    StepText,
)
from presscloth.measure import System

BOTH = (System.METRIC, System.IMPERIAL)

PUBLISHER = Publisher(
    name="Tidewrack sewing room",
    address="https://tidewrack.example",
    papers=("A4", "Letter"),
    systems=(),
    theme="plain-seam",
    about="We sew on Thursdays, above the lifeboat shed.",
)


INTRO = (
    para(
        "Every volunteer at the Tidewrack sewing room gets one of these for scissors, thread and "
        "sandwiches. Choose the size by the stitch field of your machine; the ",
        Link("https://tidewrack.example/stitch-fields", words("list of fields")),
        " on our wall helps.",
    ),
    para(
        "All seam allowances are ",
        pair("1 cm", "3/8 in"),
        " and are ",
        Emphasis(words("included"), strong=True),
        " in the cut sizes.",
    ),
)

CAUTIONS = (
    Caution("Rotary cutter", "Cut away from yourself, and close the blade each time you put it down."),
    Caution("Iron", "Press synthetics under a cloth, and keep the flex where nobody walks."),
)

MATERIALS = (
    MaterialLine(
        "A",
        "Linen, oat",
        "fabric",
        pair("140 cm", "55 in"),
        pair("40 cm", "1/2 yd"),
        pair("10 cm", "1/8 yd"),
        (),
    ),
    MaterialLine(
        "B",
        "Canvas, slate",
        "fabric",
        pair("145 cm", "57 in"),
        pair("80 cm", "7/8 yd"),
        pair("10 cm", "1/8 yd"),
        (words("one way"),),
    ),
    MaterialLine(
        "C",
        "Lining cotton, striped",
        "fabric",
        pair("110 cm", "43 in"),
        pair("90 cm", "1 yd"),
        pair("10 cm", "1/8 yd"),
        (words("shrinks 3 %"), words("wash before cutting")),
    ),
    MaterialLine(
        "D",
        "Cut-away stabiliser",
        "stabiliser",
        pair("50 cm", "20 in"),
        pair("1 m", "1 yd"),
        pair("1 m", "1 yd"),
        (),
    ),
    MaterialLine(
        "E", "Cotton cord, 4 mm", "tape", None, pair("20 cm", "1/4 yd"), pair("10 cm", "1/8 yd"), ()
    ),
    MaterialLine(
        "F",
        "Button, 30 mm",
        "notion",
        None,
        plain("1"),
        None,
        (words("a toggle does as well"),),
        optional=True,
    ),
)

TOOLS = (
    words("sewing machine"),
    words("embroidery unit with a hoop"),
    words("rotary cutter and mat"),
    words("iron"),
    words("knitting needle, for the corners"),
)


def cutting(front: Amount, height: Amount, badge: Amount) -> tuple[CutLine, ...]:
    return (
        cut("ground", "A", "linen", 1, *wide_high(pair("15 cm", "5 7/8 in"), pair("15 cm", "5 7/8 in"))),
        cut("side strip", "A", "linen", 2, *wide_high(pair("7 cm", "2 3/4 in"), badge)),
        cut("head strip", "B", "canvas", 1, *wide_high(front, pair("7 cm", "2 3/4 in"))),
        cut("foot strip", "B", "canvas", 1, *wide_high(front, pair("12 cm", "4 3/4 in"))),
        cut("back", "B", "canvas", 1, *wide_high(front, height), notes=("on the fold",)),
        cut("base", "B", "canvas", 1, ("diameter", pair("18.5 cm", "7 1/4 in")), shape="circle"),
        cut("lining", "C", "lining", 1, *wide_high(front, height), measure_first=True),
        cut(
            "pocket",
            "C",
            "lining",
            1,
            *wide_high(pair("14 cm", "5 1/2 in"), pair("14 cm", "5 1/2 in")),
            belongs="Optional",
        ),
        cut("loop", "E", "cord", 1, ("length", pair("12.5 cm", "5 in"))),
        cut(
            "stabiliser patch",
            "D",
            "stabiliser",
            1,
            *wide_high(pair("15 cm", "5 7/8 in", "about"), pair("15 cm", "5 7/8 in", "about")),
            notes=("any grain",),
        ),
    )


def stages(front: Amount, height: Amount, tall: bool) -> tuple[StageText, ...]:
    badge = StageText(
        words("The badge"),
        (
            step(1, "Hoop the stabiliser patch with the ground on top and stitch out the badge."),
            step(2, "Centre the badge and trim it to ", front, " by ", height, "."),
        ),
    )
    outer = StageText(
        words("The outer bag"),
        (
            step(
                3,
                "Sew a side strip to each side of the badge with ",
                pair("1 cm", "3/8 in"),
                " seams, then the head strip above and the foot strip below. The front measures ",
                front,
                " by ",
                height,
                ".",
                marks=Marks(at="4:15", at_link="https://tidewrack.example/video#t=255"),
            ),
            StepText(
                4,
                Marks(),
                (
                    para("Sew front and back together along their lower edges. Press the seam to one side."),
                    Figure(
                        layout_drawing().of,
                        words("Right sides together, ", Emphasis(words("before"), False), " pressing"),
                    ),
                    para("Turn the work and check the seam from the right side.", marks=Marks(care=True)),
                ),
            ),
            step(
                5,
                "Box both corners to ",
                pair("7.5 cm", "3 in"),
                ", measuring twice before you cut.",
                marks=Marks(care=True, at="9:02"),
            ),
            *([step(6, "Fold each side tab in half and tack it to a side seam.")] if tall else []),
        ),
    )
    lining = StageText(
        words("The lining"),
        (
            StepText(
                7,
                Marks(optional=True),
                (
                    para("Turn under ", pair("1 cm", "3/8 in"), " twice along the top of the pocket. Then:"),
                    Listing(
                        (
                            (para("stitch close to the fold;"),),
                            (para("centre the pocket on the lining;"),),
                            (
                                para("sew it on, leaving the top open."),
                                Quote((para("Round the corners a little."),)),
                            ),
                        ),
                        None,
                    ),
                ),
            ),
            step(
                8,
                "Fold the lining in half and sew the sides, leaving ",
                pair("15 cm", "6 in", "about"),
                " open in one.",
            ),
            step(
                8,
                "Sew the lining from two halves instead, leaving the gap in its base.",
                marks=Marks(alternative=True),
            ),
            step(9, "Sew the lining in, turn the bag through the gap, close the gap, and sew on the button."),
        ),
    )
    return (badge, outer, lining)


NOTES = (
    SectionText(
        words("When you sell what you sew"),
        (
            para("You may sell bags sewn from this handout, up to ", plain("50"), " a year."),
            Grid(
                (words("Stitch field"), words("Thread")),
                (
                    (words(pair("100 mm", "3 15/16 in")), words("40 m")),
                    (words(pair("180 mm", "7 1/16 in")), words("65 m")),
                ),
            ),
        ),
    ),
)

SMALL = Handout(
    slug="harbour-kit-bag",
    title="Harbour Kit Bag",
    size="Small",
    only_size=False,
    version="2",
    release="2027-05",
    language="en",
    summary="A lined bag with a boxed base and a stitched-out badge in its front.",
    craft="bags",
    skills=("machine embroidery", "patchwork", "boxed corners"),
    time="5 hours",
    audience="adults",
    credits="Drafted and sewn at Tidewrack",
    video="https://tidewrack.example/video",
    draft=False,
    sewn=False,
    proved=True,
    systems=BOTH,
    finished=(
        Finished(
            1,
            "",
            (
                ("width", pair("19 cm", "7 1/2 in")),
                ("height", pair("20.5 cm", "8 in")),
                ("depth", pair("7.5 cm", "3 in")),
            ),
        ),
    ),
    cautions=CAUTIONS,
    intro=INTRO,
    materials=MATERIALS,
    tools=TOOLS,
    cutting=cutting(pair("21 cm", "8 1/4 in"), pair("26 cm", "10 1/4 in"), pair("11 cm", "4 1/4 in")),
    pieces=(
        piece_drawing("back", 54, 66, "21 cm (8 1/4 in)", "26 cm (10 1/4 in)"),
        piece_drawing("foot strip", 54, 34, "21 cm (8 1/4 in)", "12 cm (4 3/4 in)"),
        piece_drawing("pocket", 40, 40, "14 cm (5 1/2 in)", "14 cm (5 1/2 in)"),
        layout_drawing(),
    ),
    stages=stages(pair("19 cm", "7 1/2 in"), pair("24 cm", "9 1/2 in"), tall=False),
    notes=NOTES,
)

TALL = replace(
    SMALL,
    size="Tall",
    sewn=True,
    finished=(
        Finished(
            1,
            "",
            (
                ("width", pair("22 cm", "8 3/4 in")),
                ("height", pair("27.5 cm", "10 3/4 in")),
                ("depth", pair("7.5 cm", "3 in")),
            ),
        ),
    ),
    cutting=cutting(pair("24 cm", "9 1/2 in"), pair("33 cm", "13 in"), pair("18 cm", "7 in")),
    stages=stages(pair("22 cm", "8 3/4 in"), pair("31 cm", "12 1/4 in"), tall=True),
)

LARGE = replace(
    SMALL,
    size="Large",
    finished=(
        Finished(1, "", (("width", pair("28 cm", "11 in")), ("height", pair("29.5 cm", "11 1/2 in")))),
    ),
    cutting=cutting(pair("30 cm", "11 3/4 in"), pair("35 cm", "13 3/4 in"), pair("20 cm", "7 3/4 in")),
    stages=stages(pair("28 cm", "11 in"), pair("33 cm", "13 in"), tall=True),
)

BAG = Booklet((SMALL, TALL, LARGE))

MUG_MAT = Handout(
    slug="mug-mat",
    title="Mug Mat",
    size="One size",
    only_size=True,
    version="1",
    release="2027-04",
    language="en",
    summary="A quilted mat from leftovers, done in an evening.",
    craft="patchwork",
    skills=(),
    time="",
    audience="",
    credits="",
    video="",
    draft=True,
    sewn=True,
    proved=False,
    systems=(System.METRIC,),
    finished=(
        Finished(
            4,
            "mats",
            (("width", Amount((("12 cm", System.METRIC),))), ("height", Amount((("12 cm", System.METRIC),)))),
        ),
    ),
    cautions=(),
    intro=(),
    materials=(
        MaterialLine("A", "Cotton scraps", "fabric", None, None, None, ()),
        MaterialLine("B", "Wadding", "wadding", None, None, None, ()),
    ),
    tools=(),
    cutting=(
        cut(
            "square",
            "A",
            "cotton scraps",
            8,
            ("width", Amount((("14 cm", System.METRIC),))),
            ("height", Amount((("14 cm", System.METRIC),))),
        ),
    ),
    pieces=(),
    stages=(StageText((), (step(1, "Layer, sew round, turn."), step(2, "Quilt as you please."))),),
    notes=(),
)

MAT = Booklet((MUG_MAT,))
