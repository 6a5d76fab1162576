"""The page on a tablet beside the machine: one step at a time, where the reader was, room for a thumb.

2.5.5 of WCAG 2.2 asks for targets of 44 CSS pixels; links within running text are excepted.
"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from printing.samples import BAG, MAT, PUBLISHER
from printing.targets import SMALL_TARGETS

from presscloth.printing.shipped import themes_folder
from presscloth.publish.site import publish

pytestmark = pytest.mark.browser

TABLET = {"width": 1280, "height": 800}

# Counts the locks that are held, in place of the browser's own.
WAKE_LOCK = """
    window.held = 0;
    Object.defineProperty(navigator, "wakeLock", {value: {
      request: async kind => { window.held += 1; return {release: () => { window.held -= 1; }}; }}});
"""


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    folder = tmp_path_factory.mktemp("tablet") / "site"
    publish((BAG, MAT), (), replace(PUBLISHER, papers=()), folder)
    return folder


@pytest.fixture
def page(browser, site):
    context = browser.new_context(viewport=TABLET)
    page = context.new_page()
    page.add_init_script(WAKE_LOCK)
    page.goto((site / "harbour-kit-bag" / "index.html").as_uri())
    yield page
    context.close()


def one_step_at_a_time(page, size: str):
    page.locator(f"#size-{size}").get_by_role("button", name="One step at a time").click()
    return page.get_by_role("dialog")


def button(view, name: str):
    return view.get_by_role("button", name=name)


def shown_step(view) -> str:
    """The name in the window's head, and the id of the box of the step that lies in it."""
    (box,) = view.locator(".did input").all()
    return f"{view.locator('#one-step-name').inner_text()}, {box.get_attribute('id')}"


def test_one_step_is_shown_by_itself_in_large_letters(page):
    view = one_step_at_a_time(page, "tall")
    assert shown_step(view) == "Step 1 of 9, tall-did-1"
    box = view.bounding_box()
    assert (box["width"], box["height"]) == (TABLET["width"], TABLET["height"])
    sizes = "element => parseFloat(getComputedStyle(element).fontSize)"
    large = view.locator(".step p").last.evaluate(sizes)
    assert large >= 1.5 * page.locator("#tall-step-2 .step p").last.evaluate(sizes)


def test_buttons_and_keys_lead_from_step_to_step(page):
    view = one_step_at_a_time(page, "tall")
    assert button(view, "Step before").is_disabled()
    button(view, "Next step").click()
    assert shown_step(view) == "Step 2 of 9, tall-did-2"
    for key, step in (("ArrowRight", 3), ("ArrowRight", 4), ("ArrowLeft", 3), ("PageUp", 2), ("PageDown", 3)):
        page.keyboard.press(key)
        assert shown_step(view) == f"Step {step} of 9, tall-did-{step}"
    button(view, "Step before").click()
    assert shown_step(view) == "Step 2 of 9, tall-did-2"
    seen = [shown_step(view)]
    while button(view, "Next step").is_enabled():
        button(view, "Next step").click()
        seen.append(shown_step(view))
    assert len(seen) == len(set(seen)), "an alternative is a step of its own"
    assert seen[-1] == "Step 9 of 9, tall-did-9"
    page.keyboard.press("ArrowRight")
    assert shown_step(view) == seen[-1]


def test_a_step_longer_than_the_screen_is_read_to_its_end_first(page):
    page.set_viewport_size({"width": 640, "height": 360})
    view = one_step_at_a_time(page, "tall")
    page.evaluate("document.querySelector('#one-step .step').style.minHeight = '900px'")
    pressed = 0
    while shown_step(view) == "Step 1 of 9, tall-did-1":
        page.keyboard.press("PageDown")
        pressed += 1
    assert pressed >= 4
    assert shown_step(view) == "Step 2 of 9, tall-did-2"


def test_a_step_goes_back_to_its_place(page):
    before = page.locator("#size-tall section.steps").inner_html()
    view = one_step_at_a_time(page, "tall")
    button(view, "Next step").click()
    button(view, "Close").click()
    assert page.locator("#size-tall section.steps").inner_html() == before
    assert not view.is_visible()


def test_a_step_ticked_by_itself_is_ticked_in_the_list_and_kept(page):
    view = one_step_at_a_time(page, "tall")
    button(view, "Next step").click()
    view.locator(".did input").check()
    page.keyboard.press("Escape")
    assert page.locator("#tall-did-2").is_checked()
    page.reload()
    assert page.locator("#tall-did-2").is_checked()


def test_the_screen_stays_on_while_steps_are_shown(page):
    view = one_step_at_a_time(page, "tall")
    assert page.evaluate("held") == 1
    button(view, "Close").click()
    assert page.evaluate("held") == 0


def test_without_a_wake_lock_steps_are_shown_all_the_same(browser, site):
    context = browser.new_context()
    page = context.new_page()
    faults: list[str] = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.add_init_script("Object.defineProperty(navigator, 'wakeLock', {value: undefined})")
    page.goto((site / "mug-mat" / "index.html").as_uri())
    page.get_by_role("button", name="One step at a time").click()
    page.keyboard.press("Escape")
    assert faults == []
    context.close()


def test_every_part_of_a_size_is_one_touch_away(page):
    page.get_by_role("radio", name="Large", exact=True).check()
    ways = page.locator("#size-large .ways a")
    assert ways.all_inner_texts() == ["Materials", "Cutting list", "The pieces", "Steps"]
    ways.last.click()
    box = page.locator("#large-steps").bounding_box()
    assert 0 <= box["y"] < TABLET["height"] / 2


def test_where_was_i_leads_to_the_step_last_shown(page):
    assert page.get_by_text("Where was I?").count() == 0
    view = one_step_at_a_time(page, "tall")
    for _ in range(3):
        button(view, "Next step").click()
    page.goto(page.url)
    way = page.get_by_role("link", name="Where was I? Step 4")
    page.get_by_role("radio", name="Small", exact=True).check()
    way.click()
    step = page.locator("#tall-step-4")
    assert step.is_visible()
    box = step.bounding_box()
    assert 0 <= box["y"] < TABLET["height"]
    assert shown_step(one_step_at_a_time(page, "tall")) == "Step 4 of 9, tall-did-4"


def test_where_was_i_leads_to_the_step_after_the_one_last_ticked(page):
    page.locator("#small-did-3").check()
    page.reload()
    assert page.get_by_role("link", name="Where was I?").get_attribute("href") == "#small-step-4"


def test_without_scripts_nothing_is_offered_that_would_not_work(browser, site):
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((site / "harbour-kit-bag" / "index.html").as_uri())
    assert page.get_by_role("button").count() == 0
    assert page.get_by_text("Where was I?").count() == 0
    assert page.locator("#tall-step-4").is_visible()
    context.close()


@pytest.mark.parametrize("width", [360, 1280])
@pytest.mark.parametrize("name", ["harbour-kit-bag/index.html", "mug-mat/index.html", "index.html"])
def test_there_is_room_for_a_thumb(browser, site, name, width):
    context = browser.new_context(viewport={"width": width, "height": 800})
    page = context.new_page()
    page.goto((site / name).as_uri())
    assert page.evaluate(SMALL_TARGETS) == []
    if "kit-bag" in name:
        one_step_at_a_time(page, "small")
        assert page.evaluate(SMALL_TARGETS) == []
    context.close()


def test_nothing_needs_a_pointer_that_hovers():
    """What happens below a pointer is decoration: a link's line, and nothing else."""
    for sheet in themes_folder().glob("*/*.css"):
        for rule in re.findall(r"[^{}]*:hover[^{}]*\{([^}]*)\}", sheet.read_text(encoding="utf-8")):
            said = {line.split(":")[0].strip() for line in rule.split(";") if line.strip()}
            assert said <= {"text-decoration-thickness"}, f"{sheet.name}: {rule}"
