"""Transform the table under Pieces into pieces."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from presscloth.problems import Problem, Problems
from presscloth.recipe.definitions import NameNotAllowed, ReadInlines, measured
from presscloth.recipe.expression import Name
from presscloth.recipe.leads import names_in_list
from presscloth.recipe.lost import cause
from presscloth.recipe.markdown import TableBlock
from presscloth.recipe.materials import BY_LENGTH, LAID_OUT
from presscloth.recipe.notes import PIECE_NOTES, read_notes
from presscloth.recipe.reckoning import expression
from presscloth.recipe.tables import Row, needed_cell, read_rows
from presscloth.recipe.tree import Definition, Form, Grain, Material, NoteKind, Piece, Shape
from presscloth.recipe.words import nearest, why_no_name
from presscloth.source import Passage, Span

_OUTLINE = re.compile(r"outline(?: +(.+))?", re.IGNORECASE)
BY_OUTLINE = "cut by its outline"
_EMPTY = ("", "–", "-", "—")


class MaterialUnknown(Problem):
    """A piece is cut from a key that no material has.

    Nobody can cut it, and its cloth would not be bought.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A, Q | 1   | 30 cm (12 in) | 30 cm (12 in) |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
    """

    key: str
    known: tuple[str, ...]

    def message(self) -> str:
        return f"no material has the key `{self.key}`"

    def hint(self) -> str:
        if not self.known:
            return "list the material under Materials"
        return f"the keys are {', '.join(self.known)}; list the material, or correct the key"


class SideMissing(Problem):
    """A piece has no size in a direction in which it must be cut.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) |               |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
    """

    piece: str
    side: str

    def message(self) -> str:
        return f"`{self.piece}` has no {self.side}"

    def hint(self) -> str:
        return f"write the {self.side} to cut, seam allowances included"


class SideLeftOver(Problem):
    """A tape, a zip or a round piece is given two sizes, or one with an outline any.

    A tape or a zip has a length only, a circle its diameter, a notion none; what is cut by an outline
    has its sizes from there. A size too many would be printed nowhere.

    Fails:

        ## Materials
        | Key | Material    | Form   | Width          | Sold by        |
        |-----|-------------|--------|----------------|----------------|
        | A   | Cotton      | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
        | B   | Cotton tape | tape   |                | 10 cm (1/8 yd) |

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | loop  | B    | 1   | 2 cm (3/4 in) | 10 cm (4 in)  |

        ## Steps
        1. Hem the cloth all round by {1.2 cm (1/2 in)} twice and sew on the loop.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           attach loop to cloth
           finish cloth
           ```

    Passes:

        ## Materials
        | Key | Material    | Form   | Width          | Sold by        |
        |-----|-------------|--------|----------------|----------------|
        | A   | Cotton      | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
        | B   | Cotton tape | tape   |                | 10 cm (1/8 yd) |

        ## Pieces
        | Piece | From | Cut | Width         | Height        |
        |-------|------|-----|---------------|---------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |
        | loop  | B    | 1   |               | 10 cm (4 in)  |

        ## Steps
        1. Hem the cloth all round by {1.2 cm (1/2 in)} twice and sew on the loop.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           attach loop to cloth
           finish cloth
           ```
    """

    piece: str
    what: str

    def message(self) -> str:
        if self.what == BY_OUTLINE:
            return f"`{self.piece}` is {self.what}, which says how large it is, and has a size besides"
        return f"`{self.piece}` is {self.what} and has two sizes"

    def hint(self) -> str:
        if self.what == BY_OUTLINE:
            return "leave both cells empty"
        return "leave one of the two cells empty"


class OutlineOfLength(Problem):
    """A piece is cut by an outline, from something that is no cloth.

    A tape, an elastic and a zip are cut to a length, and a notion is not cut at all; there is nothing to lay
    a template on.

    Fails:

        ## Materials
        | Key | Material    | Form   | Width          | Sold by        |
        |-----|-------------|--------|----------------|----------------|
        | A   | Cotton      | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
        | B   | Cotton tape | tape   |                | 10 cm (1/8 yd) |

        ## Outlines

        ### leaf
        - right 6 cm (2 3/8 in) as vein, arched by 2 cm (3/4 in)
        - back to the start as rim

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Shape        |
        |-------|------|-----|---------------|---------------|--------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |              |
        | loop  | B    | 1   |               |               | outline leaf |

        ## Steps
        1. Hem the cloth and sew on the loop.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           attach loop to cloth
           finish cloth
           ```

    Passes:

        ## Outlines

        ### leaf
        - right 6 cm (2 3/8 in) as vein, arched by 2 cm (3/4 in)
        - back to the start as rim

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Shape        |
        |-------|------|-----|---------------|---------------|--------------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) |              |
        | loop  | A    | 1   |               |               | outline leaf |

        ## Steps
        1. Hem the cloth and sew on the loop.

           ```sew
           hem all of cloth by 1.2 cm (1/2 in) twice
           attach loop to cloth
           finish cloth
           ```
    """

    piece: str
    form: str

    def message(self) -> str:
        return f"`{self.piece}` is cut by an outline, but what it is cut from is listed as `{self.form}`"

    def hint(self) -> str:
        return "cut it from a cloth, or leave Shape empty and give its length"


class WordUnknown(Problem):
    """A cell that chooses among a few words holds another one.

    Fails:

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Shape  |
        |-------|------|-----|---------------|---------------|--------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) | square |

    Passes:

        ## Pieces
        | Piece | From | Cut | Width         | Height        | Shape     |
        |-------|------|-----|---------------|---------------|-----------|
        | cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in) | rectangle |
    """

    column: str
    word: str
    known: tuple[str, ...]

    def message(self) -> str:
        return f"`{self.word}` is no {self.column.lower()}"

    def hint(self) -> str:
        meant = nearest(self.word, self.known)
        return f"write `{meant}`" if meant else f"write one of: {', '.join(self.known)}"


def read_pieces(
    table: TableBlock,
    materials: Mapping[str, Material],
    lost: Sequence[Span],
    inlines: ReadInlines,
    problems: Problems,
) -> tuple[Piece, ...]:
    """The pieces; a row that cannot be read is reported and left out.

    `lost` are the materials' rows that were left out.
    """
    rows = read_rows(
        table,
        "Pieces",
        ("Piece", "From", "Cut"),
        ("Width", "Height", "Shape", "Sizes", "Grain", "Allowance", "Notes"),
        problems,
    )
    found = (_piece(row, materials, lost, inlines, problems) for row in rows)
    return tuple(piece for piece in found if piece is not None)


def _piece(
    row: Row,
    materials: Mapping[str, Material],
    lost: Sequence[Span],
    inlines: ReadInlines,
    problems: Problems,
) -> Piece | None:
    name_cell = needed_cell(row, "Piece", "this piece", problems)
    from_cell = needed_cell(row, "From", row.text("Piece"), problems)
    cut_cell = needed_cell(row, "Cut", row.text("Piece"), problems)
    if name_cell is None or from_cell is None or cut_cell is None:
        return None
    name = Name(" ".join(name_cell.text.split()), name_cell.span())
    why = why_no_name(name.text)
    if why is not None:
        problems.add(NameNotAllowed(span=name.span, name=name.text, why=why))
        return None
    keys = _keys(from_cell, materials, lost, problems)
    shape, outline = _shape(row, name.text, problems)
    sizes = row.cells.get("Sizes")
    notes_cell = row.cells.get("Notes")
    notes = read_notes(notes_cell, PIECE_NOTES, inlines, problems) if notes_cell else ()
    allowance = row.cells.get("Allowance")
    piece = Piece(
        name=name,
        keys=keys,
        cut=expression(cut_cell, problems),
        width=_side(row, "Width", name, problems),
        height=_side(row, "Height", name, problems),
        shape=shape,
        outline=outline,
        grain=_grain(row, any(note.kind is NoteKind.ANY_GRAIN for note in notes), problems),
        allowance=expression(allowance, problems) if allowance and allowance.text not in _EMPTY else None,
        sizes=names_in_list(sizes) or None if sizes and sizes.text not in _EMPTY else None,
        notes=notes,
        span=row.span,
    )
    has_its_sides = _hold_sides(piece, row, [materials[key.text].form for key in keys], problems)
    return piece if has_its_sides else None


def _keys(
    cell: Passage, materials: Mapping[str, Material], lost: Sequence[Span], problems: Problems
) -> tuple[Name, ...]:
    keys = names_in_list(cell)
    for key in keys:
        if key.text not in materials:
            because = cause(key.text, lost)
            problems.add(MaterialUnknown(span=key.span, key=key.text, known=tuple(materials), cause=because))
    return tuple(key for key in keys if key.text in materials)


def _side(row: Row, column: str, piece: Name, problems: Problems) -> Definition | None:
    cell = row.cells.get(column)
    if cell is None or cell.text.strip() in _EMPTY:
        return None
    return measured(Name(f"{column.lower()} of {piece.text}", piece.span), cell, (), cell.span(), problems)


def _shape(row: Row, piece: str, problems: Problems) -> tuple[Shape, str | None]:
    """The shape, and the outline's name, which is the piece's own where the cell gives none."""
    cell = row.cells.get("Shape")
    if cell is None or cell.text.strip() in _EMPTY:
        return Shape.RECTANGLE, None
    if match := _OUTLINE.fullmatch(cell.text):
        return Shape.OUTLINE, " ".join((match[1] or piece).split())
    for shape in Shape:
        if cell.text.casefold() == shape.value and shape is not Shape.OUTLINE:
            return shape, None
    known = (*(shape.value for shape in Shape if shape is not Shape.OUTLINE), "outline NAME")
    problems.add(WordUnknown(span=cell.span(), column="Shape", word=cell.text, known=known))
    return Shape.RECTANGLE, None


def _grain(row: Row, any_grain: bool, problems: Problems) -> Grain:
    cell = row.cells.get("Grain")
    if cell is None or cell.text.strip() in _EMPTY:
        return Grain.ANY if any_grain else Grain.ALONG
    for grain in Grain:
        if cell.text.casefold() == grain.value:
            return grain
    known = tuple(grain.value for grain in Grain)
    problems.add(WordUnknown(span=cell.span(), column="Grain", word=cell.text, known=known))
    return Grain.ALONG


def _hold_sides(piece: Piece, row: Row, forms: list[Form], problems: Problems) -> bool:
    """Demand the sizes that the material's form and the shape call for, and no others.

    A size too many is reported and left alone; without one that is wanted there is no piece.
    """
    missing = _missing_side(piece, forms)
    flat = [form for form in forms if form in LAID_OUT]
    if missing is not None:
        place = row.place("Width" if missing == "width" else "Height")
        problems.add(SideMissing(span=place, piece=piece.name.text, side=missing))
    elif piece.shape is Shape.OUTLINE and forms and not flat:
        place = row.place("Shape")
        problems.add(OutlineOfLength(span=place, piece=piece.name.text, form=forms[0].value))
    elif piece.shape is Shape.OUTLINE and (piece.width is not None or piece.height is not None):
        column = "Height" if piece.width is None else "Width"
        problems.add(SideLeftOver(span=row.place(column), piece=piece.name.text, what=BY_OUTLINE))
    elif piece.width is not None and piece.height is not None:
        laid_out = bool(flat)
        name, second = piece.name.text, row.place("Height")
        if laid_out and piece.shape is Shape.CIRCLE:
            problems.add(SideLeftOver(span=second, piece=name, what="a circle"))
        elif not laid_out and any(form in BY_LENGTH for form in forms):
            problems.add(SideLeftOver(span=second, piece=name, what="cut from a length"))
    return missing is None


def _missing_side(piece: Piece, forms: list[Form]) -> str | None:
    if piece.shape is Shape.OUTLINE:
        return None
    if any(form in LAID_OUT for form in forms):
        if piece.width is None:
            return "width"
        return "height" if piece.height is None and piece.shape is Shape.RECTANGLE else None
    if any(form in BY_LENGTH for form in forms):
        return "length" if piece.width is None and piece.height is None else None
    return None
