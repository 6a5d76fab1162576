"""The words for edges in drawings: the four of a rectangle, and an author's own names of outlines' edges."""

from __future__ import annotations

from presscloth.tongue import named, say, say_as


def edge_word(edge: str) -> str:
    """`left`, `hip`, `left hip` in the language of the handout.

    A name that is there twice, once on either side of a fold, has its side before it.
    """
    words = {
        "left": say_as("edge", "left"),
        "right": say_as("edge", "right"),
        "top": say_as("edge", "top"),
        "bottom": say_as("edge", "bottom"),
    }
    own = named(edge)
    if edge in words or own != edge:
        return words.get(edge, own)
    side, _, name = edge.partition(" ")
    match side if name else "":
        case "left":
            return say("left {edge}", edge=edge_word(name))
        case "right":
            return say("right {edge}", edge=edge_word(name))
        case "upper":
            return say("upper {edge}", edge=edge_word(name))
        case "lower":
            return say("lower {edge}", edge=edge_word(name))
        case _:
            return own
