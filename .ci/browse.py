"""Opens a gallery in headless Chromium over the DevTools protocol's pipe and checks what it does.

Usage: browse.py GALLERY
"""

import json
import os
import pathlib
import subprocess
import sys
import tempfile


class Browser:
    """Chromium, spoken to by messages that end in a zero byte on descriptors 3 and 4."""

    def __init__(self, profile):
        to_read, self.to_write = os.pipe()
        self.to_hear, to_say = os.pipe()
        command = (
            f"exec chromium --headless --no-sandbox --disable-gpu --remote-debugging-pipe "
            f"--user-data-dir='{profile}' about:blank 3<&{to_read} 4>&{to_say} 2>/dev/null"
        )
        self.process = subprocess.Popen(["bash", "-c", command], pass_fds=(to_read, to_say))
        os.close(to_read)
        os.close(to_say)
        self.rest, self.number, self.events, self.session = b"", 0, [], None

    def receive(self):
        while b"\0" not in self.rest:
            part = os.read(self.to_hear, 1 << 16)
            if not part:
                raise SystemExit("the browser went away")
            self.rest += part
        message, self.rest = self.rest.split(b"\0", 1)
        return json.loads(message)

    def ask(self, method, **parameters):
        self.number += 1
        message = {"id": self.number, "method": method, "params": parameters}
        if self.session:
            message["sessionId"] = self.session
        os.write(self.to_write, json.dumps(message).encode() + b"\0")
        while True:
            answer = self.receive()
            if answer.get("id") == self.number:
                if "error" in answer:
                    raise SystemExit(f"{method}: {answer['error']}")
                return answer["result"]
            self.events.append(answer)

    def attach(self):
        target = self.ask("Target.createTarget", url="about:blank")["targetId"]
        self.session = self.ask("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Page", "Network", "Runtime", "Log"):
            self.ask(f"{domain}.enable")

    def open(self, path):
        address = path.resolve().as_uri()
        self.ask("Page.navigate", url="about:blank")
        self.ask("Page.navigate", url=address)
        while not self.value(f"document.readyState === 'complete' && location.href === {json.dumps(address)}"):
            pass

    def value(self, script):
        answer = self.ask("Runtime.evaluate", expression=script, returnByValue=True, awaitPromise=True)
        if "exceptionDetails" in answer:
            raise SystemExit(f"{script}: {answer['exceptionDetails']}")
        return answer["result"].get("value")

    def press(self, key, code=None, text=None):
        extra = {"text": text} if text else {}
        virtual = {"Tab": 9, "Enter": 13, "Escape": 27}.get(key, 0)
        for kind in ("keyDown", "keyUp"):
            self.ask(
                "Input.dispatchKeyEvent", type=kind, key=key, code=code or key, windowsVirtualKeyCode=virtual, **extra
            )
            extra = {}

    def size(self, width, height, dark=False):
        self.ask("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=False)
        scheme = [{"name": "prefers-color-scheme", "value": "dark" if dark else "light"}]
        self.ask("Emulation.setEmulatedMedia", features=scheme)

    def close(self):
        self.process.kill()
        self.process.wait()


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
CONTRAST = """(() => {
  const light = (colour) => colour.match(/\\d+/g).slice(0, 3).map((part) => part / 255)
    .map((part) => part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)
    .reduce((sum, part, at) => sum + part * [0.2126, 0.7152, 0.0722][at], 0);
  const ground = light(getComputedStyle(document.body).backgroundColor);
  const ratio = (element) => {
    const text = light(getComputedStyle(element).color);
    return (Math.max(text, ground) + 0.05) / (Math.min(text, ground) + 0.05);
  };
  return Math.min(...[...document.querySelectorAll("a, p, h1, dt, dd, td, th, figcaption")].map(ratio));
})()"""


def browse(browser, gallery):
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
    # WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for text.
    for dark in (False, True):
        browser.size(1280, 900, dark)
        for page in (gallery / "index.html", gallery / "pieces" / "saltmarsh" / "index.html"):
            browser.open(page)
            ratio = browser.value(CONTRAST)
            check(ratio >= 4.5, f"least contrast of text {ratio:.1f} to 1, {'dark' if dark else 'light'}")

    sent = [event["params"]["request"]["url"] for event in browser.events if event.get("method") == "Network.requestWillBeSent"]
    root = gallery.resolve().as_uri()
    others = [url for url in sent if not url.startswith((root, "data:", "about:"))]
    check(sent and not others, f"{len(sent)} requests, none leaves the gallery {others}")
    faults = [event for event in browser.events if event.get("method") == "Runtime.exceptionThrown"]
    check(not faults, "no script fails")


def main():
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        browser = Browser(profile)
        try:
            browser.attach()
            browse(browser, pathlib.Path(sys.argv[1]))
        finally:
            browser.close()


main()
