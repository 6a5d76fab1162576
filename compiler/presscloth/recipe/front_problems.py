"""What can be wrong with the keys of the front matter and their values."""

from __future__ import annotations

from presscloth.problems import Problem


class FrontMatterKeyUnknown(Problem):
    """A key in the front matter means nothing.

    What stands behind it would be printed nowhere.

    Fails:

        ---
        sumary: A plain cloth
        ---

    Passes:

        ---
        summary: A plain cloth
        ---
    """

    key: str
    meant: str | None
    known: tuple[str, ...]

    def message(self) -> str:
        return f"`{self.key}` is no key of the front matter"

    def hint(self) -> str:
        return f"write `{self.meant}`" if self.meant else f"the keys are {', '.join(self.known)}"


class FrontMatterKeyMissing(Problem):
    """The front matter lacks the title or the month of release.

    Every handout has the title on its cover, and the catalogue is sorted by release.

    Fails:

        ---
        title:
        ---

    Passes:

        ---
        title: Plain Cloth
        ---
    """

    key: str
    example: str

    def message(self) -> str:
        return f"the front matter has no {self.key}"

    def hint(self) -> str:
        return f"add a line such as `{self.key}: {self.example}`"


class ValueUnknown(Problem):
    """A key that chooses among a few words has another one.

    Fails:

        ---
        systems: metrical
        ---

    Passes:

        ---
        systems: metric
        ---
    """

    key: str
    value: str
    meant: str | None
    known: tuple[str, ...]

    def message(self) -> str:
        if not self.value:
            return f"`{self.key}` has no value"
        return f"`{self.value}` is nothing that `{self.key}` can be"

    def hint(self) -> str:
        return f"write `{self.meant}`" if self.meant else f"write one of {', '.join(self.known)}"


class SystemNotPublished(Problem):
    """A recipe is written in one system and published in the other alone.

    The measures that its author stated would be printed nowhere, only those that were carried over.

    Fails:

        ---
        written in: metric
        systems: imperial
        ---

    Passes:

        ---
        written in: metric
        systems: both
        ---
    """

    written: str
    published: str

    def message(self) -> str:
        return f"the recipe is written in {self.written} and published in {self.published} alone"

    def hint(self) -> str:
        return f"write `systems: both` or `written in: {self.published}`"


class LanguageUnclear(Problem):
    """The language is not written as browsers and screen readers know it.

    They choose the voice and the hyphens by it. It is a short code: `en`, `en-GB`, `pt-BR`
    (BCP 47, RFC 5646).

    Fails:

        ---
        language: British English
        ---

    Passes:

        ---
        language: en-GB
        ---
    """

    value: str

    def message(self) -> str:
        return f"`{self.value}` is not the code of a language"

    def hint(self) -> str:
        return "write two or three letters, then perhaps a country: `en`, `en-GB`"


class VideoUnclear(Problem):
    """The video is not an address on the web.

    Times in the steps lead into the video; from a handout only a whole address can be reached.

    Fails:

        ---
        video: cloth.mp4
        ---

    Passes:

        ---
        video: https://video.example/plain-cloth
        ---
    """

    value: str

    def message(self) -> str:
        return f"`{self.value}` is not the address of a video"

    def hint(self) -> str:
        return "write the whole address, beginning with `https://`"


class AcceptanceWithoutReason(Problem):
    """A warning is accepted without a reason.

    Whoever edits the recipe next must be able to tell a decision from a slip.

    Fails:

        ---
        accept:
          - raw-edge
        ---

    Passes:

        ---
        accept: []
        ---
    """

    name: str

    def message(self) -> str:
        return f"the warning `{self.name}` is accepted without a reason"

    def hint(self) -> str:
        return f"write why: `- {self.name}: the reason in a few words`"


class ShapeUnexpected(Problem):
    """A key of the front matter has a list where it wants one value, or the other way round.

    Fails:

        ---
        summary: [plain, small]
        ---

    Passes:

        ---
        summary: plain, small
        ---
    """

    key: str
    wanted: str

    def message(self) -> str:
        return f"`{self.key}` wants {self.wanted}"

    def hint(self) -> str:
        return f"write {self.wanted} after `{self.key}:`"
