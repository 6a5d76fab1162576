"""Edges by their names, also those that are there twice."""

from presscloth.drawing.edge_words import edge_word
from presscloth.tongue import speaking, tongue_of


def test_edges_in_english_are_as_they_are():
    for edge in ("left", "bottom", "hip", "left hip", "upper lower hip"):
        assert edge_word(edge) == edge


def test_edges_in_german_have_their_side_behind_them():
    with speaking(tongue_of("de", {"hip": "Hüfte", "left bib": "Latz"})):
        said = [
            edge_word(edge)
            for edge in ("left", "hip", "left hip", "upper hip", "left bib", "left top", "arch")
        ]
    assert said == ["links", "Hüfte", "Hüfte links", "Hüfte oben", "Latz", "oben links", "arch"]
