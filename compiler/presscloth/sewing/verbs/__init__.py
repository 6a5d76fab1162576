"""The list of all verbs, and what the recipe reader is to know of them."""

from __future__ import annotations

from presscloth.recipe.patterns import VerbForm
from presscloth.sewing.verbs.attaching import ATTACH, FILL, FINISH, INSERT, TACK, ZIP
from presscloth.sewing.verbs.bias import CUT_BIAS, CUT_CONTINUOUS_BIAS
from presscloth.sewing.verbs.binding import BIND, FACE
from presscloth.sewing.verbs.borders import BORDER
from presscloth.sewing.verbs.boxing import BOX
from presscloth.sewing.verbs.folding import FOLD
from presscloth.sewing.verbs.hemming import BAND, DRAW, HEM
from presscloth.sewing.verbs.joining import JOIN, LAP
from presscloth.sewing.verbs.layering import BAG_OUT, FUSE, LAY, LAYER, LINE
from presscloth.sewing.verbs.setting_in import GATHER, SET_IN
from presscloth.sewing.verbs.trimming import CUT, STITCH_OUT, TRIM
from presscloth.sewing.verbs.units import PAIR, SET_ON_POINT
from presscloth.sewing.verbs.verb import Verb

VERBS: tuple[Verb, ...] = (
    JOIN,
    LAP,
    SET_IN,
    GATHER,
    FOLD,
    BOX,
    LINE,
    LAYER,
    BIND,
    FACE,
    BORDER,
    HEM,
    TACK,
    BAND,
    DRAW,
    TRIM,
    CUT,
    CUT_BIAS,
    CUT_CONTINUOUS_BIAS,
    PAIR,
    SET_ON_POINT,
    ZIP,
    BAG_OUT,
    LAY,
    FUSE,
    ATTACH,
    INSERT,
    FILL,
    STITCH_OUT,
    FINISH,
)
"""Every verb. Adding one touches its family's file and this list."""


def forms() -> tuple[VerbForm, ...]:
    """The verbs as the recipe reader knows them."""
    return tuple(verb.form for verb in VERBS)


__all__ = ["VERBS", "Verb", "forms"]
