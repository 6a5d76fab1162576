"""Transform a template into sheets: tiles that overlap, with the marks that bring them together.

A tile fits between the margins of A4 and of Letter, so that both papers have the same sheets.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice
from math import ceil, cos, dist, radians, sin

from presscloth.drawing.clipping import Frame, Point, clipped, inside
from presscloth.drawing.room import CELL, Room
from presscloth.drawing.tree import Area, Arrow, Disc, Drawing, Ink, Lettering, Line, Shape
from presscloth.frozen import dataclass
from presscloth.tongue import say

TILE_WIDTH, TILE_HEIGHT = 188.0, 248.0
OVERLAP = 12.0
EDGE = 1.0
"""mm of a tile's edge that are left free, so that no line is cut off by its own width."""

RING = 3.0
CENTIMETRES_5, INCHES_2 = 50.0, 50.8
MAP = 34.0
ARROWS = (100.0, 60.0, 40.0, 25.0, 15.0)
NEAREST = 600
"""So many places, the best first, are looked at for one that is inside the piece."""
LETTERS, LEADING = 4.0, 5.6
BOLD = 6.0
SMALL = 2.9
LETTER = 0.52  # common width of a letter, in parts of its size


@dataclass(frozen=True, slots=True)
class Plane:
    """A template from (0, 0) on, in mm: its cutting line as a closed outline, all lines, names of edges.

    `grain` is the direction of the grain, in degrees from upright, clockwise; None for any.
    """

    piece: str
    words: tuple[str, ...]
    cut: tuple[Point, ...]
    lines: tuple[Line, ...]
    letterings: tuple[Lettering, ...]
    grain: float | None


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet of a template, `number` of `of`, in a place of its rows and columns."""

    piece: str
    number: int
    of: int
    row: int
    column: int
    drawing: Drawing


@dataclass(frozen=True, slots=True)
class _Tile:
    """A place for a sheet; `frame` is where it lies on the plane."""

    row: int
    column: int
    frame: Frame


def sheets_needed(plane: Plane) -> int:
    """How many sheets a template takes."""
    return sum(1 for _ in _tiles(plane))


def on_sheets(plane: Plane) -> tuple[Sheet, ...]:
    """The sheets of a template, row by row. A tile that holds nothing of the piece is left out."""
    tiles = tuple(_tiles(plane))
    rooms = tuple(_room(plane, tiles, tile) for tile in tiles)
    placed = _placed(plane, rooms)
    return tuple(
        Sheet(
            piece=plane.piece,
            number=number,
            of=len(tiles),
            row=tile.row,
            column=tile.column,
            drawing=_sheet(plane, tiles, number, placed, room),
        )
        for number, (tile, room) in enumerate(zip(tiles, rooms, strict=True), start=1)
    )


def _tiles(plane: Plane) -> Iterator[_Tile]:
    wide, high = max(x for x, _ in plane.cut), max(y for _, y in plane.cut)
    columns, rows = _number(wide, TILE_WIDTH), _number(high, TILE_HEIGHT)
    left = (wide - _reach(columns, TILE_WIDTH)) / 2
    top = (high - _reach(rows, TILE_HEIGHT)) / 2
    for row in range(rows):
        for column in range(columns):
            frame = Frame(
                left + column * (TILE_WIDTH - OVERLAP),
                top + row * (TILE_HEIGHT - OVERLAP),
                TILE_WIDTH,
                TILE_HEIGHT,
            )
            if _holds(plane, frame):
                yield _Tile(row, column, frame)


def _number(long: float, tile: float) -> int:
    """How many tiles reach over a length, with a free edge at both ends."""
    return max(1, ceil((long + 2 * EDGE - OVERLAP) / (tile - OVERLAP) - 1e-9))


def _reach(number: int, tile: float) -> float:
    return number * (tile - OVERLAP) + OVERLAP


def _holds(plane: Plane, frame: Frame) -> bool:
    """Whether something of the piece lies on a tile, beyond what its neighbours show too."""
    own = Frame(frame.x + OVERLAP / 2, frame.y + OVERLAP / 2, frame.width - OVERLAP, frame.height - OVERLAP)
    middle = (frame.x + frame.width / 2, frame.y + frame.height / 2)
    return inside(middle, plane.cut) or any(True for line in plane.lines for _ in clipped(line.points, own))


# -- what lies in one place of the template: the words, the grain --------------------------------


@dataclass(frozen=True, slots=True)
class _Words:
    """Letters or an arrow, and the box that they take on the plane."""

    box: Frame
    shapes: tuple[Shape, ...]


def _placed(plane: Plane, rooms: Sequence[Room]) -> tuple[_Words, ...]:
    """The words and the grain arrow, each whole on one tile and inside the piece where that is possible."""
    broad = max(len(line) * (BOLD if i == 0 else LETTERS) * LETTER for i, line in enumerate(plane.words))
    high = BOLD + LEADING * len(plane.words)
    label = _best(plane, rooms, min(broad, TILE_WIDTH - CELL), min(high, TILE_HEIGHT - CELL))
    words = _Words(label, tuple(_label(plane, label)))
    if plane.grain is None:
        return (words,)
    left = [room.copy() for room in rooms]
    for room in left:
        room.take_box(label)
    return words, _grain(plane, left, plane.grain)


def _grain(plane: Plane, rooms: Sequence[Room], grain: float) -> _Words:
    """The longest grain arrow that has room inside the piece."""
    turn = radians(grain)
    for long in ARROWS:
        box = _best(plane, rooms, abs(long * sin(turn)) + 4, abs(long * cos(turn)) + 4)
        if _is_inside(plane, box):
            break
    return _Words(box, (_arrow(box, long, grain),))


def _is_inside(plane: Plane, box: Frame) -> bool:
    corners = ((box.x + a * box.width, box.y + b * box.height) for a in (0, 1) for b in (0, 1))
    return all(inside(corner, plane.cut) for corner in corners)


def _room(plane: Plane, tiles: Sequence[_Tile], tile: _Tile) -> Room:
    """What the lines of a template, its letters and the joints of the tiles leave of a tile."""
    room = Room(tile.frame)
    for line in plane.lines:
        room.take_line(line.points)
    for words in plane.letterings:
        room.take_line(_ends(words))
    for joint in _joints(tiles, tile):
        if isinstance(joint, Line):
            room.take_line(joint.points)
    return room


def _ends(words: Lettering) -> tuple[Point, Point]:
    """Where words begin and end, about."""
    half = len(words.text) * words.size * LETTER / 2
    across, down = half * cos(radians(words.turned)), half * sin(radians(words.turned))
    return (words.x - across, words.y - down), (words.x + across, words.y + down)


def _best(plane: Plane, rooms: Sequence[Room], width: float, height: float) -> Frame:
    """The place on one tile that crosses the least, inside the piece, nearest to its middle."""
    middle = max(x for x, _ in plane.cut) / 2 - width / 2, max(y for _, y in plane.cut) / 2 - height / 2
    places = islice(_in_order(rooms, width, height, middle), NEAREST)
    best = [Frame(*place, width, height) for place in places]
    return next((box for box in best if _is_inside(plane, box)), best[0])


def _in_order(rooms: Sequence[Room], width: float, height: float, middle: Point) -> Iterator[Point]:
    """Every place for a box, those that cross the least first, and of these the nearest to the middle."""
    by_taken: dict[int, list[Point]] = {}
    for room in rooms:
        for taken, x, y in room.places(width, height):
            by_taken.setdefault(taken, []).append((x, y))
    for _, places in sorted(by_taken.items()):
        yield from sorted(places, key=lambda place: (dist(place, middle), place))


def _label(plane: Plane, box: Frame) -> Iterator[Shape]:
    middle = box.x + box.width / 2
    yield Lettering(middle, box.y + BOLD * 0.7, plane.words[0], BOLD, bold=True)
    for number, line in enumerate(plane.words[1:], start=1):
        yield Lettering(middle, box.y + BOLD + LEADING * (number - 0.3), line, LETTERS)


def _arrow(box: Frame, long: float, grain: float) -> Arrow:
    x, y = box.x + box.width / 2, box.y + box.height / 2
    across, down = long / 2 * sin(radians(grain)), long / 2 * cos(radians(grain))
    return Arrow((x - across, y + down), (x + across, y - down), Ink.GRAIN, both=True)


# -- one sheet -----------------------------------------------------------------------------------


def _sheet(
    plane: Plane, tiles: Sequence[_Tile], number: int, placed: Sequence[_Words], room: Room
) -> Drawing:
    """One sheet; what is put on it takes its part of the `room`."""
    tile = tiles[number - 1]
    frame = tile.frame
    shapes: list[Shape] = []
    for line in plane.lines:
        shapes += [Line(run, line.ink) for run in clipped(line.points, frame)]
    for words in plane.letterings:
        if all(frame.holds(x, y) for x, y in _ends(words)):
            shapes.append(words)
    for each in placed:
        if frame.holds(each.box.x, each.box.y) and frame.holds(
            each.box.x + each.box.width, each.box.y + each.box.height
        ):
            shapes += each.shapes
            room.take_box(each.box)
    shapes += _joints(tiles, tile)
    for side, said in ((CENTIMETRES_5, say("5 cm")), (INCHES_2, say("2 in"))):
        box = room.lowest(side, side)
        shapes += _square(box, said)
        room.take_box(box)
    if len(tiles) > 1:
        shapes += _map(plane, tiles, number, room)
    which = say("sheet {number} of {of}", number=number, of=len(tiles))
    return Drawing(
        width=TILE_WIDTH,
        height=TILE_HEIGHT,
        shapes=tuple(_moved(shape, -frame.x, -frame.y) for shape in shapes),
        alt=say(
            "Template of {piece} at full size, {sheet}, with a test square of 5 cm and one of 2 in.",
            piece=plane.piece,
            sheet=which,
        ),
    )


def _square(box: Frame, words: str) -> Iterator[Shape]:
    left, top, right, bottom = box.x, box.y, box.x + box.width, box.y + box.height
    yield Line(((left, top), (right, top), (right, bottom), (left, bottom), (left, top)), Ink.DIMENSION)
    middle, down = box.x + box.width / 2, box.y + box.height / 2
    yield Lettering(middle, down - 3, words, BOLD, bold=True)
    yield Lettering(middle, down + 3, say("measure before you cut"), 3.2)


def _joints(tiles: Sequence[_Tile], tile: _Tile) -> Iterator[Shape]:
    """The dotted line in the middle of each overlap, and two rings on it that come to lie on each other."""
    for other in tiles:
        beside = other.row == tile.row and abs(other.column - tile.column) == 1
        below = other.column == tile.column and abs(other.row - tile.row) == 1
        if not beside and not below:
            continue
        frame = tile.frame
        if beside:
            x = max(frame.x, other.frame.x) + OVERLAP / 2
            ends = ((x, frame.y), (x, frame.y + frame.height))
        else:
            y = max(frame.y, other.frame.y) + OVERLAP / 2
            ends = ((frame.x, y), (frame.x + frame.width, y))
        first, last = sorted((tiles.index(tile) + 1, tiles.index(other) + 1))
        yield Line(ends, Ink.HIDDEN)
        for part in (0.25, 0.75):
            yield from _ring(ends, part, f"{first}–{last}")


def _ring(ends: tuple[Point, Point], part: float, words: str) -> Iterator[Shape]:
    """A ring with a cross in it, and the numbers of the two sheets beside it."""
    (x, y), (far_x, far_y) = ends
    at_x, at_y = x + (far_x - x) * part, y + (far_y - y) * part
    reach = RING + 1.5
    yield Disc(at_x, at_y, RING, Ink.DIMENSION, Ink.DIMENSION)
    yield Line(((at_x - reach, at_y), (at_x + reach, at_y)), Ink.DIMENSION)
    yield Line(((at_x, at_y - reach), (at_x, at_y + reach)), Ink.DIMENSION)
    upright = x == far_x
    if upright:
        yield Lettering(at_x + 2.6, at_y + 11, words, 3.2, turned=-90.0)
    else:
        yield Lettering(at_x + 11, at_y + 2.6, words, 3.2)


def _map(plane: Plane, tiles: Sequence[_Tile], number: int, room: Room) -> Iterator[Shape]:
    """All sheets in small with the piece on them, and which of them this is."""
    left, top = min(tile.frame.x for tile in tiles), min(tile.frame.y for tile in tiles)
    right = max(tile.frame.x + tile.frame.width for tile in tiles)
    bottom = max(tile.frame.y + tile.frame.height for tile in tiles)
    scale = MAP / max(right - left, bottom - top)
    words = say("where the sheets go")
    wide = (right - left) * scale
    box = room.lowest(max(wide, len(words) * SMALL * LETTER), (bottom - top) * scale + 6)
    near_x = box.x + (box.width - wide) / 2

    def there(point: Point) -> Point:
        return near_x + (point[0] - left) * scale, box.y + (point[1] - top) * scale

    for place, tile in enumerate(tiles, start=1):
        frame = tile.frame
        near = there((frame.x + OVERLAP / 2, frame.y + OVERLAP / 2))
        far = there((frame.x + frame.width - OVERLAP / 2, frame.y + frame.height - OVERLAP / 2))
        corners = (near, (far[0], near[1]), far, (near[0], far[1]))
        yield Area(corners, Ink.WRONG_SIDE if place == number else Ink.CLOTH, Ink.DIMENSION)
    yield Line(tuple(there(point) for point in (*plane.cut, plane.cut[0])), Ink.GRAIN)
    for place, tile in enumerate(tiles, start=1):
        frame = tile.frame
        x, y = there((frame.x + frame.width / 2, frame.y + frame.height / 2))
        yield Lettering(x, y, str(place), 4.5, bold=place == number)
    yield Lettering(box.x + box.width / 2, box.y + box.height - 2, words, SMALL)


def _moved(shape: Shape, across: float, down: float) -> Shape:
    def there(point: Point) -> Point:
        return point[0] + across, point[1] + down

    match shape:
        case Line(points=points, ink=ink):
            return Line(tuple(map(there, points)), ink)
        case Area(points=points, ink=ink, edge=edge):
            return Area(tuple(map(there, points)), ink, edge)
        case Disc(x=x, y=y):
            return Disc(x + across, y + down, shape.radius, shape.ink, shape.edge)
        case Arrow(start=start, end=end):
            return Arrow(there(start), there(end), shape.ink, shape.both)
        case Lettering(x=x, y=y):
            return Lettering(
                x + across, y + down, shape.text, shape.size, shape.anchor, shape.turned, shape.bold
            )
