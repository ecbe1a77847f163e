"""Draws every shipped pattern and asks other people's programs whether the files are sound.

Usage: validate.py PROGRAM FOLDER, where FOLDER holds the patterns. Each pattern is drawn as PDF,
PNG and SVG on A4 and Letter, twice. Prints a line a check and at last `N passed, M failed`;
exit code 1 if any failed.
"""

import csv
import filecmp
import io
import json
import re
import subprocess
import sys
import tempfile
import zlib
from concurrent.futures import ThreadPoolExecutor
from os import cpu_count
from pathlib import Path

# Width and height in PDF points (1/72 in) as pdfinfo prints them, and in pixels at 300 dpi.
# Source: ISO 216 for A4 (210 x 297 mm), ASME Y14.1 for Letter (8.5 x 11 in).
PAPERS = {"a4": ("595.28", "841.89", "2480 x 3508"), "letter": ("612.00", "792.00", "2550 x 3300")}
BOXES = ["MediaBox", "CropBox", "BleedBox", "TrimBox", "ArtBox"]
# The rules of pdfua that a file without a claim of PDF/UA does not meet.
UNCLAIMED = {"UA-28-004", "UA-07-002"}
# Blend modes that PDF knows (ISO 32000-1, tables 136 and 137); PDF/A-2 forbids others (ISO 19005-2, 6.2.10).
BLENDS = {b"Normal", b"Compatible", b"Multiply", b"Screen", b"Overlay", b"Darken", b"Lighten", b"ColorDodge", b"ColorBurn",
          b"HardLight", b"SoftLight", b"Difference", b"Exclusion", b"Hue", b"Saturation", b"Color", b"Luminosity"}
# What PDF/A-2 forbids in any place: actions, other programs, files within, encryption, forms that change, what
# devices do with colours (ISO 19005-2, 6.1.3, 6.2.5, 6.2.9, 6.4, 6.5, 6.8).
FORBIDDEN = [b"/JavaScript", b"/Launch", b"/EmbeddedFile", b"/Encrypt", b"/XFA", b"/NeedAppearances", b"/AA ", b"/TR ",
             b"/HTP", b"/Subtype /PS", b"/Interpolate true", b"/AcroForm", b"/DeviceCMYK"]
# Most states that a page may keep one in another (ISO 19005-2, 6.1.13).
DEEPEST = 28
# Pixels per metre at 300 dpi: 300 / 0.0254, rounded (PNG specification, pHYs).
TRUE_SIZE = "pHYs at offset 0x00025, length 9: 11811x11811 pixels/meter (300 dpi)"


class Tally:
    """Counts checks and prints each."""

    def __init__(self):
        self.passed = self.failed = 0

    def check(self, what, faults):
        """Notes a check, which has passed where there is no fault."""
        if faults:
            self.failed += 1
            print(f"FAILED  {what}")
            print("\n".join(f"        {fault}" for fault in faults))
        else:
            self.passed += 1
            print(f"ok      {what}")


def run(*command):
    """Exit code and everything that a command says."""
    done = subprocess.run([str(part) for part in command], capture_output=True, text=True)
    return done.returncode, done.stdout + done.stderr


def said(*command):
    """What a command that must succeed prints."""
    return subprocess.run([str(part) for part in command], capture_output=True, text=True, check=True).stdout


def draw(program, pattern, paper, folder):
    folder.mkdir()
    said(program, "sheet", pattern, "--format", "pdf,png,svg", "--paper", paper, "-o", folder)


# qpdf warns so of some streams that zlib reads to their end mark, as their bytes fall into its buffers; whether they do
# end is asked of zlib (`unended`).
BOUNDARY = "input stream is complete but output may still be valid"


def accepted(*command):
    """The faults that a checking program tells, none where it accepts the file."""
    code, text = run(*command)
    lines = [line for line in text.strip().splitlines() if BOUNDARY not in line]
    return [] if code == 0 or (BOUNDARY in text and not any("WARNING" in line for line in lines)) else lines


def unended(pdf):
    """Compressed streams that do not end where the file says, by zlib."""
    data = pdf.read_bytes()
    faults = ["it has no compressed stream"] if b"/FlateDecode" not in data else []
    for match in re.finditer(rb"<<[^<>]*/Length (\d+)[^<>]*/Filter/FlateDecode[^<>]*>>\s*stream\r?\n", data):
        reader = zlib.decompressobj()
        reader.decompress(data[match.end():match.end() + int(match[1])])
        faults += [] if reader.eof and not reader.unused_data else [f"the stream at {match.end()}"]
    return faults


def wrong_boxes(pdf, paper):
    width, height, _ = PAPERS[paper]
    expected = ["0.00", "0.00", width, height]
    pages = int(re.search(r"^Pages:\s+(\d+)", said("pdfinfo", pdf), re.M)[1])
    text = said("pdfinfo", "-box", "-f", "1", "-l", pages, pdf)
    boxes = re.findall(r"^Page +(\d+) (\w+Box):(.*)$", text, re.M)
    faults = [f"page {page} {box}:{size}" for page, box, size in boxes if size.split() != expected]
    return faults if len(boxes) == pages * len(BOXES) else [*faults, f"{len(boxes)} boxes on {pages} pages"]


def loose_fonts(pdf):
    rows = said("pdffonts", pdf).splitlines()[2:]
    embedded = re.compile(r" (yes|no) +(yes|no) +(yes|no) +\d+ +\d+$")
    return [row for row in rows if embedded.search(row)[1] != "yes"] if rows else ["no text at all"]


def missing_words(program, pattern, pdf):
    """The title, and each bead's name with its count, which the sheet does not say."""
    text = " ".join(said("pdftotext", "-raw", pdf, "-").split())
    title = re.search(r"^title: *(.*)$", pattern.read_text(), re.M)[1]
    rows = csv.DictReader(io.StringIO(said(program, "materials", pattern, "--format", "csv")))
    # A bead of the legend: its name, its size in few words, and how many times it is taken.
    beads = [rf"\b{re.escape(row['name'])}\b.{{0,120}}?\b{row['count']} ×" for row in rows if row["kind"] == "bead"]
    return [words for words in [rf"\b{re.escape(title)}\b", *beads] if not re.search(words, text)] + (
        [] if beads else ["no bead in the materials"])


def written_out(pdf):
    """The bytes of a PDF with all its streams in the open."""
    command = ["qpdf", "--qdf", "--object-streams=disable", pdf, "-"]
    done = subprocess.run(command, capture_output=True)
    warnings = [line for line in done.stderr.decode().splitlines() if "WARNING" in line and BOUNDARY not in line]
    if done.returncode not in (0, 3) or warnings:
        sys.exit(f"{' '.join(map(str, command))}: {warnings or done.returncode}")
    return done.stdout


def missing_tags(pattern, pdf):
    """A section a page, the title as first heading, and figures that each have a text alternative."""
    pages = int(re.search(r"^Pages:\s+(\d+)", said("pdfinfo", pdf), re.M)[1])
    title = re.search(r"^title: *(.*)$", pattern.read_text(), re.M)[1]
    tree = [line.strip() for line in said("pdfinfo", "-struct", pdf).splitlines()]
    figures = sum(line.startswith("Figure") for line in tree)
    plain = written_out(pdf)
    first = next((line for line in tree if re.match(r"H\d", line)), "")
    holds = {
        "pdfinfo does not call it tagged": re.search(r"^Tagged: +yes$", said("pdfinfo", pdf), re.M),
        f"{tree.count('Sect')} sections on {pages} pages": tree.count("Sect") == pages,
        f"the first heading is {first}": first.startswith("H1") and title in first,
        f"{figures} figures": 0 < figures == plain.count(b"/Alt "),
        "no table with a name in each row": 0 < tree.count("Table (block)") <= sum(line.rstrip(":") == "TH" for line in tree),
    }
    return [fault for fault, is_met in holds.items() if not is_met]


def deepest(plain):
    """How many states of drawing a page or form keeps one in another, at most; none where one is not closed."""
    most = 0
    for stream in re.findall(rb"(?:^%% Contents for|/Subtype /Form).*?^stream\n(.*?)endstream", plain, re.S | re.M):
        kept = 0
        for word in re.findall(rb"(?<!\S)[qQ](?![^\s/])", stream):
            kept += 1 if word == b"q" else -1
            most = max(most, kept)
        if kept:
            return 0
    return most


def unfit_to_keep(pdf):
    """What in the bytes is against PDF/A-2u (ISO 19005-2), as far as these few lines look: no full checker is at hand."""
    plain = written_out(pdf)
    xmp = re.search(rb"<x:xmpmeta.*?</x:xmpmeta>", plain, re.S)[0]
    claims = [b"<pdfaid:part>2<", b"<pdfaid:conformance>U<"]
    intent = re.search(rb"/DestOutputProfile (\d+) 0 R.{0,200}?/S /GTS_PDFA1", plain, re.S)
    profile = intent and re.search(rb"^%s 0 obj.{0,80}?/N 3\b" % intent[1], plain, re.S | re.M)
    blends = set(re.findall(rb"/BM */(\w+)", plain))
    holds = {
        "its metadata do not claim it": all(claim in xmp for claim in claims),
        "no output intent with a profile of three colours": profile,
        "no identifier in its trailer": re.search(rb"^trailer <<.*?/ID \[", plain, re.S | re.M),
        "no letters by Unicode in each font": plain.count(b"/Subtype /Type0") == plain.count(b"/ToUnicode ") > 0,
        "states are kept too deep": 0 < deepest(plain) <= DEEPEST,
        **{f"it has {word.decode()}": word not in plain for word in FORBIDDEN},
        **{f"it blends by {blend.decode()}": blend in BLENDS for blend in blends},
    }
    return [fault for fault, is_met in holds.items() if not is_met]


def inaccessible(pdf):
    """What pdfua finds against the part of PDF/UA-1 (ISO 14289-1) that it can check, about a sixth of
    the rules that a machine can. The file claims no conformance, as the rest is not checked: so it is
    no finding that the claim is missing, nor the wish to show the title, which is written with it."""
    command = [sys.executable, "-m", "pdfua", "check", "--format", "json", pdf]
    told = json.loads(subprocess.run(command, capture_output=True, text=True).stdout)
    rules = {finding["rule_id"]: finding["message"] for finding in told["findings"]}
    return [f"{rule}: {message}" for rule, message in rules.items() if rule not in UNCLAIMED]


def wrong_picture(png, paper):
    code, text = run("pngcheck", "-v", png)
    expected = [f"{PAPERS[paper][2]} image, 24-bit RGB", TRUE_SIZE, "No errors detected"]
    faults = [f"{png.name}: no `{words}`" for words in expected if words not in text]
    return faults + ([f"{png.name}: pngcheck ends with {code}"] if code else [])


def differing(first, second):
    names = sorted(file.name for file in first.iterdir())
    if names != sorted(file.name for file in second.iterdir()):
        return ["not the same files"]
    return [name for name in names if not filecmp.cmp(first / name, second / name, shallow=False)]


def validate(program, pattern, paper):
    """Each check of a pattern on a paper, with its faults."""
    with tempfile.TemporaryDirectory() as folder:
        first, second = Path(folder, "first"), Path(folder, "second")
        for run_folder in (first, second):
            draw(program, pattern, paper, run_folder)
        pdf = first / f"{pattern.stem}.pdf"
        kept = Path(folder, "kept.pdf")
        said(program, "sheet", pattern, "--paper", paper, "--archive", "2026-11-27", "-o", kept)
        pngs, svgs = sorted(first.glob("*.png")), sorted(first.glob("*.svg"))
        wrong = [fault for png in pngs for fault in wrong_picture(png, paper)]
        return [
            ("the PDF is sound", accepted("qpdf", "--check", pdf)),
            ("its streams end where it says", unended(pdf) + unended(kept)),
            ("every page box is the paper's", wrong_boxes(pdf, paper)),
            ("all fonts are embedded", loose_fonts(pdf)),
            ("pages, headings and figures are tagged", missing_tags(pattern, pdf)),
            ("tags are in order by PDF/UA-1, as far as pdfua can tell", inaccessible(pdf)),
            ("title and bead counts can be read", missing_words(program, pattern, pdf)),
            ("the PDF to keep is sound", accepted("qpdf", "--check", kept)),
            ("it is PDF/A-2u, as far as its bytes tell", unfit_to_keep(kept)),
            ("its tags are in order likewise", inaccessible(kept)),
            (f"{len(svgs)} SVG files are well formed", accepted("xmllint", "--noout", "--nonet", *svgs)),
            (f"{len(pngs)} PNG files are sound and true to size", wrong),
            ("a second run gives the same bytes", differing(first, second)),
        ]


def main():
    program, patterns = Path(sys.argv[1]).resolve(), sorted(Path(sys.argv[2]).glob("*.yaml"))
    tally = Tally()
    tally.check(f"{len(patterns)} patterns are shipped", [] if patterns else ["none"])
    drawn = [(pattern, paper) for pattern in patterns for paper in PAPERS]
    with ThreadPoolExecutor(cpu_count()) as pool:
        for (pattern, paper), checks in zip(drawn, pool.map(lambda one: validate(program, *one), drawn)):
            for what, faults in checks:
                tally.check(f"{pattern.stem} on {paper}: {what}", faults)
    print(f"{tally.passed} passed, {tally.failed} failed")
    sys.exit(1 if tally.failed else 0)


main()
