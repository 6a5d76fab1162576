"""Recipe and a size to Edition: what that size cuts and sews, and how its measures are worked out."""

from presscloth.edition.edition import SEAM, CutPiece, Edition, cut_piece, make_edition, statements
from presscloth.edition.evaluator import AskThings, Evaluator

__all__ = ["SEAM", "AskThings", "CutPiece", "Edition", "Evaluator", "cut_piece", "make_edition", "statements"]
