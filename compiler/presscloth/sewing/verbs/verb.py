"""What a verb is: its name, and each way in which a statement with it may be written."""

from __future__ import annotations

from dataclasses import dataclass

from presscloth.recipe.patterns import ResultRule, VerbForm


@dataclass(frozen=True, slots=True)
class Verb:
    """A verb, with one pattern for each way in which it is written."""

    name: str
    patterns: tuple[str, ...]
    result: ResultRule = ResultRule.NEEDED

    @property
    def form(self) -> VerbForm:
        return VerbForm(self.name, self.patterns, self.result)
