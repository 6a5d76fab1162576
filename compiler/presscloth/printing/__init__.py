"""Printing: a handout as a web page, a PDF, a plain text or JSON, in the dress of a theme.

shipped    where the themes and the standing pages lie, in a checkout and in a wheel
theme      a theme by its name: templates, style sheets and its look
look fonts how drawings look; plain cuts of the fonts that packages carry
svg        a drawing as SVG text
markup     words and blocks as HTML
html       a recipe in all its sizes as one web page
pdf        one size as a PDF for each paper (the only importer of WeasyPrint)
photographs  an author's picture to those that are published, with nothing in them but what is seen
chapters code cues  the chapters of a video, the QR code of a page, the presenter's cue sheet
finish     what WeasyPrint leaves undone, and each paper from one layout
text json  one size as plain text, and as JSON

A writer chooses how a handout looks and never what it says.
"""
