"""Patchwork units that are made of triangles, and squares set on point."""

from __future__ import annotations

from fractions import Fraction

from presscloth.measure import Quantity, compare
from presscloth.problems import Problem
from presscloth.sewing.lengths import half, less, shortest, times, times_root_two, total
from presscloth.sewing.things import SIDES, Flat, Rim, State, Triangle, rectangle, same_allowance
from presscloth.sewing.verbs.laying import sewn_from
from presscloth.sewing.verbs.verb import Verb
from presscloth.sewing.wording import listed
from presscloth.sewing.work import Made, Side, Used, Work


class NotSquare(Problem):
    """Squares are wanted, and something that is not square is named.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width        | Height        |
        |-------|------|-----|--------------|---------------|
        | light | A    | 1   | 12 cm (4 3/4 in) | 14 cm (5 1/2 in) |
        | dark  | A    | 1   | 12 cm (4 3/4 in) | 14 cm (5 1/2 in) |

        ## Steps
        1. Pair, join and hem.

           ```sew
           2 unit = pair light with dark into 2
           mat = join 2 unit side by side
           hem all of mat by 1 cm (3/8 in)
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width        | Height       |
        |-------|------|-----|--------------|--------------|
        | light | A    | 1   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) |
        | dark  | A    | 1   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) |

        ## Steps
        1. Pair, join and hem.

           ```sew
           2 unit = pair light with dark into 2
           mat = join 2 unit side by side
           hem all of mat by 1 cm (3/8 in)
           finish mat
           ```
    """

    name: str
    width: str
    height: str

    def message(self) -> str:
        return f"`{self.name}` is {self.width} wide and {self.height} high, and should be square"

    def hint(self) -> str:
        return "cut it square, or trim it"


class UnitsUnknown(Problem):
    """Two squares are paired into a number of units that no cut gives.

    Sewn along one diagonal they give 2, sewn all round and cut on both diagonals 4, sewn along both
    diagonals 8.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width        | Height       |
        |-------|------|-----|--------------|--------------|
        | light | A    | 1   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) |
        | dark  | A    | 1   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) |

        ## Steps
        1. Pair, join and hem.

           ```sew
           3 unit = pair light with dark into 3
           mat = join 3 unit side by side
           hem all of mat by 1 cm (3/8 in)
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece | From | Cut | Width        | Height       |
        |-------|------|-----|--------------|--------------|
        | light | A    | 1   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) |
        | dark  | A    | 1   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) |

        ## Steps
        1. Pair, join and hem.

           ```sew
           2 unit = pair light with dark into 2
           mat = join 2 unit side by side
           hem all of mat by 1 cm (3/8 in)
           finish mat
           ```
    """

    units: int

    def message(self) -> str:
        return f"two squares cannot be paired into {self.units}"

    def hint(self) -> str:
        return "pair them into 2, 4 or 8"


class SettingMiscounted(Problem):
    """The squares or triangles of a setting on point do not come out.

    r rows of c squares, with (r − 1)(c − 1) squares between them, want 2 (r + c − 2) setting triangles
    (quarter-square) along the sides and 4 corner triangles (half-square).

    Fails:

        ## Pieces
        | Piece  | From | Cut | Width        | Height       | Shape                   |
        |--------|------|-----|--------------|--------------|-------------------------|
        | block  | A    | 5   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) |                         |
        | filler | A    | 3   | 22 cm (8 1/2 in) | 22 cm (8 1/2 in) | quarter-square triangle |
        | corner | A    | 4   | 13 cm (5 in) | 13 cm (5 in) | half-square triangle |

        ## Steps
        1. Set, trim and hem.

           ```sew
           mat = set 5 block on point in 2 rows with 3 filler, 4 corner
           trim mat to 28 cm (11 in) by 28 cm (11 in)
           hem all of mat by 1 cm (3/8 in)
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece  | From | Cut | Width        | Height       | Shape                   |
        |--------|------|-----|--------------|--------------|-------------------------|
        | block  | A    | 5   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) |                         |
        | filler | A    | 4   | 22 cm (8 1/2 in) | 22 cm (8 1/2 in) | quarter-square triangle |
        | corner | A    | 4   | 13 cm (5 in) | 13 cm (5 in) | half-square triangle |

        ## Steps
        1. Set, trim and hem.

           ```sew
           mat = set 5 block on point in 2 rows with 4 filler, 4 corner
           trim mat to 28 cm (11 in) by 28 cm (11 in)
           hem all of mat by 1 cm (3/8 in)
           finish mat
           ```
    """

    what: str
    given: int
    wanted: str

    def message(self) -> str:
        return f"the setting names {self.given} {self.what}, and wants {self.wanted}"

    def hint(self) -> str:
        return "count the rows and the squares in a row again"


class TriangleTooSmall(Problem):
    """A setting or corner triangle does not reach the stitch line of the outer edge.

    For blocks that measure B as sewn, a setting triangle is cut from a square of at least
    B√2 + 2√2 seams, a corner triangle from one of B/√2 + √2 seams; with a whole allowance outside,
    2 seams more.

    Fails:

        ## Pieces
        | Piece  | From | Cut | Width        | Height       | Shape                   |
        |--------|------|-----|--------------|--------------|-------------------------|
        | block  | A    | 5   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) |                         |
        | filler | A    | 4   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) | quarter-square triangle |
        | corner | A    | 4   | 13 cm (5 in) | 13 cm (5 in) | half-square triangle |

        ## Steps
        1. Set, trim and hem.

           ```sew
           mat = set 5 block on point in 2 rows with 4 filler, 4 corner
           trim mat to 20 cm (8 in) by 20 cm (8 in)
           hem all of mat by 1 cm (3/8 in)
           finish mat
           ```

    Passes:

        ## Pieces
        | Piece  | From | Cut | Width        | Height       | Shape                   |
        |--------|------|-----|--------------|--------------|-------------------------|
        | block  | A    | 5   | 12 cm (4 3/4 in) | 12 cm (4 3/4 in) |                         |
        | filler | A    | 4   | 22 cm (8 1/2 in) | 22 cm (8 1/2 in) | quarter-square triangle |
        | corner | A    | 4   | 13 cm (5 in) | 13 cm (5 in) | half-square triangle |

        ## Steps
        1. Set, trim and hem.

           ```sew
           mat = set 5 block on point in 2 rows with 4 filler, 4 corner
           trim mat to 28 cm (11 in) by 28 cm (11 in)
           hem all of mat by 1 cm (3/8 in)
           finish mat
           ```
    """

    name: str
    has: str
    wants: str

    def message(self) -> str:
        return f"`{self.name}` is cut from a square of {self.has}, and should be cut from one of {self.wants}"

    def hint(self) -> str:
        return "cut the square larger; what stands out is trimmed"


def pair(work: Work) -> Made:
    """Pair squares into half-square units of two triangles.

    From squares of S with a seam of s: 2 at a time measure S − √2 s as cut, 4 at a time (S − 2 s)/√2,
    8 at a time S/2 − √2 s (geometry; the trade cuts 7/8 in, 2.25 cm, larger and trims).
    """
    first, second = work.one("first"), work.one("second")
    side = _square(work, first)
    _square(work, second)
    edges = tuple(_all_round(work, used, work.flat(used), "paired") for used in (first, second))
    taken = work.allowance(*edges)
    work.meet(edges[0], edges[1])
    work.seams.append(side)
    units = work.whole("units")
    match units:
        case 2:
            left = less(side, times_root_two(taken))
        case 4:
            left = half(times_root_two(less(side, times(2, taken))))
        case 8:
            left = less(half(side), times_root_two(taken))
        case _:
            work.refuse(UnitsUnknown(span=work.place("units"), units=units))
    rim = work.must_be_raw(edges[0])
    return Made(rectangle(left, left, rim), sewn_from(first, second))


def _all_round(work: Work, used: Used, flat: Flat, doing: str) -> Side:
    """One side of a square, all of which must be raw."""
    for name in SIDES:
        work.must_be_raw(work.side(used, name), doing)
    return work.side(used, "left")


def _square(work: Work, used: Used) -> Quantity:
    flat = work.flat(used)
    if any(compare(flat.width[s], flat.height[s], s) for s in work.systems):
        work.refuse(
            NotSquare(
                span=used.span,
                name=used.name,
                width=work.said(flat.width),
                height=work.said(flat.height),
                labels=work.rows_of(used),
            )
        )
    return flat.width


def set_on_point(work: Work) -> Made:
    """Set squares on point: r rows of c with (r − 1)(c − 1) between them, triangles along the sides.

    Sewn, it is c B√2 wide and r B√2 high, B being a block as sewn; outside that the triangles reach by
    what they were cut larger. They must reach the stitch line, and a trim should follow (published
    charts of squares set on point; geometry).
    """
    squares, triangles = work.used["squares"], work.used["triangles"]
    rows, columns = _rows_and_columns(work, squares)
    for used in squares:
        _square(work, used)
    first = _all_round(work, squares[0], work.flat(squares[0]), "set on point")
    for used in squares[1:]:
        work.meet(first, _all_round(work, used, work.flat(used), "set on point"))
    taken = work.allowance(first)
    block = first.seam
    work.seams.append(block)
    settings, corners = _sorted(work, triangles)
    _hold_numbers(work, rows, columns, settings, corners)
    beyond = [_beyond(work, used, block, taken) for used in (*settings, *corners)]
    outside = shortest(beyond)
    width = total((times(columns, times_root_two(block)), times(2, outside)))
    height = total((times(rows, times_root_two(block)), times(2, outside)))
    # An outer edge that is not cut to the allowance has none that a seam could take; trimming gives it one.
    exact = same_allowance(outside, taken)
    rim = Rim(State.RAW, taken if exact else None)
    return Made(rectangle(width, height, rim), sewn_from(*squares, *triangles))


def _rows_and_columns(work: Work, squares: tuple[Used, ...]) -> tuple[int, int]:
    """The rows that the statement names, and how many squares stand in each."""
    rows = work.whole("rows")
    count = sum(used.count for used in squares)
    columns = Fraction(count + rows - 1, 2 * rows - 1) if rows else Fraction(0)
    if columns.denominator != 1 or columns < 1:
        wanted = f"r × c + (r − 1)(c − 1) of them for {rows} rows"
        work.refuse(SettingMiscounted(span=work.place("squares"), what="squares", given=count, wanted=wanted))
    return rows, int(columns)


def _sorted(work: Work, triangles: tuple[Used, ...]) -> tuple[tuple[Used, ...], tuple[Used, ...]]:
    """Setting triangles, whose long side lies outside, and corner triangles, whose legs do."""
    for used in triangles:
        if not isinstance(used.shape, Triangle):
            work.wrong_shape(used, "a half-square or quarter-square triangle")
    settings = tuple(u for u in triangles if isinstance(u.shape, Triangle) and u.shape.quarter)
    corners = tuple(u for u in triangles if isinstance(u.shape, Triangle) and not u.shape.quarter)
    return settings, corners


def _hold_numbers(
    work: Work, rows: int, columns: int, settings: tuple[Used, ...], corners: tuple[Used, ...]
) -> None:
    pairs = ((settings, 2 * (rows + columns - 2), "setting triangles"), (corners, 4, "corner triangles"))
    for used, wanted, what in pairs:
        given = sum(each.count for each in used)
        if given != wanted:
            names = listed(f"`{each.name}`" for each in used)
            work.refuse(
                SettingMiscounted(
                    span=work.place("triangles"),
                    what=f"{what} ({names})" if names else what,
                    given=given,
                    wanted=f"{wanted} for {rows} rows of {columns}",
                )
            )


def _beyond(work: Work, used: Used, block: Quantity, taken: Quantity) -> Quantity:
    """By how much a triangle reaches beyond the stitch line of the outer edge."""
    shape = used.shape
    assert isinstance(shape, Triangle)
    if shape.quarter:
        has, wants = shape.long_side, total((times_root_two(block), times(2, times_root_two(taken))))
    else:
        has, wants = shape.leg, total((half(times_root_two(block)), times_root_two(taken)))
    if work.short_in(has, wants):
        work.report(
            TriangleTooSmall(
                span=used.span,
                name=used.name,
                has=work.said(has),
                wants=work.said(wants),
                labels=work.rows_of(used),
            )
        )
    return half(less(has, wants))


PAIR = Verb("pair", {"pair {first:thing} with {second:thing} into {units:number}": pair}, at_once="units")
_ON_POINT = "set {squares:things} on point in {rows:number} {word=rows|row} with {triangles:things}"
SET_ON_POINT = Verb("set on point", {_ON_POINT: set_on_point})
