"""Materials: every one is used, and their letters run on."""

from __future__ import annotations

from collections.abc import Iterator
from string import ascii_uppercase
from typing import ClassVar

from presscloth.problems import Problem, Severity
from presscloth.proof.subject import Subject
from presscloth.recipe.lost import cause
from presscloth.recipe.tree import Form, Material
from presscloth.source import Span

_NOT_LETTERS = "IO"
"""Letters that the trade leaves out, since they look like figures (common practice, no source)."""


class MaterialNotUsed(Problem):
    """A material is listed, and no piece is cut from it and no statement takes it.

    Somebody would buy it for nothing, or a piece is missing.

    Fails:

        ## Materials
        | Key | Material     | Form   | Width          | Sold by        |
        |-----|--------------|--------|----------------|----------------|
        | A   | Cotton       | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
        | B   | Linen        | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |

    Passes:

        ## Materials
        | Key | Material     | Form   | Width          | Sold by        |
        |-----|--------------|--------|----------------|----------------|
        | A   | Cotton       | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
    """

    key: str
    material: str

    def message(self) -> str:
        return f"nothing is made of {self.key}, {self.material}"

    def hint(self) -> str:
        return f"take the row out, or cut a piece from `{self.key}`"


class LettersMissing(Problem):
    """The materials' letters leave one out.

    A reader looks for the missing material. (I and O may be left out, as the trade does.)

    Fails:

        ## Materials
        | Key | Material | Form   | Width          | Sold by        |
        |-----|----------|--------|----------------|----------------|
        | A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
        | C   | Button   | notion |                | 1              |

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | cloth  | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | button | C    | 1   |               |               |

        ## Steps
        1. Hem the cloth and sew on the button.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           attach button to cloth
           finish cloth
           ```

    Passes:

        ## Materials
        | Key | Material | Form   | Width          | Sold by        |
        |-----|----------|--------|----------------|----------------|
        | A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
        | B   | Button   | notion |                | 1              |

        ## Pieces
        | Piece  | From | Cut | Width         | Height        |
        |--------|------|-----|---------------|---------------|
        | cloth  | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | button | B    | 1   |               |               |

        ## Steps
        1. Hem the cloth and sew on the button.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           attach button to cloth
           finish cloth
           ```
    """

    severity: ClassVar[Severity] = Severity.WARNING
    missing: tuple[str, ...]

    def message(self) -> str:
        if len(self.missing) == 1:
            return f"no material has the letter {self.missing[0]}, though a later one is used"
        return f"no material has the letters {', '.join(self.missing)}, though a later one is used"

    def hint(self) -> str:
        return "let the letters run on, or list what is missing"


def check(subject: Subject) -> Iterator[Problem]:
    """Every material is used in some size, and the letters run on without a gap."""
    yield from _unused(subject)
    yield from _gaps(subject.recipe.materials, subject.recipe.lost)


def _unused(subject: Subject) -> Iterator[Problem]:
    recipe = subject.recipe
    used = {key.text for piece in recipe.pieces for key in piece.keys} | subject.keys_in_statements
    for material in recipe.materials:
        if material.key not in used and material.form is not Form.THREAD:
            because = cause(material.key, recipe.lost)
            yield MaterialNotUsed(span=material.span, key=material.key, material=material.name, cause=because)


def _gaps(materials: tuple[Material, ...], lost: tuple[Span, ...]) -> Iterator[Problem]:
    single = sorted((m for m in materials if len(m.key) == 1), key=lambda material: material.key)
    if not single:
        return
    keys = {material.key for material in single}
    before = ascii_uppercase[: ascii_uppercase.index(single[-1].key)]
    missing = tuple(letter for letter in before if letter not in keys and letter not in _NOT_LETTERS)
    if missing:
        after = next(m for m in single if m.key > missing[0])
        because = next((place for letter in missing if (place := cause(letter, lost))), None)
        yield LettersMissing(span=after.key_span, missing=missing, cause=because)
