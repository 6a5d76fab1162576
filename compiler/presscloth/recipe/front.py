"""Transform the front matter into facts about the publication."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from typing import TypeVar
from urllib.parse import urlsplit

from presscloth.measure import System
from presscloth.problems import Problems
from presscloth.recipe.expression import Name
from presscloth.recipe.front_problems import (
    AcceptanceWithoutReason,
    FrontMatterKeyMissing,
    FrontMatterKeyUnknown,
    LanguageUnclear,
    ShapeUnexpected,
    SystemNotPublished,
    ValueUnknown,
    VideoUnclear,
)
from presscloth.recipe.front_yaml import Items, Node, Pairs, Scalar, front_lines
from presscloth.recipe.leads import names_in_list
from presscloth.recipe.release_problems import (
    PartWithoutWeek,
    ReleaseUnclear,
    RevisedBeforeRelease,
    RevisionUnclear,
    VersionUnclear,
    WeekUnclear,
    WeekWithoutProject,
)
from presscloth.recipe.tree import Accepted, Audience, FrontMatter
from presscloth.recipe.words import nearest
from presscloth.source import Source, Span

KEYS = (
    "title",
    "release",
    "version",
    "revised",
    "part of",
    "week",
    "summary",
    "written in",
    "systems",
    "language",
    "skills",
    "craft",
    "time",
    "audience",
    "sewn",
    "video",
    "credits",
    "accept",
    "held",
)

_RELEASE = re.compile(r"\d{4}-(?:0[1-9]|1[0-2])", re.ASCII)
_VERSION = re.compile(r"[1-9]\d{0,3}(?:\.\d{1,3})?", re.ASCII)
_WEEK = re.compile(r"[1-9]\d{0,2}", re.ASCII)
_DAY = re.compile(r"\d{4}-\d\d-\d\d", re.ASCII)
_LANGUAGE = re.compile(
    r"[a-z]{2,3}(?:-[a-z]{4})?(?:-(?:[a-z]{2}|\d{3}))?(?:-(?:[a-z0-9]{5,8}|\d[a-z0-9]{3}))*",
    re.ASCII | re.IGNORECASE,
)
"""A language, then perhaps a script, a region and variants. Source: RFC 5646, section 2.1."""

_SYSTEMS: Mapping[str, tuple[System, ...]] = {
    "both": (System.METRIC, System.IMPERIAL),
    "metric": (System.METRIC,),
    "imperial": (System.IMPERIAL,),
}
_WRITTEN = {system.value: system for system in System}
_AUDIENCES = {audience.value: audience for audience in Audience}
_HELD = {"yes": True, "no": False}

T = TypeVar("T")
Unclear = ReleaseUnclear | VersionUnclear | RevisionUnclear | WeekUnclear | LanguageUnclear | VideoUnclear


def front_matter(source: Source, problems: Problems) -> tuple[FrontMatter, int]:
    """The facts about the publication, and the offset at which the body begins.

    A title and a release are needed. What is left out is: `version` 1, `systems` both, `written in`
    metric (or the one system that is published), `language` en, `audience` adult, `held` no, `week` 0;
    nobody has sewn it yet; everything else is empty. A key without a value counts as left out, `held`
    apart.

    Reports keys that are unknown, twice or missing, and values that are not what their key wants. A
    size that `audience` or `sewn` names has its place under `size NAME` in `spans`.
    """
    lines, body = front_lines(source, problems)
    keys = _Keys(problems)
    for key, value in lines.pairs:
        keys.take(key, value)
    if lines.whole:
        keys.need("title", "Harbour Kit Bag", lines.span)
        keys.need("release", "2027-05", lines.span)
    systems = keys.word("systems", _SYSTEMS, _SYSTEMS["both"])
    return (
        FrontMatter(
            title=keys.text("title"),
            release=keys.checked("release", _is_release, ReleaseUnclear),
            version=keys.checked("version", _is_version, VersionUnclear) or "1",
            revised=keys.revised(),
            part_of=keys.text("part of"),
            week=keys.week(),
            summary=keys.text("summary"),
            written_in=keys.written_in(systems),
            systems=systems,
            language=keys.checked("language", _is_language, LanguageUnclear) or "en",
            skills=keys.skills(),
            craft=keys.text("craft"),
            time=keys.text("time"),
            audience=keys.audience(),
            sewn=keys.sewn(),
            video=keys.checked("video", _is_address, VideoUnclear) or None,
            credits=keys.text("credits"),
            accept=tuple(keys.accepted()),
            held=keys.word("held", _HELD, False),
            spans=keys.spans,
        ),
        body,
    )


def _is_release(text: str) -> bool:
    return _RELEASE.fullmatch(text) is not None


def _is_version(text: str) -> bool:
    return _VERSION.fullmatch(text) is not None


def _is_day(text: str) -> bool:
    """A day of the calendar. Source: ISO 8601, 5.2.2.1, the extended format."""
    if not _DAY.fullmatch(text):
        return False
    try:
        date.fromisoformat(text)
    except ValueError:
        return False
    return True


def _is_week(text: str) -> bool:
    return _WEEK.fullmatch(text) is not None


def _is_language(text: str) -> bool:
    return _LANGUAGE.fullmatch(text) is not None


def _is_address(text: str) -> bool:
    if any(character.isspace() for character in text):
        return False
    try:
        address = urlsplit(text)
    except ValueError:
        return False
    return address.scheme in ("http", "https") and bool(address.hostname)


def _typed(value: Node | None) -> bool:
    return value is not None and not (isinstance(value, Scalar) and not value.text)


class _Keys:
    """The keys with their values, each read as what it should be."""

    def __init__(self, problems: Problems) -> None:
        self.problems = problems
        self.values: dict[str, Node] = {}
        self.spans: dict[str, Span] = {}

    def take(self, key: Scalar, value: Node) -> None:
        """Keep a value under its key; under the key that was meant, so that one slip is one message."""
        name: str | None = key.text
        if key.text not in KEYS:
            name = nearest(key.text, KEYS)
            self.problems.add(FrontMatterKeyUnknown(span=key.span, key=key.text, meant=name, known=KEYS))
        if name is not None and name not in self.values:
            empty = isinstance(value, Scalar) and not value.text
            self.values[name] = Scalar("", key.span) if empty else value
            self.spans[name] = key.span if empty else value.span

    def need(self, key: str, example: str, place: Span) -> None:
        if not _typed(self.values.get(key)):
            self.problems.add(
                FrontMatterKeyMissing(span=self.spans.get(key, place), key=key, example=example)
            )

    def scalar(self, key: str, wanted: str = "one value") -> Scalar | None:
        value = self.values.get(key)
        if value is None or isinstance(value, Scalar):
            return value
        self.problems.add(ShapeUnexpected(span=value.span, key=key, wanted=wanted))
        return None

    def text(self, key: str) -> str:
        value = self.scalar(key)
        return "" if value is None else value.text

    def checked(self, key: str, fits: Callable[[str], bool], otherwise: type[Unclear]) -> str:
        """A text that must have a certain form; empty where it is left out or has another."""
        value = self.scalar(key)
        if value is None or not value.text:
            return ""
        if fits(value.text):
            return value.text
        self.problems.add(otherwise(span=value.span, value=value.text))
        return ""

    def word(self, key: str, words: Mapping[str, T], otherwise: T) -> T:
        value = self.scalar(key)
        if value is None or (not value.text and key != "held"):
            return otherwise
        return self.among(key, value, words, otherwise)

    def among(self, key: str, value: Scalar, words: Mapping[str, T], otherwise: T) -> T:
        if value.text in words:
            return words[value.text]
        meant = nearest(value.text, words)
        self.problems.add(
            ValueUnknown(span=value.span, key=key, value=value.text, meant=meant, known=tuple(words))
        )
        return otherwise

    def revised(self) -> str:
        """The day of this version; one before the month of release is reported."""
        revised = self.checked("revised", _is_day, RevisionUnclear)
        release = self.values.get("release")
        if revised and isinstance(release, Scalar) and _is_release(release.text) and revised < release.text:
            self.problems.add(
                RevisedBeforeRelease(span=self.spans["revised"], revised=revised, release=release.text)
            )
        return revised

    def week(self) -> int:
        """The week of a part of a longer project; 0 for what is no part of one."""
        week = self.checked("week", _is_week, WeekUnclear)
        project = self.text("part of")
        if week and not project:
            self.problems.add(WeekWithoutProject(span=self.spans["week"], week=int(week)))
        if project and not _typed(self.values.get("week")):
            self.problems.add(PartWithoutWeek(span=self.spans["part of"], project=project))
        return int(week) if week and project else 0

    def written_in(self, systems: Sequence[System]) -> System:
        written = self.word("written in", _WRITTEN, systems[0])
        if written not in systems:
            self.problems.add(
                SystemNotPublished(
                    span=self.spans["written in"], written=written.value, published=systems[0].value
                )
            )
        return written

    def scalars(self, key: str, among: Sequence[Node], wanted: str) -> Iterator[Scalar]:
        for value in among:
            if isinstance(value, Scalar):
                yield value
            else:
                self.problems.add(ShapeUnexpected(span=value.span, key=key, wanted=wanted))

    def skills(self) -> tuple[str, ...]:
        """A list, or one value with commas between."""
        match self.values.get("skills"):
            case Items(of=items):
                return tuple(item.text for item in self.scalars("skills", items, "a list of words"))
            case _:
                value = self.scalar("skills", "words with commas between")
                typed = () if value is None else value.text.split(",")
                return tuple(word.strip() for word in typed if word.strip())

    def audience(self) -> Mapping[str | None, Audience]:
        match self.values.get("audience"):
            case Pairs(of=pairs):
                found: dict[str | None, Audience] = {None: Audience.ADULT}
                for size, value in pairs:
                    self.spans[f"size {size.text}"] = size.span
                    for who in self.scalars("audience", [value], "one word for each size"):
                        found[size.text] = self.among("audience", who, _AUDIENCES, Audience.ADULT)
                return found
            case _:
                return {None: self.word("audience", _AUDIENCES, Audience.ADULT)}

    def sewn(self) -> tuple[str, ...] | None:
        match self.values.get("sewn"):
            case None | Scalar(text="no" | ""):
                return ()
            case Scalar(text="yes"):
                return None
            case Scalar() as value:
                names = names_in_list(value.passage)
            case Items(of=items):
                sizes = self.scalars("sewn", items, "a list of sizes")
                names = tuple(Name(size.text, size.span) for size in sizes)
            case Pairs(span=span):
                self.problems.add(ShapeUnexpected(span=span, key="sewn", wanted="the sizes, or `yes`"))
                names = ()
        self.spans.update({f"size {name.text}": name.span for name in names})
        return tuple(name.text for name in names)

    def accepted(self) -> Iterator[Accepted]:
        """A list of `name: reason`, or such pairs without the list."""
        value = self.values.get("accept")
        entries = value.of if isinstance(value, Items) else () if value is None else (value,)
        for entry in entries:
            match entry:
                case Pairs(of=pairs):
                    for name, why in pairs:
                        yield from self.acceptance(name, why)
                case Scalar(text=text):
                    if text:
                        self.problems.add(AcceptanceWithoutReason(span=entry.span, name=text))
                case Items(span=span):
                    wanted = "a list of `name: reason`"
                    self.problems.add(ShapeUnexpected(span=span, key="accept", wanted=wanted))

    def acceptance(self, name: Scalar, why: Node) -> Iterator[Accepted]:
        for reason in self.scalars("accept", [why], "one reason for each name"):
            if reason.text:
                hyphenated = "-".join(name.text.lower().split())
                yield Accepted(hyphenated, reason.text, name.span.to(reason.span))
            else:
                self.problems.add(AcceptanceWithoutReason(span=name.span, name=name.text))
