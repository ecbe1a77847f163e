"""Opens a gallery in headless Chromium and checks what it does, and with a general-purpose
accessibility checker whether everybody can use it.

Usage: browse.py GALLERY AXE_CORE_SCRIPT
"""

import pathlib
import sys
import tempfile

from browser import Browser


def check(holds, what):
    if not holds:
        raise SystemExit(f"FAILED: {what}")
    print(f"ok: {what}")


SHOWN = "[...document.querySelectorAll('.cards > li')].filter((card) => !card.hidden).length"
LOADED = """Promise.all([...document.images].map((image) => {
  image.loading = "eager";
  return image.decode().then(() => image.naturalWidth > 0, () => false);
})).then((all) => all.length > 0 && all.every(Boolean))"""
FITS = "document.documentElement.scrollWidth <= window.innerWidth"
AUDIT = """axe.run(document).then((found) => found.violations.map((violation) =>
  violation.id + ": " + violation.help + ": " + violation.nodes.map((node) => node.target.join(" ")).join(", ")))"""
PASSED = "axe.run(document, { resultTypes: ['passes'] }).then((found) => found.passes.length)"


def audit(browser, page, checker):
    """Runs every rule of the accessibility checker, wide and narrow, light and dark."""
    for width in (1280, 390):
        for dark in (False, True):
            browser.size(width, 844, dark)
            browser.open(page)
            browser.value(LOADED)
            browser.value(checker)
            violations, name = browser.value(AUDIT), page.parent.name
            check(browser.value(PASSED) > 20, f"the accessibility checker has looked at {name}")
            check(not violations, f"{name}, {width} wide, {'dark' if dark else 'light'}: accessible {violations or ''}")


def browse(browser, gallery, checker):
    patterns = len(list((gallery / "pieces").iterdir()))
    browser.size(1280, 900)
    browser.open(gallery / "index.html")
    check(browser.value(SHOWN) == patterns, f"all {patterns} patterns are shown")
    check(browser.value(LOADED), "all pictures of the index load")
    check(browser.value("document.fonts.load('16px \"Source Sans 3\"').then((all) => all.length > 0)"), "the font loads")

    browser.press("/", "Slash", "/")
    check(browser.value("document.activeElement.id") == "words", "/ leads to the search")
    browser.ask("Input.insertText", text="PEARL silk")
    check(0 < browser.value(SHOWN) < patterns, "typing filters the cards")
    check("of" in browser.value("document.getElementById('count').textContent"), "the count says so")
    browser.ask("Input.insertText", text=" zzz")
    check(browser.value(SHOWN) == 0, "what nothing holds finds nothing")
    browser.press("Escape")
    check(browser.value(SHOWN) == patterns, "Escape shows all again")
    browser.value("kind.value = 'earrings'; kind.dispatchEvent(new Event('change'))")
    kinds = browser.value("[...document.querySelectorAll('.cards > li:not([hidden])')].map((card) => card.dataset.kind)")
    check(kinds and set(kinds) == {"earrings"}, "the kind filters too")

    browser.open(gallery / "index.html")
    browser.press("Tab")
    check(browser.value("document.activeElement.className") == "skip", "the first Tab offers to skip ahead")
    for _ in range(3):
        browser.press("Tab")
    check(browser.value("document.activeElement.closest('.cards') !== null"), "Tab walks to the first card")
    browser.press("Enter", text="\r")
    while not browser.value("document.readyState === 'complete' && location.pathname.includes('/pieces/')"):
        pass
    check(browser.value("document.querySelector('h1') !== null"), "Enter opens its page")

    for page in sorted(gallery.glob("pieces/*/index.html")):
        browser.open(page)
        check(browser.value(LOADED), f"pictures of {page.parent.name} load")
        browser.size(360, 740)
        check(browser.value(FITS), f"{page.parent.name} fits a telephone")
        browser.size(1280, 900)
    browser.open(gallery / "index.html")
    browser.size(360, 740)
    check(browser.value(FITS), "the index fits a telephone")
    for page in (gallery / "index.html", gallery / "pieces" / "saltmarsh" / "index.html"):
        audit(browser, page, checker)

    sent = [event["params"]["request"]["url"] for event in browser.events if event.get("method") == "Network.requestWillBeSent"]
    root = gallery.resolve().as_uri()
    others = [url for url in sent if not url.startswith((root, "data:", "about:"))]
    check(sent and not others, f"{len(sent)} requests, none leaves the gallery {others}")
    faults = [event for event in browser.events if event.get("method") == "Runtime.exceptionThrown"]
    check(not faults, "no script fails")


def main():
    gallery, axe = map(pathlib.Path, sys.argv[1:])
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        browser = Browser(profile)
        try:
            browser.attach()
            browse(browser, gallery, axe.read_text(encoding="utf-8") + ";0")
        finally:
            browser.close()


main()
