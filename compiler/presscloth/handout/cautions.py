"""The usual cautions, called for by tools, materials and audience.

They follow common practice (no source) and defer to the maker's own machine, product and workshop:
what those say comes first.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from presscloth.handout import caution_words as words
from presscloth.handout.tree import Caution
from presscloth.recipe.prose import plain
from presscloth.recipe.tree import Audience, Form, Material, Recipe
from presscloth.tongue import named, say


def cautions(recipe: Recipe, materials: tuple[Material, ...], audience: Audience) -> tuple[Caution, ...]:
    """The cautions for one size: `materials` are those that the size uses.

    Tools are looked for among the tools; a form calls for its own; small parts, cords and loose
    filling call for one where the article is for a child or a baby.
    """
    found = tuple(_found(recipe, materials, audience))
    return (Caution(say("Local rules"), _local_rules()), *found) if found else ()


def _local_rules() -> str:
    return say(
        "These come first: follow the instructions of your machine, tools and materials, and the rules "
        "of the room where you work, wherever they differ from what is printed here."
    )


def _found(recipe: Recipe, materials: tuple[Material, ...], audience: Audience) -> Iterator[Caution]:
    language = recipe.front.language
    tools = "; ".join((*map(plain, recipe.tools), *(named(material.name) for material in materials)))
    for kind, caution in _BY_TOOL.items():
        if words.pattern(kind, language).search(tools):
            yield caution()
    if any(material.form is Form.ZIP for material in materials):
        yield _zips()
    if audience is not Audience.ADULT:
        yield from _for_children(materials, audience, language)


def _blades() -> Caution:
    return Caution(
        say("Blades"),
        say(
            "Cut on a mat, away from the hand that holds the ruler. Close the blade every time you put it "
            "down, and change it when it drags."
        ),
    )


def _scissors() -> Caution:
    return Caution(
        say("Scissors and unpickers"),
        say("Keep points closed or capped while you do not use them, and pass them handle first."),
    )


def _irons() -> Caution:
    return Caution(
        say("Irons"),
        say(
            "An iron and its steam burn. Keep the flex out of the way, stand the iron on its rest, and "
            "switch it off when you leave the room. Try heat and steam on a scrap first."
        ),
    )


def _machines() -> Caution:
    return Caution(
        say("Machines"),
        say(
            "Keep fingers away from the moving needle, and switch off before you change needle, foot or "
            "bobbin. Never sew over pins."
        ),
    )


def _sprays() -> Caution:
    return Caution(
        say("Spray adhesive"),
        say(
            "Use it only with plenty of fresh air and away from flames, and read the can first; it can "
            "harm lungs and eyes. Do not spray near children or the machine."
        ),
    )


def _needles() -> Caution:
    return Caution(
        say("Pins and needles"),
        say("Count pins and needles before and after, and throw broken ones away in a closed container."),
    )


def _zips() -> Caution:
    return Caution(
        say("Zips"),
        say(
            "A needle that meets the teeth or the stop of a zip can break and fly. Turn the wheel by hand "
            "there, and wear eye protection."
        ),
    )


_BY_TOOL: Mapping[str, Callable[[], Caution]] = {
    words.BLADES: _blades,
    words.SCISSORS: _scissors,
    words.IRONS: _irons,
    words.MACHINES: _machines,
    words.SPRAYS: _sprays,
    words.NEEDLES: _needles,
}
"""Cautions that a tool calls for, when it is found among the tools or the materials."""


def _for_children(materials: tuple[Material, ...], audience: Audience, language: str) -> Iterator[Caution]:
    baby = audience is Audience.BABY
    made_for = say("This article is for a baby.") if baby else say("This article is for a child.")
    cords, small_parts = (words.pattern(kind, language) for kind in (words.CORDS, words.SMALL_PARTS))
    if any(m.form is Form.TAPE or cords.search(named(m.name)) for m in materials):
        yield Caution(
            say("Cords and ties"),
            f"{made_for} "
            + say(
                "Cords, ties and loops can strangle or catch: keep them as short as the handout says or "
                "shorter, leave none at the neck that cannot come apart, and follow the rules on cords in "
                "children's things where you live."
            ),
        )
    if any(m.form is Form.NOTION and small_parts.search(named(m.name)) for m in materials):
        yield Caution(
            say("Small parts"),
            f"{made_for} "
            + say(
                "Small parts can be swallowed: fix each so that it cannot be pulled off, check it again "
                "after every wash, or leave it out. Follow the rules where you live."
            ),
        )
    if any(m.form is Form.FILLING for m in materials):
        yield Caution(
            say("Filling"),
            f"{made_for} " + say("Sew the filling in twice, so that none can come out."),
        )
    if baby:
        yield Caution(
            say("Sleep"),
            say(
                "Keep soft and loose things out of the place where a baby sleeps; follow the advice of your "
                "health service."
            ),
        )
