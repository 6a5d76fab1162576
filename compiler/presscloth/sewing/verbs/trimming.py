"""Stitching out, trimming to a size, and cutting what is sewn into segments."""

from __future__ import annotations

from dataclasses import replace
from math import floor

from presscloth.measure import Quantity, System, compare
from presscloth.recipe.patterns import ResultRule
from presscloth.sewing.cut_things import in_mm
from presscloth.sewing.placing import Arranged, Box, seen_in
from presscloth.sewing.things import Flat, Odd, Rim, State, rectangle, together
from presscloth.sewing.verbs.laying import lay, sewn_from
from presscloth.sewing.verbs.trimming_problems import (
    ClothSmallerThanField,
    FewerWouldDo,
    FieldUnusual,
    StitchingOutsideField,
    TooFewSegments,
    TrimmedLarger,
)
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.work import Made, Used, Work

STITCHED_OUT = "stitched out"

WHOLE_CENTIMETRE = 10
"""In mm: the fields of machines come in whole centimetres (common practice, no source)."""


def stitch_out(work: Work) -> Made:
    """Stitch a design of W by H onto a thing in a field of FW by FH.

    The stitching lies inside the field, in millimetres, either way round; the thing is not smaller than
    the field, which comes in whole centimetres (common practice).
    """
    used = work.one("thing")
    flat = work.flat(used)
    design = work.amount("width"), work.amount("height")
    field = work.amount("field_width"), work.amount("field_height")
    outside = _systems_where(work, design, field)
    if outside:
        work.report(
            StitchingOutsideField(
                span=work.span,
                size=_size(work, design),
                field=_size(work, field),
                systems=() if len(outside) == len(work.systems) else tuple(s.value for s in outside),
            )
        )
    if System.METRIC in work.systems and any(side.metric % WHOLE_CENTIMETRE for side in field):
        work.report(FieldUnusual(span=work.place("field_width"), field=_size(work, field)))
    small = _systems_where(work, field, (flat.width, flat.height))
    if small:
        size = _size(work, (flat.width, flat.height))
        labels = work.rows_of(used)
        work.report(
            ClothSmallerThanField(
                span=used.span, name=used.name, size=size, field=_size(work, field), labels=labels
            )
        )

    def arrange() -> Arranged:
        parts = tuple(replace(part, way=STITCHED_OUT) for part in used.thing.parts)
        return Arranged((lay(used),), parts=parts)

    return Made(flat, arrange, directed=True)


def _systems_where(
    work: Work, inner: tuple[Quantity, Quantity], outer: tuple[Quantity, Quantity]
) -> tuple[System, ...]:
    """The systems in which one size does not lie inside another, either way round."""

    def lies(system: System, size: tuple[Quantity, Quantity]) -> bool:
        return all(compare(i[system], o[system], system) <= 0 for i, o in zip(inner, size, strict=True))

    return tuple(s for s in work.systems if not lies(s, outer) and not lies(s, (outer[1], outer[0])))


def _size(work: Work, size: tuple[Quantity, Quantity]) -> str:
    return f"{work.said(size[0])} × {work.said(size[1])}"


def trim(work: Work) -> Made:
    """Trim to a size, from all sides alike: raw all round, smaller or equal.

    Never larger than the smallest layer of a sandwich. Its edges have the allowance that they had, or
    `seam` where they had several (common practice).
    """
    used = work.one("thing")
    width, height = work.amount("width"), work.amount("height")
    shape = used.shape
    if isinstance(shape, Odd):
        return Made(rectangle(width, height, _raw(work, shape.rim)), lambda: Arranged(parts=used.thing.parts))
    flat = work.flat(used)
    least = flat.least or (flat.width, flat.height)
    for word, has, wants in (("wide", least[0], width), ("high", least[1], height)):
        if work.short_in(has, wants):
            work.report(
                TrimmedLarger(
                    span=work.span,
                    name=used.name,
                    side=word,
                    has=work.said(has),
                    wants=work.said(wants),
                    labels=work.rows_of(used),
                )
            )
            break
    rims = tuple(rim for rim in (e.rim for e in (flat.left, flat.right, flat.top, flat.bottom)) if rim)
    made = rectangle(width.computed(), height.computed(), _raw(work, together(rims) if rims else None))

    def arrange() -> Arranged:
        wide, high = in_mm(width), in_mm(height)
        window = Box((in_mm(flat.width) - wide) / 2, (in_mm(flat.height) - high) / 2, wide, high)
        return Arranged((lay(used),), parts=seen_in(used.thing.parts, window))

    return Made(made, arrange)


def _raw(work: Work, rim: Rim | None) -> Rim:
    """A raw rim with the allowance that there was, else the usual one."""
    if rim is not None and rim.raw and rim.allowance is not None:
        return rim
    return Rim(State.RAW, work.usual_seam())


def cut_wide(work: Work) -> Made:
    """Cut segments of a width from what is sewn; the numbers are for all of them together.

    Each gives as many whole segments as its width holds, in both systems; offcuts are waste. All of
    the things named are used up (common practice).
    """
    used = work.one("from")
    flat = work.flat(used)
    width = work.amount("width")
    hold_segments(work, used, flat.width, width)
    rim = _raw(work, flat.left.rim)
    side = flat.left.finished(flat.left.length, rim)
    segment = Flat(side, side, flat.top.long(width.computed()), flat.bottom.long(width.computed()))
    return Made(segment, sewn_from(used))


def cut_high(work: Work) -> Made:
    """Cut segments of a height, as above."""
    used = work.one("from")
    flat = work.flat(used)
    height = work.amount("height")
    hold_segments(work, used, flat.height, height)
    rim = _raw(work, flat.top.rim)
    end = flat.top.finished(flat.top.length, rim)
    segment = Flat(flat.left.long(height.computed()), flat.right.long(height.computed()), end, end)
    return Made(segment, sewn_from(used))


def hold_segments(work: Work, used: Used, across: Quantity, one: Quantity) -> None:
    """Hold that a length of all the things gives the segments wanted, and that fewer would not."""
    each = min(holds(across, one, system) for system in work.systems)
    if each * used.count < work.times:
        work.report(
            TooFewSegments(
                span=work.span,
                wanted=work.times,
                name=used.name,
                each=each,
                given=used.count,
                labels=work.rows_of(used),
            )
        )
        return
    enough = -(-work.times // each)
    if enough < used.count:
        work.report(
            FewerWouldDo(span=used.span, wanted=work.times, name=used.name, given=used.count, enough=enough)
        )


def holds(across: Quantity, one: Quantity, system: System) -> int:
    """How many whole segments a length holds; what is within 1/1000 mm of a whole one is one."""
    if one[system] <= 0:
        return 0
    many = floor(across[system] / one[system])
    missing = (many + 1) * one[system]
    return many + 1 if compare(missing, across[system], system) <= 0 else many


STITCH_OUT = Verb(
    "stitch out",
    {
        "stitch out {thing:thing}, {width:measure} by {height:measure},"
        " in {field_width:measure} by {field_height:measure}": stitch_out
    },
)
TRIM = Verb(
    "trim",
    {"trim {thing:thing} to {width:measure} by {height:measure}": trim},
    ResultRule.CHANGES_FIRST,
    changes="thing",
)
CUT = Verb(
    "cut",
    {
        "cut {width:measure} wide from {from:thing}": cut_wide,
        "cut {height:measure} high from {from:thing}": cut_high,
    },
    in_all=True,
)
