"""Presscloth compiles a sew-along recipe into proved handouts for every size.

The rooms, in the order in which a recipe passes through them:

tongue     the language in which a handout speaks: words, numbers, units
source     the text and places in it
measure    lengths, areas, weights and counts, exact in two systems
outline    the geometry of pieces that are cut by an outline
problems   what a problem is, and how problems are shown
recipe     text to Recipe: Markdown, tables, expressions, statements
translation  a file of translated paragraphs to what a handout says in another language
edition    Recipe and a size to Edition: every measure of that size
sewing     Edition to Construction: what the statements make
cutting    how much cloth to buy, and how the pieces lie on it
proof      what is checked before anything is printed
drawing    pieces, things and layouts as drawings
handout    everything that a handout says, worded
choices    what the reader may choose, and how each number and drawing of a page follows
printing   a handout as HTML, PDF, SVG, text or JSON
publish    many handouts to a site, swapped in whole
pipeline   the stages in order
cli        the command line
"""

__version__ = "0.1.0"
