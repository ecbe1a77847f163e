"""Designs at the page of `festoon design` in headless Chromium.

Usage: design.py PROGRAM AXE_CORE_SCRIPT [PICTURES | --latency]
"""

import http.client
import json
import pathlib
import re
import socket
import statistics
import subprocess
import sys
import tempfile
import time

from browser import Browser

VIEWS = ("drape", "neck", "rows", "sheet", "materials", "steps")
TEXT = "document.getElementById('text').value"
DRAWN = "Boolean(document.querySelector('#drawing')?.shadowRoot?.querySelector('svg'))"
SVG = "(document.querySelector('#drawing').shadowRoot?.innerHTML ?? '')"
STATE = "document.getElementById('state').textContent"
REMARKS = "document.querySelectorAll('#remarks li.error').length"
AUDIT = """axe.run(document).then((found) => found.violations.map((violation) =>
  violation.id + ": " + violation.help + ": " + violation.nodes.map((node) => node.target.join(" ")).join(", ")))"""
CTRL = 2
LATENCY = "--latency"
BEGUN = time.monotonic()
WITHIN = 100
"""Milliseconds from the key to the drawing of up to 500 beads. A machine with other work to do takes longer, and fails nothing."""


def check(holds, what):
    if not holds:
        raise SystemExit(f"FAILED: {what}")
    print(f"{time.monotonic() - BEGUN:6.1f} s ok: {what}", flush=True)


class Desk:
    """A running `festoon design`."""

    running = []

    def __init__(self, program, pattern, *options):
        self.process = subprocess.Popen([program, "design", pattern, *options], stderr=subprocess.PIPE, text=True)
        Desk.running.append(self)
        line = next(line for line in self.process.stderr if "http://" in line)
        self.address = line.split()[1]
        self.host, self.token = self.address.split("/")[2:4]
        self.port = int(self.host.split(":")[1])

    def stop(self):
        self.process.kill()
        self.process.wait()

    def status(self, method, headers, body=None):
        asking = http.client.HTTPConnection("127.0.0.1", self.port, timeout=20)
        asking.putrequest(method, f"/{self.token}/file", skip_host=True)
        for name, value in headers.items():
            asking.putheader(name, value)
        asking.endheaders(body)
        return asking.getresponse().status


def opened(browser, desk):
    browser.visit(desk.address)
    browser.wait(f"{STATE} !== ''")


def typed(browser, before, behind, words):
    """Types words between two stretches of the text that stand beside one another, in place of what parts them."""
    browser.value(f"""(() => {{ const text = {TEXT}; const area = document.getElementById('text');
      const from = text.indexOf({json.dumps(before)}) + {len(before)}; const to = text.indexOf({json.dumps(behind)}, from);
      area.focus(); area.setSelectionRange(from, to); }})()""")
    browser.ask("Input.insertText", text=words)


def undo(browser):
    browser.value("document.getElementById('text').focus()")
    for kind in ("keyDown", "keyUp"):
        extra = {"commands": ["undo"]} if kind == "keyDown" else {}
        browser.ask("Input.dispatchKeyEvent", type=kind, key="z", code="KeyZ", windowsVirtualKeyCode=90, modifiers=CTRL, **extra)


def fresh(browser):
    """Waits until what is shown is of the text as it stands."""
    browser.wait("window.isFresh()", 120)


def saved(browser):
    browser.press("s", "KeyS", modifiers=CTRL)
    browser.wait(f"{STATE} === 'saved'")


def begin(browser, program, folder):
    """From an empty folder to a saved design."""
    pattern = folder / "piece.yaml"
    desk = Desk(program, pattern)
    opened(browser, desk)
    shipped = len(list(pathlib.Path("patterns").glob("*.yaml")))
    browser.wait(f"document.querySelectorAll('.card').length === 5 + {shipped}", 60)
    check(not pattern.exists(), "nothing is written before it is saved")
    for _ in range(9):
        browser.press("Tab")
        if browser.value("document.activeElement.dataset.name === 'bracelet'"):
            break
    browser.press("Enter", text="\r")
    browser.wait(DRAWN)
    check("kind: bracelet" in browser.value(TEXT), "a kind is chosen by keyboard alone, and its piece is drawn")
    saved(browser)
    check(pattern.read_text() == browser.value(TEXT), "it is saved by Ctrl+S")
    return desk, pattern


def mend(browser):
    """A slip underlined in place, and its remedy."""
    fresh(browser)
    before, sound = browser.value(TEXT), browser.value(SVG)
    typed(browser, "kind: ", " ", "bracelte")
    browser.wait(f"{REMARKS} > 0")
    check(browser.value("document.querySelector('#lines .error')?.textContent") == "bracelte", "the slip is underlined in place")
    check(browser.value(SVG) == sound, "the last sound drawing stays")
    check(not browser.value("document.getElementById('stale').hidden"), "and the page says so")
    browser.value("[...document.querySelectorAll('#remarks button.strong')].find((b) => b.textContent.startsWith('write')).click()")
    browser.wait(f"{TEXT} === {json.dumps(before)} && {REMARKS} === 0")
    check(True, "its button mends it to the letter")
    typed(browser, "designer: ", "Your", "A ")
    browser.value("document.getElementById('text').setSelectionRange(0, 0)")


def offer(browser):
    before = browser.value(TEXT)
    typed(browser, "finish: ", "gloss", "")
    browser.ask("Input.insertText", text="m")
    browser.wait("!document.getElementById('offers').hidden")
    browser.press("Enter", text="\r")
    browser.wait(f"{TEXT}.includes('finish: mattegloss') || {TEXT}.includes('finish: matte')")
    check("finish: m" in browser.value(TEXT), "a word is offered and taken by keyboard")
    put(browser, before)
    check(browser.value(f"{REMARKS} === 0"), "and taken out again")


def put(browser, text):
    """Puts a text in the area as if it were typed, and waits for its piece."""
    browser.value(f"document.getElementById('text').value = {json.dumps(text)}; document.getElementById('text').dispatchEvent(new Event('input'))")
    fresh(browser)


def by_hand(browser):
    """Acts on the drawing, each one undo."""
    put(browser, browser.value(TEXT).replace("{ repeat: fill,", "{ repeat: 18,"))
    before = browser.value(TEXT)
    browser.value("document.getElementById('stage').scrollIntoView({ block: 'center' })")
    time.sleep(0.2)
    at = browser.value("""(() => { const layer = document.getElementById('layer'); const box = layer.getBoundingClientRect();
      const [, , width, height] = layer.getAttribute('viewBox').split(' ').map(Number);
      const scale = Math.min(box.width / width, box.height / height); const thing = window.piece().things[3];
      return [box.left + (box.width - width * scale) / 2 + thing.x * scale, box.top + (box.height - height * scale) / 2 + thing.y * scale]; })()""")
    browser.click(*at)
    browser.wait("!document.getElementById('bead').hidden")
    check(browser.value("document.querySelector('#lines .chosen') !== null"), "a click on a bead marks its entry in the text")
    own, other = browser.value("(() => { const swap = document.getElementById('swap'); return [swap.value, [...swap.options].find((one) => !one.selected).value]; })()")
    select(browser, "swap", other)
    browser.wait(f"{TEXT} !== {json.dumps(before)}")
    check(browser.value(TEXT).count("#") == before.count("#"), f"{own} is swapped for {other}, and every note stays")
    undo(browser)
    browser.wait(f"{TEXT} === {json.dumps(before)}")
    check(True, "one undo takes the act back")
    fresh(browser)
    chosen(browser)
    browser.press("ArrowRight")
    browser.value("[...document.querySelectorAll('#bead .acts button')].find((one) => one.textContent === 'One more repeat').click()")
    browser.wait(f"{TEXT}.includes('repeat: 19')")
    check(True, "a repeat is added by keyboard and button")
    undo(browser)
    browser.wait(f"{TEXT} === {json.dumps(before)}")
    for field, words in (("bead-size", "6 mm"), ("colour", "#123456"), ("count", "3")):
        fresh(browser)
        chosen(browser)
        select(browser, field, words)
        browser.wait(f"{TEXT} !== {json.dumps(before)}")
        browser.wait(f"{REMARKS} === 0")
        undo(browser)
        browser.wait(f"{TEXT} === {json.dumps(before)}")
    check(True, "size, colour and count are changed in one run, and undone")
    fresh(browser)
    chosen(browser)
    browser.value("document.getElementById('bead-size').focus(); document.getElementById('bead-size').value = '7'")
    browser.value("document.getElementById('ink').dispatchEvent(new Event('change'))")
    fresh(browser)
    check(browser.value("document.getElementById('bead-size').value") == "7", "what is half typed in a field outlasts another drawing")
    browser.value("document.getElementById('bead-size').value = document.getElementById('bead-size').defaultValue")
    broken = before.replace("repeat: 18", "repeat: x")
    put(browser, broken)
    select(browser, "swap", other)
    browser.wait(f"{STATE}.includes('nothing was done')")
    check(browser.value(TEXT) == broken, "nothing is done to a text that is not the one drawn")
    put(browser, before)
    more = before.replace("beads:\n", "beads:\n  rush: { shape: barrel, size: 6 x 8 mm, hole: 1 mm, material: glass, colour: \"#345678\" }\n", 1)
    put(browser, more)
    chosen(browser)
    select(browser, "swap", "rush")
    browser.wait(f"{TEXT} !== {json.dumps(more)}")
    check(browser.value(TEXT).count("rush") == 2, "a bead that was not strung yet is swapped in")
    put(browser, before)


def chosen(browser):
    """Chooses the first bead by keyboard."""
    browser.value("document.getElementById('stage').focus()")
    browser.press("Home")
    browser.wait("!document.getElementById('bead').hidden")


def select(browser, field, words):
    """Gives a field another value, as a hand does."""
    browser.value(f"(() => {{ const field = document.getElementById('{field}'); field.value = {json.dumps(words)}; field.dispatchEvent(new Event('change')); }})()")


def variants(browser):
    """A size and a colourway of one's own."""
    put(browser, browser.value(TEXT).replace("{ repeat: 18,", "{ repeat: fill,"))
    before = browser.value(TEXT)
    browser.value("document.getElementById('add-size').click()")
    browser.value("document.getElementById('size-name').value = 'wide'; document.getElementById('size-value').value = '+10 mm'")
    browser.value("document.querySelector('#new-size button[type=submit]').click()")
    browser.wait("document.getElementById('size').value === 'wide'")
    fresh(browser)
    check("{ name: wide, change: +10 mm }" in browser.value(TEXT) and browser.value(f"{REMARKS} === 0"), "a size is added, and shown")
    drawn = browser.value(SVG)
    browser.value("document.getElementById('add-colourway').click()")
    browser.value("document.getElementById('way-name').value = 'dusk'; document.getElementById('way-colour').value = '#445566'")
    browser.value("document.querySelector('#new-colourway button[type=submit]').click()")
    browser.wait("document.getElementById('colourway').value === 'dusk'")
    fresh(browser)
    check("#445566" in browser.value(TEXT) and browser.value(SVG) != drawn, "a colourway is added, and shown")
    chosen(browser)
    select(browser, "colour", "#665544")
    browser.wait(f"{TEXT}.includes('#665544')")
    check(browser.value(TEXT).index("#665544") > browser.value(TEXT).index("colourways:"), "a colour is changed in that colourway alone")
    for field in ("size", "colourway"):
        select(browser, field, "")
    put(browser, before)


def same(browser, folder, name):
    """Whether a file that the browser is given is the command's."""
    there, end = folder / "downloads" / name, time.monotonic() + 120
    while not there.exists() and time.monotonic() < end:
        browser.value("1")
        time.sleep(0.05)
    return there.read_bytes() == (folder / "out" / name).read_bytes()


def by_keys(browser, program, folder, pattern):
    """All of it without a pointer: a bead chosen and swapped, a view opened, the file taken away."""
    browser.value("document.getElementById('text').focus()")
    before = browser.value(TEXT)

    def reach(what):
        for _ in range(60):
            if browser.value(f"document.activeElement.matches({json.dumps(what)})"):
                return
            browser.press("Tab")
        raise SystemExit(f"FAILED: no key leads to {what}")

    browser.value("document.getElementById('text').setSelectionRange(0, 0)")
    reach("[data-take=pdf]")
    browser.press("Enter", text="\r")
    subprocess.run([program, "sheet", pattern, "-o", f"{folder}/out/"], check=True, capture_output=True)
    check(same(browser, folder, f"{pattern.stem}.pdf"), "the design from an empty folder is taken away as the command's PDF, by keyboard")
    reach("#stage")
    browser.press("End")
    browser.press("ArrowLeft")
    browser.press("Enter", text="\r")
    check(browser.value("Boolean(document.activeElement.closest('#bead'))"), "Enter leads from a bead on the drape to what can be done with it")
    reach("#swap")
    browser.press("ArrowUp" if browser.value("document.activeElement.selectedIndex") else "ArrowDown")
    browser.wait(f"{TEXT} !== {json.dumps(before)}")
    fresh(browser)
    check(browser.value("document.activeElement.id") == "swap", "a bead is swapped by keyboard alone, and the focus stays")
    undo(browser)
    browser.wait(f"{TEXT} === {json.dumps(before)}")
    reach("[role=tab][aria-selected=true]")
    for view in VIEWS[1:] + VIEWS[:1]:
        browser.press("ArrowRight")
        browser.wait(f"document.querySelector('[role=tab][aria-selected=true]').dataset.view === '{view}'")
    check(True, "arrow keys open every view")
    fresh(browser)


def choices(browser, program, folder):
    """Sizes, colourways, lengthening, and files that are the command's."""
    pattern = folder / "saltmarsh.yaml"
    pattern.write_text(pathlib.Path("patterns/saltmarsh.yaml").read_text())
    desk = Desk(program, pattern)
    opened(browser, desk)
    browser.wait(DRAWN)
    browser.wait("document.getElementById('size').options.length > 1")
    facts, drawn = browser.value("document.getElementById('facts').innerText"), browser.value(SVG)
    size = browser.value("document.getElementById('size').options[1].value")
    select(browser, "size", size)
    browser.wait(f"document.getElementById('facts').innerText !== {json.dumps(facts)}")
    check(True, f"the size {size} has other lengths")
    select(browser, "size", "")
    browser.wait(f"{SVG} === {json.dumps(drawn)}")
    way = browser.value("document.getElementById('colourway').options[1].value")
    select(browser, "colourway", way)
    browser.wait(f"{SVG} !== {json.dumps(drawn)}")
    check(True, f"the colourway {way} has other colours")

    variant = ["--colourway", way, "-o", f"{folder}/out/"]
    subprocess.run([program, "sheet", pattern, "--format", "pdf,png,svg", *variant], check=True, capture_output=True)
    subprocess.run([program, "picture", pattern, *variant], check=True, capture_output=True)
    stem = f"saltmarsh-{way.replace(' ', '-')}"
    for what, name in (("pdf", f"{stem}.pdf"), ("svg", f"{stem}-1.svg"), ("png", f"{stem}-1.png"), ("picture", f"{stem}.png")):
        browser.value(f"document.querySelector('[data-take={what}]').click()")
        check(same(browser, folder, name), f"{what}: {name} is the command's, byte for byte")
    select(browser, "colourway", "")
    browser.wait(f"{SVG} === {json.dumps(drawn)}")

    fresh(browser)
    before = browser.value(TEXT)
    browser.value("document.querySelector('.grip').focus()")
    browser.press("PageDown")
    browser.wait(f"{TEXT} !== {json.dumps(before)}")
    check("length: 16 7/8 in" in browser.value(TEXT), "a strand is lengthened by 10 mm as it is written: in sixteenths")
    fresh(browser)
    check(browser.value("document.activeElement.classList.contains('grip')"), "and its grip is held on to")
    undo(browser)
    browser.wait(f"{TEXT} === {json.dumps(before)}")
    return desk, pattern


def outside(browser, pattern):
    """Another program changes the file."""
    theirs = pattern.read_text().replace("title: Saltmarsh", "title: Low water")
    pattern.write_text(theirs)
    browser.wait(f"{TEXT}.includes('Low water')")
    check(True, "what another program writes is taken where nothing is unsaved")
    typed(browser, "title: ", "Low water", "Mine ")
    pattern.write_text(theirs.replace("Low water", "High water"))
    browser.wait("!document.getElementById('conflict').hidden")
    check("High water" in browser.value("document.getElementById('theirs').value"), "both are shown where something is unsaved")
    browser.press("s", "KeyS", modifiers=CTRL)
    time.sleep(0.5)
    check("High water" in pattern.read_text(), "and nothing is written over")
    browser.value("document.getElementById('keep-mine').click()")
    browser.wait(f"{STATE} === 'saved'")
    check("Mine Low water" in pattern.read_text(), "until the maker says so")


def shelf(browser, program, folder):
    """A shelf that another program changes."""
    (folder / "shelf").mkdir()
    for name in ("ebb.yaml", "shelf/tide.yaml"):
        (folder / name).write_text(pathlib.Path("patterns", name).read_text())
    desk = Desk(program, folder / "ebb.yaml")
    opened(browser, desk)
    browser.wait(DRAWN)
    fresh(browser)
    drawn, tide = browser.value(SVG), folder / "shelf/tide.yaml"
    tide.write_text(tide.read_text().replace("#2f5f8a", "#7a2f8a"))
    browser.wait(f"{SVG} !== {json.dumps(drawn)}")
    check(True, "what another program writes on a shelf is drawn at once")
    desk.stop()


def killed(browser, desk, program, pattern):
    """The server dies, and is started again."""
    typed(browser, "title: ", "Mine", "Kept ")
    desk.stop()
    browser.wait(f"{STATE}.includes('start it again')")
    check("Kept" in browser.value(TEXT), "a server that dies takes no text with it")
    again = Desk(program, pattern, "--port", str(desk.port))
    browser.attach()
    browser.size(1280, 900)
    opened(browser, again)
    browser.wait("!document.getElementById('draft').hidden")
    browser.value("document.getElementById('take-draft').click()")
    browser.wait(f"{TEXT}.includes('Kept')")
    saved(browser)
    check("Kept" in pattern.read_text(), "the text that was not saved is offered when the page is opened again")
    return again


def strangers(browser, desk):
    here = {"Host": desk.host}
    check(desk.status("GET", here) == 200, "the page's own Host is answered")
    check(desk.status("GET", {"Host": "example.org"}) == 421, "another Host is not")
    check(desk.status("GET", {**here, "Origin": "http://example.org"}) == 403, "nor another Origin")
    held = [socket.create_connection(("127.0.0.1", desk.port)) for _ in range(50)]
    start = time.monotonic()
    check(desk.status("GET", here) == 200 and time.monotonic() - start < 2, "50 connections held open hold up nobody")
    typed(browser, "title: ", "Kept", "Still ")
    browser.wait(f"{SVG}.includes('Still')")
    check(True, "and the page goes on")
    for one in held:
        one.close()


def large(browser, program, folder):
    pattern = folder / "large.yaml"
    text = pathlib.Path("patterns/saltmarsh.yaml").read_text()
    pattern.write_text(text + "# a note\n" * ((4 * 1024 * 1024 - len(text.encode())) // 9))
    desk = Desk(program, pattern)
    opened(browser, desk)
    browser.wait(DRAWN, 60)
    browser.value("window.latencies.length = 0")
    typed(browser, "title: ", "\n", "Large")
    browser.wait(f"window.latencies.length > 0 && {SVG}.includes('Large')", 60)
    check(True, f"4 MiB of text are edited and drawn, in {browser.value('window.latencies[0]'):.0f} ms")
    saved(browser)
    desk.stop()


def pieces(beads):
    """A row that hangs by itself, and three strands that rest on one another."""
    text = pathlib.Path("patterns/saltmarsh.yaml").read_text().split("strands:")[0]
    head = "\n".join(line for line in text.splitlines() if not line.startswith(("summary", "permissions")))
    strand = "  - {{ name: {0}, cord: wire, {1}ends: crimp, allowance: 60 mm, settle: {2}, beads: [{{ repeat: {3}, of: [4 mist, reed] }}] }}\n"
    closing = "closure: { each side: [eye, cone], left: [{ links: 60 mm }], right: [hook] }\n"
    yield "one row", f"{head}\nstrands:\n" + strand.format("row", "", "fill", beads // 5)
    rows = "".join(
        strand.format(f"s{at}", f"length: {round(beads / 3 * 4.6 + 220 + at * 30)} mm, ", "slide", round(beads / 15)) for at in range(3)
    )
    yield "three strands that touch", f"{head}\nstrands:\n{rows}{closing}"


def latency(browser, program, folder):
    """From the key to the drawing, by the page's own clock."""
    for beads in (100, 500, 2000):
        for name, text in pieces(beads):
            pattern = folder / f"{beads}-{name.split()[0]}.yaml"
            pattern.write_text(text)
            desk = Desk(program, pattern)
            opened(browser, desk)
            browser.wait(DRAWN, 60)
            browser.wait("window.isFresh()", 120)
            browser.value("window.latencies.length = 0; window.solved.length = 0")
            times = int(re.search(r"repeat: (\d+)", text)[1])
            for turn in range(10):
                typed(browser, "repeat: ", ",", str(times - turn % 2))
                fresh(browser)
            first, last = (sorted(browser.value(f"window.{of}")) for of in ("latencies", "solved"))
            over = "" if beads > 500 or statistics.median(first) <= WITHIN else f", over {WITHIN} ms"
            told = f"{statistics.median(first):.0f} ms from the key to the first drawing, {max(first):.0f} ms at most{over}"
            print(f"    {beads} beads, {name}: {told}; {statistics.median(last):.0f} ms to the last (medians of {len(first)})", flush=True)
            # A text that is not saved is not left without being asked.
            saved(browser)
            desk.stop()


def audit(browser, desk, checker, pictures):
    """Every view, light and dark, and light at twice its size and on a telephone, or for pictures dark there too."""
    both, light = (False, True), (False,)
    sizes = ((1280, 900, "wide", both), (640, 450, "at twice the size", light), (390, 844, "telephone", light))
    for width, height, name, themes in sizes:
        for dark in both if pictures else themes:
            browser.size(width, height, dark)
            opened(browser, desk)
            browser.wait(DRAWN)
            browser.value(checker)
            for view in VIEWS:
                browser.value(f"document.querySelector('[data-view={view}]').click()")
                ready = DRAWN if view == "drape" else "document.querySelector('#other')?.firstChild"
                browser.wait(f"Boolean({ready})")
                if view == "drape":
                    browser.value("document.getElementById('stage').focus()")
                    browser.press("ArrowRight")
                time.sleep(0.3)
                theme = "dark" if dark else "light"
                violations = browser.value(AUDIT)
                check(not violations, f"{view}, {name}, {theme}: accessible {violations or ''}")
                check(browser.value("document.documentElement.scrollWidth <= innerWidth"), f"{view}, {name}: fits")
                if pictures:
                    browser.picture(pictures / f"{view}-{width}-{theme}.png")
    browser.size(1280, 900)


def design(browser, program, checker, folder, pictures):
    (folder / "downloads").mkdir()
    browser.ask("Page.setDownloadBehavior", behavior="allow", downloadPath=str(folder / "downloads"))
    desk, pattern = begin(browser, program, folder)
    mend(browser)
    offer(browser)
    by_hand(browser)
    variants(browser)
    saved(browser)
    by_keys(browser, program, folder, pattern)
    desk.stop()
    desk, pattern = choices(browser, program, folder)
    outside(browser, pattern)
    desk = killed(browser, desk, program, pattern)
    strangers(browser, desk)
    saved(browser)
    audit(browser, desk, checker, pictures)
    desk.stop()
    shelf(browser, program, folder)
    large(browser, program, folder)
    sent = [event["params"]["request"]["url"] for event in browser.events if event.get("method") == "Network.requestWillBeSent"]
    others = [url for url in sent if not url.startswith(("http://127.0.0.1:", "data:", "blob:", "about:"))]
    check(sent and not others, f"{len(sent)} requests, none leaves this machine {others}")
    faults = [event for event in browser.events if event.get("method") == "Runtime.exceptionThrown"]
    check(not faults, f"no script fails {faults or ''}")


def main():
    program, axe, wanted = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3] if len(sys.argv) > 3 else ""
    pictures = pathlib.Path(wanted) if wanted and wanted != LATENCY else None
    if pictures:
        pictures.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile, tempfile.TemporaryDirectory() as folder:
        browser = Browser(profile)
        try:
            browser.attach()
            browser.size(1280, 900)
            if wanted == LATENCY:
                latency(browser, program, pathlib.Path(folder))
            else:
                design(browser, program, axe.read_text(encoding="utf-8") + ";0", pathlib.Path(folder), pictures)
        finally:
            browser.close()
            for desk in Desk.running:
                desk.stop()


main()
