"""The usual cautions, called for by tools, materials and audience.

They follow common practice (no source) and defer to the maker's own machine, product and workshop:
what those say comes first.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from presscloth.frozen import dataclass
from presscloth.handout.tree import Caution
from presscloth.recipe.prose import plain
from presscloth.recipe.tree import Audience, Form, Material, Recipe

LOCAL_RULES = (
    "These come first: follow the instructions of your machine, tools and materials, and the rules "
    "of the room where you work, wherever they differ from what is printed here."
)


@dataclass(frozen=True, slots=True)
class _ByTool:
    """A caution that a tool calls for when its words are found among the tools or the steps."""

    words: str
    about: str
    text: str


_BY_TOOL = (
    _ByTool(
        r"rotary cutter|craft knife|blade|scalpel",
        "Blades",
        "Cut on a mat, away from the hand that holds the ruler. Close the blade every time you put it "
        "down, and change it when it drags.",
    ),
    _ByTool(
        r"scissors|shears|snips|seam ripper|unpicker|stitch ripper",
        "Scissors and unpickers",
        "Keep points closed or capped while you do not use them, and pass them handle first.",
    ),
    _ByTool(
        r"\biron\b|ironing|pressing|heat press|fusible|fuse\b",
        "Irons",
        "An iron and its steam burn. Keep the flex out of the way, stand the iron on its rest, and switch "
        "it off when you leave the room. Try heat and steam on a scrap first.",
    ),
    _ByTool(
        r"sewing machine|embroidery unit|embroidery machine|overlocker|serger|walking foot",
        "Machines",
        "Keep fingers away from the moving needle, and switch off before you change needle, foot or "
        "bobbin. Never sew over pins.",
    ),
    _ByTool(
        r"spray adhesive|basting spray|adhesive spray|fabric glue|spray glue",
        "Spray adhesive",
        "Use it only with plenty of fresh air and away from flames, and read the can first; it can "
        "harm lungs and eyes. Do not spray near children or the machine.",
    ),
    _ByTool(
        r"\bpins?\b|hand needle|hand-sewing needle|\bneedles\b",
        "Pins and needles",
        "Count pins and needles before and after, and throw broken ones away in a closed container.",
    ),
)

_BY_FORM = {
    Form.ZIP: Caution(
        "Zips",
        "A needle that meets the teeth or the stop of a zip can break and fly. Turn the wheel by hand "
        "there, and wear eye protection.",
    ),
}

_SMALL_PART = re.compile(
    r"button|bead|snap|stud|toggle|eye\b|magnet|rivet|bell\b|buckle|ring\b", re.IGNORECASE
)
_CORD = re.compile(r"cord|string|ribbon|tie\b|ties\b|lace|strap", re.IGNORECASE)


def cautions(recipe: Recipe, materials: tuple[Material, ...], audience: Audience) -> tuple[Caution, ...]:
    """The cautions for one size: `materials` are those that the size uses.

    Tools are looked for among the tools; a form calls for its own; small parts, cords and loose
    filling call for one where the article is for a child or a baby.
    """
    found = tuple(_found(recipe, materials, audience))
    return (Caution("Local rules", LOCAL_RULES), *found) if found else ()


def _found(recipe: Recipe, materials: tuple[Material, ...], audience: Audience) -> Iterator[Caution]:
    tools = "; ".join(plain(tool) for tool in recipe.tools) + "; " + "; ".join(m.name for m in materials)
    for by_tool in _BY_TOOL:
        if re.search(by_tool.words, tools, re.IGNORECASE):
            yield Caution(by_tool.about, by_tool.text)
    for form, caution in _BY_FORM.items():
        if any(material.form is form for material in materials):
            yield caution
    if audience is not Audience.ADULT:
        yield from _for_children(materials, audience)


def _for_children(materials: tuple[Material, ...], audience: Audience) -> Iterator[Caution]:
    who = "a baby" if audience is Audience.BABY else "a child"
    if any(m.form is Form.TAPE or _CORD.search(m.name) for m in materials):
        yield Caution(
            "Cords and ties",
            f"This article is for {who}. Cords, ties and loops can strangle or catch: keep them as short as "
            "the handout says or shorter, leave none at the neck that cannot come apart, and follow the "
            "rules on cords in children's things where you live.",
        )
    if any(m.form is Form.NOTION and _SMALL_PART.search(m.name) for m in materials):
        yield Caution(
            "Small parts",
            f"This article is for {who}. Small parts can be swallowed: fix each so that it cannot be pulled "
            "off, check it again after every wash, or leave it out. Follow the rules where you live.",
        )
    if any(m.form is Form.FILLING for m in materials):
        yield Caution(
            "Filling",
            f"This article is for {who}. Sew the filling in twice, so that none can come out.",
        )
    if audience is Audience.BABY:
        yield Caution(
            "Sleep",
            "Keep soft and loose things out of the place where a baby sleeps; follow the advice of your "
            "health service.",
        )
