"""PDF files, rendered and measured: pages of their true size, check bars to the pixel, the same bytes everywhere."""
import os
import re
import subprocess
import zlib

import numpy

import locales
from harness import Skip, test, tree
from jobs import changed, small

PIXELS = 10  # a mm, at 254 dpi
PAPERS = {"a4": (210, 297), "a3": (297, 420), "a2": (420, 594)}


def tool(*args):
    try:
        done = subprocess.run(args, stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=300)
    except FileNotFoundError:
        raise Skip("%s is not installed" % args[0])
    assert done.returncode == 0 and not done.stderr, (args, done.stderr)
    return done.stdout


def information(path):
    text = tool("pdfinfo", "-isodates", path).decode()
    return dict(line.split(":", 1) for line in text.splitlines() if ":" in line)


def page_count(path):
    return int(information(path)["Pages"])


def page_sizes(path):
    """Width and height of each page, mm."""
    text = tool("pdfinfo", "-f", "1", "-l", str(page_count(path)), path).decode()
    sizes = re.findall(r"Page +\d+ size: +([0-9.]+) x ([0-9.]+) pts", text)
    return [(float(w) / 72 * 25.4, float(h) / 72 * 25.4) for w, h in sizes]


def rendered(path, page, pixels=PIXELS):
    """One page as an array of rows of red, green, blue."""
    data = tool("pdftoppm", "-r", str(pixels * 25.4), "-f", str(page), "-l", str(page), path)
    head = re.match(rb"P6\s+(\d+)\s+(\d+)\s+255\s", data)
    width, height = int(head[1]), int(head[2])
    return numpy.frombuffer(data, numpy.uint8, offset=head.end()).reshape(height, width, 3)


def check_colour(image):
    """Where at least half a pixel has the colour of check bars, #b0005a."""
    red, green, blue = (image[:, :, i].astype(int) for i in range(3))
    return (red - green >= 0xB0 // 2 - 2) & (blue - green >= 0x5A // 2 - 2)


def spans(line):
    """First and last of each stretch of set pixels."""
    edges = numpy.diff(numpy.concatenate(([0], line.astype(numpy.int8), [0])))
    return list(zip(numpy.flatnonzero(edges == 1), numpy.flatnonzero(edges == -1) - 1))


def longest_bar(mask):
    """Length in pixels of the longest row of set pixels between the middles of the strokes across its ends."""
    best = max(((last - first, row, first, last) for row in numpy.flatnonzero(mask.sum(axis=1) > 900)
                for first, last in spans(mask[row])), default=None)
    assert best is not None, "no bar"
    _, row, first, last = best
    stroke = mask[row - 10]  # the end strokes reach 15 pixels up and down
    ends = [(a + b) / 2 for a, b in spans(stroke) if a >= first - 5 and b <= last + 5]
    assert len(ends) >= 2, ends
    return max(ends) - min(ends)


def ink_box(dark):
    """Left, top, right, bottom of what is dark."""
    rows, columns = numpy.flatnonzero(dark.any(axis=1)), numpy.flatnonzero(dark.any(axis=0))
    return columns[0], rows[0], columns[-1], rows[-1]


def wide():
    """Two rows of sheets and more, with names that straddle joints."""
    return changed(small(), panel__profile=[{"line": 250}, {"bend": 60, "radius": 700}, {"line": 150}],
                   press={"method": "one-part"})


@test
def check_bars_measure_100_mm_both_ways_on_every_page_of_the_templates(bench):
    pages = 0
    for name, job, paper in (("small", small(), "a4"), ("wide", wide(), "a3")):
        bench.built(changed(job, outputs__paper=paper), name, "--no-sheets")
        path = bench.path(name, "templates.pdf")
        for page in range(1, page_count(path) + 1):
            image = rendered(path, page)
            mask = check_colour(image)
            across, up = longest_bar(mask), longest_bar(mask.T)
            assert abs(across - 100 * PIXELS) <= 1, (name, page, "across", across)
            assert abs(up - 100 * PIXELS) <= 1, (name, page, "up", up)
            pages += 1
    assert pages > 6, pages


@test
def nothing_of_a_template_lies_nearer_than_10_mm_to_the_edge_of_the_paper(bench):
    bench.built(changed(wide(), outputs__paper="a4"), "out", "--no-sheets")
    path = bench.path("out", "templates.pdf")
    pages = page_count(path)
    fine = 2 * PIXELS  # the reader moves letters of a font to whole pixels
    for page in range(1, pages + 1):
        image = rendered(path, page, fine)
        left, top, right, bottom = ink_box(image.min(axis=2) < 200)
        height, width = image.shape[:2]
        # Half a stroke of 0.25 mm lies outside its line, and a pixel may be shared.
        least = 10 * fine - 6
        assert min(left, top, width - 1 - right, height - 1 - bottom) >= least, (page, left, top, right, bottom)
    assert pages > 4, pages


@test
def pages_have_the_paper_s_size(bench):
    seen = 0
    for paper in ("a4", "a3"):
        bench.built(changed(small(), outputs__paper=paper), paper, "--no-sheets")
        for file in ("drawings.pdf", "templates.pdf"):
            for width, height in page_sizes(bench.path(paper, file)):
                allowed = [PAPERS[paper]] if file == "templates.pdf" else PAPERS.values()
                # pdfinfo prints points to six figures: 0.0002 mm.
                assert any(abs(min(width, height) - a) < 0.01 and abs(max(width, height) - b) < 0.01
                           for a, b in allowed), (paper, file, width, height)
                seen += 1
    assert seen > 10, seen


@test
def frames_of_drawings_print_at_their_true_size(bench):
    bench.built(changed(small(), outputs__paper="a3"), "out", "--no-sheets")
    path = bench.path("out", "drawings.pdf")
    sizes = page_sizes(path)
    for page, (width, height) in enumerate(sizes, 1):
        dark = rendered(path, page).max(axis=2) < 100
        # From the first pixel to the last: the frame runs 20 from the left edge and 10 from the others, 0.7 wide; warnings never leave it.
        rows = numpy.flatnonzero(dark.sum(axis=1) > (width - 40) * PIXELS)
        columns = numpy.flatnonzero(dark.sum(axis=0) > (height - 30) * PIXELS)
        across, up = columns[-1] - columns[0], rows[-1] - rows[0]
        assert abs(across - ((width - 30 + 0.7) * PIXELS - 1)) <= 2, (page, across)
        assert abs(up - ((height - 20 + 0.7) * PIXELS - 1)) <= 2, (page, up)
    assert len(sizes) > 3, sizes


@test
def pdf_files_are_the_same_bytes_in_every_place_and_carry_the_job_s_date(bench):
    files = {"drawings.pdf", "templates.pdf"}
    outputs = []
    for i, env in enumerate(({"TZ": "UTC"}, dict(locales.in_force("de_DE"), TZ="Asia/Tokyo"),
                             dict(locales.in_force("tr_TR"), TZ="America/St_Johns", HOME="/nonexistent"))):
        bench.built(changed(small(), date="2024-03-01"), "out%d" % i, env=env)
        outputs.append({name: data for name, data in tree(bench.path("out%d" % i)).items() if name in files})
    assert set(outputs[0]) == files, list(outputs[0])
    assert outputs[1] == outputs[0] and outputs[2] == outputs[0]
    for name in files:
        about = information(bench.path("out0", name))
        assert about["CreationDate"].strip() == "2024-03-01T00:00:00Z", about
        assert about["Creator"].strip() == "lamwright" and "ModDate" not in about, about
        assert about["Title"].strip().startswith("Reading-room desk front"), about
        fonts = re.findall(rb"/Type /Font\s+/Subtype /(\w+)", outputs[0][name])
        assert fonts and set(fonts) == {b"Type3"} and b"/BaseFont" not in outputs[0][name], fonts


def streams(data):
    """What is packed in a file: pages and letters."""
    return [zlib.decompressobj().decompress(data[found.end():])
            for found in re.finditer(rb"/FlateDecode\s*>>\s*stream\n", data)]


@test
def letters_are_shapes_that_nothing_cuts_off(bench):
    bench.built(small())
    for name in ("drawings.pdf", "templates.pdf"):
        with open(bench.path("out", name), "rb") as file:
            data = file.read()
        assert b"/Image" not in data, name
        packed = streams(data)
        letters = [each for each in packed if re.match(rb"[-0-9. \n]+ d1\n", each)]
        pages = [each for each in packed if b" Tf\n" in each]
        assert len(letters) > 30 and len(pages) == page_count(bench.path("out", name)), (len(letters), len(pages))
        for each in letters + pages:
            assert not re.search(rb"\bW\*? n\b|\bBI\b", each), (name, each[:300])


@test
def texts_of_drawings_can_be_searched(bench):
    bench.built(changed(small(), title="Größe 板"))
    text = tool("pdftotext", bench.path("out", "drawings.pdf"), "-").decode()
    assert "Größe 板" in text, text[:500]


@test
def a_date_is_1970_when_the_job_has_none(bench):
    bench.built(small())
    assert information(bench.path("out", "drawings.pdf"))["CreationDate"].strip() == "1970-01-01T00:00:00Z"


@test
def letters_that_the_drawing_font_lacks_are_told(bench):
    result = bench.build(changed(small(), title="Desk 板"), "out", "--despite-fails")
    assert result.status == 0, result
    assert "U+677F" in result.errors + result.text, result
    assert os.path.getsize(bench.path("out", "templates.pdf")) > 1000
