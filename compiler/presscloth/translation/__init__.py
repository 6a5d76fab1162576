"""Recipe × a file of translated paragraphs -> Translation: what a handout says in another language.

A translation lies beside its recipe as `recipe.de.md`. Each paragraph of the recipe stands in it as a
quotation, its translation below; names stand in a table. `sew` blocks and measures are never translated:
a translated paragraph has the braces of its source, and prints what they are worked out to there. A
paragraph that has changed since is printed in the recipe's own language until it is translated anew.

tree      the file as it was read, and a translation that was held against its recipe
wanted    what of a recipe wants words in another language
reading   the file's text to its entries
holding   entries against a recipe
numbers   figures typed in a paragraph and in its translation
beside    the files that lie beside a recipe
updating  a file that is begun, or brought up to date with nothing lost
problems  what can be wrong with it
"""
