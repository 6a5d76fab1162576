"""Whatever the reader chooses, the page says what the compiler says of a recipe that states it.

The promise is the language reference's own: what is `yours to choose` is worked out by the same rules.
"""

from __future__ import annotations

import os
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
    worked_anew,
)
from choices.recipes import FILLED, POCKETS, TIES

from presscloth.choices import take
from presscloth.handout.choosing import Choice
from presscloth.handout.tree import Booklet, Handout
from presscloth.measure import System
from presscloth.pipeline import Proved
from presscloth.printing.html import html

RECIPES = Path(__file__).parents[2] / "recipes"
SHIPPED = sorted(
    path.parent.name for path in RECIPES.glob("*/recipe.md") if "yours to choose" in path.read_text("utf-8")
)
SMALL = {"ties": TIES, "pockets": POCKETS, "filled": FILLED}

TIMES = int(os.environ.get("PRESSCLOTH_CHOICES", "1"))
AT_ONCE = 250


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
    stated = {offer.name: of.stated(offer, each) for offer, each in zip(offers, taken(of, case), strict=True)}
    found = stating(of, tuple(stated.items()))
    wrong = errors(found, case.size)
    if wrong:
        return answer_holds(of, case, answer, wrong, "")
    handouts = list(of.booklet.handouts)
    handouts[of.names.index(case.size)] = expected = handout(found.sizes[of.names.index(case.size)])
    return answer_holds(of, case, answer, expected, html(Booklet(tuple(handouts)), THEME, PUBLISHER))


@pytest.mark.parametrize("name", [*SMALL, *SHIPPED])
def test_thousands_of_choices_are_those_of_sizes_worked_out_anew(name):
    """All sizes of a page at once, some 250 choices of each recipe; the page answers all of them in one go.

    `python -m presscloth.dev choices 10` tries ten times as many.
    """
    of = subject(name)
    random = Random(f"{name} anew")
    rounds = TIMES * -(-AT_ONCE // len(of.names))
    pages = [[Case(size, typed(of, size, random)) for size in of.names] for _ in range(rounds)]
    answers = of.says([case for page in pages for case in page])
    each = iter(answers)
    compared = sum(page_holds(of, page, [next(each) for _ in page]) for page in pages)
    assert compared > AT_ONCE * TIMES
    lost = [answer for answer in answers if "lost" in answer]
    assert len(lost) <= len(answers) / 100
    assert not lost or "sqrt(" in of.text  # where a root happens to be exact, which has a way of its own


def page_holds(of: Subject, cases: list[Case], answers: list[dict]) -> int:
    """Hold the answers for all sizes of a page against the page of what was worked out anew."""
    found = [worked_anew(of, case, taken(of, case)) for case in cases]
    own = zip(of.booklet.handouts, found, strict=True)
    page = html(Booklet(tuple(mine if isinstance(new, list) else new for mine, new in own)), THEME, PUBLISHER)
    triples = zip(cases, answers, found, strict=True)
    return sum(answer_holds(of, case, answer, new, page) for case, answer, new in triples)


def answer_holds(of: Subject, case: Case, answer: dict, expected: Handout | list[str], page: str) -> int:
    """Hold one answer against a handout and its page, or against what is wrong; how much was compared."""
    if "lost" in answer:
        return 0
    said = f"{case.size}: {case.typed}"
    if isinstance(expected, list):
        assert answer.get("broken") == list(dict.fromkeys(expected)), said
        return len(expected)
    assert "broken" not in answer, (said, answer)
    assert filled(of, case, answer) == words_of(page, case.size), said
    return len(answer["put"]) + hold_drawings(of, case, answer, expected, said)


def taken(of: Subject, case: Case) -> Choice:
    """What was typed, as the compiler takes it."""
    pairs = zip(of.followable(case.size).offers, case.typed, strict=True)
    return tuple(
        take(offer, System(system), read(text) * offer.factor(System(system)))
        for offer, (system, text) in pairs
    )


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
