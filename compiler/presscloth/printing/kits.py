"""A shop's sheet for many kits, as text, as JSON, or as a page to print."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping

from presscloth.handout.kits import Kits, KitSheet, left, saved
from presscloth.handout.tree import Amount, Publisher
from presscloth.handout.wording import system_word
from presscloth.measure import System
from presscloth.printing.markup import Marker
from presscloth.printing.text import UNBROKEN, order_lines
from presscloth.printing.theme import Theme, environment
from presscloth.tongue import many, say, speaking, tongue_of


def as_text(sheet: KitSheet) -> str:
    """The sheet in plain text."""
    with speaking(tongue_of(sheet.language)):
        return "\n".join(_lines(sheet)).replace(UNBROKEN, " ")


def _lines(sheet: KitSheet) -> Iterator[str]:
    title = heading(sheet)
    yield from (title, "=" * len(title), "")
    for material in sheet.materials:
        width = f", {say('{width} wide', width=material.width.text)}" if material.width else ""
        yield f"{material.key} {material.name} ({material.form}{width})"
        told = [
            (say("for all {number}", number=sheet.number), material.together),
            (say("for one kit"), material.single),
            (say("saved"), material.saved),
            (say("left over"), material.left),
        ]
        yield from (
            f"    {words + ':':<14} {_in_some(each, sheet)}" for words, each in told if each is not None
        )
        if material.verdict:
            yield f"    {material.verdict}"
        for cut in material.cuts:
            shape = f", {cut.shape}" if cut.shape else ""
            yield f"    [ ] {cut.number} × {cut.piece}{shape}: {_sides(cut.sides)}"
        for order in material.orders:
            name, *lines = order_lines(order)  # the name stands above already
            yield from (f"    {line}" for line in ([name, *lines] if order.system else lines))
        yield ""


def _in_some(told: Amount, sheet: KitSheet) -> str:
    """An amount; where there is none in a system that the sheet has, with the one in which there is some."""
    system = told.texts[0][1]
    if system is None or len(told.texts) == len(sheet.systems):
        return told.text
    return f"{told.text} ({system_word(system)})"


def heading(sheet: KitSheet) -> str:
    """`40 kits: Slipway Apron, Medium`"""
    kits = many("{n} kit", "{n} kits", sheet.number)
    size = f", {sheet.size}" if sheet.size else ""
    optional = f", {say('with all that is optional')}" if sheet.optional else ""
    return f"{kits}: {sheet.title}{size}{optional}"


def _sides(sides: tuple[tuple[str, Amount], ...]) -> str:
    return " × ".join(f"{word} {side.text}" for word, side in sides)


def as_json(sheet: KitSheet, kits: Kits) -> str:
    """The sheet for a program: exact rationals in mm and in, g and oz, or numbers."""
    whole = {
        "recipe": sheet.slug,
        "size": sheet.size,
        "kits": sheet.number,
        "optional": sheet.optional,
        "materials": {material.key: _material(material.key, kits) for material in sheet.materials},
        "cuts": [
            {"material": material.key, "piece": cut.piece, "number": cut.number}
            for material in sheet.materials
            for cut in material.cuts
        ],
    }
    return json.dumps(whole, ensure_ascii=False, indent=1) + "\n"


def _material(key: str, kits: Kits) -> Mapping[str, Mapping[str, object]]:
    return {system.value: _in_system(key, kits, system) for system in System}


def _in_system(key: str, kits: Kits, system: System) -> Mapping[str, object]:
    bought = kits.together[key].by_system[system]
    return {
        "single": str(kits.single[key].by_system[system].buy),
        "need": str(bought.need),
        "buy": str(bought.buy),
        "saved": str(saved(kits, key)[system]),
        "left": str(left(kits.together[key])[system]),
        "proved": bought.proved,
        "bound": str(bought.bound),
    }


def as_page(sheet: KitSheet, theme: Theme, publisher: Publisher) -> str:
    """The sheet as a page that stands by itself, to be printed from a browser."""
    template = environment(theme).get_template("kits.html")
    marker = Marker(theme.look, web=False, ids="")
    with speaking(tongue_of(sheet.language)):
        return template.render(sheet=sheet, heading=heading(sheet), publisher=publisher, mark=marker)
