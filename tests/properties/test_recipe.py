"""Promises of the recipe reader that hold for any text, any expression and any name."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from fractions import Fraction
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from spec import invariants

from presscloth.measure import Direction
from presscloth.pipeline import prove_source
from presscloth.problems import Problems
from presscloth.recipe.expression import (
    Expression,
    Extreme,
    Measured,
    Name,
    Negative,
    Number,
    PartOf,
    Pi,
    Reckoned,
    Root,
    Rounded,
    Sign,
    Value,
)
from presscloth.recipe.reckoning import expression
from presscloth.recipe.words import look_up, why_no_name
from presscloth.source import Passage, Source, Span

RECIPE = """\
---
title: Tide Pouch
release: 2027-04
written in: metric
audience: {Small: child}
sewn: Large
---

# Tide Pouch

A pouch for pegs at the Tidewrack sewing room.

## Sizes

| Size  | front           | tab         |
|-------|-----------------|-------------|
| Small | 20 cm (8 in)    | –           |
| Large | 30 cm (12 in)   | 5 cm (2 in) |

## Measures

- seam = 1 cm (3/8 in)
- fold = round up(front / 3 to 1 cm (1/2 in)): where it folds
- gap = 8 cm (3 in), about

## Materials

| Key | Material     | Form   | Width          | Sold by        | Notes       |
|-----|--------------|--------|----------------|----------------|-------------|
| A   | Cotton, sand | fabric | 110 cm (43 in) | 10 cm (1/8 yd) | shrinks 3 % |
| B   | Cotton tape  | tape   |                | 10 cm (1/8 yd) |             |

## Pieces

| Piece | From | Cut | Width             | Height           | Sizes | Notes     |
|-------|------|-----|-------------------|------------------|-------|-----------|
| body  | A    | 2   | front + 2 × seam  | front + 2 × seam |       | any grain |
| loop  | B    | 1   |                   | 2 × tab          | Large |           |

## Steps

### Sewing

1. Take care: Sew the {body} pieces to each other, leaving {gap} open; **each** is {width of body} wide.

   ```sew
   pouch = join body to body on left, right, bottom
   hem top of pouch by seam
   ```

2. Large only: Sew on the loop.

   ```sew
   attach loop to pouch
   ```

3. Optional: Press it ![a pressed pouch](pouch.png) by `hand`.

   Not Small: Buy {buy A} & more.

4. Done.

   ```sew
   finish pouch
   ```

## Checks

- gap < front: a hand gets in

## Care

> Wash it \\{cold\\}, [gently](https://care.example).
"""

SIGNS = '{}|`#-=×/()[]!:.,\n\t \\"½1aA>*_&\ufeff'

slow = settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@st.composite
def mutated(draw: st.DrawFn) -> str:
    """The recipe after one to four slips: characters or lines deleted, put in, doubled, or swapped."""
    text = RECIPE
    for _ in range(draw(st.integers(1, 4))):
        by_line = draw(st.booleans())
        parts = text.splitlines(keepends=True) if by_line else list(text)
        if len(parts) < 2:
            break
        at = draw(st.integers(0, len(parts) - 2))
        length = draw(st.integers(1, 3))
        match draw(st.sampled_from(["delete", "insert", "double", "swap"])):
            case "delete":
                del parts[at : at + length]
            case "insert":
                inserted = draw(st.text(SIGNS, min_size=1, max_size=4))
                parts.insert(at, inserted)
            case "double":
                parts[at:at] = parts[at : at + length]
            case _:
                parts[at], parts[at + 1] = parts[at + 1], parts[at]
        text = "".join(parts)
    return text


@given(mutated())
@slow
def test_no_slip_breaks_the_reader_or_loses_a_place(text: str):
    proved = prove_source(Source("recipe.md", text), Path("recipe.md"), Problems())
    invariants.hold(proved)


@given(st.text(st.characters(codec="utf-8", exclude_characters="\0"), max_size=200))
@slow
def test_any_text_at_all(text: str):
    proved = prove_source(Source("recipe.md", text), Path("recipe.md"), Problems())
    invariants.hold(proved)
    assert not proved.sound


# -- expressions ----------------------------------------------------------------------------------

NOWHERE = Source("nowhere", "").span(0, 0)

numbers = st.fractions(0, 1000, max_denominator=64)
names = st.sampled_from(["band", "side strip", "Badge width", "a", "head band"]).map(
    lambda text: Name(text, NOWHERE)
)
lengths = st.builds(
    lambda value, unit: Value(value, unit, NOWHERE), numbers, st.sampled_from(["mm", "cm", "m"])
)
inches = st.builds(lambda value, unit: Value(value, unit, NOWHERE), numbers, st.sampled_from(["in", "yd"]))
measured = st.one_of(
    st.builds(lambda first, second: Measured(first, second, NOWHERE), lengths, inches),
    st.builds(lambda first, exactly: Measured(first, None, NOWHERE, exactly), lengths, st.booleans()),
)
leaves = st.one_of(
    numbers.map(lambda value: Number(value, NOWHERE)),
    numbers.map(lambda value: Number(value / 100, NOWHERE, percent=True)),
    measured,
    names,
    st.builds(
        lambda part, finished, of: PartOf(part, finished, of, NOWHERE),
        st.sampled_from(["width", "height", "around", "count", "top"]),
        st.booleans(),
        names,
    ),
    st.just(Pi(NOWHERE)),
)


def larger(inner: st.SearchStrategy[Expression]) -> st.SearchStrategy[Expression]:
    return st.one_of(
        st.builds(
            lambda sign, a, b: Reckoned(sign, a, b, NOWHERE), st.sampled_from(list(Sign)), inner, inner
        ),
        inner.map(lambda of: Negative(of, NOWHERE)),
        inner.map(lambda of: Root(of, NOWHERE)),
        st.builds(
            lambda greatest, among: Extreme(greatest, tuple(among), NOWHERE),
            st.booleans(),
            st.lists(inner, min_size=1, max_size=3),
        ),
        st.builds(
            lambda direction, of, step: Rounded(direction, of, step, NOWHERE),
            st.sampled_from(list(Direction)),
            inner,
            st.none() | measured,
        ),
    )


expressions = st.recursive(leaves, larger, max_leaves=10)


def number(value: Fraction) -> str:
    whole, over = divmod(value.numerator, value.denominator)
    if not over:
        return str(whole)
    return f"{whole} {over}/{value.denominator}" if whole else f"{over}/{value.denominator}"


def stated(value: Value) -> str:
    return f"{number(value.value)} {value.unit}"


def written(of: Expression) -> str:
    """An expression as an author would write it."""
    match of:
        case Number(value=value, percent=percent):
            return f"{number(value * 100)} %" if percent else number(value)
        case Measured(first=first, second=second, exactly=exactly):
            text = f"exactly {stated(first)}" if exactly else stated(first)
            return f"{text} ({stated(second)})" if second else text
        case Name(text=text):
            return text
        case PartOf(part=part, finished=finished, of=thing):
            return f"finished {part} of {thing.text}" if finished else f"{part} of {thing.text}"
        case Pi():
            return "pi"
        case Negative(of=inner):
            return f"-({written(inner)})"
        case Root(of=inner):
            return f"sqrt({written(inner)})"
        case Extreme(greatest=greatest, among=among):
            return f"{'max' if greatest else 'min'}({', '.join(map(written, among))})"
        case Rounded(direction=direction, of=inner, step=step):
            to = f" to {written(step)}" if step else ""
            return f"{direction.value}({written(inner)}{to})"
        case Reckoned(sign=sign, left=left, right=right):
            sides = (bracketed(left, sign, left=True), bracketed(right, sign, left=False))
            return f" {sign.value} ".join(sides)
        case _:
            raise AssertionError(of)


def bracketed(of: Expression, within: Sign, *, left: bool) -> str:
    """A side of a sign, in brackets only where it would be read in another way without."""
    sums = (Sign.PLUS, Sign.MINUS)
    needed = isinstance(of, Reckoned) and (not left or (of.sign in sums and within not in sums))
    needed = needed or (within is Sign.OVER and not left)
    return f"({written(of)})" if needed else written(of)


def bare(of: object) -> object:
    """A tree without its places."""
    if is_dataclass(of):
        parts = (getattr(of, field.name) for field in fields(of))
        return type(of), tuple(bare(part) for part in parts if not isinstance(part, Span))
    return tuple(map(bare, of)) if isinstance(of, tuple) else of


@given(expressions)
def test_a_written_expression_is_read_as_it_was(tree: Expression):
    text = written(tree)
    problems = Problems()
    read = expression(Passage.of(Source("recipe.md", text).span(0, len(text))), problems)
    assert problems.found() == (), text
    assert bare(read) == bare(tree)


@given(expressions)
def test_the_place_of_every_part_spells_it(tree: Expression):
    text = written(tree)
    read = expression(Passage.of(Source("recipe.md", text).span(0, len(text))), Problems())
    for node in invariants.nodes(read):
        assert invariants.misspelt(node) is None
        if isinstance(node, Reckoned | Negative | Root | Extreme | Rounded | PartOf):
            again = expression(Passage.of(node.span), Problems())
            assert bare(again) == bare(node), node.span.text


# -- names ----------------------------------------------------------------------------------------

words = st.text("abcdefghijklmnopqrstuvwxyz", min_size=1, max_size=8)
spelt = st.lists(words, min_size=1, max_size=4).map(" ".join).filter(lambda name: why_no_name(name) is None)


@given(
    spelt, st.lists(spelt, max_size=6), st.sampled_from(["", "s", "es"]), st.randoms(use_true_random=False)
)
def test_capitals_and_a_plural_do_not_matter(name, others, plural, random):
    among = {other: 0 for other in others if not same(other, name)} | {name: 1}
    typed = "".join(random.choice((letter.upper(), letter)) for letter in name + plural)
    assert look_up(typed, among) == 1
    assert look_up(name, {typed: 2}) == 2


def same(one: str, other: str) -> bool:
    """Whether two names may be taken for one, by any of their endings."""
    endings = ("", "s", "es")
    return any(one + a == other + b for a in endings for b in endings)


@given(spelt, spelt)
def test_the_exact_spelling_wins(name: str, other: str):
    among = {name.upper(): "capitals", f"{name}s": "several", name: "one"}
    assert look_up(name, among) == "one"
    assert look_up(f"{name}s", among) == "several"
    if not same(name, other):
        assert look_up(other, {name: 1}) is None
