"""A small catalogue of recipes to list, search and tell of."""

from __future__ import annotations

from dataclasses import replace

from printing.making import step, words
from printing.samples import MUG_MAT, PUBLISHER

from presscloth.handout.tree import Booklet, Publisher, StageText

NO_PDF: Publisher = replace(PUBLISHER, papers=())
NOWHERE: Publisher = replace(NO_PDF, address="")


def recipe(slug: str, title: str, release: str, said: str = "", **facts: object) -> Booklet:
    """A recipe in one size; `said` is what its only step says."""
    stages = (
        StageText(
            words("Work"),
            (
                step(
                    1,
                    said or "Sew it.",
                ),
            ),
        ),
    )
    known = {"draft": False, "craft": "", "skills": (), "summary": "", "materials": (), "tools": ()}
    return Booklet(
        (replace(MUG_MAT, slug=slug, title=title, release=release, stages=stages, **{**known, **facts}),)
    )


CATALOGUE = (
    recipe(
        "half-tide-quilt",
        "Half-Tide Quilt",
        "2027-07",
        "Press the seams open, then quilt by hand; the binding is last.",
        craft="Patchwork, quilting",
        skills=("binding", "setting on point"),
        summary="Eddies of light and dark.",
        revised="2027-08-02",
        version="2",
    ),
    recipe(
        "creme-pouch",
        "Crème Pouch & <Friends>",
        "2027-06",
        "Quilting is optional. Turn the pouch through the gap.",
        craft="bags",
        skills=("lining through a gap",),
        tools=(words("point turner"),),
        summary="Éléphants brodés à la main.",
        language="fr",
    ),
    recipe(
        "apron",
        "Apron",
        "2027-06",
        "Gather the skirt; bind the pocket.",
        craft="dressmaking",
        skills=("Binding", "gathering"),
        summary="A quilted pocket for tools.",
    ),
    recipe("strasse", "Straße Smørrebrød Cloth", "2026-12", "Hem all round.", craft="patchwork"),
    recipe("undated", "Bolster", "", "Fill it firmly and quilt nothing."),
    recipe("draft", "Secret Quilt", "2027-09", "Hush.", draft=True, craft="patchwork"),
)
