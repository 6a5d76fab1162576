"""Every page of the shipped site, as a reader's browser and the validators see it.

The Nu Html Checker (npm `vnu-jar`) is the W3C's and WHATWG's own for HTML and CSS; axe-core (npm) holds a
page against WCAG 2.2 and good practice. `.ci/run` brings both and names their folder by
PRESSCLOTH_NODE_MODULES.
"""

from __future__ import annotations

import json
import os
import re
import subprocess
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import unquote

import pytest
from printing.pages import Page
from printing.targets import SMALL_TARGETS
from printing.tools import needs, needs_package
from whole.shipped import SLUGS, THEMES, Shipped, one_of_each_kind, pages_of, recipe_pages

pytestmark = pytest.mark.browser

KILOBYTE = 1000
LIMIT = 150 * KILOBYTE
HEIGHT = 900


# -- validators ----------------------------------------------------------------------------------


def checked(files: list[Path]) -> list[str]:
    """What the Nu Html Checker says of HTML and CSS files, its warnings too."""
    jar = needs_package("vnu-jar", "build/dist/vnu.jar")
    run = subprocess.run(
        [needs("java"), "-jar", str(jar), "--format", "json", "--also-check-css", *map(str, files)],
        capture_output=True,
        text=True,
        check=False,
    )
    said = json.loads(run.stderr)["messages"]
    return [f"{message['url']}:{message.get('lastLine')}: {message['message']}" for message in said]


def test_the_checker_speaks(tmp_path):
    broken = tmp_path / "broken.html"
    broken.write_text("<!doctype html><html lang=en><title>x</title><p id=a><p id=a>", encoding="utf-8")
    assert any("Duplicate ID" in message for message in checked([broken]))


@pytest.mark.parametrize("theme", THEMES)
def test_every_page_and_style_sheet_is_valid(shipped: Shipped, theme):
    folder = shipped.of(theme)
    files = [*folder.rglob("*.html"), *folder.rglob("*.css")]
    assert len(files) > len(SLUGS)
    assert checked(files) == []


AXE = """
    async () => (await axe.run(document, {resultTypes: ["violations"]})).violations.map(
        found => `${found.id}: ${found.nodes[0].failureSummary} ${found.nodes[0].html.slice(0, 150)}`)
"""


def violations(browser, file: Path, *, scheme: str, width: int, media: str, prepare: str = "") -> list[str]:
    axe = needs_package("axe-core", "axe.min.js").read_text(encoding="utf-8")
    context = browser.new_context(
        viewport={"width": width, "height": HEIGHT}, color_scheme=scheme, reduced_motion="reduce"
    )
    page = context.new_page()
    page.goto(file.as_uri())
    page.emulate_media(media=media, color_scheme=scheme, reduced_motion="reduce")
    if prepare:
        page.evaluate(prepare)
    page.evaluate(axe)
    found = page.evaluate(AXE)
    context.close()
    return [f"{file.parent.name}/{file.name}: {each}" for each in found]


def test_axe_speaks(browser, tmp_path):
    poor = tmp_path / "poor.html"
    poor.write_text(
        "<!doctype html><html><title>x</title><main><h1>x</h1><p style='color:#999'>grey", encoding="utf-8"
    )
    said = violations(browser, poor, scheme="light", width=1280, media="screen")
    assert any(": color-contrast:" in each for each in said)
    assert any(": html-has-lang:" in each for each in said)


@pytest.mark.parametrize("media", ["screen", "print"])
@pytest.mark.parametrize("width", [320, 1280])
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("theme", THEMES)
def test_axe_finds_nothing_on_any_kind_of_page(browser, shipped: Shipped, theme, scheme, width, media):
    folder = shipped.of(theme)
    pages = one_of_each_kind(folder)
    assert {"index.html", "kits.html"} < set(pages) and len(pages) >= 4
    found = [
        violation
        for page in pages
        for violation in violations(browser, folder / page, scheme=scheme, width=width, media=media)
    ]
    assert found == []


@pytest.mark.parametrize("slug", SLUGS)
def test_axe_finds_nothing_on_any_recipe(browser, shipped: Shipped, slug):
    page = shipped.plain / slug / "index.html"
    assert violations(browser, page, scheme="light", width=768, media="screen") == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_while_one_step_is_shown(browser, shipped: Shipped, scheme):
    page = shipped.plain / "harbour-kit-bag" / "index.html"
    opened = "document.querySelector('section.steps button').click()"
    found = violations(browser, page, scheme=scheme, width=1280, media="screen", prepare=opened)
    assert found == []


# -- in a browser --------------------------------------------------------------------------------

TOO_WIDE = """
    width => [...document.querySelectorAll("body *")].filter(element =>
        !element.closest("svg") && element.checkVisibility()
        && getComputedStyle(element).clipPath === "none"
        && element.getBoundingClientRect().right > width + 0.5 && !element.closest(".table, figure"))
      .map(element => element.outerHTML.slice(0, 120))
"""


@pytest.mark.parametrize("width", [320, 768, 1280])
@pytest.mark.parametrize("theme", THEMES)
def test_nothing_overflows_and_nothing_is_fetched_from_elsewhere(browser, shipped: Shipped, theme, width):
    """WCAG 2.2, 1.4.10: no scrolling sideways from 320 pixels on."""
    folder = shipped.of(theme)
    context = browser.new_context(viewport={"width": width, "height": HEIGHT})
    page = context.new_page()
    fetched: list[str] = []
    faults: list[str] = []
    page.on("request", lambda request: fetched.append(request.url))
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.on("console", lambda said: faults.append(said.text) if said.type == "error" else None)
    for name in pages_of(folder):
        page.goto((folder / name).as_uri())
        assert page.evaluate("document.documentElement.scrollWidth") <= width, name
        assert page.evaluate(TOO_WIDE, width) == [], name
    context.close()
    assert len(fetched) > len(pages_of(folder))
    assert [address for address in fetched if not address.startswith(folder.as_uri())] == []
    assert faults == []


@pytest.mark.parametrize("width", [360, 1280])
def test_there_is_room_for_a_thumb_on_every_kind_of_page(browser, shipped: Shipped, width):
    """WCAG 2.2, 2.5.5: 44 pixels; kits are printed."""
    context = browser.new_context(viewport={"width": width, "height": HEIGHT})
    page = context.new_page()
    for name in one_of_each_kind(shipped.plain):
        page.goto((shipped.plain / name).as_uri())
        assert page.evaluate(SMALL_TARGETS) == [], name
    context.close()


WORDS = """
    () => [...document.querySelectorAll("main :is(p, li, td, th, h1, h2, h3, h4, figcaption, svg, dd)")]
      .filter(element => element.textContent.trim() && !element.checkVisibility())
      .filter(element => !element.closest("form, [hidden], details > :not(summary)"))
      .map(element => element.outerHTML.slice(0, 120))
"""


@pytest.mark.parametrize("theme", THEMES)
def test_without_scripts_all_that_is_written_can_be_read(browser, shipped: Shipped, theme):
    """What lies in a closed `details` is opened by its summary, which needs no script."""
    folder = shipped.of(theme)
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    for name in (*one_of_each_kind(folder), *recipe_pages(folder)):
        page.goto((folder / name).as_uri())
        assert len(page.locator("main").inner_text()) > 60, name
        assert page.evaluate(WORDS) == [], name
        for summary in page.locator("main details > summary").all():
            summary.click()
        assert page.locator("main details:not([open])").count() == 0, name
    context.close()


# -- links ---------------------------------------------------------------------------------------

WITHIN = re.compile(r"(?![a-z][a-z0-9+.-]*:)")
ADDRESS = "https://tidewrack.example/"


def links(folder: Path) -> Iterator[tuple[str, str]]:
    """Every link of every page, feed and style sheet, by the file in which it stands."""
    for name in pages_of(folder):
        page = Page((folder / name).read_text(encoding="utf-8"))
        for element in page.elements:
            for attribute in ("href", "src", "poster"):
                if attribute in element.attributes:
                    yield name, element.attributes[attribute]
    for file in folder.rglob("*.xml"):
        for address in re.findall(rf"{ADDRESS}([^<\"]*)", file.read_text(encoding="utf-8")):
            yield "index.html", address or "index.html"
    for file in folder.rglob("*.css"):
        for address in re.findall(r"url\(\"?([^)\"]+)\"?\)", file.read_text(encoding="utf-8")):
            yield file.relative_to(folder).as_posix(), address


@pytest.mark.parametrize("theme", THEMES)
def test_every_link_within_the_site_leads_somewhere(shipped: Shipped, theme):
    folder = shipped.of(theme)
    ids = {name: set(Page((folder / name).read_text(encoding="utf-8")).ids) for name in pages_of(folder)}
    followed, broken = 0, []
    for name, link in links(folder):
        if not WITHIN.match(link) or link.startswith("?"):
            continue
        target, _, place = unquote(link).partition("#")
        led = os.path.normpath(os.path.join(os.path.dirname(name), target)) if target else name
        followed += 1
        if not (folder / led).is_file() or (place and led.endswith(".html") and place not in ids[led]):
            broken.append((name, link))
    assert broken == []
    assert followed > 200


# -- weight --------------------------------------------------------------------------------------


@pytest.mark.parametrize("slug", SLUGS)
def test_a_recipes_page_weighs_no_more_than_150_kilobytes(shipped: Shipped, slug):
    """Its photographs do not count; everything that stands in the page does."""
    for theme in THEMES:
        assert (shipped.of(theme) / slug / "index.html").stat().st_size <= LIMIT
