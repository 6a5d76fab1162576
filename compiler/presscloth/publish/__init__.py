"""Publish: many handouts to a site, swapped in whole.

publisher     site/publisher.yaml to a Publisher
standing      the pages that stand beside the recipes: glossary, how to measure, safety
catalogue     what the first page says of each recipe
recipe_files  the files of one recipe; a kind of file is a function in one list
pdf_files     its PDFs likewise, printed by several processes
theme_files   style sheets, scripts and fonts
swap          one writer at a time; the new site takes the old one's place in one step
site          booklets to a site
"""
