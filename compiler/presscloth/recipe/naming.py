"""One name means one thing: names are gathered, held against each other, and looked up."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from presscloth.problems import Label, Problem, Problems
from presscloth.recipe.expression import Expression, Name
from presscloth.recipe.lost import cause
from presscloth.recipe.matching import Known, names_in, part_words, parts_in
from presscloth.recipe.reading_problems import NameUnknown, PartUnknown
from presscloth.recipe.tree import Definition, Material, Piece, Size
from presscloth.recipe.words import Names, look_up
from presscloth.source import Span


class NameTwice(Problem):
    """One name is given to two things.

    Names that differ by capitals or a plural alone are one name too. A measure that means two things
    would be cut as one of them, and nobody can say which.

    Fails:

        ## Measures
        - seam = 1 cm (3/8 in)
        - Seams = 2 cm (3/4 in)

    Passes:

        ## Measures
        - seam = 1 cm (3/8 in)
        - broad seam = 2 cm (3/4 in)
    """

    name: str
    earlier: str

    def message(self) -> str:
        if self.name == self.earlier:
            return f"the name `{self.name}` is given twice"
        return f"`{self.name}` is the same name as `{self.earlier}`, which is given already"

    def hint(self) -> str:
        return "give one of the two another name"


class CircleOfNames(Problem):
    """Measures are defined by each other in a circle.

    None of them can be worked out before the others. State one of them by itself.

    Fails:

        ## Measures
        - band = strip - 1 cm
        - strip = band + 1 cm

    Passes:

        ## Measures
        - band = 5 cm (2 in)
        - strip = band + 1 cm
    """

    names: tuple[str, ...]

    def message(self) -> str:
        around = " → ".join(f"`{name}`" for name in (*self.names, self.names[0]))
        return f"these measures are defined by each other: {around}"

    def hint(self) -> str:
        return f"state `{self.names[0]}` by itself, for example `{self.names[0]} = 10 cm (4 in)`"


def definitions(sizes: Sequence[Size], measures: Sequence[Definition]) -> Iterator[Definition]:
    """All definitions: those of every size, then those of all sizes."""
    for size in sizes:
        yield from (definition for definition in size.measures.values() if definition is not None)
    yield from measures


def one_name_one_thing(
    sizes: Sequence[Size],
    measures: Sequence[Definition],
    pieces: Sequence[Piece],
    results: Sequence[Name],
    problems: Problems,
) -> None:
    """Report names that are given twice. What is sewn may take the name of a piece, but of no measure."""
    columns: dict[str, Span] = {}
    for size in sizes:
        for definition in size.measures.values():
            if definition is not None:
                columns.setdefault(definition.name.text, definition.name.span)
    given = Names(columns)
    for definition in measures:
        _give(definition.name, given, problems)
    measured = Names({**columns, **{d.name.text: d.name.span for d in reversed(measures)}})
    for piece in pieces:
        _give(piece.name, given, problems)
    for name in results:
        _hold_free(name, measured, problems)


def _give(name: Name, given: Names[Span], problems: Problems) -> None:
    if _hold_free(name, given, problems):
        given.add(name.text, name.span)


def _hold_free(name: Name, given: Names[Span], problems: Problems) -> bool:
    """Whether a name is still free; reported when it is not."""
    earlier = given.find(name.text)
    if earlier is None or earlier == name.span:
        return True
    label = Label(earlier, "given here first")
    problems.add(NameTwice(span=name.span, name=name.text, earlier=earlier.text, labels=(label,)))
    return False


def known_names(
    sizes: Sequence[Size],
    measures: Sequence[Definition],
    pieces: Sequence[Piece],
    materials: Sequence[Material],
    results: Sequence[Name],
    lost: tuple[Span, ...],
) -> Known:
    measured = {d.name.text: d.name.span for d in definitions(sizes, measures)}
    for size in sizes:
        for column in size.measures:
            measured.setdefault(column, size.span)
    things = {piece.name.text: piece.name.span for piece in pieces}
    for name in results:
        things.setdefault(name.text, name.span)
    for material in materials:
        things.setdefault(material.key, material.key_span)
    return Known(measured, things, frozenset(material.key for material in materials), lost)


class ThingNotMeasure(Problem):
    """The name of a thing stands where a measure belongs.

    A piece has a width and a height; which of them is meant must be said.

    Fails:

        ## Measures
        - strip = 2 × cloth

    Passes:

        ## Measures
        - strip = 2 × width of cloth
    """

    name: str

    def message(self) -> str:
        return f"`{self.name}` is a thing, not a measure"

    def hint(self) -> str:
        return f"say which measure of it: `width of {self.name}`, `height of {self.name}`"


def hold_names(expression: Expression, known: Known, problems: Problems) -> None:
    """Report the names in an expression that nothing bears, and parts that no thing has."""
    for part in parts_in(expression):
        if not known.is_part(part):
            words = part_words(part)
            problems.add(PartUnknown(span=words, part=words.quoted, meant=known.nearest_part(part)))
    for name, measure in names_in(expression):
        if measure and known.is_measure(name.text):
            continue
        if not measure and known.is_called_thing(name.text):
            continue
        if measure and known.is_called_thing(name.text):
            problems.add(ThingNotMeasure(span=name.span, name=name.text))
        else:
            meant = known.nearest(name.text)
            because = cause(name.text, known.lost)
            problems.add(NameUnknown(span=name.span, name=name.text, meant=meant, cause=because))


def circles(sizes: Sequence[Size], measures: Sequence[Definition], problems: Problems) -> None:
    """Report measures that are defined by each other, each circle once."""
    needs: dict[str, list[str]] = {}
    spelt: Mapping[str, Definition] = {d.name.text: d for d in definitions(sizes, measures)}
    for definition in definitions(sizes, measures):
        for name, measure in names_in(definition.expression):
            found = look_up(name.text, spelt) if measure else None
            if found is not None:
                needs.setdefault(definition.name.text, []).append(found.name.text)
    done: set[str] = set()
    for first in spelt:
        _walk(first, needs, (), done, spelt, problems)


def _walk(
    name: str,
    needs: Mapping[str, list[str]],
    path: tuple[str, ...],
    done: set[str],
    spelt: Mapping[str, Definition],
    problems: Problems,
) -> None:
    if name in path:
        circle = path[path.index(name) :]
        labels = tuple(Label(spelt[other].name.span, "part of the circle") for other in circle[1:])
        problems.add(CircleOfNames(span=spelt[circle[0]].name.span, names=circle, labels=labels))
        return
    if name in done or len(path) > 200:
        return
    for other in needs.get(name, ()):
        _walk(other, needs, (*path, name), done, spelt, problems)
    done.add(name)
