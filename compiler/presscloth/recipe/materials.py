"""Transform the table under Materials into materials."""

from __future__ import annotations

import re

from presscloth.problems import Label, Problem, Problems
from presscloth.recipe.definitions import ReadInlines
from presscloth.recipe.expression import Expression
from presscloth.recipe.markdown import TableBlock
from presscloth.recipe.notes import MATERIAL_NOTES, read_notes
from presscloth.recipe.reckoning import expression
from presscloth.recipe.tables import Row, needed_cell, read_rows
from presscloth.recipe.tree import Form, Material
from presscloth.recipe.words import nearest
from presscloth.source import Span

LAID_OUT = (Form.FABRIC, Form.WADDING, Form.INTERFACING, Form.STABILISER, Form.SHEET, Form.FAT_QUARTER)
"""Forms whose quantity comes from a cutting layout; their pieces have a width and a height."""

BY_LENGTH = (Form.TAPE, Form.ELASTIC, Form.ZIP)
"""Forms whose pieces have a length only."""

FIXED = (Form.SHEET, Form.FAT_QUARTER)


class KeyUnclear(Problem):
    """A material's key is not a capital letter.

    The cutting list and the layouts name each material by its letter, as the trade letters a
    pattern. Use A, B, C …, and two capitals when the alphabet is used up.

    Fails:

        ## Materials
        | Key | Material | Form   | Width          | Sold by        |
        |-----|----------|--------|----------------|----------------|
        | a   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |

    Passes:

        ## Materials
        | Key | Material | Form   | Width          | Sold by        |
        |-----|----------|--------|----------------|----------------|
        | A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
    """

    key: str

    def message(self) -> str:
        return f"the key `{self.key}` is not a capital letter"

    def hint(self) -> str:
        return f"write `{self.key.upper()}`" if self.key.upper() != self.key else "use A, B, C …"


class MaterialTwice(Problem):
    """Two materials have the same key.

    A piece cut from that key could be cut from either.

    Fails:

        ## Materials
        | Key | Material | Form   | Width          | Sold by        |
        |-----|----------|--------|----------------|----------------|
        | A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
        | A   | Linen    | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |

    Passes:

        ## Materials
        | Key | Material | Form   | Width          | Sold by        |
        |-----|----------|--------|----------------|----------------|
        | A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
    """

    key: str

    def message(self) -> str:
        return f"the key `{self.key}` is given to two materials"

    def hint(self) -> str:
        return "give one of them the next free letter"


class FormUnknown(Problem):
    """A material has a form that is not known.

    The form decides how the quantity to buy is worked out, so it is not guessed.

    Fails:

        ## Materials
        | Key | Material | Form    | Width          | Sold by        |
        |-----|----------|---------|----------------|----------------|
        | A   | Cotton   | fabrics | 110 cm (43 in) | 10 cm (1/8 yd) |

    Passes:

        ## Materials
        | Key | Material | Form   | Width          | Sold by        |
        |-----|----------|--------|----------------|----------------|
        | A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
    """

    form: str
    meant: str | None

    def message(self) -> str:
        return f"`{self.form}` is not a form of material"

    def hint(self) -> str:
        if self.meant:
            return f"write `{self.meant}`"
        return f"the forms are {', '.join(form.value for form in Form)}"


class WidthMissing(Problem):
    """A material that is cut from a layout has no usable width, or a sheet no length.

    Without it nobody can say how much to buy.

    Fails:

        ## Materials
        | Key | Material | Form   | Width | Sold by        |
        |-----|----------|--------|-------|----------------|
        | A   | Cotton   | fabric |       | 10 cm (1/8 yd) |

    Passes:

        ## Materials
        | Key | Material | Form   | Width          | Sold by        |
        |-----|----------|--------|----------------|----------------|
        | A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
    """

    material: str
    side: str
    form: str

    def message(self) -> str:
        return f"`{self.material}` is a {self.form} and has no {self.side}"

    def hint(self) -> str:
        if self.side == "width":
            return "write the usable width, selvedges not included"
        return f"write the length of one {self.form} in a column `Length`"


class StepOfSaleMissing(Problem):
    """Nothing says in what steps a material is sold.

    The quantity on the handout is rounded up to what a shop sells.

    Fails:

        ## Materials
        | Key | Material | Form   | Width          | Sold by |
        |-----|----------|--------|----------------|---------|
        | A   | Cotton   | fabric | 110 cm (43 in) |         |

    Passes:

        ## Materials
        | Key | Material | Form   | Width          | Sold by        |
        |-----|----------|--------|----------------|----------------|
        | A   | Cotton   | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |
    """

    material: str

    def message(self) -> str:
        return f"nothing says in what steps `{self.material}` is sold"

    def hint(self) -> str:
        return "write the step in both systems, for example `10 cm (1/8 yd)`"


def read_materials(table: TableBlock, inlines: ReadInlines, problems: Problems) -> tuple[Material, ...]:
    """The materials; a row that cannot be read is reported and left out."""
    rows = read_rows(
        table, "Materials", ("Key", "Material", "Form"), ("Width", "Length", "Sold by", "Notes"), problems
    )
    found: dict[str, Material] = {}
    for row in rows:
        material = _material(row, inlines, problems)
        if material is None:
            continue
        if material.key in found:
            earlier = Label(found[material.key].key_span, "the first material with this key")
            problems.add(MaterialTwice(span=material.key_span, key=material.key, labels=(earlier,)))
        else:
            found[material.key] = material
    return tuple(found.values())


def _material(row: Row, inlines: ReadInlines, problems: Problems) -> Material | None:
    name = needed_cell(row, "Material", row.text("Key") or "this material", problems)
    key = needed_cell(row, "Key", row.text("Material"), problems)
    form_cell = needed_cell(row, "Form", row.text("Material"), problems)
    if name is None or key is None or form_cell is None:
        return None
    if not re.fullmatch(r"[A-Z]{1,2}", key.text):
        problems.add(KeyUnclear(span=key.span(), key=key.text))
        return None
    form = _form(form_cell.text, form_cell.span(), problems)
    if form is None:
        return None
    width = _expression(row, "Width", problems)
    length = _expression(row, "Length", problems)
    for side, value, forms in (("width", width, LAID_OUT), ("length", length, FIXED)):
        if form in forms and value is None:
            place = row.place(side.capitalize())
            problems.add(WidthMissing(span=place, material=name.text, side=side, form=form.value))
    sold_by = _expression(row, "Sold by", problems)
    if sold_by is None and form not in FIXED and form not in (Form.NOTION, Form.THREAD):
        problems.add(StepOfSaleMissing(span=row.place("Sold by"), material=name.text))
    cell = row.cells.get("Notes")
    notes = read_notes(cell, MATERIAL_NOTES, inlines, problems) if cell else ()
    return Material(key.text, name.text, form, width, length, sold_by, notes, row.span, key.span())


def _form(text: str, span: Span, problems: Problems) -> Form | None:
    for form in Form:
        if text.casefold() == form.value:
            return form
    meant = nearest(text, [form.value for form in Form])
    problems.add(FormUnknown(span=span, form=text, meant=meant))
    return None


def _expression(row: Row, column: str, problems: Problems) -> Expression | None:
    cell = row.cells.get(column)
    if cell is None or cell.text.strip() in ("", "–", "-", "—"):
        return None
    return expression(cell, problems)
