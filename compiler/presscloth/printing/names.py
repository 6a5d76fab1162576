"""Names for files and ids, and words for dates."""

from __future__ import annotations

import re
import unicodedata

from presscloth import tongue

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
    """`2027-05` as `May 2027`, in the language of the page; anything else as it stands."""
    found = RELEASE.fullmatch(release)
    return tongue.month(int(found[1]), int(found[2])) if found else release


def day(date: str) -> str:
    """`2027-06-14` as `14 June 2027`, in the language of the page; anything else as it stands."""
    release, _, number = date.rpartition("-")
    if RELEASE.fullmatch(release) is None or not number.isdecimal():
        return date
    return tongue.say("{day} {month}", day=int(number), month=month(release))
