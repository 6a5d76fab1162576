"""What WeasyPrint leaves undone in a tagged PDF, and the papers made from one layout.

The rules that are kept: ISO 14289-1 (PDF/UA-1) 7.1, what is not content is an artifact; 7.5, a
header cell says of what; ISO 32000-1 14.8.4.3.3, a list item is a label and a body; 14.8.5.4.3, a
figure's box is in points of the page; 12.2, the print scaling.
"""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from presscloth.printing.paper import page_box

if TYPE_CHECKING:
    import pikepdf
    import pydyf
    from weasyprint import Document

    Objects = Mapping[int, pydyf.Object]

POINTS_PER_PIXEL = 0.75
BOXES = ("/Sect", "/Div", "/NonStruct", "/Part", "/Art")


def mend(document: Document, pdf: pydyf.PDF) -> None:
    """Mend a finished document in place before it is written (a `finisher` for `write_pdf`)."""
    pdf.catalog["ViewerPreferences"]["PrintScaling"] = "/None"
    objects: Objects = {held.number: held for held in pdf.objects}
    root = _at(pdf.catalog["StructTreeRoot"], objects)
    _join_tables(root, objects)
    elements = list(_below(root, objects))
    for element in elements:
        kind = element["S"]
        if kind in ("/TH", "/TD"):
            _say_scope(element, objects)
        elif kind == "/LI":
            _give_body(pdf, element, objects)
        elif kind == "/Figure":
            _box_in_points(element, objects)
    _lay_margins_aside(pdf, root, {element.number for element in elements}, objects)


def papers(pdf: bytes, names: tuple[str, ...]) -> tuple[bytes, ...]:
    """The same document with the page box of each paper; nothing on the page moves or scales."""
    import pikepdf

    with pikepdf.open(io.BytesIO(pdf)) as document:
        return tuple(_on_paper(document, name) for name in names)


def _on_paper(document: pikepdf.Pdf, name: str) -> bytes:
    import pikepdf

    for page in document.pages:
        for box in ("/MediaBox", "/TrimBox", "/BleedBox"):
            page.obj[box] = pikepdf.Array(page_box(name))
    written = io.BytesIO()
    document.save(written, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.generate)
    return written.getvalue()


# -- the tree of tags ----------------------------------------------------------------------------


def _at(reference: bytes, objects: Objects) -> pydyf.Dictionary:
    """The object that a reference (`12 0 R`) leads to."""
    return objects[int(reference.split()[0])]


def _kids(element: pydyf.Dictionary, objects: Objects) -> list[pydyf.Dictionary]:
    """The elements right below one; the marks of content on the page are numbers, not elements."""
    held = [_at(kid, objects) for kid in element["K"] if isinstance(kid, bytes)]
    return [kid for kid in held if "S" in kid]


def _below(element: pydyf.Dictionary, objects: Objects) -> Iterator[pydyf.Dictionary]:
    """All elements below one, in the order in which they are read."""
    left = _kids(element, objects)[::-1]
    while left:
        found = left.pop()
        yield found
        left += reversed(_kids(found, objects))


def _join_tables(root: pydyf.Dictionary, objects: Objects) -> None:
    """A table that runs on to the next page is one table again, its head read once.

    WeasyPrint makes one of each page's part. A part follows the one before with nothing but boxes
    between, and has a head of as many cells; what is printed again of the head becomes an artifact.
    """
    table: pydyf.Dictionary | None = None
    inside: set[int] = set()
    for element in list(_below(root, objects)):
        if element.number in inside or element["S"] in BOXES:
            continue
        if element["S"] != "/Table":
            table, inside = None, set()
            continue
        below = {each.number for each in _below(element, objects)}
        if table is not None and _head(element, objects) == _head(table, objects) != 0:
            _move_rows(element, table, objects)
            inside |= below
        else:
            table, inside = element, below


def _head(table: pydyf.Dictionary, objects: Objects) -> int:
    """How many cells a table's head has."""
    heads = [kid for kid in _kids(table, objects) if kid["S"] == "/THead"]
    return sum(1 for head in heads for each in _below(head, objects) if each["S"] == "/TH")


def _move_rows(part: pydyf.Dictionary, table: pydyf.Dictionary, objects: Objects) -> None:
    import pydyf

    for kid in _kids(part, objects):
        if kid["S"] != "/THead":
            kid["P"] = table.reference
            table["K"].append(kid.reference)
    above = _at(part["P"], objects)
    above["K"] = pydyf.Array([kid for kid in above["K"] if kid != part.reference])


def _say_scope(cell: pydyf.Dictionary, objects: Objects) -> None:
    """A header in a table's head speaks for its column, any other for its row.

    The ids by which WeasyPrint ties cells to headers go: a table that runs on to a second page
    would have each of them twice.
    """
    cell.pop("ID", None)
    cell["A"].pop("Headers", None)
    if cell["S"] == "/TH":
        row = _at(cell["P"], objects)
        group = _at(row["P"], objects)
        cell["A"]["Scope"] = "/Column" if group["S"] == "/THead" else "/Row"


def _give_body(pdf: pydyf.PDF, item: pydyf.Dictionary, objects: Objects) -> None:
    """Everything of a list item but its label becomes its body."""
    import pydyf

    kids = _kids(item, objects)
    labels = [kid.reference for kid in kids if kid["S"] == "/Lbl"]
    loose = [kid for kid in kids if kid["S"] not in ("/Lbl", "/LBody")]
    if not loose:
        return
    body = next((kid for kid in kids if kid["S"] == "/LBody"), None)
    if body is None:
        body = pydyf.Dictionary({"Type": "/StructElem", "S": "/LBody", "Pg": item["Pg"], "P": item.reference})
        body["K"] = pydyf.Array([])
        pdf.add_object(body)
    for kid in loose:
        kid["P"] = body.reference
        body["K"].append(kid.reference)
    item["K"] = pydyf.Array([*labels, body.reference])


def _box_in_points(figure: pydyf.Dictionary, objects: Objects) -> None:
    """The figure's box, given in pixels from the top, in points from the foot of the page."""
    import pydyf

    left, top, right, bottom = (place * POINTS_PER_PIXEL for place in figure["A"]["BBox"])
    height = _at(figure["Pg"], objects)["MediaBox"][3]
    figure["A"]["BBox"] = pydyf.Array([left, height - bottom, right, height - top])


def _lay_margins_aside(pdf: pydyf.PDF, root: pydyf.Dictionary, tagged: set[int], objects: Objects) -> None:
    """What stands in the page margins is in no element of the tree: mark it as an artifact."""
    numbers = _at(root["ParentTree"], objects)["Nums"]
    parents = dict(zip(numbers[::2], numbers[1::2], strict=True))
    for number, reference in enumerate(pdf.page_references):
        page = _at(reference, objects)
        owners = parents[number]
        aside = {mark for mark, owner in enumerate(owners) if int(owner.split()[0]) not in tagged}
        for mark in aside:
            owners[mark] = b"null"
        _mark_as_artifacts(_at(page["Contents"], objects), aside)


def _mark_as_artifacts(content: pydyf.Stream, marks: set[int]) -> None:
    import pydyf

    parts = content.stream
    for place, part in enumerate(parts):
        if isinstance(part, pydyf.Dictionary) and part.get("MCID") in marks:
            parts[place - 1] = "/Artifact"
            parts[place] = pydyf.Dictionary({"Type": "/Pagination"})
