"""The reader chooses, in a browser, on a page that was opened from a folder."""

from __future__ import annotations

from dataclasses import replace

import pytest
from choices.agreeing import PUBLISHER, Subject
from choices.recipes import POCKETS, TIES

from presscloth.handout.tree import Booklet
from presscloth.publish.site import publish

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    folder = tmp_path_factory.mktemp("chosen") / "site"
    bag, pockets = Subject(TIES), Subject(POCKETS)
    publish((_called(bag, "ties"), _called(pockets, "pockets")), (), PUBLISHER, folder)
    return folder


def _called(subject: Subject, slug: str) -> Booklet:
    handouts = tuple(replace(handout, slug=slug) for handout in subject.booklet.handouts)
    return replace(subject.booklet, handouts=handouts)


@pytest.fixture
def opened(browser, site):
    contexts = []

    def open_page(name="ties", context=None, **how):
        if context is None:
            context = browser.new_context(**how)
            contexts.append(context)
        page = context.new_page()
        page.faults, page.fetched = [], []
        page.on("pageerror", lambda error: page.faults.append(str(error)))
        page.on("request", lambda request: page.fetched.append(request.url))
        page.goto((site / name / "index.html").as_uri())
        return page

    yield open_page
    for context in contexts:
        context.close()


def field(page, size: str, system: str, place: int = 0):
    return page.locator(f"#{size}-choice-{place}-{system}")


def type_into(page, text: str, size: str = "small", system: str = "metric", place: int = 0) -> str:
    """Type a value; what the page says to it."""
    into = field(page, size, system, place)
    into.fill(text)
    into.press("Enter")
    return page.locator(f"#size-{size} .offer .said").nth(place).inner_text()


def words(page, size: str = "small") -> str:
    return " ".join(page.locator(f"#size-{size}").inner_text().split())


def test_every_number_follows_in_both_systems(opened):
    page = opened()
    before = words(page)
    assert "24 cm (9 1/2 in)" in before
    assert type_into(page, "20.5") == ""
    after = words(page)
    # 20.5 cm is 8 1/16 in, carried over to the eighth: 8 1/8 in (8.07 in lies nearer to 8 1/8 than to 8).
    assert field(page, "small", "imperial").input_value() == "8 1/8"
    # 2 × 20.5 + 9 / 3 = 44 cm; 2 × 8 1/8 + 3 1/2 / 3 = 17.4 in, to the eighth.
    assert "20.5 cm (8 1/8 in) low, 44 cm (17 3/8 in) in all" in after
    # The bag, joined on three sides and turned: 9 cm wide, and 20.5 cm with the raw edge above.
    assert "9 cm (3 1/2 in) by 21.5 cm (8 1/2 in)" in after
    assert words(page, "large") == words(opened(), "large")
    assert page.faults == []


def test_the_drawings_follow(opened):
    page = opened()
    type_into(page, "18")
    pieces = page.locator("#size-small .pieces svg.drawing")
    assert "11 cm × 20 cm" in pieces.first.text_content()

    def height_of_front() -> float:
        box = page.locator("#size-small .pieces svg.drawing path.cloth").first.bounding_box()
        return box["height"] / box["width"]

    assert height_of_front() == pytest.approx(20 / 11, rel=0.02)
    type_into(page, "13")
    assert height_of_front() == pytest.approx(15 / 11, rel=0.02)
    steps = page.locator("#size-small .steps svg.drawing").all_text_contents()
    assert any("14 cm" in each for each in steps)


def test_a_broken_check_says_so_and_changes_nothing(opened):
    page = opened()
    before = page.locator("#size-small .cutting").inner_text()
    said = type_into(page, "30")
    assert said.startswith("30 cm does not work: `drop <= 3 × base` does not hold: 30 cm")
    assert "(it does not drag on the floor)" in said
    assert said.endswith("24 cm (9 1/2 in) stays.")
    assert page.locator("#size-small .follows").count() == 0
    assert page.locator("#size-small .cutting").inner_text() == before
    assert field(page, "small", "metric").get_attribute("aria-invalid") is not None
    assert type_into(page, "20") == ""
    assert field(page, "small", "metric").get_attribute("aria-invalid") is None
    assert page.locator("#size-small .cutting").inner_text() != before


def test_what_cannot_be_followed_names_the_nearest_value_that_can(opened):
    """14.4 cm and 13 cm make an exact root, 19.4 cm: a way of its own, which was not tried."""
    page = opened()
    before = words(page, "large")
    said = type_into(page, "14.4", "large")
    assert said == (
        "The page cannot follow 14.4 cm; the nearest that it can is 14.3 cm. 24 cm (9 1/2 in) stays."
    )
    assert words(page, "large").replace(said, "").split() == before.split()
    assert type_into(page, "14.3", "large") == ""


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("50", "50 cm lies outside the range from 7.5 cm to 40 cm. 24 cm (9 1/2 in) stays."),
        ("long", "“long” cannot be read as a measure; write 7.5, 7 1/2 or 7½. 24 cm (9 1/2 in) stays."),
        ("1-1/2", "“1-1/2” cannot be read as a measure; write 7.5, 7 1/2 or 7½. 24 cm (9 1/2 in) stays."),
        ("19,5", "Write a point: 19.5 instead of 19,5. 24 cm (9 1/2 in) stays."),
        ("5 g", "“5 g” cannot be read as a measure; write 7.5, 7 1/2 or 7½. 24 cm (9 1/2 in) stays."),
    ],
)
def test_what_cannot_be_taken_is_refused_in_words(opened, text, said):
    assert type_into(opened(), text) == said


@pytest.mark.parametrize(
    ("text", "metric", "imperial"),
    [
        ("19 1/2", "19.5", "7 5/8"),
        ("19½", "19.5", "7 5/8"),
        ("195 mm", "19.5", "7 5/8"),
        ("7 1/2 in", "19.1", "7 1/2"),
        ('7½"', "19.1", "7 1/2"),
    ],
)
def test_a_measure_is_read_as_the_trade_writes_it(opened, text, metric, imperial):
    page = opened()
    assert type_into(page, text) == ""
    assert field(page, "small", "metric").input_value() == metric
    assert field(page, "small", "imperial").input_value() == imperial


def test_the_ends_of_a_range_are_the_authors_pairs(opened):
    page = opened("pockets")
    assert type_into(page, "8", "one-size", "imperial") == ""
    assert field(page, "one-size", "metric").input_value() == "20"
    assert type_into(page, "7.5", "one-size", "metric") == ""
    assert field(page, "one-size", "imperial").input_value() == "3"


def test_a_choice_is_kept_and_can_be_taken_back(browser, opened):
    context = browser.new_context()
    page = opened(context=context)
    type_into(page, "17")
    again = opened(context=context)
    assert field(again, "small", "metric").input_value() == "17"
    assert "17 cm" in words(again)
    again.locator("#size-small .yours button").click()
    assert "24 cm (9 1/2 in)" in words(again) and "17 cm" not in words(again)
    assert not again.locator("#size-small .yours button").is_visible()
    third = opened(context=context)
    assert field(third, "small", "metric").input_value() == "24"
    assert third.locator(".follows").count() == 0
    context.close()


def test_two_choices_stand_together(opened):
    page = opened("pockets")
    type_into(page, "6", "one-size", "imperial", 0)
    type_into(page, "3", "one-size", "imperial", 1)
    # A pouch is as high as pocket and flap together, as wide as the pocket and two allowances of 1/4 in.
    cut = page.locator("#size-one-size .cutting tbody tr").first.inner_text()
    assert "6 1/2 in × 9 in" in " ".join(cut.split())


def test_a_german_page_is_typed_and_answers_in_german(browser, tmp_path):
    """Commas, Zoll, and the compiler's own German words."""
    german = Subject(TIES.replace("written in: metric\n", "written in: metric\nlanguage: de\n"))
    publish((_called(german, "ties"),), (), PUBLISHER, tmp_path / "site")
    context = browser.new_context()
    page = context.new_page()
    page.goto((tmp_path / "site" / "ties" / "index.html").as_uri())
    assert type_into(page, "20,5") == ""
    assert field(page, "small", "metric").input_value() == "20,5"
    assert "20,5 cm (8 1/8 Zoll) low, 44 cm (17 3/8 Zoll) in all" in words(page)
    assert "9 cm (3 1/2 Zoll) by 21,5 cm (8 1/2 Zoll)" in words(page)
    assert type_into(page, "50") == (
        "50 cm liegt nicht zwischen 7,5 cm und 40 cm. Es bleibt bei 20,5 cm (8 1/8 Zoll)."
    )
    context.close()


def test_one_system_alone_has_one_field(opened):
    page = opened()
    page.get_by_role("radio", name="Metric", exact=True).check()
    assert field(page, "small", "metric").is_visible()
    assert not field(page, "small", "imperial").is_visible()


def test_without_a_script_nothing_is_asked(opened):
    page = opened(java_script_enabled=False)
    assert page.locator("input[type=text]").count() == 0
    assert "24 cm (9 1/2 in)" in words(page)


def test_nothing_is_fetched_but_the_sites_own_files(opened, site):
    page = opened()
    assert all(address.startswith(site.as_uri()) for address in page.fetched)
    assert any(address.endswith("/choices-data.js") for address in page.fetched)


@pytest.mark.parametrize("width", [320, 1280])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_choice_is_wider_than_the_screen_and_each_can_be_tapped(opened, width, scheme):
    page = opened(viewport={"width": width, "height": 800}, color_scheme=scheme)
    type_into(page, "17")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    for each in page.locator(".yours input, .yours button").all():
        if each.is_visible():
            assert each.bounding_box()["height"] >= 44


def test_quantities_say_for_which_choice_they_are(opened):
    assert "Quantities to buy are for the longest drop, 40 cm (16 in)." in words(opened())
