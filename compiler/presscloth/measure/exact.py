"""Exact values as text, for machines that read them."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Context
from fractions import Fraction

from presscloth.measure.quantity import Quantity, System

_TWELVE_DIGITS = Context(prec=12, rounding=ROUND_HALF_UP)


def exact_text(q: Quantity, system: System) -> str:
    """`190` or `15/2` (mm, in, mm², in², g, oz); what holds a root or pi as a decimal of 12 digits."""
    value = q[system]
    return _twelve_digits(value) if q.rooted else str(value)


def _twelve_digits(value: Fraction) -> str:
    # A quotient of two decimals is rounded once, from the exact value.
    text = format(_TWELVE_DIGITS.divide(value.numerator, value.denominator), "f")
    return text.rstrip("0").rstrip(".") if "." in text else text
