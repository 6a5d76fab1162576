"""The web page in a browser: without its script, with it, small, dark, and printed.

Criteria by number are those of WCAG 2.2 (W3C Recommendation): 1.4.3 contrast, 1.4.10 reflow at 320
pixels, 2.5.8 target size of 24 pixels, 2.4.1 a way past repeated blocks.
"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from printing.samples import BAG, MAT, PUBLISHER
from printing.tools import run

from presscloth.publish.site import publish

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    folder = tmp_path_factory.mktemp("browser") / "site"
    publish((BAG, MAT), (), replace(PUBLISHER, papers=()), folder)
    return folder


@pytest.fixture
def opened(browser, site):
    """Opens a page of the site in a context of its own; nothing may be fetched but its files."""
    contexts = []

    def open_page(name: str = "harbour-kit-bag/index.html", context=None, **how):
        if context is None:
            context = browser.new_context(**how)
            contexts.append(context)
        page = context.new_page()
        page.faults, page.fetched = [], []
        page.on("pageerror", lambda error: page.faults.append(str(error)))
        page.on("console", lambda said: page.faults.append(said.text) if said.type == "error" else None)
        page.on("request", lambda request: page.fetched.append(request.url))
        page.goto((site / name).as_uri())
        return page

    yield open_page
    for context in contexts:
        context.close()


def choice(page, name: str):
    return page.get_by_role("radio", name=name, exact=True)


def shown(page) -> list[str]:
    sections = page.locator("section.size").all()
    return [each.get_attribute("data-size") for each in sections if each.is_visible()]


def test_without_a_script_all_sizes_can_be_read_and_one_be_chosen(opened):
    page = opened(java_script_enabled=False)
    assert shown(page) == ["small", "tall", "large"]
    for size in ("tall", "small", "large"):
        choice(page, size.capitalize()).check()
        assert shown(page) == [size]
    choice(page, "All sizes").check()
    assert shown(page) == ["small", "tall", "large"]


def test_without_a_script_one_system_can_be_chosen(opened):
    page = opened(java_script_enabled=False)
    seams = page.locator(".intro p").nth(1)
    assert seams.inner_text().startswith("All seam allowances are 1 cm (3/8 in) and")
    choice(page, "Metric").check()
    assert " ".join(seams.inner_text().split()).startswith("All seam allowances are 1 cm and")
    heads = page.locator("section.size").first.locator("section.cutting thead")
    assert "IMPERIAL" not in heads.inner_text().upper()
    choice(page, "Imperial").check()
    assert " ".join(seams.inner_text().split()).startswith("All seam allowances are 3/8 in and")


@pytest.mark.parametrize("system", ["Metric", "Imperial"])
def test_in_one_system_nothing_is_left_of_the_other(opened, system):
    """Not even its space, which would stand before a comma or a full stop."""
    page = opened()
    choice(page, system).check()
    assert re.findall(r"\w+ [,.;:)]", page.locator("main").inner_text()) == []


def test_choices_and_ticks_are_kept_over_a_reload(opened):
    page = opened()
    choice(page, "Tall").check()
    choice(page, "Imperial").check()
    page.locator("#tall-cut-2").check()
    page.locator("#tall-did-3").check()
    page.reload()
    assert shown(page) == ["tall"]
    assert choice(page, "Imperial").is_checked()
    ticked = [box.get_attribute("id") for box in page.locator("[type=checkbox]:checked").all()]
    assert ticked == ["tall-cut-2", "tall-did-3"]
    page.locator("#tall-did-3").uncheck()
    page.reload()
    assert not page.locator("#tall-did-3").is_checked()
    assert page.locator("#tall-cut-2").is_checked()
    assert page.faults == []


def test_the_system_is_kept_from_recipe_to_recipe_and_the_size_is_not(opened):
    page = opened()
    choice(page, "Metric").check()
    choice(page, "Large").check()
    other = opened("mug-mat/index.html", context=page.context)
    assert other.locator(".size").is_visible()
    again = opened(context=page.context)
    assert choice(again, "Metric").is_checked()
    assert shown(again) == ["large"]


def test_a_new_version_is_begun_afresh(opened, site):
    page = opened()
    page.locator("#small-did-1").check()
    file = site / "harbour-kit-bag" / "index.html"
    old = file.read_text(encoding="utf-8")
    file.write_text(old.replace('data-version="2"', 'data-version="3"'), encoding="utf-8")
    page.reload()
    assert not page.locator("#small-did-1").is_checked()
    file.write_text(old, encoding="utf-8")
    page.reload()
    assert page.locator("#small-did-1").is_checked()


def test_a_link_into_a_hidden_size_shows_it(opened, site):
    page = opened()
    choice(page, "Small").check()
    page.goto((site / "harbour-kit-bag" / "index.html").as_uri() + "#tall-step-9")
    page.reload()
    assert shown(page) == ["tall"]
    assert page.locator("#tall-step-9").is_visible()


def test_a_browser_that_keeps_nothing_still_works(opened):
    page = opened()
    page.add_init_script("Object.defineProperty(window, 'localStorage', {get() { throw new Error('no') }})")
    page.reload()
    choice(page, "Tall").check()
    assert shown(page) == ["tall"]
    assert page.faults == []


PAGES = ("harbour-kit-bag/index.html", "mug-mat/index.html", "index.html", "standing/how-to-measure.html")


@pytest.mark.parametrize("name", PAGES)
def test_nothing_overflows_at_320_pixels(opened, name):
    page = opened(name, viewport={"width": 320, "height": 800})
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    wide = page.evaluate(
        "[...document.querySelectorAll('main *')].filter(e => !e.closest('svg, figure') "
        "&& e.getBoundingClientRect().right > 321).map(e => e.outerHTML.slice(0, 80))"
    )
    assert wide == []


@pytest.mark.parametrize("name", PAGES)
def test_only_files_of_the_site_are_fetched(opened, site, name):
    page = opened(name)
    page.wait_for_load_state("networkidle")
    assert len(page.fetched) >= 4
    assert all(address.startswith(site.as_uri()) for address in page.fetched)
    assert page.faults == []


def test_the_fonts_are_the_themes(opened):
    page = opened()
    page.evaluate("document.fonts.ready")
    loaded = page.evaluate("[...document.fonts].filter(f => f.status == 'loaded').map(f => f.family)")
    assert {name.strip('"') for name in loaded} >= {"Plain Seam Text", "Plain Seam Label", "Plain Seam Title"}


def test_targets_are_large_enough_for_a_thumb(opened):
    page = opened(viewport={"width": 360, "height": 800})
    for selector, least in (
        (".did", 44), (".choice label", 40), ("td.tick input", 24), ("header.site a", 24), ("a.at", 44),
    ):  # fmt: skip
        boxes = [each.bounding_box() for each in page.locator(selector).all()]
        assert boxes
        assert all(box["width"] >= least and box["height"] >= least for box in boxes), selector


def test_the_skip_link_is_first_and_comes_into_sight(opened):
    page = opened()
    page.keyboard.press("Tab")
    focused = page.locator(":focus")
    assert focused.inner_text() == "Skip to the content"
    box = focused.bounding_box()
    assert box["x"] >= 0 and box["y"] >= 0
    page.keyboard.press("Tab")
    style = page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
    assert style == "solid"


LUMINANCE = """
    colour => {
      const parts = colour.match(/[0-9.]+/g).map(Number).slice(0, 3).map(part => part / 255)
        .map(part => part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
      return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];
    }
"""  # relative luminance as WCAG 2.2 defines it

CONTRASTS = f"""
    () => {{
      const luminance = {LUMINANCE};
      const ground = element => {{
        for (let at = element; at; at = at.parentElement) {{
          const colour = getComputedStyle(at).backgroundColor;
          if (!colour.endsWith(", 0)")) return colour;
        }}
        return "rgb(255, 255, 255)";
      }};
      const found = [];
      for (const element of document.querySelectorAll("body *")) {{
        const own = [...element.childNodes].some(node => node.nodeType == 3 && node.textContent.trim());
        if (!own || element.closest("svg") || !element.checkVisibility()) continue;
        const [light, dark] = [luminance(getComputedStyle(element).color), luminance(ground(element))]
          .sort((a, b) => b - a);
        found.push([(light + 0.05) / (dark + 0.05), element.outerHTML.slice(0, 80)]);
      }}
      return found.sort((a, b) => a[0] - b[0]);
    }}
"""


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("name", PAGES)
def test_every_text_stands_out_from_its_ground(opened, name, scheme):
    page = opened(name, color_scheme=scheme)
    contrasts = page.evaluate(CONTRASTS)
    assert len(contrasts) > 10
    assert contrasts[0][0] >= 4.5, contrasts[0]


def test_printing_from_the_dark_gives_dark_on_white(opened):
    page = opened(color_scheme="dark")
    dark = page.evaluate("getComputedStyle(document.documentElement).backgroundColor")
    assert dark == "rgb(18, 25, 27)"
    page.emulate_media(media="print", color_scheme="dark")
    luminance = page.evaluate(f"({LUMINANCE})(getComputedStyle(document.documentElement).backgroundColor)")
    assert luminance == 1
    worst, where = page.evaluate(CONTRASTS)[0]
    assert worst >= 4.5, where
    ink = page.evaluate(f"({LUMINANCE})(getComputedStyle(document.querySelector('.step p')).color)")
    assert ink < 0.05
    assert not page.locator(".choices").is_visible()
    assert not page.locator("header.site nav").is_visible()


def test_only_the_chosen_size_is_printed(opened):
    page = opened()
    choice(page, "Tall").check()
    page.emulate_media(media="print")
    assert shown(page) == ["tall"]


def test_the_printed_page_is_a_sound_pdf(opened, tmp_path):
    page = opened()
    choice(page, "Small").check()
    page.pdf(path=tmp_path / "page.pdf", format="A4")

    text = run("pdftotext", "-layout", tmp_path / "page.pdf", "-")
    assert "Cutting list" in text and "Choose metric or imperial" in text
    assert "All recipes" not in text and "Imperial\n" not in text
