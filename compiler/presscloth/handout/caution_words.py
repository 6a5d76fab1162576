"""The words among tools and materials that call for a caution, in each language that has a catalogue.

A recipe is searched for the words of its own language and for the English ones, since many a tool keeps
its English name. The lists are common practice and have no source.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache

BLADES, SCISSORS, IRONS, MACHINES, SPRAYS, NEEDLES = (
    "blades",
    "scissors",
    "irons",
    "machines",
    "sprays",
    "needles",
)
SMALL_PARTS, CORDS = "small parts", "cords"

ENGLISH: Mapping[str, str] = {
    BLADES: r"rotary cutter|craft knife|blade|scalpel",
    SCISSORS: r"scissors|shears|snips|seam ripper|unpicker|stitch ripper",
    IRONS: r"\biron\b|ironing|pressing|heat press|fusible|fuse\b",
    MACHINES: r"sewing machine|embroidery unit|embroidery machine|overlocker|serger|walking foot",
    SPRAYS: r"spray adhesive|basting spray|adhesive spray|fabric glue|spray glue",
    NEEDLES: r"\bpins?\b|hand needle|hand-sewing needle|\bneedles\b",
    SMALL_PARTS: r"button|bead|snap|stud|toggle|eye\b|magnet|rivet|bell\b|buckle|ring\b",
    CORDS: r"cord|string|ribbon|tie\b|ties\b|lace|strap",
}

GERMAN: Mapping[str, str] = {
    BLADES: r"rollschneider|cutter|klinge|bastelmesser|skalpell",
    SCISSORS: r"schere|nahttrenner|trennmesser|fadenschneider",
    IRONS: r"bügel(?!griff)|dampf|bügelpresse|transferpresse",
    MACHINES: r"nähmaschine|stickmaschine|stickmodul|overlock|coverlock|obertransport",
    SPRAYS: r"sprühkleber|sprühzeitkleber|klebespray|textilkleber|stoffkleber",
    NEEDLES: r"nadel",
    SMALL_PARTS: r"knopf|knöpfe|perle|druckknopf|druckknöpfe|knebel|auge\b|augen\b|magnet|niete|glöckchen"
    r"|schnalle|\w*ring\b|ringe\b|öse",
    CORDS: r"kordel|schnur|schnür|band\b|bänder\b|spitze|gurt|träger|bindeband",
}

BY_LANGUAGE: Mapping[str, Mapping[str, str]] = {"de": GERMAN}


@cache
def pattern(kind: str, language: str) -> re.Pattern[str]:
    """What calls for a kind of caution in a recipe of a language, whatever the capitals."""
    own = BY_LANGUAGE.get(language.lower().split("-")[0], {})
    return re.compile("|".join(words[kind] for words in (ENGLISH, own) if words), re.IGNORECASE)
