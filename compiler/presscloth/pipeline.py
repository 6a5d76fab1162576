"""The whole compiler on one page: the stages in order, and nothing else."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from presscloth.cutting.workshop import PLAIN, Workshop
from presscloth.frozen import dataclass
from presscloth.problems import Problem, Problems, Severity
from presscloth.proof import accept, hold_recipe, projects, under_unread_statements
from presscloth.proof.measured import of_state
from presscloth.proof.size import WorkedSize, work_out
from presscloth.recipe.front import front_matter
from presscloth.recipe.load import RecipeNotFound, load
from presscloth.recipe.read import read
from presscloth.recipe.tree import FrontMatter, Recipe
from presscloth.sewing.verbs import forms
from presscloth.source import Source

if TYPE_CHECKING:  # what only printing needs is loaded when something is printed
    from presscloth.handout.kits import Kits, KitSheet
    from presscloth.handout.tree import Booklet, Handout, Publisher
    from presscloth.printing.measures import SizeMeasures
    from presscloth.translation.tree import Translation

RECIPE = "recipe.md"

Progress = Callable[[int, int, str], None]
"""Told how many are done, of how many, and which."""


@dataclass(frozen=True)
class Proved:
    """One recipe, proved: what was read and worked out, and all that was found on the way.

    `recipe` is None when the file could not be read at all; `sizes` are those that could be worked
    out. `problems` are in the order in which they were found, one for each size and way.
    """

    slug: str
    path: Path
    recipe: Recipe | None
    sizes: tuple[WorkedSize, ...]
    problems: tuple[Problem, ...]
    translations: tuple[Translation, ...] = ()

    @property
    def held(self) -> bool:
        """Whether the author keeps it out of the site."""
        return self.recipe is not None and self.recipe.front.held

    @property
    def slugs(self) -> tuple[str, ...]:
        """The short names of its pages, that of each translation too."""
        if not self.translations:
            return (self.slug,)
        from presscloth.handout.build import slug_in

        return self.slug, *(slug_in(self.slug, each) for each in self.translations)

    @property
    def sound(self) -> bool:
        """Whether a handout may be written: there are no errors."""
        return all(problem.severity is not Severity.ERROR for problem in self.problems)


def find(paths: Sequence[Path]) -> tuple[Path, ...] | Problem:
    """The recipes that are asked for: folders or files; without any, all of `recipes/`."""
    if not paths:
        return tuple(sorted(Path("recipes").glob(f"*/{RECIPE}")))
    found: list[Path] = []
    for path in paths:
        if path.is_dir() and not (path / RECIPE).is_file():
            inside = sorted(path.glob(f"*/{RECIPE}"))
            if not inside:
                return _not_found(path, f"holds no {RECIPE}")
            found += inside
        elif path.is_dir():
            found.append(path / RECIPE)
        elif path.is_file():
            found.append(path)
        else:
            return _not_found(path, "is not there")
    return tuple(dict.fromkeys(found))


def _not_found(path: Path, why: str) -> Problem:
    place = Source(path.as_posix(), "").span(0, 0)
    return RecipeNotFound(span=place, path=path.as_posix(), why=why)


def slug_of(path: Path) -> str:
    """The short name of a recipe: that of its folder, or of its file where it has another name."""
    return path.resolve().parent.name if path.name == RECIPE else path.stem


def prove(path: Path, workshop: Workshop = PLAIN) -> Proved:
    """Read a recipe, work out every size in both systems, and hold everything that can be held."""
    problems = Problems()
    source = load(path, problems)
    if source is None:
        return Proved(slug_of(path), path, None, (), problems.found())
    return prove_source(source, path, problems, workshop)


def prove_source(source: Source, path: Path, problems: Problems, workshop: Workshop = PLAIN) -> Proved:
    """The same for a text that has been read already; `path` says where its pictures lie."""
    slug = slug_of(path)
    recipe = read(source, slug=slug, folder=path.parent, verbs=forms(), problems=problems)
    sizes = tuple(work_out(recipe, size, problems, workshop) for size in recipe.sizes)
    hold_recipe(recipe, sizes, problems)
    if recipe.front.part_of:
        problems.extend(list(projects.hold(recipe.front, fronts_beside(path))))
    translations = _translations(recipe, path, problems)
    found = tuple(under_unread_statements(recipe, problems.found()))
    return Proved(slug, path, recipe, sizes, accept(found, recipe.front.accept), translations)


def _translations(recipe: Recipe, path: Path, problems: Problems) -> tuple[Translation, ...]:
    """What lies beside a recipe in other languages; most have nothing, and nothing is loaded for them."""
    if not any(path.parent.glob(f"{path.stem}.*.md")):
        return ()
    from presscloth.translation.beside import translations_beside

    return translations_beside(recipe, path, problems)


def fronts_beside(path: Path) -> dict[str, FrontMatter]:
    """What the other recipes in the same folder of recipes say of themselves, by their short names."""
    if path.name != RECIPE:
        return {}
    whole = path if len(path.parts) > 2 else path.resolve()
    beside = [other for other in whole.parent.parent.glob(f"*/{RECIPE}") if other != whole]
    sources = {slug_of(other): load(other, Problems()) for other in beside}
    return {slug: front_matter(source, Problems())[0] for slug, source in sources.items() if source}


def handout_of(size: WorkedSize, publisher: Publisher, translation: Translation | None = None) -> Handout:
    """The handout of one size of a sound recipe, in its own language or translated."""
    from presscloth.handout.build import WorkedOut, make_handout

    worked = WorkedOut(
        size.sewn, size.evaluator, size.settled, size.buying.purchases, translation=translation
    )
    return make_handout(worked, publisher)


def booklet(proved: Proved, publisher: Publisher, translation: Translation | None = None) -> Booklet:
    """The handouts of a sound recipe, one for each size, with what the reader may choose in it."""
    from presscloth.choices import follow
    from presscloth.handout.tree import Booklet

    handouts = tuple(handout_of(size, publisher, translation) for size in proved.sizes)
    pairs = zip(proved.sizes, handouts, strict=True)
    return Booklet(handouts, tuple(follow(size, each, publisher, translation) for size, each in pairs))


def booklets_of(proved: Proved, publisher: Publisher) -> tuple[Booklet, ...]:
    """The handouts of a sound recipe in its own language and in each into which it is translated."""
    from presscloth.handout.build import slug_in

    own = booklet(proved, publisher)
    if not proved.translations:
        return (own,)
    languages = (
        (own.first.language, proved.slug),
        *((each.language, slug_in(proved.slug, each)) for each in proved.translations),
    )
    every = (own, *(booklet(proved, publisher, each) for each in proved.translations))
    return tuple(
        replace(one, handouts=tuple(replace(handout, languages=languages) for handout in one.handouts))
        for one in every
    )


def measures(proved: Proved) -> tuple[SizeMeasures, ...]:
    """Every measure of every size, by name."""
    from presscloth.printing.measures import SizeMeasures, StateMeasures

    return tuple(
        SizeMeasures(
            size=size.edition.size.name,
            measures=size.measures,
            cut=size.cut_sizes,
            states=tuple(
                StateMeasures(stood.name, stood.step, of_state(stood)) for stood in size.construction.states
            ),
            purchases=size.buying.purchases,
        )
        for size in proved.sizes
    )


def kits_of(
    recipe: Recipe,
    size: WorkedSize,
    number: int,
    translation: Translation | None = None,
    *,
    optional: bool,
) -> tuple[KitSheet, Kits]:
    """The shop's sheet for so many kits of one size, in the recipe's language or translated.

    Besides it the purchases that it words.
    """
    from presscloth.cutting.terms import Terms
    from presscloth.handout.build import leading, tongue_in
    from presscloth.handout.kits import Kits, KitSheet, kit_materials
    from presscloth.handout.wording import systems_of
    from presscloth.tongue import named, speaking

    terms = Terms(size.evaluator)
    widths = {material.key: terms.width(material) for material in recipe.materials}
    kits = Kits(
        number,
        single=size.buying.kits(1, optional=optional),
        together=size.buying.kits(number, optional=optional),
        widths={key: width for key, width in widths.items() if width is not None},
    )
    systems = systems_of(recipe, leading(translation))
    with speaking(tongue_in(recipe, translation)) as tongue:
        sheet = KitSheet(
            slug=recipe.slug,
            title=named(recipe.front.title),
            size=named(size.edition.size.name) if len(recipe.sizes) > 1 else "",
            number=number,
            optional=optional,
            language=tongue.language,
            systems=systems,
            materials=tuple(kit_materials(kits, systems)),
        )
    return sheet, kits


def workshop_of(site: Path, kept_in: Path | None) -> Workshop:
    """How the publisher cuts cloth, and where layouts are kept. Compiling tells what is wrong in the file."""
    file = site / "publisher.yaml"
    said = file.read_text(encoding="utf-8", errors="replace") if file.is_file() else ""
    if not any(habit in said for habit in ("strips", "straightened")):
        return Workshop(kept_in=kept_in)  # a check need not load what reads publishers
    from presscloth.publish.publisher import publisher_of

    return replace(publisher_of(site, Problems()).workshop, kept_in=kept_in)


@dataclass(frozen=True)
class Compiled:
    """What a compile did: every recipe as it was proved, and the files that were written.

    `problems` are those of the publisher's own file, and what kept the site from being written;
    with an error among them nothing was written. `held` are the short names of those left out.
    """

    proved: tuple[Proved, ...]
    written: tuple[str, ...]
    held: tuple[str, ...]
    problems: tuple[Problem, ...]

    @property
    def failed(self) -> tuple[Proved, ...]:
        return tuple(each for each in self.proved if not each.sound)


def compile_site(
    paths: Sequence[Path],
    *,
    out: Path,
    held: bool = False,
    workers: int | None = None,
    pdf: bool = True,
    progress: Progress | None = None,
    site: Path = Path("site"),
    kept_in: Path | None = None,
) -> Compiled:
    """Prove recipes and let the site with their handouts take the place of the one in `out`.

    A recipe with errors keeps the pages that it had, and so does one that was not asked for. The
    publisher's file, standing pages and themes of its own are looked for in the folder `site`; layouts
    are kept in `kept_in`.
    """
    from presscloth.printing.look import ThemeError
    from presscloth.printing.pdf import PrintingRefused
    from presscloth.publish.addresses import is_address
    from presscloth.publish.published import SiteNotWritten, published_slugs
    from presscloth.publish.publisher import publisher_of
    from presscloth.publish.site import publish
    from presscloth.publish.swap import PublishRefused

    problems = Problems()
    publisher = publisher_of(site, problems)
    if not pdf:
        publisher = replace(publisher, papers=())
    workshop = replace(publisher.workshop, kept_in=kept_in)
    proved = tuple(_addressed(prove(path, workshop)) for path in paths)
    out_of_it = tuple(each.slug for each in proved if each.held and not held)
    sound = tuple(each for each in proved if each.sound and each.slug not in out_of_it)
    booklets = tuple(each for one in sound for each in booklets_of(one, publisher))
    asked = {slug for each in proved for slug in each.slugs}
    all_recipes = find(())
    everything = not isinstance(all_recipes, Problem) and set(all_recipes) <= set(paths)
    failed = (each for each in proved if not each.sound and each.slug not in out_of_it)
    kept = {slug for each in failed for slug in each.slugs if is_address(slug)}
    if not everything:
        kept |= set(published_slugs(out)) - asked
    written: tuple[str, ...] = ()
    if all(problem.severity is not Severity.ERROR for problem in problems.found()):
        try:
            written = publish(
                booklets,
                tuple(sorted(kept)),
                publisher,
                out,
                standing=_folder(site / "standing"),
                own_themes=_folder(Path("themes")),
                workers=workers,
                progress=progress,
            ).files
        except (PublishRefused, PrintingRefused, ThemeError) as refused:
            place = Source(out.as_posix(), "").span(0, 0)
            problems.add(SiteNotWritten(span=place, why=str(refused)))
    return Compiled(proved, written, out_of_it, problems.found())


def _addressed(proved: Proved) -> Proved:
    """What was proved; with a problem more where the recipe's pages would have no address."""
    from presscloth.publish.addresses import without_address

    source = proved.recipe.source if proved.recipe else Source(proved.path.as_posix(), "")
    problem = without_address(proved.slug, source)
    return proved if problem is None else replace(proved, problems=(*proved.problems, problem))


def _folder(path: Path) -> Path | None:
    return path if path.is_dir() else None
