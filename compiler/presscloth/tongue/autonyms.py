"""What languages are called by those who speak them."""

from __future__ import annotations

from functools import cache


@cache
def autonym(language: str) -> str:
    """A language's own name for itself: `Deutsch` for `de` and `de-AT`; its tag where CLDR knows none."""
    from babel import Locale, UnknownLocaleError

    try:
        name = Locale.parse(language, sep="-").get_language_name()
    except (UnknownLocaleError, ValueError):
        return language
    return str(name[:1].upper() + name[1:]) if name else language
