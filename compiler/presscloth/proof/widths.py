"""Every piece fits into the cloth from which it is cut. Only widths are held here; nothing is laid out."""

from __future__ import annotations

from collections.abc import Iterator

from presscloth.cutting.parts import Part, lies_of
from presscloth.cutting.pieces import length_of, part_of
from presscloth.cutting.terms import Terms, has
from presscloth.edition import CutPiece, Edition, Evaluator
from presscloth.measure import Kind, Quantity, System, printed
from presscloth.problems import Label, Problem
from presscloth.recipe.materials import BY_LENGTH, FIXED, LAID_OUT
from presscloth.recipe.tree import Material, NoteKind


class WiderThanCloth(Problem):
    """A piece is wider than the cloth from which it is cut, or longer than a sheet of it.

    No length of that cloth holds it. The trade joins two lengths, turns the grain where the cloth
    allows it, or takes wider cloth.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width           | Height        |
        |-------|------|-----|-----------------|---------------|
        | cloth | A    | 1   | 150 cm (59 in)  | 30 cm (12 in) |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width           | Height         |
        |-------|------|-----|-----------------|----------------|
        | cloth | A    | 1   | 30 cm (12 in)   | 150 cm (59 in) |
    """

    piece: str
    takes: str
    material: str
    has: str
    turns: bool

    def message(self) -> str:
        return f"`{self.piece}` takes {self.takes}, and {self.material} is {self.has}"

    def hint(self) -> str:
        if self.turns:
            return "note `any grain` or give the grain as `across`, join two lengths, or take wider cloth"
        return "join two lengths with a seam, or take wider cloth"


class LongerThanTape(Problem):
    """A piece of tape is longer than the lengths in which the tape is sold, and no joins are allowed.

    Fails:

        ## Materials
        | Key | Material    | Form   | Width          | Length        | Sold by        |
        |-----|-------------|--------|----------------|---------------|----------------|
        | A   | Cotton      | fabric | 110 cm (43 in) |               | 10 cm (1/8 yd) |
        | B   | Bias tape   | tape   |                | 90 cm (36 in) | 1              |

        ## Pieces
        | Piece | From | Cut | Width         | Height          |
        |-------|------|-----|---------------|-----------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in)   |
        | edge  | B    | 1   |               | 130 cm (52 in)  |

        ## Steps
        1. Sew the tape on and hem the cloth.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           attach edge to cloth
           finish cloth
           ```

    Passes:

        ## Materials
        | Key | Material    | Form   | Width          | Length        | Sold by        | Notes         |
        |-----|-------------|--------|----------------|---------------|----------------|---------------|
        | A   | Cotton      | fabric | 110 cm (43 in) |               | 10 cm (1/8 yd) |               |
        | B   | Bias tape   | tape   |                | 90 cm (36 in) | 1              | joins allowed |

        ## Pieces
        | Piece | From | Cut | Width         | Height          |
        |-------|------|-----|---------------|-----------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in)   |
        | edge  | B    | 1   |               | 130 cm (52 in)  |

        ## Steps
        1. Sew the tape on and hem the cloth.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           attach edge to cloth
           finish cloth
           ```
    """

    piece: str
    length: str
    material: str
    sold: str

    def message(self) -> str:
        return f"`{self.piece}` is {self.length} long, and {self.material} is sold in lengths of {self.sold}"

    def hint(self) -> str:
        return "note `joins allowed` at the material, or take one that is sold in longer lengths"


def hold(edition: Edition, evaluator: Evaluator) -> Iterator[Problem]:
    """Hold every piece against the width of its cloth, or the size of a sheet, in each system."""
    terms = Terms(evaluator)
    for material in edition.recipe.materials:
        for piece in edition.pieces:
            if material.key in piece.keys:
                problem = _held(piece, material, terms, edition.recipe.front.systems)
                if problem is not None:
                    yield problem.in_size(edition.size.name)


def _held(piece: CutPiece, material: Material, terms: Terms, systems: tuple[System, ...]) -> Problem | None:
    """What is wrong in the first system in which something is; the others would tell the same."""
    for system in systems:
        if material.form in LAID_OUT:
            problem = _on_cloth(piece, material, terms, system)
        elif material.form in BY_LENGTH:
            problem = _of_tape(piece, material, terms, system)
        else:
            problem = None
        if problem is not None:
            return problem
    return None


def _on_cloth(piece: CutPiece, material: Material, terms: Terms, system: System) -> Problem | None:
    cloth, width = terms.cloth(material, system), terms.width(material)
    part = None if cloth is None else part_of(piece, piece.count, cloth, system)
    if cloth is None or width is None or part is None:
        return None
    sheet = terms.length(material) if material.form in FIXED else None
    long = None if sheet is None else terms.usable_length(material, system)
    if any(across <= cloth.width and (long is None or along <= long) for across, along in lies_of(part)):
        return None
    size = printed(width, system).text
    return WiderThanCloth(
        span=piece.span,
        piece=piece.name,
        takes=_across(part, system) if sheet is None else _both(part, system),
        material=material.name,
        has=f"{size} wide" if sheet is None else f"{size} wide and {printed(sheet, system).text} long",
        turns=not part.turnable
        and not cloth.one_way
        and part.height <= cloth.width
        and (long is None or part.width <= long),
        labels=(Label(material.span, "the cloth"),),
        systems=(system.value,),
    )


def _across(part: Part, system: System) -> str:
    return f"{_said(min(across for across, _ in lies_of(part)), system)} across"


def _both(part: Part, system: System) -> str:
    return f"{_said(part.width, system)} across and {_said(part.height, system)} along"


def _said(units: int, system: System) -> str:
    value = length_of(units, system)
    return printed(Quantity(Kind.LENGTH, value, value), system).text


def _of_tape(piece: CutPiece, material: Material, terms: Terms, system: System) -> Problem | None:
    sold, side = terms.length(material), piece.height or piece.width
    if sold is None or side is None or has(material, NoteKind.JOINS_ALLOWED):
        return None
    if side[system] <= sold[system]:
        return None
    return LongerThanTape(
        span=piece.span,
        piece=piece.name,
        length=printed(side, system).text,
        material=material.name,
        sold=printed(sold, system).text,
        labels=(Label(material.span, "the tape"),),
        systems=(system.value,),
    )
