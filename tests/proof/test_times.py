"""Times in the video go forward, in every size for itself."""

from __future__ import annotations

import pytest

from presscloth.dev import scaffold
from presscloth.pipeline import prove
from presscloth.problems import Severity

RECIPE = """\
## Sizes

| Size  | side          |
|-------|---------------|
| Small | 30 cm (12 in) |
| Large | 40 cm (16 in) |

## Steps

1. {first} Press the cloth.

2. {second} Hem it.

   ```sew
   hem all of cloth by 1.2 cm (1/2 in) twice
   finish cloth
   ```

   {third} Press the hem.
"""


def told(tmp_path, first, second, third=""):
    path = scaffold.write(RECIPE.format(first=first, second=second, third=third), tmp_path)
    problems = prove(path).problems
    assert all(each.severity is Severity.WARNING for each in problems)
    return [(each.slug(), each.span.text, each.message()) for each in problems]


@pytest.mark.parametrize(
    ("first", "second", "third"),
    [
        ("At 0:00:", "At 0:01:", "At 0:02:"),
        ("At 59:59:", "At 1:00:00:", "At 12:00:00:"),
        ("", "At 4:15:", ""),
        ("At 99:00:", "At 99:30:", "At 100:00:"),
        ("Small only: At 9:00:", "Large only: At 4:15:", ""),
        ("Small only: At 4:15:", "Large only: At 4:15:", ""),
    ],
)
def test_times_that_go_forward(tmp_path, first, second, third):
    assert told(tmp_path, first, second, third) == []


def test_a_time_that_goes_back(tmp_path):
    assert told(tmp_path, "At 4:15:", "Take care: At 2:05:") == [
        ("times-out-of-order", "At 2:05:", "2:05 in the video stands after 4:15")
    ]


def test_the_same_time_twice(tmp_path):
    assert told(tmp_path, "At 4:15:", "At 4:15:") == [
        ("times-out-of-order", "At 4:15:", "two steps of one size are both at 4:15 in the video")
    ]


def test_the_time_of_a_later_paragraph(tmp_path):
    assert told(tmp_path, "At 1:00:", "At 4:15:", "At 3:00:") == [
        ("times-out-of-order", "At 3:00:", "3:00 in the video stands after 4:15")
    ]
    assert told(tmp_path, "Small only: At 5:00:", "At 4:15:", "")[0][0] == "times-out-of-order"


@pytest.mark.parametrize(
    ("time", "message"),
    [
        ("4:75", "4:75 is no time: after the first colon, numbers end at 59"),
        ("1:60:00", "1:60:00 is no time: after the first colon, numbers end at 59"),
        ("12:00:01", "12:00:01 is longer than a video lasts"),
        ("721:00", "721:00 is longer than a video lasts"),
    ],
)
def test_a_time_that_no_video_has(tmp_path, time, message):
    assert told(tmp_path, "", f"At {time}:") == [("time-beyond-sense", f"At {time}:", message)]
