"""What is cut and bought: counts that agree between solids, summary, lists and nested sheets.

Distances between nested parts: points of one outline every 0.2 mm against the lines and arcs of the other in closed
form. Read: DXF reference, LWPOLYLINE, group 42 (tangent of a quarter of the angle swept)."""
import collections
import csv
import io
import math
import os
import re

from harness import Skip, test, tree
from jobs import changed, small

FIXTURES = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "fixtures", "jobs")
# One-part, two-part, with pressing beams, and one whose cauls are jointed.
DEMOS = ("desk-front", "lectern-side", "bench-end", "gallery-bench")
ALL = "step,csv,dxf,json"


class Built:
    def __init__(self, result, files, summary):
        self.result, self.files, self.summary = result, files, summary

    def table(self, name):
        """A list as rows by the names of its head line."""
        return list(csv.DictReader(io.StringIO(self.files["lists/%s.csv" % name].decode("utf-8"), newline="")))

    def parts(self, *kinds):
        return {p["name"]: p["count"] for p in self.summary["parts"] if not kinds or p["kind"] in kinds}


CACHE = {}


def demo(bench, name):
    """A demo job, built once for all tests of this file."""
    if name not in CACHE:
        out = bench.path("demo-" + name)
        result = bench.run("build", os.path.join(FIXTURES, name + ".toml"), "-o", out, "--despite-fails", "--only", ALL)
        assert result.status == 0, (name, result)
        CACHE[name] = Built(result, tree(out), bench.summary("demo-" + name))
    return CACHE[name]


def built(bench, job, out, *more, **kwargs):
    result = bench.build(job, out, "--despite-fails", *more, **kwargs)
    assert result.status == 0, result
    files = tree(bench.path(out))
    return Built(result, files, bench.summary(out) if "summary.json" in files else None)


def boards(summary):
    """Parts and aids that are cut from sheet board: its stock tells its thickness as measured."""
    return {p["name"]: p["count"] for p in summary["parts"] + summary["aids"] if p["stock"].endswith(" thick)")}


def counted(text):
    """{"beam": 2} of "2 beam, 3 spacer-block"."""
    return {name: int(count) for count, name in (entry.split(" ", 1) for entry in text.split(", "))}


def summed(tables):
    out = collections.Counter()
    for table in tables:
        out.update(table)
    return dict(out)


# Quantities


@test
def solids_summary_and_cut_list_hold_each_part_equally_often(bench):
    parts = 0
    for name in DEMOS:
        job = demo(bench, name)
        step = job.files["press.step"].decode("ascii")
        bodies = re.findall(r"NEXT_ASSEMBLY_USAGE_OCCURRENCE\s*\(\s*'[^']*'\s*,\s*'([^']*)'", step)
        listed = {row["part"]: int(row["count"]) for row in job.table("cut-list")}
        for part, count in job.parts().items():
            solids = sum(1 for body in bodies if re.fullmatch(re.escape(part) + r"-\d+", body))
            assert solids == count, (name, part, solids, count)
            assert part == "panel" or listed.pop(part) == count, (name, part)
            parts += 1
        assert listed == {aid["name"]: aid["count"] for aid in job.summary["aids"]}, (name, listed)
    assert parts >= 40, parts


@test
def every_board_part_and_aid_lies_on_the_sheets_as_often_as_it_is_wanted(bench):
    pieces = 0
    for name in DEMOS:
        job = demo(bench, name)
        lying = [piece for sheet in job.summary["sheets"] for piece in sheet["pieces"]]
        assert dict(collections.Counter(p["part"] for p in lying)) == boards(job.summary), name
        assert len({p["name"] for p in lying}) == len(lying), name
        rows = job.table("sheets")
        assert len(rows) == len(job.summary["sheets"]), name
        for row, sheet in zip(rows, job.summary["sheets"]):
            assert counted(row["parts"]) == dict(collections.Counter(p["part"] for p in sheet["pieces"])), (name, row)
            assert abs(float(row["yield_percent"]) - 100 * sheet["yield"]) <= 0.05 + 1e-9, (name, row)
            assert abs(float(row["used_length_mm"]) - sheet["used"]) <= 0.05 + 1e-9, (name, row)
        bought = [row for row in job.table("buy") if row["unit"] == "sheet" and row["use"].startswith("sheets ")]
        assert [int(row["all_panels"]) for row in bought] == [len(rows)], (name, bought)
        pieces += len(lying)
    assert pieces > 200, pieces


@test
def timber_parts_are_cut_as_often_as_the_press_has_them(bench):
    kinds = ("beam", "bearer", "spacer-block", "pressing-beam", "stop")
    parts = 0
    for name in DEMOS:
        job = demo(bench, name)
        wanted = job.parts(*kinds)
        rows = job.table("timber")
        assert summed(counted(row["pieces"]) for row in rows) == wanted, name
        in_summary = collections.Counter(piece["part"] for section in job.summary["timber"]
                                         for bar in section["lengths"] for piece in bar["pieces"])
        assert dict(in_summary) == wanted, name
        metres = collections.Counter()
        for row in rows:
            metres[row["stock"]] += float(row["length_bought_mm"]) / 1000
        bought = collections.Counter()
        for row in job.table("buy"):
            if row["unit"] == "m":
                bought[row["item"]] += float(row["all_panels"])
        assert set(bought) == set(metres), name
        assert all(abs(bought[stock] - metres[stock]) < 1e-6 for stock in metres), (name, bought, metres)
        parts += len(wanted)
    assert parts >= 9, parts


@test
def slats_of_the_list_are_slats_of_the_press(bench):
    jointed = 0
    for name in DEMOS:
        job = demo(bench, name)
        rows = job.table("slats")
        pieces = sum(1 if row["pieces_mm"].startswith("not in stock") else row["pieces_mm"].count(" + ") + 1 for row in rows)
        assert pieces == sum(job.parts("slat").values()) > 20, (name, pieces)
        runs = [run for caul in job.summary["cauls"] for run in caul["runs"]]
        assert len(runs) == len(rows), name
        assert sum(max(1, len(run["pieces"])) for run in runs) == pieces, name
        for row, run in zip(rows, runs):
            assert (row["joints_at_mm"].count(",") + 1 if row["joints_at_mm"] else 0) == max(0, len(run["pieces"]) - 1), row
            jointed += len(run["pieces"]) > 1
        for caul in job.summary["cauls"]:
            for stock in caul["stock"]:
                assert stock["count"] is None or stock["used"] <= stock["count"], (name, stock)
            assert sum(stock["used"] for stock in caul["stock"]) == sum(len(run["pieces"]) for run in caul["runs"]), name
    assert jointed > 10, jointed


@test
def slats_taken_from_a_counted_rack_are_taken_once(bench):
    counts = 0
    job = demo(bench, "gallery-bench")
    bed, top = job.summary["cauls"]
    for first, second in zip(bed["stock"], top["stock"]):
        if first["count"] is not None:
            assert second["count"] == first["count"] - first["used"], (first, second)
            counts += 1
    assert counts >= 3, counts


@test
def screws_are_counted_by_their_bores(bench):
    for name in DEMOS:
        job = demo(bench, name)
        rows = job.table("hardware")
        foot = sum(int(row["all_panels"]) for row in rows if row["use"] == "beams to formers")
        caul = sum(int(row["all_panels"]) for row in rows if re.match(r"screw 4 x \d+$", row["item"]))
        pilots = bores = 0
        for part in job.summary["parts"]:
            for hole in part["holes"]:
                if part["kind"].startswith("former") and hole["depth"] == 60:
                    pilots += part["count"]
                if part["kind"] == "slat":
                    assert hole["diameter"] == 4.5, (name, part["name"], hole)
                    bores += part["count"]
        assert foot == pilots > 0, (name, foot, pilots)
        assert caul == bores > 0, (name, caul, bores)


@test
def the_summary_buys_what_the_lists_buy(bench):
    rows_seen = 0
    for name in DEMOS:
        job = demo(bench, name)
        rows = job.table("buy")
        assert len(job.summary["buy"]) == len(rows), name
        for item, row in zip(job.summary["buy"], rows):
            assert item["name"] == row["item"] and item["use"] == row["use"] and item["unit"] == row["unit"], (item, row)
            assert abs(item["one_panel"] - float(row["one_panel"])) <= 0.0005 + 1e-9, (item, row)
            assert abs(item["all_panels"] - float(row["all_panels"])) <= 0.0005 + 1e-9, (item, row)
            rows_seen += 1
        listed = collections.Counter({(row["item"], row["use"]): int(row["all_panels"]) for row in job.table("hardware")})
        for item in job.summary["hardware"]:
            assert listed[item["name"], item["use"]] == item["count"], (name, item)
            rows_seen += 1
    assert rows_seen > 40, rows_seen


# Nested sheets


def reader():
    try:
        import ezdxf
    except ImportError:
        raise Skip("no ezdxf for this Python")
    return ezdxf


class Edge:
    """A line, or an arc by its bulge."""

    def __init__(self, a, b, bulge):
        self.a, self.b = a, b
        chord = math.dist(a, b)
        self.turn = 4 * math.atan(bulge)
        self.length = chord
        if self.turn:
            self.radius = chord / (2 * math.sin(abs(self.turn) / 2))
            self.length = self.radius * abs(self.turn)
            # Left of the chord for an anticlockwise arc of less than half a turn.
            apothem = self.radius * math.cos(self.turn / 2) * math.copysign(1, self.turn)
            ux, uy = (b[0] - a[0]) / chord, (b[1] - a[1]) / chord
            self.centre = ((a[0] + b[0]) / 2 - uy * apothem, (a[1] + b[1]) / 2 + ux * apothem)
            self.start = math.atan2(a[1] - self.centre[1], a[0] - self.centre[0])

    def point(self, share):
        if not self.turn:
            return (self.a[0] + share * (self.b[0] - self.a[0]), self.a[1] + share * (self.b[1] - self.a[1]))
        angle = self.start + share * self.turn
        return (self.centre[0] + self.radius * math.cos(angle), self.centre[1] + self.radius * math.sin(angle))

    def distance(self, p):
        if not self.turn:
            dx, dy = self.b[0] - self.a[0], self.b[1] - self.a[1]
            share = ((p[0] - self.a[0]) * dx + (p[1] - self.a[1]) * dy) / (dx * dx + dy * dy)
            return math.dist(p, self.point(min(1.0, max(0.0, share))))
        swept = math.atan2(p[1] - self.centre[1], p[0] - self.centre[0]) - self.start
        swept = swept % (2 * math.pi) if self.turn > 0 else -((-swept) % (2 * math.pi))
        if abs(swept) <= abs(self.turn):
            return abs(math.dist(p, self.centre) - self.radius)
        return min(math.dist(p, self.a), math.dist(p, self.b))


class Outline:
    def __init__(self, entity):
        points = list(entity.get_points("xyb"))
        self.edges = [Edge((x, y), (u, v), bulge) for (x, y, bulge), (u, v, _) in zip(points, points[1:] + points[:1])
                      if math.hypot(u - x, v - y) > 1e-9]
        middles = [edge.point(k / 16) for edge in self.edges for k in range(17)]
        self.low = tuple(min(p[i] for p in middles) for i in (0, 1))
        self.high = tuple(max(p[i] for p in middles) for i in (0, 1))

    def distance(self, p):
        return min(edge.distance(p) for edge in self.edges)

    def near(self, other, by):
        return all(self.low[i] - by < other.high[i] and other.low[i] - by < self.high[i] for i in (0, 1))


def apart(one, other, enough):
    """Least distance found, points of `one` every 0.2 mm wherever it could be less than `enough`."""
    least = math.inf
    for edge in one.edges:
        stack = [(0.0, 1.0)]
        while stack:
            low, high = stack.pop()
            length = (high - low) * edge.length
            found = min(other.distance(edge.point(share)) for share in (low, (low + high) / 2))
            least = min(least, found)
            # No point of the stretch is farther than half its length from one of the two.
            if found - length / 2 < enough and length > 0.4:
                stack += [(low, (low + high) / 2), ((low + high) / 2, high)]
    return least


def sheets(job):
    ezdxf = reader()
    names = sorted(name for name in job.files if re.fullmatch(r"sheets/\d+\.dxf", name))
    assert names
    for name in names:
        document = ezdxf.read(io.StringIO(job.files[name].decode("ascii")))
        audit = document.audit()
        assert not audit.errors and not audit.fixes, (name, audit.errors[:3], audit.fixes[:3])
        outlines = [e for e in document.modelspace() if e.dxf.layer == "OUTLINE"]
        assert all(e.dxftype() == "LWPOLYLINE" and e.closed for e in outlines), name
        yield name, [Outline(e) for e in outlines]


def least_distance(outlines, spacing):
    """(least distance, pairs looked at); corners are rounded by less than 0.02 of box at 17 points an arc."""
    least, pairs = math.inf, 0
    for i, one in enumerate(outlines):
        for other in outlines[:i]:
            if one.near(other, spacing + 2):
                least = min(least, apart(one, other, spacing))
                pairs += 1
    return least, pairs


@test
def a_nested_sheet_holds_one_closed_outline_for_each_piece_inside_its_margins(bench):
    seen = 0
    for name in DEMOS:
        job = demo(bench, name)
        found = list(sheets(job))
        assert len(found) == len(job.summary["sheets"]), name
        for (path, outlines), sheet in zip(found, job.summary["sheets"]):
            assert len(outlines) == len(sheet["pieces"]), (name, path, len(outlines))
            corners = sorted((round(o.low[0], 1), round(o.low[1], 1)) for o in outlines)
            for piece in sheet["pieces"]:
                near = min(math.dist(piece["at"], corner) for corner in corners)
                assert near < 0.5, (name, path, piece, near)
            for o in outlines:
                assert min(o.low) >= 15 - 0.01, (name, path, o.low)
                assert o.high[0] <= sheet["size"][0] - 15 + 0.01 and o.high[1] <= sheet["size"][1] - 15 + 0.01, (name, path, o.high)
            seen += len(outlines)
    assert seen > 200, seen


@test
def nested_pieces_stay_a_cutter_and_two_apart_by_their_true_shape(bench):
    pairs = 0
    for name in DEMOS[:3]:
        for path, outlines in sheets(demo(bench, name)):
            least, looked_at = least_distance(outlines, 8)
            assert least >= 8 - 0.01, (name, path, least)
            pairs += looked_at
    assert pairs > 100, pairs


@test
def a_thicker_cutter_lays_parts_farther_apart(bench):
    thin, thick = (built(bench, small(), "c%s" % mm, "--only", "dxf,json", "--cutter", mm) for mm in ("6", "8"))
    for job, spacing in ((thin, 8), (thick, 10)):
        for path, outlines in sheets(job):
            least, pairs = least_distance(outlines, spacing + 2)
            assert spacing - 0.01 <= least < spacing + 1, (spacing, path, least)
            assert pairs > 10, pairs


@test
def a_sheet_named_on_the_command_line_is_nested_on(bench):
    job = built(bench, small(), "out", "--only", "csv,json", "--sheet", "1500x1000")
    assert all(sheet["size"] == [1500, 1000] for sheet in job.summary["sheets"]) and job.summary["sheets"]
    assert all((row["length_mm"], row["width_mm"]) == ("1500", "1000") for row in job.table("sheets"))
    given = built(bench, changed(small(), outputs={"sheet": "1500x1000"}), "given", "--only", "csv,json")
    assert given.files["lists/sheets.csv"] == job.files["lists/sheets.csv"]


@test
def a_part_that_fits_on_no_sheet_is_named_in_a_note(bench):
    job = built(bench, small(), "out", "--only", "csv,json", "--sheet", "600x500")
    lying = {piece["part"] for sheet in job.summary["sheets"] for piece in sheet["pieces"]}
    missing = set(boards(job.summary)) - lying
    assert "former-lower" in missing and lying, (missing, lying)
    for part in missing:
        note = re.compile(r"^Note: %s \([\d.]+ x [\d.]+\) fits on no sheet of plywood-18 600 x 500 with a margin of 15" % re.escape(part), re.M)
        assert len(note.findall(job.result.text)) == 1, (part, job.result)
    assert not any("fits on no sheet" in demo(bench, name).result.text for name in DEMOS)
