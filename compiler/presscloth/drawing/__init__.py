"""Drawings of pieces, things and layouts, as plain data that any writer can print."""
