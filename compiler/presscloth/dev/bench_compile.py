"""What the processor's time of a whole compile goes into: WeasyPrint's own work, and everything besides.

WeasyPrint's own work is its reading of pages and style sheets, its layout, its writing of a PDF with
pictures and fonts, but not what mends the PDF in the midst of that, which is ours; and the collection
of the boxes that it leaves: nothing else is looked at then (see `printing/pdf.py`). Everything besides
is all the rest, from the files of the recipes to the files of the site.
"""

from __future__ import annotations

import gc
from contextlib import ExitStack
from pathlib import Path

from presscloth import pipeline
from presscloth.cutting import laid
from presscloth.dev.clocks import Clock, clocked
from presscloth.frozen import dataclass
from presscloth.printing.shipped import CHECKOUT


@dataclass(frozen=True)
class Shares:
    """Where the processor's time of some compiles went, in parts of the whole, and how much was made.

    `collecting` is the part of WeasyPrint's own work in which the boxes are collected that it leaves.
    """

    handouts: int
    files: int
    weasyprint: float
    collecting: float
    proving: float
    wording: float

    @property
    def besides(self) -> float:
        return 1 - self.weasyprint


def compiled(recipes: tuple[Path, ...], folder: Path, least: int) -> Shares:
    """Compile recipes in this process, as often as it takes for that many handouts.

    Layouts are kept in `folder`, where the site is written too; nothing else is remembered of earlier
    compiles but what is imported and read once.
    """
    import weasyprint

    from presscloth.printing import pdf

    laid.on_roll.cache_clear()
    laid.on_sheets.cache_clear()
    whole, weasy, mending, collecting, proving, wording = (Clock() for _ in range(6))
    handouts = files = 0
    with ExitStack() as clocks:
        for owner, name, clock in (
            (weasyprint.HTML, "__init__", weasy),
            (weasyprint.CSS, "__init__", weasy),
            (weasyprint.HTML, "render", weasy),
            (weasyprint.Document, "write_pdf", weasy),
            (pdf, "mend", mending),
            (gc, "collect", collecting),
            (pipeline, "prove", proving),
            (pipeline, "booklets_of", wording),
        ):
            clocks.enter_context(clocked(owner, name, clock))
        while handouts < least:
            with whole:
                made = pipeline.compile_site(
                    recipes,
                    out=folder / "site",
                    workers=1,
                    site=CHECKOUT / "site",
                    kept_in=folder / "layouts",
                )
            if not made.written:
                raise SystemExit("bench: none of these recipes can be compiled")
            handouts += sum(len(each.sizes) for each in made.proved if each.sound and not each.held)
            files += len(made.written)
    own = weasy.total - mending.total + collecting.total
    return Shares(
        handouts,
        files,
        own / whole.total,
        collecting.total / whole.total,
        proving.total / whole.total,
        wording.total / whole.total,
    )
