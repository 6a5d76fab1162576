"""What a paragraph does to a thing, in sentences with their sizes: the words that stand for its drawing."""

from __future__ import annotations

from collections.abc import Sequence

from presscloth.drawing.deeds import Deed, open_edges
from presscloth.drawing.edge_words import edge_word
from presscloth.drawing.faces import told_size
from presscloth.drawing.sections import band_seen, front_width, turns
from presscloth.tongue import listed, named, say, say_as


def finished_edges(deed: Deed, slot: str) -> tuple[str, ...]:
    """The edges of which a statement speaks; all that are there where it names none."""
    used = deed.one(slot)
    if used is None:
        return ()
    named_edges = deed.edges(slot) or ("left", "right", "top", "bottom")
    return open_edges(used.thing.shape, named_edges)


def edge_words(edges: Sequence[str]) -> str:
    found = [edge_word(edge) for edge in edges]
    return listed(found) if found else say_as("edge", "edge")


def told(deed: Deed) -> str:
    """What a statement does, in a sentence with its sizes."""
    name = deed.made
    match deed.verb:
        case "hem":
            return _hem_told(deed)
        case "bind" | "face":
            return _bound_told(deed)
        case "band":
            seen = band_seen(deed)
            return say(
                "Band at {edge} of {name}: {seen} of it is seen.",
                edge=edge_words(deed.edges("edge")),
                name=name,
                seen="" if seen is None else deed.said(seen),
            )
        case "draw":
            return say("Drawn through {name}: {parts}.", name=name, parts=_parts(deed, "drawn"))
        case "insert":
            where = edge_words(deed.edges("edge"))
            parts = _parts(deed, "part")
            return say("At {edge} of {name}: {parts}.", edge=where, name=name, parts=parts)
        case "attach":
            return say("Sewn onto {name}: {parts}.", name=name, parts=_parts(deed, "part"))
        case "fuse":
            return say("Fused to {name}: {parts}.", name=name, parts=_parts(deed, "part"))
        case "lay":
            sides = edge_words(deed.edges("sides"))
            parts = _parts(deed, "part")
            return say("Laid on {name}, level at {edges}: {parts}.", name=name, edges=sides, parts=parts)
        case "tack":
            where = edge_words(deed.edges("edge"))
            parts = _parts(deed, "part")
            return say("Tacked along {edge} of {name}: {parts}.", edge=where, name=name, parts=parts)
        case "fill":
            weight = deed.amount("weight")
            return say("Filled with {weight}.", weight="" if weight is None else deed.said(weight))
        case _:
            return _hooped_told(deed)


def _parts(deed: Deed, slot: str) -> str:
    """`2 tie, 30 cm (12 in); 1 ring`"""
    parts = []
    for part in deed.used(slot):
        found = told_size(part.thing, deed)
        sized_name = f"{named(part.name)}, {found}" if found else named(part.name)
        parts.append(f"{deed.each(part)} {sized_name}")
    return "; ".join(parts)


def _hem_told(deed: Deed) -> str:
    turned = [deed.said(each) for each in turns(deed)]
    edges, name = edge_words(finished_edges(deed, "edges")), deed.made
    if len(turned) == 2:
        return say(
            "Hem at {edges} of {name}: turned under by {first}, then by {then}.",
            edges=edges,
            name=name,
            first=turned[0],
            then=turned[1],
        )
    return say("Hem at {edges} of {name}: turned under by {by}.", edges=edges, name=name, by="".join(turned))


def _bound_told(deed: Deed) -> str:
    strips, seen = deed.one("strips"), front_width(deed)
    if strips is None or seen is None:
        return ""
    values = {
        "edges": edge_words(finished_edges(deed, "thing")),
        "name": deed.made,
        "strips": f"{deed.each(strips)} {named(strips.name)}",
        "size": told_size(strips.thing, deed),
        "seen": deed.said(seen),
    }
    if deed.verb == "bind":
        return say("Bound at {edges} of {name}: {strips}, {size}; {seen} of it is seen.", **values)
    return say("Faced at {edges} of {name}: {strips}, {size}, with a seam of {seen}.", **values)


def _hooped_told(deed: Deed) -> str:
    sides = [deed.amount(slot) for slot in ("width", "height", "field_width", "field_height")]
    said = ["" if each is None else deed.said(each) for each in sides]
    return say(
        "A design of {width} by {height} in the middle of a field of {field_width} by {field_height}.",
        width=said[0],
        height=said[1],
        field_width=said[2],
        field_height=said[3],
    )
