"""One size of a recipe as plain text, to read in a terminal or to have read aloud."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count, repeat
from textwrap import fill

from presscloth.drawing.tree import Drawing
from presscloth.handout.tree import (
    Amount,
    Block,
    Code,
    CutLine,
    CutOrder,
    Divider,
    Emphasis,
    Figure,
    Foreign,
    Grid,
    Handout,
    Heading,
    Image,
    Inline,
    Link,
    Listing,
    Marks,
    MaterialLine,
    NewLine,
    Paragraph,
    Quote,
    StepText,
    Text,
    Verbatim,
)
from presscloth.handout.wording import system_word
from presscloth.printing.names import day, month
from presscloth.tongue import say, say_as, speaking, tongue_of

WIDTH = 78
UNBROKEN = "\N{NO-BREAK SPACE}"  # within a measure while lines are filled


def text(handout: Handout) -> str:
    """Write a handout as plain text in lines of at most 78 characters that break no measure."""
    with speaking(tongue_of(handout.language)):
        parts = [*_head(handout), *_before(handout), *_lists(handout), *_work(handout)]
    return "\n\n".join(part for part in parts if part).replace(UNBROKEN, " ") + "\n"


# -- the parts, in the order of the page ---------------------------------------------------------


def _head(handout: Handout) -> Iterator[str]:
    yield _underlined(handout.title, "=")
    facts = [
        (say("Size"), "" if handout.only_size else handout.size),
        *((say("Finished size"), _finished(handout, place)) for place in range(len(handout.finished))),
        (say("Skills"), ", ".join(handout.skills)),
        (say("Time"), handout.time),
        (say("Craft"), handout.craft),
        (say("Part of"), _part_of(handout)),
        (say("Made for"), handout.audience),
        (say("This size"), _standing(handout)),
        (say("Video"), handout.video),
        (say("Credits"), handout.credits),
        (say("Released"), _released(handout)),
        (say("Revised"), day(handout.revised)),
        (say("Draft"), say("not released") if handout.draft else ""),
    ]
    yield "\n".join(_hung(f"{name}: ", words) for name, words in facts if words)
    yield _filled(handout.summary)
    yield from _blocks(handout.intro)


def _part_of(handout: Handout) -> str:
    if not handout.part_of:
        return ""
    return say("{project}, week {week}", project=handout.part_of, week=handout.week)


def _released(handout: Handout) -> str:
    return say("{month}, version {version}", month=month(handout.release), version=handout.version)


def _finished(handout: Handout, place: int) -> str:
    article = handout.finished[place]
    count = f"{article.count} " if article.count > 1 else ""
    name = f"{count}{article.name}".strip()
    return f"{name}: {_sides(article.sides)}" if name else _sides(article.sides)


def _standing(handout: Handout) -> str:
    sewn = say("sewn and checked") if handout.sewn else say("worked out, not yet sewn")
    proved = say("the edges that meet were proved to be equally long")
    return f"{sewn}; {proved}" if handout.proved else sewn


def _before(handout: Handout) -> Iterator[str]:
    cautions = [f"{caution.about}. {caution.text}" for caution in handout.cautions]
    if len(handout.systems) > 1:
        cautions.insert(0, say("Choose metric or imperial and stay with it; the two do not mix."))
    if cautions:
        yield _underlined(say("Before you start"), "-")
        yield "\n".join(_hung("- ", caution) for caution in cautions)


def _lists(handout: Handout) -> Iterator[str]:
    if handout.materials:
        yield _underlined(say("Materials"), "-")
        yield "\n".join(_hung(f"{line.key}  ", _material(line)) for line in handout.materials)
        yield from (_filled(_words(line)) for line in handout.longest)
    if handout.tools:
        yield _underlined(say("Tools"), "-")
        yield "\n".join(_hung("- ", _words(tool)) for tool in handout.tools)
    if handout.cutting:
        yield _underlined(say("Cutting list"), "-")
        yield "\n".join(_hung("[ ] ", _cut(line)) for line in handout.cutting)
    if handout.orders:
        yield _underlined(say("Cutting in strips"), "-")
        yield "\n".join(line for order in handout.orders for line in order_lines(order))
    if handout.pieces:
        yield _underlined(say("The pieces"), "-")
        for figure in handout.pieces:
            yield _filled(_figure(figure))
    if handout.layouts:
        yield _underlined(say("Cutting layouts"), "-")
        for row in handout.layouts:
            for _, figure in row:
                yield _filled(_figure(figure))


def _material(line: MaterialLine) -> str:
    said = [
        f"{line.name} ({line.form})" if line.form else line.name,
        _amount(line.quantity) if line.quantity else "",
        f"{line.with_optional[0]} {_amount(line.with_optional[1])}" if line.with_optional else "",
        line.verdict,
        say("width {amount}", amount=_amount(line.width)) if line.width else "",
        say("length {amount}", amount=_amount(line.length)) if line.length else "",
        say("sold by {amount}", amount=_amount(line.sold_by)) if line.sold_by else "",
        say("optional") if line.optional else "",
        *map(_words, line.notes),
    ]
    return "; ".join(part for part in said if part)


def _cut(line: CutLine) -> str:
    said = [
        say(
            "{number} × {piece}, from {key} ({material})",
            number=line.number,
            piece=line.piece,
            key=line.key,
            material=line.material,
        ),
        _expected(line),
        line.shape,
        line.belongs,
        *map(_words, line.notes),
    ]
    return "; ".join(part for part in said if part)


def _expected(line: CutLine) -> str:
    sides = _sides(line.sides)
    return say("measure yours first, expect {sides}", sides=sides) if line.measure_first else sides


def order_lines(order: CutOrder) -> Iterator[str]:
    """What is cut off one material in strips, line by line."""
    system = f", {system_word(order.system)}" if order.system else ""
    yield f"{order.key} {order.material}{system}"
    for line in order.lines:
        yield _hung("[ ] ", _words(line))


def _work(handout: Handout) -> Iterator[str]:
    if handout.stages:
        yield _underlined(say("Steps"), "-")
    for stage in handout.stages:
        yield _filled(_words(stage.title).upper())
        for step in stage.steps:
            yield _step(step)
    for section in handout.notes:
        yield _underlined(_words(section.title), "-")
        yield from _blocks(section.content)


def _step(step: StepText) -> str:
    sign = f"{step.number:>3}. "
    if step.elsewhere:
        return _under(sign, f"{step.elsewhere}. {say('Go on with the next step.')}")
    inside = _blocks(step.content, WIDTH - len(sign))
    return _under(sign, "\n".join(part for part in (_marks(step.marks), *inside) if part))


# -- words and blocks ----------------------------------------------------------------------------


def _words(words: tuple[Inline, ...]) -> str:
    return "".join(map(_word, words))


def _word(word: Inline) -> str:
    match word:
        case Text(text) | Code(text):
            return text
        case Amount():
            return _amount(word)
        case Emphasis(of) | Foreign(of=of):
            return _words(of)
        case Link(to, of):
            words = _words(of)
            return words if words == to else f"{words} ({to})"
        case Image(alt=alt):
            return f"[{say('picture: {words}', words=alt)}]"
        case NewLine():
            return " "


def _amount(amount: Amount) -> str:
    measures = [measure.replace(" ", UNBROKEN) for measure, _ in amount.texts]
    first, *others = measures
    return " ".join(part for part in (amount.before, first, *(f"({other})" for other in others)) if part)


def _sides(sides: tuple[tuple[str, Amount], ...]) -> str:
    return ", ".join(f"{name} {_amount(amount)}" if name else _amount(amount) for name, amount in sides)


def _blocks(blocks: tuple[Block, ...], width: int = WIDTH) -> Iterator[str]:
    for block in blocks:
        yield _block(block, width)


def _block(block: Block, width: int) -> str:
    match block:
        case Paragraph(of, marks):
            lines = (_marks(marks), _filled(_words(of), width))
            return "\n".join(line for line in lines if line)
        case Heading(of=of):
            return _filled(_words(of), width)
        case Listing(items, start):
            return "\n".join(
                _under(sign, "\n".join(_blocks(item, width - len(sign))))
                for sign, item in zip(_signs(start), items, strict=False)
            )
        case Quote(of):
            return _under("    ", "\n".join(_blocks(of, width - 4)))
        case Verbatim(text):
            return _under("    ", text.rstrip("\n"))
        case Grid(head, rows):
            return "\n".join(" | ".join(map(_words, row)) for row in (head, *rows))
        case Figure():
            return _filled(_figure(block), width)
        case Divider():
            return "* * *"


def _signs(start: int | None) -> Iterator[str]:
    return repeat("- ") if start is None else (f"{number}. " for number in count(start))


def _figure(figure: Figure) -> str:
    match figure.of:
        case Drawing(alt=alt, caption=caption):
            shown = f"[{say('drawing: {words}', words=alt)}]"
        case Image(alt=alt):
            shown, caption = f"[{say('picture: {words}', words=alt)}]", ""
    below = _words(figure.caption) or caption
    return f"{shown} {below}" if below else shown


def _marks(marks: Marks) -> str:
    said = [
        f"{say_as('mark', 'Or')}:" if marks.alternative else "",
        f"{say('Optional')}." if marks.optional else "",
        f"{say('Take care')}." if marks.care else "",
        f"{say('In the video at {time}', time=marks.at)}." if marks.at else "",
    ]
    return " ".join(part for part in said if part)


def _filled(words: str, width: int = WIDTH) -> str:
    return fill(words, width, break_long_words=False, break_on_hyphens=False)


def _hung(sign: str, words: str) -> str:
    return _under(sign, _filled(words, WIDTH - len(sign)))


def _under(sign: str, words: str) -> str:
    """Lines of words beside a sign that stands before the first of them."""
    first, *others = words.split("\n")
    return "\n".join([f"{sign}{first}", *(" " * len(sign) + line for line in others)])


def _underlined(words: str, with_sign: str) -> str:
    return f"{words}\n{with_sign * len(words)}"
