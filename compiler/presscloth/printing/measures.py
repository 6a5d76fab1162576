"""Print every measure of a recipe, all sizes: as JSON, or as a table to read."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import field

from presscloth.cutting.buying import Purchase
from presscloth.frozen import dataclass
from presscloth.handout.wording import amount
from presscloth.measure import Kind, Quantity, System, exact_text


@dataclass(frozen=True, slots=True)
class SizeMeasures:
    """The measures of one size by their names, and those of things in every state.

    `cut` names the measures that are cut sizes, which are rounded as those are.
    """

    size: str
    measures: Mapping[str, Quantity]
    cut: frozenset[str] = frozenset()
    states: tuple[StateMeasures, ...] = ()
    purchases: Mapping[str, Purchase] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class StateMeasures:
    """What a thing measures after a step; step 0 is as cut."""

    thing: str
    step: int
    measures: Mapping[str, Quantity]


def as_json(recipe: str, sizes: Sequence[SizeMeasures], systems: Sequence[System]) -> str:
    """One object: exact rationals in mm and in (12 digits where a root entered), and as printed."""
    return json.dumps(whole(recipe, sizes, systems), ensure_ascii=False, indent=1)


def whole(recipe: str, sizes: Sequence[SizeMeasures], systems: Sequence[System]) -> Mapping[str, object]:
    return {
        "recipe": recipe,
        "sizes": [
            {
                "size": size.size,
                "measures": {
                    name: _entry(quantity, systems, cut=name in size.cut)
                    for name, quantity in size.measures.items()
                },
                "states": [
                    {
                        "thing": state.thing,
                        "step": state.step,
                        **{part: _entry(q, systems) for part, q in state.measures.items()},
                    }
                    for state in size.states
                ],
                "quantities": {key: _bought(purchase) for key, purchase in size.purchases.items()},
            }
            for size in sizes
        ],
    }


def _entry(quantity: Quantity, systems: Sequence[System], *, cut: bool = False) -> Mapping[str, str]:
    if quantity.kind is Kind.NUMBER and quantity.metric == quantity.imperial:
        return {"count": exact_text(quantity, System.METRIC)}
    return {
        "metric": exact_text(quantity, System.METRIC),
        "imperial": exact_text(quantity, System.IMPERIAL),
        "printed": amount(quantity, systems, cut=cut).text,
    }


def _bought(purchase: Purchase) -> Mapping[str, object]:
    """What is needed and what to buy, in mm and in, g and oz, or a number, as exact rationals."""
    return {
        system.value: {
            "need": str(bought.need),
            "buy": str(bought.buy),
            "proved": bought.proved,
            "bound": str(bought.bound),
        }
        for system, bought in purchase.by_system.items()
    }


def as_text(recipe: str, sizes: Sequence[SizeMeasures], systems: Sequence[System]) -> str:
    """A table with a row for each measure and a column for each size."""
    names = list(dict.fromkeys(name for size in sizes for name in size.measures))
    head = ["", *(size.size for size in sizes)]
    rows = [[name, *(_cell(size, name, systems) for size in sizes)] for name in names]
    widths = [max(len(row[i]) for row in (head, *rows)) for i in range(len(head))]
    lines = [_line(row, widths) for row in (head, *rows)]
    lines.insert(1, "  ".join("-" * width for width in widths))
    return "\n".join([recipe, "", *lines, ""])


def _cell(size: SizeMeasures, name: str, systems: Sequence[System]) -> str:
    quantity = size.measures.get(name)
    return "–" if quantity is None else amount(quantity, systems, cut=name in size.cut).text


def _line(cells: Sequence[str], widths: Sequence[int]) -> str:
    return "  ".join(cell.ljust(width) for cell, width in zip(cells, widths, strict=True)).rstrip()
