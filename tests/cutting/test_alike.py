"""Parts of one size are laid out as one part, and told apart again."""

from collections import Counter

from presscloth.cutting import Cut, CutSheets, Part, Roll, Sheet, Way, check, lay_out, lay_out_sheets
from presscloth.cutting.alike import alike
from presscloth.cutting.parts import Layout, Placed

OUTER, LINING = Part("outer", 26, 19, 2, True), Part("lining", 19, 26, 3, True)


def test_a_turned_part_is_of_the_same_size_only_where_it_may_be_turned():
    fixed = Part("fixed", 26, 19, 1)
    joined = alike([OUTER, fixed, LINING, Part("upright", 19, 26, 1)])
    assert [(part.width, part.height, part.quantity) for part in joined.parts] == [
        (26, 19, 5),
        (26, 19, 1),
        (19, 26, 1),
    ]


def test_each_true_part_gets_its_places_with_its_own_turn():
    joined = alike([OUTER, LINING])
    places = tuple(Placed(0, 30 * n, 0, n % 2 == 1) for n in range(5))
    (layout,) = joined.told_apart([Layout(150, 26, places)])
    assert [(each.part, each.turned) for each in layout.placed] == [
        (0, False),
        (0, True),
        (1, True),
        (1, False),
        (1, True),
    ]


def test_layouts_of_parts_of_one_size_pass_the_checker():
    parts = [OUTER, LINING, Part("tab", 6, 4, 2, True)]
    for way in Way:
        cut = lay_out(Roll(60), parts, way=way, budget=2000)
        assert isinstance(cut, Cut)
        assert check(parts, [cut.layout], length=cut.need, strips=way is Way.STRIPS) == ()
        sheets = lay_out_sheets(Sheet(40, 30), parts, way=way, budget=2000)
        assert isinstance(sheets, CutSheets)
        assert check(parts, sheets.layouts, length=30, strips=way is Way.STRIPS) == ()
        laid = Counter(each.part for layout in sheets.layouts for each in layout.placed)
        assert laid == {0: 2, 1: 3, 2: 2}
