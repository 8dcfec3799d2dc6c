"""The job sheet as a browser shows and prints it, and its figures held against the summary."""
import atexit
import functools
import html.parser
import json
import os
import re
import shutil
import subprocess
import tempfile

import browser
import locales
from harness import Bench, test
from jobs import changed, small

DEMO = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "fixtures", "jobs")
MOST_BYTES = 3_000_000


@functools.cache
def demo_folder(program, name):
    """Of a demo job, built once for all tests: they only look at it."""
    folder = tempfile.mkdtemp(prefix="press-page-")
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    bench = Bench(program, folder)
    bench.run("build", os.path.join(DEMO, name + ".toml"), "-o", bench.path("out"), "--only", "html,json,gltf",
              "--despite-fails")
    return bench


def demo(bench, name="reading-desk"):
    """A demo job's page and summary."""
    there = demo_folder(bench.program, name)
    return there.path("out", "job-sheet.html"), there.summary()


def page_of(bench, job, *more):
    bench.built(job, "out", "--only", "html,json", *more)
    return bench.path("out", "job-sheet.html"), bench.summary()


class Reader(html.parser.HTMLParser):
    """Figures of a page, its other text, and its tags."""

    HIDDEN = ("script", "style", "title")

    def __init__(self, path):
        super().__init__(convert_charrefs=True)
        self.figures, self.plain, self.tags, self.stack, self.ids = [], [], [], [], []
        with open(path, encoding="utf-8") as file:
            self.feed(file.read())
        self.close()

    def handle_starttag(self, tag, attributes):
        attributes = dict(attributes)
        self.tags.append((tag, attributes))
        if "id" in attributes:
            self.ids.append(attributes["id"])
        if tag not in ("meta", "img", "input"):
            self.stack.append(tag)
        if tag == "data":
            self.figures.append([attributes, ""])

    def handle_endtag(self, tag):
        assert self.stack and self.stack[-1] == tag, (tag, self.stack)
        self.stack.pop()

    def handle_data(self, data):
        if self.stack and self.stack[-1] == "data":
            self.figures[-1][1] += data
        elif not any(tag in self.HIDDEN for tag in self.stack):
            self.plain.append(data)


def looked_up(summary, pointer):
    value = summary
    for key in pointer.split("/")[1:]:
        value = value[int(key)] if isinstance(value, list) else value[key]
    return value


def decimal(value, places):
    text = "%.*f" % (places, value)
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def three_digits(value):
    size = abs(value)
    return decimal(value, 0 if size >= 100 else 1 if size >= 10 else 2 if size >= 1 else 3)


def in_mm(value):
    return decimal(value, 3 if abs(value) < 1 else 2 if abs(value) < 10 else 1) + " mm"


def worded(value, kind):
    """A figure of a page in mm, worked out here once more."""
    if kind in ("length", "mm", "bore"):
        return in_mm(value)
    if kind == "degrees":
        return decimal(value, 1) + "°"
    if kind == "grain":
        return {0: "along", 90: "across"}.get(value, decimal(value, 1) + "°")
    if kind == "pressure" or kind == "MPa":
        return decimal(value, 5 if abs(value) < 0.01 else 3) + " MPa"
    if kind == "force" or kind == "N":
        return three_digits(value) + " N"
    if kind == "mass" or kind == "kg":
        return three_digits(value) + " kg"
    if kind == "m2":
        return three_digits(value) + " m2"
    if kind == "minutes":
        return decimal(value, 1 if value < 10 else 0) + " min" if value < 120 else decimal(value / 60, 1) + " h"
    if kind == "deg":
        return three_digits(value) + "°"
    if kind == "hours":
        return decimal(value, 1) + " h"
    if kind == "share":
        return decimal(100 * value, 1) + " %"
    if kind in ("count", "amount"):
        return decimal(value, 3)
    return three_digits(value) + (" " + kind if kind else "")


def rounds_to(value, text):
    """Whether a text, in the figure's own unit, is that figure with three digits or more, or all of it."""
    number = re.match(r"-?\d+(\.\d*)?", text)
    places = len(number[1] or ".") - 1
    slack = 0.5 * 10.0**-places
    return abs(float(number[0]) - value) <= slack * (1 + 1e-9) + 1e-12


def strings_in(value):
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for one in value.values():
            yield from strings_in(one)
    elif isinstance(value, list):
        for one in value:
            yield from strings_in(one)


def check_figures(path, summary, word=worded):
    """Every number that the page shows is the summary's, or stands in a text of the summary."""
    reader = Reader(path)
    for attributes, text in reader.figures:
        value, kind = looked_up(summary, attributes["data-of"]), attributes["data-as"]
        if kind == "entries":
            assert int(attributes["value"]) == len(value) == int(text), (attributes, text)
        elif kind in ("pass", "caution", "fail"):
            assert int(text) == sum(one["verdict"] == kind for one in value), (attributes, text)
        else:
            assert json.loads(attributes["value"]) == value, attributes
            if kind == "apart":
                assert word is None or rounds_to(value, text), (attributes, text)
            else:
                assert word is None or text == word(value, kind), (attributes, text, word(value, kind))
    known = "\n".join(strings_in(summary))
    stray = [number for text in reader.plain for number in stray_numbers(text, known)]
    return reader, stray


def stray_numbers(text, known):
    """Numbers in a text that is not the summary's own, but for those that only count rows, runs, sheets and steps."""
    text = text.strip()
    if not text or text in known or re.fullmatch(r"\d{1,3}", text):
        return []
    text = re.sub(r"\b(run|ply|station|bend|sheet) \d+\b|\b\d+ ×", "", text, flags=re.I)
    return [number for number in re.findall(r"\d+(?:\.\d+)?", text) if number not in known]


@test
def every_number_on_the_page_is_the_summarys(bench):
    seen = 0
    for name in sorted(os.listdir(DEMO)):
        name = name[:-5]
        if name == "refused-niche":
            continue
        path, summary = demo(bench, name)
        reader, stray = check_figures(path, summary)
        assert not stray, (name, stray)
        assert len(reader.figures) > 100, (name, len(reader.figures))
        assert len(reader.ids) == len(set(reader.ids)), name
        seen += 1
    assert seen >= 12, seen


@test
def the_page_needs_no_other_file_and_stays_small(bench):
    path, _ = demo(bench)
    assert os.path.getsize(path) < MOST_BYTES, os.path.getsize(path)
    for tag, attributes in Reader(path).tags:
        for name in ("src", "href", "action", "data", "poster", "srcset"):
            address = attributes.get(name, "")
            assert not address or address.startswith(("data:image/", "#")), (tag, address[:80])


@test
def nothing_runs_over_the_edge_on_phone_tablet_and_desktop(bench):
    for name in ("reading-desk", "bench-end", "gallery-bench"):
        path, _ = demo(bench, name)
        for width in (360, 820, 1280):
            driver = browser.opened(path, width=width)
            assert wider_than_page(driver) == [], (name, width)


def wider_than_page(driver):
    """What reaches past the page's right edge without a box of its own to scroll in."""
    return driver.execute_script("""
        var edge = document.documentElement.clientWidth, out = [];
        document.querySelectorAll("body *").forEach(function (one) {
          if (one.closest(".wide") && !one.classList.contains("wide")) return;
          var box = one.getBoundingClientRect();
          if (box.width > 0 && box.right > edge + 1) out.push(one.tagName + " " + one.textContent.slice(0, 40));
        });
        return out""")


def words_of_pdf(path):
    """Words with their boxes and the size of their page, points."""
    done = subprocess.run(["pdftotext", "-bbox", path, "-"], stdout=subprocess.PIPE, check=True)
    text, pages = done.stdout.decode("utf-8"), []
    for page in re.findall(r'<page width="([0-9.]+)" height="([0-9.]+)">(.*?)</page>', text, re.S):
        boxes = re.findall(r'<word xMin="(.*?)" yMin="(.*?)" xMax="(.*?)" yMax="(.*?)">(.*?)</word>', page[2])
        pages.append((float(page[0]), float(page[1]), [(*map(float, box[:4]), box[4]) for box in boxes]))
    return pages


def squeezed(text):
    return re.sub(r"[\s\u00a0\u00ad-]+", "", text)


@test
def on_a4_nothing_is_cut_off_and_everything_is_there(bench):
    for name in ("reading-desk", "bench-end"):
        path, summary = demo(bench, name)
        driver = browser.opened(path)
        file = bench.write("print.pdf", browser.printed(driver))
        pages = words_of_pdf(file)
        assert len(pages) >= 4
        for width, height, boxes in pages:
            assert abs(width - 595) < 2 and abs(height - 842) < 2, (width, height)
            for left, top, right, bottom, word in boxes:
                # 5 mm, which office printers do not reach (from memory), are 14 points.
                assert left > 14 and right < width - 14 and top > 14 and bottom < height - 14, (word, left, bottom)
        plain = subprocess.run(["pdftotext", "-raw", file, "-"], stdout=subprocess.PIPE, check=True).stdout.decode("utf-8")
        there = squeezed(plain)
        for finding in summary["findings"]:
            for text in (finding["title"], finding["basis"], finding["advice"]):
                assert squeezed(text) in there, text
        for item in summary["hardware"] + summary["buy"]:
            assert squeezed(item["name"]) in there, item["name"]
        for part in summary["parts"]:
            assert part["kind"] == "panel" or squeezed(part["name"]) in there, part["name"]
        # The content's width on A4: what is wider would be scaled down or cut.
        driver = browser.opened(path, width=703)
        driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": "print"})
        try:
            over = driver.execute_script("""return Array.from(document.querySelectorAll("table, img, p, li, dd")).filter(function (one) {
                return one.getBoundingClientRect().right > document.documentElement.clientWidth + 1 }).length""")
            assert over == 0, over
        finally:
            driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": ""})


HOSTILE = '<script>alert(1)</script><img src=x onerror=alert(2)> "\' & ]]> --> ${x} Ärm\u2028el </title></style>'


@test
def a_hostile_title_stays_text(bench):
    path, summary = page_of(bench, changed(small(), title=HOSTILE))
    driver = browser.opened(path)
    assert browser.complaints(driver) == []
    heading = driver.execute_script("return document.querySelector('h1').textContent")
    assert heading == HOSTILE, heading
    assert driver.execute_script("return document.querySelectorAll('h1 *:not(bdi)').length") == 0
    reader = Reader(path)
    assert [tag for tag, _ in reader.tags].count("script") == 2
    assert not any("onerror" in attributes for _, attributes in reader.tags)


@test
def a_job_in_inches_is_told_in_inches(bench):
    path, summary = page_of(bench, changed(small(), report_units="in"))
    reader, _ = check_figures(path, summary, None)
    lengths = [text for attributes, text in reader.figures if attributes["data-as"] == "length"]
    assert len(lengths) > 50
    fraction = re.compile(r"-?(\d+ )?(\d+/(2|4|8|16|32)|\d+) in|-?0(\.\d{1,3})? in")
    for attributes, text in reader.figures:
        if attributes["data-as"] != "length":
            continue
        assert fraction.fullmatch(text), text
        value = looked_up(summary, attributes["data-of"])
        # Half of a 32nd of 25.4 mm, or half a thousandth below an eighth of an inch (international inch, 1959).
        slack = 25.4 / 64 if abs(value) >= 3.175 else 0.0127
        assert abs(inches(text) * 25.4 - value) <= slack + 1e-6, (text, value)
    assert any("/" in text for text in lengths) and any("psi" in text for _, text in reader.figures)


def inches(text):
    number = text[:-3]
    sign = -1 if number.startswith("-") else 1
    total = 0
    for part in number.lstrip("-").split():
        over, _, under = part.partition("/")
        total += float(over) / float(under or 1)
    return sign * total


@test
def the_still_pictures_are_pictures(bench):
    path, summary = demo(bench)
    stills = [attributes["src"] for tag, attributes in Reader(path).tags
              if tag == "img" and attributes["src"].startswith("data:image/png")]
    assert len(stills) > 8
    import base64
    for still in stills:
        pixels = browser.png_pixels(base64.b64decode(still.split(",", 1)[1]))
        assert 0.02 < browser.inked(pixels) < 0.95, pixels.shape


@test
def open_shows_the_page_where_a_desktop_is(bench):
    opener = bench.write("bin/xdg-open", "#!/bin/sh\nprintf '%s' \"$1\" > \"$HOME/opened\"\n")
    os.chmod(opener, 0o755)
    path = bench.path("bin") + ":/usr/bin:/bin"
    done = bench.build(small(), "out", "--only", "html", "--despite-fails", "--open", env={"PATH": path, "DISPLAY": ":9"})
    assert done.status == 0 and done.errors == "", done
    assert waited_for(bench.path("opened")) == bench.path("out", "job-sheet.html")
    os.remove(bench.path("opened"))
    done = bench.build(small(), "out", "--only", "html", "--despite-fails", "--open", env={"PATH": path})
    assert done.status == 0 and "there is no desktop here; open " in done.errors, done
    done = bench.build(small(), "out", "--only", "html", "--despite-fails", "--open", env={"PATH": "/nowhere", "DISPLAY": ":9"})
    assert done.status == 0 and "xdg-open does not start; open " in done.errors, done
    done = bench.build(small(), "none", "--only", "json", "--open")
    assert done.status == 2 and "--open shows the job sheet" in done.errors, done
    assert not os.path.exists(bench.path("none")) and not os.path.exists(bench.path("opened"))


def waited_for(path):
    """Its text as soon as it is there: the program does not wait for the desktop."""
    import time
    for _ in range(200):
        if os.path.exists(path) and os.path.getsize(path):
            with open(path) as file:
                return file.read()
        time.sleep(0.05)
    raise AssertionError("nothing was opened")


@test
def two_builds_write_the_same_page(bench):
    first, _ = page_of(bench, small())
    with open(first, "rb") as file:
        one = file.read()
    done = bench.build(small(), "again", "--only", "html", "--despite-fails", env=dict(locales.in_force("de_DE"), TZ="Asia/Tokyo"))
    assert done.status == 0
    with open(bench.path("again", "job-sheet.html"), "rb") as file:
        assert file.read() == one
