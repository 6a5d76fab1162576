"""What can be wrong with a translation."""

from __future__ import annotations

from presscloth.problems import Problem, Severity


class TranslationUnread(Problem):
    """A part of a translation's file means nothing to the compiler.

    What stands there would be printed nowhere. A file has the sections Names and Paragraphs; a paragraph
    is a quotation of the recipe with its translation below, in one paragraph too.

    Fails:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Plain Cloth

        Ein Tuch.

        Und noch eines.

    Passes:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Plain Cloth

        Ein Tuch. Und noch eines.
    """

    severity = Severity.WARNING

    def message(self) -> str:
        return f"`{self.span.quoted}` means nothing in a translation"

    def hint(self) -> str:
        return "write one paragraph below each quotation, and names into the table"


class LanguageWithoutWords(Problem):
    """Handouts have no words of their own in this language.

    Headings, cautions and labels would stand in English on a page in another language.

    Fails:

        ---
        title: Plain Cloth
        release: 2027-01
        language: eo
        ---

    Passes:

        ---
        title: Plain Cloth
        release: 2027-01
        language: de
        ---
    """

    severity = Severity.WARNING

    language: str
    known: tuple[str, ...]

    def message(self) -> str:
        return f"handouts have no words in `{self.language}`; their own words stay English"

    def hint(self) -> str:
        return f"there are words in {', '.join(self.known)}; others are added as a catalogue"


class TranslationStale(Problem):
    """A paragraph has changed since it was translated.

    The translation says what the recipe no longer says. Until it is translated anew, the paragraph is
    printed in the recipe's own language, and marked as that.

    Fails:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Plain Cloth

        > > Before: Plain Towel

        Einfaches Handtuch

    Passes:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Plain Cloth

        Einfaches Tuch
    """

    severity = Severity.WARNING

    was: str
    marked: bool

    def message(self) -> str:
        return f"this has changed since it was translated; it was `{self.was}`"

    def hint(self) -> str:
        if self.marked:
            return "translate it anew, and take the line `> > Before: …` away"
        return "let `presscloth translate` write down what it says now, and translate that"


class TranslationMissing(Problem):
    """A translation is not complete.

    What is missing is printed in the recipe's own language, and marked as that.

    Fails: a paragraph of the recipe has no translation in `recipe.de.md`.

    Passes: every paragraph and every name of the recipe has its translation there.
    """

    severity = Severity.WARNING

    language: str
    missing: int
    of: int
    first: str
    laid_out: bool

    def message(self) -> str:
        return f"{self.missing} of {self.of} texts have no translation into `{self.language}`: `{self.first}`"

    def hint(self) -> str:
        if self.laid_out:
            return "write each below the quotation that it translates, and names into the table"
        return f"`presscloth translate RECIPE --to {self.language}` writes down what is missing"


class TranslationUnused(Problem):
    """A translation is of something that the recipe does not say.

    Fails:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Nobody ever wrote this paragraph of forty knots and a gale.

        Das hat niemand geschrieben.

    Passes:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Plain Cloth

        Einfaches Tuch
    """

    severity = Severity.WARNING

    def message(self) -> str:
        return f"the recipe does not say `{self.span.quoted}`"

    def hint(self) -> str:
        return "`presscloth translate` puts it by, so that nothing is lost"


class TranslationBraces(Problem):
    """A translated paragraph has other measures, links or pictures than the recipe's.

    A maker who reads it would miss a measure, or read one that belongs elsewhere. The same braces stand
    in both, in any order.

    Fails:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Plain Cloth

        Ein Tuch mit {seam}

    Passes:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Plain Cloth

        Ein Tuch
    """

    missing: tuple[str, ...]
    added: tuple[str, ...]

    def message(self) -> str:
        said = [f"lacks {_listed(self.missing)}"] if self.missing else []
        said += [f"has {_listed(self.added)} besides"] if self.added else []
        return f"this translation {' and '.join(said)}"

    def hint(self) -> str:
        return "write the same braces, links and pictures as the recipe does"


class TranslationFigures(Problem):
    """A figure that is typed in a paragraph is not the same in its translation.

    Fails:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Plain Cloth

        Tuch in 3 Tagen

    Passes:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Plain Cloth

        Tuch in einem Tag
    """

    missing: tuple[str, ...]
    added: tuple[str, ...]

    def message(self) -> str:
        said = [f"lacks the figure {_listed(self.missing)}"] if self.missing else []
        said += [f"has the figure {_listed(self.added)} besides"] if self.added else []
        return f"this translation {' and '.join(said)}"

    def hint(self) -> str:
        return "write the figure that the recipe has, or measures in braces in both"


class TranslationCounts(Problem):
    """A translation says another number in words than the recipe: `drei Seiten` for `four sides`.

    From two to twelve, in English and German, and only where both say as many numbers: languages do not
    always count the same things, and what one counts the other may leave to be understood.

    Fails:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Press all four sides under, once and once again, and stitch.

        Drei Seiten zweimal einschlagen und steppen.

    Passes:

        # recipe.de.md
        ---
        language: de
        ---

        ## Paragraphs

        > Press all four sides under, once and once again, and stitch.

        Alle vier Seiten zweimal einschlagen und steppen.
    """

    severity = Severity.WARNING

    missing: tuple[str, ...]
    added: tuple[str, ...]

    def message(self) -> str:
        return f"this translation says {_listed(self.added)} where the recipe says {_listed(self.missing)}"

    def hint(self) -> str:
        return "say the same number, or none"


def _listed(texts: tuple[str, ...]) -> str:
    return ", ".join(f"`{text}`" for text in texts)
