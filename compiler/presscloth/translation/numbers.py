"""Figures that are typed in a paragraph, held against those in its translation.

A figure is a run of digits with a point or a comma, a fraction or a time: `4:15`, `1/2`, `2.5`. A decimal
comma and a decimal point are the same here, and so are `½` and `1/2`. Numbers in words are held apart
(`number_words.py`).
"""

from __future__ import annotations

import re
import unicodedata
from collections import Counter

from presscloth.recipe.prose import Inline, Words
from presscloth.recipe.walking import inlines

_FIGURE = re.compile(r"\d+(?:[.,:/]\d+)*")


def figures(of: tuple[Inline, ...]) -> Counter[str]:
    """The figures in a run's words, measures in braces apart, as often as each stands there."""
    words = " ".join(each.text for each in inlines(of) if isinstance(each, Words))
    plain = unicodedata.normalize("NFKC", words).replace("\N{FRACTION SLASH}", "/")
    return Counter(found.replace(",", ".") for found in _FIGURE.findall(plain))
