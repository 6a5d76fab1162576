"""Markdown: what becomes of it, and where each part of it stands."""

from __future__ import annotations

import pytest

from presscloth.problems import Problem, Problems
from presscloth.recipe.expression import Broken, Expression, Name
from presscloth.recipe.markdown import (
    BraceNotClosed,
    CodeBlock,
    FenceBlock,
    FenceNotClosed,
    HeadingBlock,
    ListBlock,
    MarkdownBlock,
    NestedTooDeep,
    ParagraphBlock,
    QuoteBlock,
    RuleBlock,
    TableBlock,
    body,
    inlines,
    prose,
)
from presscloth.recipe.prose import (
    Code,
    Emphasis,
    Grid,
    Heading,
    How,
    Inline,
    LineBreak,
    Link,
    Listing,
    Measure,
    Paragraph,
    Picture,
    Quote,
    Rule,
    Verbatim,
    Words,
    plain,
)
from presscloth.source import Passage, Source


def name_in_braces(passage: Passage) -> tuple[Expression, tuple[How, ...]]:
    """Enough of a reader of braces to see which passage it was given."""
    return Name(passage.text, passage.span()), ()


def blocks(text: str, problems: Problems | None = None) -> tuple[MarkdownBlock, ...]:
    return body(Source("recipe.md", text), 0, problems or Problems()).blocks


def one(text: str) -> MarkdownBlock:
    (block,) = blocks(text)
    return block


def read(text: str, problems: Problems | None = None) -> tuple[Inline, ...]:
    """The inline prose of the one paragraph of a text."""
    source = Source("recipe.md", text)
    whole = body(source, 0, Problems())
    (block,) = whole.blocks
    assert isinstance(block, ParagraphBlock)
    return inlines(block.text, name_in_braces, problems or Problems(), whole.references)


def columns(passage: Passage) -> list[tuple[int, int]]:
    """Line and column of each character, the ends of lines apart."""
    source = passage.source
    pairs = zip(passage.text, passage.places, strict=False)
    return [source.line_and_column(place) for character, place in pairs if character != "\n"]


class TestBlocks:
    def test_a_heading_has_its_text_without_the_signs(self):
        block = one("##  Pieces ##  \n")
        assert isinstance(block, HeadingBlock)
        assert (block.level, block.text.text, block.text.span().start) == (2, "Pieces", 4)
        assert block.span.text == "##  Pieces ##"

    def test_an_underlined_heading(self):
        block = one("A long\n  title\n---\n")
        assert isinstance(block, HeadingBlock)
        assert (block.level, block.text.text) == (2, "A long\n  title")
        assert block.span.text == "A long\n  title\n---"

    def test_an_empty_heading_has_a_place(self):
        block = one("##\n")
        assert isinstance(block, HeadingBlock)
        assert block.text.text == ""
        assert block.text.span().start == 2

    def test_a_block_ends_before_the_empty_lines_of_its_quote(self):
        quote = one("> ~~~\n> a\n>\n>\n")
        assert isinstance(quote, QuoteBlock)
        assert quote.content[0].span.text == "~~~\n> a"

    def test_lines_of_a_quote_are_placed_without_their_signs(self):
        block = one("> Fold\n>  it\nonce\n")
        assert isinstance(block, QuoteBlock)
        (inner,) = block.content
        assert isinstance(inner, ParagraphBlock)
        assert inner.text.text == "Fold\n it\nonce"
        expected = [(1, 3), (1, 4), (1, 5), (1, 6), (2, 3), (2, 4), (2, 5), (3, 1), (3, 2), (3, 3), (3, 4)]
        assert columns(inner.text) == expected
        assert block.span.text == "> Fold\n>  it\nonce"

    def test_items_with_what_stands_in_them(self):
        text = "3. Fold.\n\n   ```sew\n   a = fold b across\n     , taking 1 cm\n   ```\n\n4. Press.\n"
        block = one(text)
        assert isinstance(block, ListBlock)
        assert (block.ordered, block.start, len(block.items)) == (True, 3, 2)
        paragraph, fence = block.items[0].content
        assert isinstance(paragraph, ParagraphBlock)
        assert isinstance(fence, FenceBlock)
        assert (fence.info, fence.text.text) == ("sew", "a = fold b across\n  , taking 1 cm\n")
        assert fence.span.where == (3, 4)
        assert columns(fence.text)[0] == (4, 4)
        assert columns(fence.text)[-1] == (5, 18)
        assert block.items[0].span.text == text[: text.index("\n\n4.")]
        assert block.items[1].span.text == "4. Press."

    def test_bullets_and_lists_in_lists(self):
        block = one("- A\n  - B\n- \n")
        assert isinstance(block, ListBlock)
        assert not block.ordered
        assert [item.span.text for item in block.items] == ["- A\n  - B", "-"]
        inner = block.items[0].content[1]
        assert isinstance(inner, ListBlock)
        assert inner.span.text == "- B"

    def test_two_lists_that_begin_in_one_line(self):
        block = one("- 1. seam\n")
        assert isinstance(block, ListBlock)
        (inner,) = block.items[0].content
        assert isinstance(inner, ListBlock)
        assert (block.span.text, inner.span.text) == ("- 1. seam", "1. seam")
        assert inner.items[0].span.text == "1. seam"

    def test_an_indented_block_and_a_line_across(self):
        code, rule = blocks("    seam\n      = 1\n\n* * *\n")
        assert isinstance(code, CodeBlock)
        assert isinstance(rule, RuleBlock)
        assert code.text.text == "seam\n  = 1\n"
        assert columns(code.text)[0] == (1, 5)
        assert rule.span.text == "* * *"

    def test_the_rest_of_a_tab_is_spaces_that_stand_at_the_tab(self):
        code = one("- a\n\n\t\tb\n")
        assert isinstance(code, ListBlock)
        inner = code.items[0].content[1]
        assert isinstance(inner, CodeBlock)
        assert inner.text.text == "  b\n"
        assert columns(inner.text) == [(3, 2), (3, 2), (3, 3)]

    def test_other_line_ends_count_as_they_were_typed(self):
        first, second = blocks("one  \r\ntwo\r\rthree")
        assert isinstance(first, ParagraphBlock)
        assert isinstance(second, ParagraphBlock)
        assert first.text.text == "one  \ntwo"
        assert first.text.span(6, 9).start == 7
        assert second.text.span().start == 12

    def test_the_body_begins_where_it_is_said_to(self):
        (block,) = body(Source("recipe.md", "---\n---\nFold.\n"), 8, Problems()).blocks
        assert block.span.text == "Fold."


class TestTables:
    def test_cells_are_placed_without_the_blanks_around_them(self):
        table = one("| Piece | Cut |\n|---|---|\n|  side strip |2|\n")
        assert isinstance(table, TableBlock)
        assert [cell.text for cell in table.head] == ["Piece", "Cut"]
        (row,) = table.rows
        assert [(cell.text, cell.span().where) for cell in row.cells] == [
            ("side strip", (3, 4)),
            ("2", (3, 16)),
        ]
        assert row.span.text == "|  side strip |2|"

    def test_a_backslash_before_a_stroke_goes_and_the_stroke_keeps_its_place(self):
        table = one("| A |\n|---|\n| x\\|y |\n")
        assert isinstance(table, TableBlock)
        (cell,) = table.rows[0].cells
        assert cell.text == "x|y"
        assert columns(cell) == [(3, 3), (3, 5), (3, 6)]
        assert [inline.text for inline in inlines(cell, name_in_braces, Problems())] == ["x", "|y"]

    def test_rows_have_the_cells_that_were_typed(self):
        table = one("| A | B |\n|---|---|\n| 1 |\n| 1 | 2 | 3 | 4 |\n| | 2 |\n1 | 2\n")
        assert isinstance(table, TableBlock)
        typed = [[cell.text for cell in row.cells] for row in table.rows]
        assert typed == [["1"], ["1", "2", "3", "4"], ["", "2"], ["1", "2"]]

    def test_an_empty_cell_has_its_place(self):
        table = one("| A | B |\n|---|---|\n| 1 |   |\n")
        assert isinstance(table, TableBlock)
        assert table.rows[0].cells[1].span().where[0] == 3
        assert 6 <= table.rows[0].cells[1].span().where[1] <= 9

    def test_a_table_right_below_a_line_of_text(self):
        paragraph, table = blocks("Cut these:\n| A |\n|---|\n| 1 |\n")
        assert isinstance(paragraph, ParagraphBlock)
        assert isinstance(table, TableBlock)
        assert paragraph.text.text == "Cut these:"

    def test_a_table_in_an_item(self):
        block = one("- x\n\n  | A |\n  |---|\n  | ½ |\n")
        assert isinstance(block, ListBlock)
        table = block.items[0].content[1]
        assert isinstance(table, TableBlock)
        assert table.rows[0].cells[0].span().where == (5, 5)


class TestInlines:
    def test_measures_between_words(self):
        words, measure, more = read("Sew {seam + 1 cm} in.")
        assert isinstance(words, Words)
        assert isinstance(measure, Measure)
        assert measure.expression == Name("seam + 1 cm", measure.expression.span)
        assert measure.span.text == "{seam + 1 cm}"
        assert measure.expression.span.text == "seam + 1 cm"
        assert plain((words, more)) == "Sew  in."

    def test_a_measure_may_run_over_the_end_of_a_line(self):
        source = Source("recipe.md", "> By {front\n> width}.")
        (quote,) = body(source, 0, Problems()).blocks
        assert isinstance(quote, QuoteBlock)
        (paragraph,) = quote.content
        assert isinstance(paragraph, ParagraphBlock)
        _, measure, _ = inlines(paragraph.text, name_in_braces, Problems())
        assert isinstance(measure, Measure)
        assert measure.expression == Name("front\nwidth", measure.expression.span)
        assert measure.span.text == "{front\n> width}"

    def test_braces_that_are_only_braces(self):
        problems = Problems()
        assert plain(read(r"a \{seam\} b", problems)) == "a {seam} b"
        (code,) = read("`{seam}`", problems)
        assert isinstance(code, Code)
        assert code.text == "{seam}"
        assert problems.found() == ()

    def test_signs_between_braces_are_left_alone(self):
        (measure,) = read("{2 * a * b_c_d `x`}")
        assert isinstance(measure, Measure)
        assert measure.expression == Name("2 * a * b_c_d `x`", measure.expression.span)

    def test_emphasis_spans_its_signs(self):
        found = read("a *b* **c** ***d***")
        marks = [inline for inline in found if isinstance(inline, Emphasis)]
        assert [(mark.strong, mark.span.text) for mark in marks] == [
            (False, "*b*"),
            (True, "**c**"),
            (False, "***d***"),
        ]
        (inner,) = marks[2].of
        assert isinstance(inner, Emphasis)
        assert (inner.strong, inner.span.text) == (True, "**d**")

    def test_signs_that_mean_nothing_stay_in_one_run_of_words(self):
        (words,) = read("2 * 3 _ 4 } & [x] <b>")
        assert isinstance(words, Words)
        assert words.text == words.span.text == "2 * 3 _ 4 } & [x] <b>"

    def test_escapes_and_entities_are_what_they_stand_for(self):
        found = read(r"1\*2 &times; 3")
        assert [inline.text for inline in found if isinstance(inline, Words)] == ["1", "*", "2 ", "×", " 3"]
        assert [inline.span.text for inline in found] == ["1", r"\*", "2 ", "&times;", " 3"]

    def test_code_keeps_its_signs_in_its_span(self):
        (code,) = read("``a ` b``")
        assert isinstance(code, Code)
        assert (code.text, code.span.text) == ("a ` b", "``a ` b``")

    def test_links_of_every_kind(self):
        line = "[one *two*](https://a.example 'x') [three][r] [r] <https://b.example/ö> <mail@c.example>"
        text = line + "\n\n[r]: /d\n"
        links = [inline for inline in read(text) if isinstance(inline, Link)]
        assert [(link.to, plain(link.of), link.span.text) for link in links] == [
            ("https://a.example", "one two", "[one *two*](https://a.example 'x')"),
            ("/d", "three", "[three][r]"),
            ("/d", "r", "[r]"),
            ("https://b.example/%C3%B6", "https://b.example/ö", "<https://b.example/ö>"),
            ("mailto:mail@c.example", "mail@c.example", "<mail@c.example>"),
        ]
        assert links[3].of[0].span.text == "https://b.example/ö"

    def test_a_link_that_would_run_a_script_stays_text(self):
        assert [inline for inline in read("[a](javascript:x)") if isinstance(inline, Link)] == []

    def test_a_picture_with_a_measure_in_its_words(self):
        (picture,) = read("![A {seam} seam \\& *more*](<the corner.jpg>)")
        assert isinstance(picture, Picture)
        assert picture.file == "the corner.jpg"
        measure = picture.alt[1]
        assert isinstance(measure, Measure)
        assert (measure.span.text, measure.span.start) == ("{seam}", 4)
        assert [inline.span.text for inline in picture.alt] == [
            "A ",
            "{seam}",
            " seam ",
            "\\&",
            " ",
            "*more*",
        ]

    def test_a_picture_in_the_words_of_a_picture(self):
        (outer,) = read("![a ![b {c}](d.png) e](f.png)")
        assert isinstance(outer, Picture)
        inner = outer.alt[1]
        assert isinstance(inner, Picture)
        assert inner.span.text == "![b {c}](d.png)"
        assert inner.alt[1].span.text == "{c}"

    def test_a_picture_named_in_letters_that_addresses_do_not_have(self):
        (picture,) = read("![x](näht.jpg)")
        assert isinstance(picture, Picture)
        assert picture.file == "näht.jpg"

    @pytest.mark.parametrize(
        ("text", "hard"), [("a\nb", False), ("a  \n  b", True), ("a\\\nb", True), ("a \nb", False)]
    )
    def test_ends_of_lines(self, text: str, hard: bool):
        first, end, last = read(text)
        assert isinstance(end, LineBreak)
        assert end.hard is hard
        assert (first.span.text, last.span.text) == ("a", "b")

    def test_html_stays_text(self):
        (words,) = read("a <b onclick=x> c")
        assert isinstance(words, Words)
        assert words.text == "a <b onclick=x> c"
        assert isinstance(one("<script>\nx\n</script>\n"), ParagraphBlock)


class TestProblems:
    def found(self, text: str) -> list[Problem]:
        problems = Problems()
        whole = body(Source("recipe.md", text), 0, problems)
        prose(whole.blocks, name_in_braces, problems, whole.references)
        return list(problems.found())

    def test_a_brace_never_closed_is_reported_once_in_a_paragraph(self):
        (problem,) = self.found("Sew {seam and {band.\n")
        assert isinstance(problem, BraceNotClosed)
        assert problem.span.where == (1, 5)
        assert len(self.found("Sew {seam\n\nand {band\n")) == 2

    def test_the_first_is_named_even_within_other_marks(self):
        (problem,) = self.found("a [*b {c*](d) {e\n")
        assert problem.span.where == (1, 7)
        (problem,) = self.found("![b {c](d.png)\n")
        assert problem.span.where == (1, 5)

    def test_more_than_400_characters_are_no_measure(self):
        assert self.found("{" + "a" * 400 + "}\n") == []
        (problem,) = self.found("{" + "a" * 401 + "}\n")
        assert isinstance(problem, BraceNotClosed)

    def test_a_brace_in_an_address_is_no_measure(self):
        assert self.found("<https://a.example/{b> [c](d{e)\n") == []

    @pytest.mark.parametrize("text", ["```\na\n", "- ```\n  a\n\nb\n", "> ~~~\n> a\n", "```sew\n"])
    def test_a_block_never_closed(self, text: str):
        (problem,) = self.found(text)
        assert isinstance(problem, FenceNotClosed)
        assert problem.span.text[:3] in ("```", "~~~")

    def test_a_block_that_is_closed(self):
        assert self.found("```\n```\n\n~~~ x\n```\n~~~\n") == []

    @pytest.mark.parametrize(
        "text",
        [
            "> " * 21 + "a",
            "> " * 10_000 + "a",
            "- " * 10_000 + "a",
            "[" * 10_000 + "a" + "](b)" * 10_000,
            "![" * 10_000 + "a" + "](b)" * 10_000,
            "*a **b " * 5_000 + "c** d* " * 5_000,
            "".join("  " * depth + "- a\n" for depth in range(30)),
        ],
        ids=["21 quotes", "quotes", "lists", "brackets", "pictures", "stars", "stairs"],
    )
    def test_what_stands_too_deep_is_reported_and_nothing_breaks(self, text: str):
        found = self.found(text)
        assert {type(problem) for problem in found} == {NestedTooDeep}

    @pytest.mark.parametrize(
        "text", ["> " * 19 + "a", "[" * 15 + "a" + "]" * 15, "*a **b " * 5 + "c** d* " * 5]
    )
    def test_what_is_deep_and_not_too_deep(self, text: str):
        assert self.found(text) == []


def test_prose_of_every_kind_of_block():
    text = "# A\n\nb\n\n- c\n\n1. d\n\n> e\n\n```f\ng\n```\n\n    h\n\n| i |\n|---|\n| j |\n\n---\n"
    found = prose(blocks(text), name_in_braces, Problems())
    kinds = [Heading, Paragraph, Listing, Listing, Quote, Verbatim, Verbatim, Grid, Rule]
    assert [type(block) for block in found] == kinds
    bullets, numbers = found[2], found[3]
    assert isinstance(bullets, Listing)
    assert isinstance(numbers, Listing)
    assert (bullets.start, numbers.start) == (None, 1)
    fence, code, grid = found[5:8]
    assert isinstance(fence, Verbatim)
    assert isinstance(code, Verbatim)
    assert isinstance(grid, Grid)
    assert (fence.info, fence.text, code.info, code.text) == ("f", "g\n", "", "h\n")
    assert (plain(grid.head[0]), plain(grid.rows[0][0])) == ("i", "j")


def test_a_broken_measure_stays_in_its_place():
    source = Source("recipe.md", "a {b} c")
    passage = Passage.of(source.span(0, 7))
    _, measure, _ = inlines(passage, lambda inner: (Broken(inner.span()), ()), Problems())
    assert isinstance(measure, Measure)
    assert isinstance(measure.expression, Broken)
