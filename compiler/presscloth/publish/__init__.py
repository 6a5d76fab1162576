"""Publish: many handouts to a site, swapped in whole.

publisher  site/publisher.yaml to a Publisher
standing   the pages that stand beside the recipes: glossary, how to measure, safety
catalogue  what the first page says of each recipe
swap       one writer at a time; the new site takes the old one's place in one step
site       booklets to a site
"""
