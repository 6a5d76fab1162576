"""Words as they are searched for: without capitals and accents, cut at whatever is no letter or figure."""

from __future__ import annotations

import re
import unicodedata

ALIKE = {
    "ß": "ss",
    "æ": "ae",
    "œ": "oe",
    "ø": "o",
    "đ": "d",
    "ð": "d",
    "þ": "th",
    "ł": "l",
    "ı": "i",
    "ς": "σ",
}
"""Letters that no accent can be taken off, and what is typed instead. The page gets this table too."""

_WORD = re.compile(r"[^\W_]+")


def folded(text: str) -> str:
    """A text as it is compared: `Bésom Crème` as `besom creme`.

    Compatibility forms are taken apart (Unicode Standard Annex 15, NFKD) before the capitals go.
    """
    apart = unicodedata.normalize("NFKD", text).lower()
    bare = "".join(sign for sign in apart if not unicodedata.category(sign).startswith("M"))
    return "".join(ALIKE.get(sign, sign) for sign in bare)


def words_of(text: str) -> tuple[str, ...]:
    """The folded words of a text in order."""
    return tuple(_WORD.findall(folded(text)))
