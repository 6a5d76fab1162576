"""Whatever the parts, a layout is sound, the bound is below it, and it comes out the same again."""

from hypothesis import given, settings
from hypothesis import strategies as st

from presscloth.cutting import (
    Cut,
    CutSheets,
    DoesNotFit,
    Part,
    Roll,
    Sheet,
    Way,
    check,
    lay_out,
    lay_out_sheets,
)

PARTS = st.lists(
    st.builds(
        Part,
        name=st.just("part"),
        width=st.integers(1, 30),
        height=st.integers(1, 40),
        quantity=st.integers(1, 9),
        turnable=st.booleans(),
    ),
    min_size=1,
    max_size=8,
)


@settings(max_examples=60, deadline=None)
@given(PARTS, st.integers(20, 60), st.sampled_from(Way), st.sampled_from([1, 7, 10]))
def test_rolls(parts: list[Part], width: int, way: Way, step: int):
    cut = lay_out(Roll(width), parts, way=way, step=step, budget=3000)
    match cut:
        case DoesNotFit(numbers):
            assert all(parts[n].width > width for n in numbers)
            assert all(not parts[n].turnable or parts[n].height > width for n in numbers)
        case Cut():
            assert check(parts, [cut.layout], length=cut.bought, strips=way is Way.STRIPS) == ()
            assert cut.bound <= cut.bought and cut.bought - step < cut.need == cut.layout.length
            assert cut.bought * width >= sum(part.area for part in parts)
            assert lay_out(Roll(width), parts, way=way, step=step, budget=3000) == cut


@settings(max_examples=40, deadline=None)
@given(PARTS, st.integers(20, 60), st.integers(20, 60), st.sampled_from(Way))
def test_sheets(parts: list[Part], width: int, length: int, way: Way):
    cut = lay_out_sheets(Sheet(width, length), parts, way=way, budget=3000)
    if isinstance(cut, CutSheets):
        assert check(parts, cut.layouts, length=length, strips=way is Way.STRIPS) == ()
        assert 1 <= cut.bound <= cut.bought
        assert cut.bought * width * length >= sum(part.area for part in parts)


@settings(max_examples=40, deadline=None)
@given(PARTS, st.integers(20, 60))
def test_a_free_layout_is_never_longer_than_one_in_strips_that_is_proved(parts: list[Part], width: int):
    free = lay_out(Roll(width), parts, budget=3000)
    strips = lay_out(Roll(width), parts, way=Way.STRIPS, budget=3000)
    if isinstance(free, Cut) and isinstance(strips, Cut):
        assert free.bound <= strips.need
        assert strips.bound >= -(-sum(part.area for part in parts) // width)
