"""What is proved: a recipe with everything that was worked out from it."""

from __future__ import annotations

from functools import cached_property

from presscloth.edition import Edition, statements
from presscloth.frozen import dataclass
from presscloth.recipe.matching import names_of
from presscloth.recipe.prose import Picture
from presscloth.recipe.tree import Recipe
from presscloth.recipe.walking import Told, inlines, told


@dataclass(frozen=True)
class Subject:
    """A recipe and its editions, size by size."""

    recipe: Recipe
    editions: tuple[Edition, ...]

    @cached_property
    def told(self) -> tuple[Told, ...]:
        return tuple(told(self.recipe))

    @cached_property
    def pictures(self) -> tuple[Picture, ...]:
        return tuple(i for run in self.told for i in inlines(run.of) if isinstance(i, Picture))

    @cached_property
    def keys_in_statements(self) -> frozenset[str]:
        """The materials' letters that statements speak of by themselves (`fill A with 250 g of K`)."""
        keys = {material.key for material in self.recipe.materials}
        spoken = (
            name.text
            for step in self.recipe.steps
            for part in step.parts
            for statement in statements(part.content)
            for slot in statement.slots.values()
            for name, _ in names_of(slot)
        )
        return frozenset(keys.intersection(spoken))
