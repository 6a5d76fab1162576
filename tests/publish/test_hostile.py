"""Whatever stands in an author's text stays text: nothing of it runs, in any page of the site."""

from __future__ import annotations

import dataclasses
from dataclasses import replace
from pathlib import Path

import pytest
from choices.agreeing import Subject
from choices.recipes import POCKETS
from printing.samples import BAG, PUBLISHER

from presscloth.handout.tree import Booklet, Image
from presscloth.publish.publisher import Publisher
from presscloth.publish.site import publish

pytestmark = pytest.mark.browser

# Each would tell of itself if it ran. Taken together they end every context in which a page has text: an
# element, an attribute in either quotes, a script with JSON in it, a style, a comment, an SVG, a template.
RUNS = "document.title='it ran'"
PAYLOAD = (
    f"""</script><script>{RUNS}</script>"'><img src=x onerror="{RUNS}"><svg onload="{RUNS}"><!-- --> """
    f"""</title></style></textarea></template><a href="javascript:{RUNS}">x</a> {{{{7*7}}}} ]]> """
    f"""\\u003cb onclick={RUNS}>"""
)
LINKS = (
    f"javascript:{RUNS}",
    f"JaVaScRiPt:{RUNS}",
    f"\tjavascript:{RUNS}",
    f"data:text/html,<script>{RUNS}</script>",
)

KEPT = frozenset(
    {"slug", "language", "languages", "release", "version", "revised", "week", "number", "letter"}
)
"""Fields that no author writes freely: a check has held them before a handout is made."""


def hostile(value, field: str = ""):
    """A tree in which every text has the payload before it and every link leads to a script."""
    if field in KEPT or isinstance(value, Path | Image):
        return value
    if field in {"to", "video", "at_link"}:
        return LINKS[len(str(value)) % len(LINKS)]
    if isinstance(value, str):
        return f"{PAYLOAD}{value}"
    if isinstance(value, tuple):
        return tuple(hostile(each, field) for each in value)
    if dataclasses.is_dataclass(value) and type(value).__module__ == "presscloth.handout.tree":
        return replace(
            value, **{f.name: hostile(getattr(value, f.name), f.name) for f in dataclasses.fields(value)}
        )
    return value


def chosen() -> Booklet:
    """A page with something to choose, whose name and note are hostile."""
    booklet = Subject(POCKETS).booklet
    (way,) = (each for each in booklet.choices if each)
    offers = tuple(replace(offer, label=PAYLOAD + offer.label, note=PAYLOAD) for offer in way.offers)
    handouts = tuple(replace(each, slug="pockets", title=PAYLOAD) for each in booklet.handouts)
    return Booklet(handouts, (replace(way, offers=offers),))


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    folder = tmp_path_factory.mktemp("hostile")
    standing = folder / "standing"
    standing.mkdir()
    (standing / "safety.md").write_text(
        f"# Safety\n\n{PAYLOAD}\n\n[x](javascript:{RUNS}) <b onclick={RUNS}>b</b>\n"
    )
    publisher: Publisher = replace(PUBLISHER, papers=(), name=PAYLOAD, about=PAYLOAD)
    publish((hostile(BAG), chosen()), (), publisher, folder / "site", standing=standing)
    return folder / "site"


def pages(site: Path) -> list[Path]:
    return sorted(site.rglob("*.html"))


def test_nothing_runs_on_any_page(browser, site):
    context = browser.new_context()
    told = []
    for path in pages(site):
        page = context.new_page()
        page.on("dialog", lambda dialog: told.append(dialog.message))
        page.on("pageerror", lambda fault, path=path: told.append(f"{path.name}: {fault}"))
        page.goto(path.as_uri())
        page.wait_for_timeout(100)
        said = str(path.relative_to(site))
        assert page.title() != "it ran", said
        assert PAYLOAD.split("'")[0] in page.locator("body").inner_text() or "pockets" in said, said
        found = page.evaluate(
            """() => [...document.querySelectorAll("*")].flatMap((each) => [...each.attributes]
                .filter(({ name, value }) => /^on/i.test(name) || /^\\s*(javascript|data:text)/i.test(value))
                .map(({ name, value }) => `${each.tagName} ${name} ${value}`))"""
        )
        assert found == [], said
        scripts = page.locator("script:not([src])").evaluate_all("all => all.map((each) => each.type)")
        assert set(scripts) <= {"application/ld+json"}, said
        page.close()
    assert told == []
    assert len(pages(site)) > 5
    context.close()


def test_nothing_that_a_reader_types_or_a_browser_kept_runs(browser, site):
    context = browser.new_context()
    page = context.new_page()
    faults = []
    page.on("pageerror", lambda fault: faults.append(str(fault)))
    page.goto((site / "pockets" / "index.html").as_uri())
    field = page.locator("#one-size-choice-0-imperial")
    for typed in (PAYLOAD, "<img src=x onerror=" + RUNS + ">", "9" * 400, "1/0", "\u202e5"):
        field.fill(typed)
        field.press("Enter")
        assert page.title() != "it ran"
    page.evaluate(
        "payload => Object.keys(localStorage).forEach((key) => localStorage.setItem(key, payload))", PAYLOAD
    )
    page.evaluate("""payload => localStorage.setItem("presscloth system", payload)""", PAYLOAD)
    page.reload()
    assert page.title() != "it ran"
    page.goto(
        (site / "index.html").as_uri()
        + "?q="
        + "%3Cimg%20src%3Dx%20onerror%3D%22document.title%3D1%22%3E#%22%3E"
    )
    page.locator("input[name=q]").fill(PAYLOAD)
    assert page.title() != "it ran" and page.locator("main img[src=x]").count() == 0
    assert faults == []
    context.close()
