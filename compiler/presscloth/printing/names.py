"""Names for files and ids, and words for dates."""

from __future__ import annotations

import re
import unicodedata

MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip
RELEASE = re.compile(r"(\d{4})-(0[1-9]|1[0-2])")


def slug(words: str) -> str:
    """Words as part of an address: `Extra tall` becomes `extra-tall`; `size` where nothing is left."""
    plain = unicodedata.normalize("NFKD", words.casefold()).encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-") or "size"


def slugs(names: tuple[str, ...]) -> tuple[str, ...]:
    """A slug for each name, made different by a number where two would be the same."""
    taken: list[str] = []
    for name in names:
        wanted, number = slug(name), 2
        held = wanted
        while held in taken:
            held, number = f"{wanted}-{number}", number + 1
        taken.append(held)
    return tuple(taken)


def month(release: str) -> str:
    """`2027-05` as `May 2027`; anything else as it stands."""
    found = RELEASE.fullmatch(release)
    return f"{MONTHS[int(found[2]) - 1]} {found[1]}" if found else release
