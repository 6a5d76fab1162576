"""What holds for whatever is sewn."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from sewing.table import sew

SYSTEMS = "---\nsystems: metric\n---"

widths = st.lists(st.integers(30, 400), min_size=2, max_size=6)
quick = settings(max_examples=25, deadline=None)


@quick
@given(widths, st.integers(3, 14), st.booleans())
def test_a_row_is_its_parts_less_two_allowances_a_seam(sizes: list[int], seam: int, across: bool):
    names = [f"part {chr(97 + i)}" for i in range(len(sizes))]
    size = "{} mm | 300 mm" if across else "300 mm | {} mm"
    pieces = "\n".join(f"{name} | A | 1 | {size.format(s)}" for name, s in zip(names, sizes, strict=True))
    way, side = ("side by side", "width") if across else ("top to bottom", "height")
    table = sew(
        pieces, f"row = join {', '.join(names)} {way}\nfinish row", measures=f"seam = {seam} mm", rest=SYSTEMS
    )
    assert table.names == ["raw-edge-shows"]
    assert table.mm(f"{side} of row") == sum(sizes) - 2 * seam * (len(sizes) - 1)
    assert table.mm(f"finished {side} of row") == sum(sizes) - 2 * seam * len(sizes)


@quick
@given(st.integers(1, 6), st.integers(1, 6), st.integers(2, 5))
def test_every_piece_is_used_once(rows: int, columns: int, sheets: int):
    pieces = f"patch | A | {(rows + 1) * (columns + 1) * sheets} | 8 cm | 8 cm"
    statements = f"""
        {(rows + 1) * sheets} row = join {columns + 1} patch side by side
        {sheets} sheet = join {rows + 1} row top to bottom
        finish sheet
    """
    table = sew(pieces, statements, rest=SYSTEMS)
    assert table.names == ["raw-edge-shows"]
    assert table.made.used == {("patch", "A"): (rows + 1) * (columns + 1) * sheets}
    assert table.made.finished[0].count == sheets
    one_more = sew(pieces.replace("| A | ", "| A | 1 + "), statements, rest=SYSTEMS)
    assert one_more.names == ["raw-edge-shows", "piece-left-over"]


@quick
@given(st.integers(1, 5), st.integers(1, 5))
def test_each_system_is_worked_out_by_itself(metric: int, imperial: int):
    # Pairs whose halves grow by different factors would disagree as stated; a physical measure scales both
    # alike, so each system is scaled by a number of its own through a ratio of two stated pairs.
    pieces = "cloth | A | 1 | side | 2 × side"
    statements = (
        "bag = fold cloth in half, join sides\nbox corners of bag to deep\nhem top of bag by seam\nfinish bag"
    )
    measures = f"side = {metric * 10} cm + {imperial * 10} in\ndeep = side / 4\nseam = side / 40"
    table = sew(pieces, statements, measures=measures)
    for system in (0, 1):
        value = (table.mm, table.inches)[system]
        side = value("width of cloth")
        assert value("width of bag") == side - 2 * side / 40 - side / 4
        assert value("depth of bag") == side / 4
        assert value("height of bag") == side - side / 8 - side / 40


@quick
@given(st.integers(100, 600), st.integers(100, 600), st.integers(1, 20), st.booleans())
def test_hemmed_twice_by_half_is_hemmed_once(wide: int, high: int, by: int, twice: bool):
    how = f"by {by} mm twice" if twice else f"by {2 * by} mm"
    table = sew(
        f"cloth | A | 1 | {wide} mm | {high} mm", f"hem all of cloth {how}\nfinish cloth", rest=SYSTEMS
    )
    assert table.names == []
    assert (table.mm("width of cloth"), table.mm("height of cloth")) == (wide - 4 * by, high - 4 * by)


@quick
@given(st.integers(60, 400), st.integers(60, 400), st.integers(5, 25))
def test_a_pouch_of_one_piece_is_a_pouch_of_two(wide: int, high: int, seam: int):
    folded = sew(
        f"cloth | A | 1 | {wide} mm | {2 * high} mm",
        "bag = fold cloth in half, join sides\nfinish bag",
        measures=f"seam = {seam} mm",
        rest=SYSTEMS,
    )
    joined = sew(
        f"front | A | 1 | {wide} mm | {high + seam} mm\nback | A | 1 | {wide} mm | {high + seam} mm",
        "bag = join front to back on left, right, bottom\nfinish bag",
        measures=f"seam = {seam} mm",
        rest=SYSTEMS,
    )
    for side in ("width", "height", "around", "finished height"):
        assert folded.mm(f"{side} of bag") == joined.mm(f"{side} of bag")


@quick
@given(st.integers(100, 400), st.integers(1, 400), st.integers(1, 30))
def test_two_edges_meet_exactly_when_they_are_equal(one: int, other: int, tenths: int):
    other = one if tenths % 2 else max(other, 60)
    pieces = f"one | A | 1 | {one} mm | 80 mm\nother | A | 1 | {other} mm | 80 mm"
    table = sew(pieces, "mat = join one, other top to bottom\nfinish mat", rest=SYSTEMS)
    assert ("edges-do-not-meet" in table.names) is (one != other)
    if one != other:
        apart = Fraction(abs(one - other))
        assert (f"{float(apart):g} mm apart" in table.first.message()) is (apart < 10)
