"""Publish: many handouts to a site, swapped in whole.

publisher     site/publisher.yaml to a Publisher
standing      the pages that stand beside the recipes: glossary, how to measure, safety
entry         what the catalogue knows of a recipe, and keeps of it between two runs
lists         its order, and its lists by month, craft, skill and project
catalogue     the pages of the catalogue
words         how words are compared in a search
search        the words of all recipes, as a script beside the catalogue
parts         the links between the parts of a longer project
feed          the releases as an Atom feed
sitemap       the pages for search engines
recipe_files  the files of one recipe; a kind of file is a function in one list
pdf_files     its PDFs likewise, printed by several processes
site_files    the files of the site likewise
theme_files   style sheets, scripts and fonts
swap          one writer at a time; the new site takes the old one's place in one step
site          booklets to a site
"""
