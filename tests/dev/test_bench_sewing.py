"""What the benchmark proves is a sound recipe of the size that it says."""

from __future__ import annotations

from pathlib import Path

from presscloth.dev.bench_sewing import hundred_statements, recipe_of
from presscloth.edition import make_edition
from presscloth.pipeline import prove_source
from presscloth.problems import Problems
from presscloth.sewing.proving import chosen_ends, unasked
from presscloth.sewing.ways import ways
from presscloth.source import Source


def test_the_benchmark_proves_a_hundred_statements_in_five_sizes_and_all_there_is_to_prove() -> None:
    text = hundred_statements()
    recipe = recipe_of(text)
    edition = make_edition(recipe, recipe.sizes[0], Problems(), unasked)
    proved = prove_source(Source("recipe.md", text), Path("recipe.md"), Problems())
    assert proved.problems == ()
    assert len(proved.sizes) == 5
    assert all(len(size.construction.events) == 114 for size in proved.sizes)
    assert len(ways(edition)) == 4  # with the loop and without, either way of the second row
    assert len(tuple(chosen_ends(edition))) == 2
