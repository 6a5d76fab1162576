"""Whatever the reader chooses, the page says what the compiler says of a recipe that states it.

The promise is the language reference's own: what is `yours to choose` is worked out by the same rules.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from pathlib import Path
from random import Random

import pytest
from choices.agreeing import (
    PUBLISHER,
    THEME,
    Case,
    Subject,
    as_data,
    drawings,
    errors,
    filled,
    handout,
    in_words,
    words_of,
)
from choices.recipes import FILLED, POCKETS, TIES

from presscloth.choices import take
from presscloth.handout.tree import Booklet
from presscloth.measure import System
from presscloth.pipeline import Proved
from presscloth.printing.html import html

RECIPES = Path(__file__).parents[2] / "recipes"
SHIPPED = sorted(
    path.parent.name for path in RECIPES.glob("*/recipe.md") if "yours to choose" in path.read_text("utf-8")
)
SMALL = {"ties": TIES, "pockets": POCKETS, "filled": FILLED}


@cache
def subject(name: str) -> Subject:
    if name in SMALL:
        return Subject(SMALL[name])
    path = RECIPES / name / "recipe.md"
    return Subject(path.read_text(encoding="utf-8"), path)


@cache
def stating(of: Subject, stated: tuple[tuple[str, str], ...]) -> Proved:
    return of.stating(dict(stated))


def typed(of: Subject, size: str, random: Random) -> tuple[tuple[str, str], ...]:
    """A value for each offer of a size, on the grid of a tape measure, of a ruler, or on none."""
    found = []
    for offer in of.followable(size).offers:
        system = random.choice(list(System))
        least, most = (offer.in_unit(system, end) for end in (offer.least, offer.most))
        parts = random.choice([1, 2, 8, 10, 16, 64, 100, 3])
        number = Fraction(random.randint(int(least * parts) + 1, int(most * parts)), parts)
        number = min(max(number, least), most)
        written = in_words(offer, system, number * offer.factor(system)).split(" ")
        found.append((system.value, " ".join(written[:-1] if offer.units[system] else written)))
    return tuple(found)


@pytest.mark.parametrize(
    ("name", "times"), [*((name, 40) for name in SMALL), *((name, 5) for name in SHIPPED)]
)
def test_every_number_and_drawing_is_that_of_a_recipe_that_states_the_choice(name, times):
    of = subject(name)
    random = Random(name)
    choices = [typed(of, of.names[0], random) for _ in range(times)]
    cases = [Case(size, choice) for choice in choices for size in of.names]
    compared = sum(holds(of, case, answer) for case, answer in zip(cases, of.says(cases), strict=True))
    assert compared > 2 * times


def holds(of: Subject, case: Case, answer: dict) -> int:
    """Hold one answer of the page against the compiler; how many places were compared."""
    offers = of.followable(case.size).offers
    taken = [
        take(offer, System(system), read(text) * offer.factor(System(system)))
        for offer, (system, text) in zip(offers, case.typed, strict=True)
    ]
    stated = {offer.name: of.stated(offer, each) for offer, each in zip(offers, taken, strict=True)}
    found = stating(of, tuple(stated.items()))
    said = f"{case.size}: {stated}"
    wrong = errors(found, case.size)
    assert not answer.get("lost"), said
    if wrong:
        assert answer.get("broken") == list(dict.fromkeys(wrong)), said
        return len(wrong)
    assert "broken" not in answer, (said, answer)
    expected = handout(found.sizes[of.names.index(case.size)])
    booklets = list(of.booklet.handouts)
    booklets[of.names.index(case.size)] = expected
    words = words_of(html(Booklet(tuple(booklets)), THEME, PUBLISHER), case.size)
    assert filled(of, case, answer) == words, said
    return len(answer["put"]) + hold_drawings(of, case, answer, expected, said)


def hold_drawings(of: Subject, case: Case, answer: dict, expected, said: str) -> int:
    own = drawings(of.booklet.handouts[of.names.index(case.size)])
    pieces, steps = drawings(expected)
    shown = answer["pieces"] or [as_data(each) for each in own[0]]
    assert shown != "lost", said
    hold_alike(shown, [as_data(each) for each in pieces], said)
    for drawn, mine, theirs in zip(answer["steps"], own[1], steps, strict=True):
        assert drawn != "lost", said
        hold_alike(drawn[0] if drawn else as_data(mine), as_data(theirs), said)
    return len(shown) + len(steps)


def hold_alike(shown, expected, said: str) -> None:
    """Words and kinds are the same, places within a twentieth of a millimetre of the page."""
    if isinstance(expected, dict):
        for key, value in expected.items():
            hold_alike(shown[key], value, said)
    elif isinstance(expected, list):
        assert len(shown) == len(expected), (said, shown, expected)
        for one, other in zip(shown, expected, strict=True):
            hold_alike(one, other, said)
    elif isinstance(expected, float | int) and not isinstance(expected, bool):
        assert abs(shown - expected) <= 0.05, (said, shown, expected)
    else:
        assert shown == expected, said


def read(text: str) -> Fraction:
    whole, _, part = text.rpartition(" ")
    return Fraction(whole or 0) + Fraction(part)
