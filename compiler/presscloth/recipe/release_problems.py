"""What can be wrong with a release: its month and version, its revision, its week of a longer project."""

from __future__ import annotations

from presscloth.problems import Problem


class ReleaseUnclear(Problem):
    """The release is not a year and a month.

    Recipes are sorted by their month of release, and a month that does not exist has no place there.

    Fails:

        ---
        release: May 2027
        ---

    Passes:

        ---
        release: 2027-05
        ---
    """

    value: str

    def message(self) -> str:
        return f"`{self.value}` is not a month of a year"

    def hint(self) -> str:
        return "write the year with four figures and the month with two: `2027-05`"


class VersionUnclear(Problem):
    """The version is not a number.

    The handouts of a corrected recipe say which version they follow, and a reader must be able to
    tell the newer from the older.

    Fails:

        ---
        version: the second
        ---

    Passes:

        ---
        version: 2
        ---
    """

    value: str

    def message(self) -> str:
        return f"`{self.value}` is not the number of a version"

    def hint(self) -> str:
        return "write a number: 1, 2, 3 …"


class RevisionUnclear(Problem):
    """The day of a revision is no day of the calendar.

    Readers who follow the releases are told of a corrected version by its day.

    Fails:

        ---
        revised: June 14th
        ---

    Passes:

        ---
        title: Plain Cloth
        release: 2027-05
        version: 2
        revised: 2027-06-14
        ---
    """

    value: str

    def message(self) -> str:
        return f"`{self.value}` is not a day of the calendar"

    def hint(self) -> str:
        return "write year, month and day: `2027-06-14`"


class RevisedBeforeRelease(Problem):
    """A recipe was revised before it was released.

    One of the two dates is a slip, and what follows the releases would sort the recipe by it.

    Fails:

        ---
        title: Plain Cloth
        release: 2027-05
        revised: 2027-04-30
        ---

    Passes:

        ---
        title: Plain Cloth
        release: 2027-05
        revised: 2027-05-30
        ---
    """

    revised: str
    release: str

    def message(self) -> str:
        return f"the recipe is revised on {self.revised}, before its release in {self.release}"

    def hint(self) -> str:
        return "put right the day or the month of release"


class WeekUnclear(Problem):
    """The week of a part is not a whole number from 1 on.

    The parts of a project are put in order by their weeks.

    Fails:

        ---
        part of: Plain Cloths
        week: second
        ---

    Passes:

        ---
        title: Plain Cloth
        ---
    """

    value: str

    def message(self) -> str:
        return f"`{self.value}` is not the number of a week"

    def hint(self) -> str:
        return "write a whole number, the first week being 1: `week: 2`"


class PartWithoutWeek(Problem):
    """A part of a longer project does not say for which week it is.

    The project's page has its parts by week, and each part leads to the one before and the one after.

    Fails:

        ---
        part of: Plain Cloths
        ---

    Passes:

        ---
        part of: Plain Cloths
        week: 1
        ---
    """

    project: str

    def message(self) -> str:
        return f"this part of {self.project} has no week"

    def hint(self) -> str:
        return "add a line such as `week: 1`"


class WeekWithoutProject(Problem):
    """A recipe has a week and is no part of a longer project.

    Nothing tells which recipes come before and after it.

    Fails:

        ---
        week: 1
        ---

    Passes:

        ---
        part of: Plain Cloths
        week: 1
        ---
    """

    week: int

    def message(self) -> str:
        return f"the recipe is for week {self.week} and does not say of which project"

    def hint(self) -> str:
        return "add a line such as `part of: Half-Tide Quilt`, or take the week out"
