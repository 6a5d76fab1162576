"""A recipe as data that search engines read: schema.org's HowTo, written as JSON-LD.

Source of the names: schema.org, types HowTo, HowToSection, HowToStep, HowToSupply and HowToTool.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence

from presscloth.handout.tree import Booklet, Handout, MaterialLine, Publisher, StageText, StepText
from presscloth.printing.durations import duration
from presscloth.printing.likeness import shown_size
from presscloth.printing.plain import plain, plain_blocks
from presscloth.printing.preview import PREVIEW_FILE

Json = str | int | Sequence["Json"] | Mapping[str, "Json"]


def howto(booklet: Booklet, publisher: Publisher) -> str:
    """Write the data of a booklet as JSON that can stand in a `script` element.

    It tells of one size, the first that somebody has sewn: its steps with their measures as they
    are printed. Addresses stand in it only where the publisher has one, the picture with them.
    """
    return _in_script(json.dumps(_howto(booklet, publisher), ensure_ascii=False, separators=(",", ":")))


def page_address(publisher: Publisher, page: str) -> str:
    """The public address of a page of the site, by its file."""
    return f"{publisher.address.rstrip('/')}/{page}"


def _howto(booklet: Booklet, publisher: Publisher) -> Json:
    handout = shown_size(booklet)
    page = page_address(publisher, f"{handout.slug}/index.html") if publisher.address else ""
    picture = page_address(publisher, f"{handout.slug}/{PREVIEW_FILE}") if publisher.address else ""
    told: dict[str, Json] = {
        "@context": "https://schema.org",
        "@type": "HowTo",
        "name": handout.title,
        "description": handout.summary,
        "url": page,
        "image": picture,
        "inLanguage": handout.language,
        "datePublished": handout.release,
        "dateModified": handout.revised,
        "version": handout.version,
        "size": "" if handout.only_size else handout.size,
        "keywords": ", ".join(dict.fromkeys((*filter(None, (handout.craft,)), *handout.skills))),
        "publisher": {"@type": "Organization", "name": publisher.name},
        "totalTime": duration(handout.time),
        "supply": [_supply(line) for line in handout.materials],
        "tool": [{"@type": "HowToTool", "name": plain(tool)} for tool in handout.tools],
        "step": list(_sections(handout)),
    }
    return {name: value for name, value in told.items() if value}


def _supply(line: MaterialLine) -> Json:
    told: dict[str, Json] = {"@type": "HowToSupply", "name": line.name}
    if line.quantity is not None:
        told["requiredQuantity"] = line.quantity.text
    return told


def _sections(handout: Handout) -> Iterator[Json]:
    """A section for each stage; the steps themselves where the only stage has no title."""
    for stage in handout.stages:
        steps = list(_steps(stage))
        title = plain(stage.title)
        if title:
            yield {"@type": "HowToSection", "name": title, "itemListElement": steps}
        else:
            yield from steps


def _steps(stage: StageText) -> Iterator[Json]:
    for step in stage.steps:
        text = _text(step)
        if text and not step.elsewhere:
            yield {"@type": "HowToStep", "position": step.number, "text": text}


def _text(step: StepText) -> str:
    return " ".join(text for text in plain_blocks(step.content) if text)


def _in_script(written: str) -> str:
    """JSON in which nothing can end the element that it stands in, nor begin a comment there."""
    return written.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")
