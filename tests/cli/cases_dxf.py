"""DXF files read and audited by an independent reader, ezdxf (Debian: python3-ezdxf), and measured by formulas of our
own.

Bulge: tangent of a quarter of the angle swept, anticlockwise positive. Read: DXF reference, LWPOLYLINE, group 42."""
import math
import os
import re

import oracle
from harness import Skip, close_to, test
from jobs import changed, small

ONLY = ("--only", "dxf,svg,json")
VERSIONS = {"r2000": "AC1015", "r12": "AC1009"}
PAIRED = re.compile(r"DRILL_(?P<diameter>[\d.]+?)(?:_DEEP_[\d.]+)?(?:_UNDERSIDE)?$")


def reader():
    try:
        import ezdxf
    except ImportError:
        raise Skip("no ezdxf for this Python")
    return ezdxf


def jobs():
    """A single crown, a press with flats and clamp holes, and one whose names are not ASCII."""
    return {"crown": small(), "flats": oracle.W2, "names": changed(small(), title="Türblatt 7/12 板 %%d")}


def sound(path):
    """The document, of which the reader finds nothing to mend."""
    document = reader().readfile(path)
    audit = document.audit()
    found = [(e.code, e.message) for e in list(audit.errors) + list(audit.fixes)]
    assert not found, (path, found[:3])
    return document


def entities(document):
    return list(document.modelspace())


def vertices(entity):
    """[(x, y, bulge)] of a polyline of either version."""
    if entity.dxftype() == "LWPOLYLINE":
        return [(x, y, bulge) for x, y, bulge in entity.get_points("xyb")]
    assert entity.dxftype() == "POLYLINE", entity.dxftype()
    return [(v.dxf.location.x, v.dxf.location.y, v.dxf.bulge if v.dxf.hasattr("bulge") else 0.0) for v in entity.vertices]


def closed(entity):
    return bool(entity.closed if entity.dxftype() == "LWPOLYLINE" else entity.is_closed)


def edges(points):
    """(chord, angle swept, from, to) round a closed polyline."""
    out = []
    for (x1, y1, bulge), (x2, y2, _) in zip(points, points[1:] + points[:1]):
        out.append((math.hypot(x2 - x1, y2 - y1), 4 * math.atan(bulge), (x1, y1), (x2, y2)))
    return out


def enclosed(points):
    """Area: the chords' polygon and the circle segment between each arc and its chord."""
    total = 0.0
    for chord, turn, (x1, y1), (x2, y2) in edges(points):
        total += (x1 * y2 - x2 * y1) / 2
        if turn:
            radius = chord / (2 * math.sin(abs(turn) / 2))
            total += math.copysign(radius * radius * (abs(turn) - math.sin(abs(turn))) / 2, turn)
    return total


def outline(document):
    found = [e for e in entities(document) if e.dxf.layer == "OUTLINE"]
    assert len(found) == 1 and closed(found[0]), found
    return vertices(found[0])


def open_mouths(document):
    """Circles of the face that lies up: of those with one centre the widest."""
    widest = {}
    for circle in entities(document):
        if circle.dxftype() != "CIRCLE" or circle.dxf.layer.endswith("_UNDERSIDE"):
            continue
        place = (round(circle.dxf.center.x, 5), round(circle.dxf.center.y, 5))
        widest[place] = max(widest.get(place, 0), circle.dxf.radius)
    return widest


def flat_parts(bench, summary):
    pieces = summary["parts"] + summary["aids"]
    out = [(p, bench.path("out", f)) for p in pieces for f in p["files"] if f.endswith(".dxf")]
    assert out, "no part has a DXF file"
    return out


def each_part(bench, version):
    seen = 0
    for job in jobs().values():
        summary = bench.built(changed(job, outputs__dxf=version), "out", "--no-sheets", *ONLY)
        for part, path in flat_parts(bench, summary):
            yield summary, part, path
            seen += 1
    assert seen >= 6, seen


@test
def an_independent_reader_finds_nothing_to_mend_in_dxf_files(bench):
    for version, code in VERSIONS.items():
        for _, _, path in each_part(bench, version):
            document = sound(path)
            assert document.dxfversion == code, (path, document.dxfversion)
            with open(path, "rb") as file:
                data = file.read()
            data.decode("ascii")
            if version == "r12":
                assert b"LWPOLYLINE" not in data and b"AcDb" not in data, path
            else:
                assert document.header["$INSUNITS"] == 4 and document.header["$MEASUREMENT"] == 1, path


@test
def the_outline_in_dxf_less_its_bores_is_the_area_of_the_summary(bench):
    for version in VERSIONS:
        for _, part, path in each_part(bench, version):
            document = sound(path)
            holes = sum(math.pi * r * r for r in open_mouths(document).values())
            area = enclosed(outline(document)) - holes
            close_to(area, part["area"], 1e-6 * part["area"], "%s %s" % (version, part["name"]))


@test
def an_outline_in_dxf_has_an_arc_for_each_bend_and_nothing_short(bench):
    formers = 0
    for version in VERSIONS:
        for summary, part, path in each_part(bench, version):
            sides = edges(outline(sound(path)))
            for chord, turn, _, _ in sides:
                length = chord if not turn else chord / (2 * math.sin(abs(turn) / 2)) * abs(turn)
                assert length >= 1, (path, length)
            if part["kind"] != "former-lower":
                continue
            bends = [r for r in summary["press"]["contact"]["lower"]["runs"] if r["radius"]]
            arcs = [(chord / (2 * math.sin(abs(turn) / 2)), turn) for chord, turn, _, _ in sides if turn]
            assert len(arcs) == len(bends), (path, arcs, bends)
            wanted = sorted((b["radius"], abs(b["turn"])) for b in bends)
            for (radius, turn), (r, t) in zip(sorted((r, abs(math.degrees(t))) for r, t in arcs), wanted):
                # Points to 1e-6 over a sagitta of millimetres and more.
                close_to(radius, r, 1e-6 * r, "radius in %s" % path)
                close_to(turn, t, 1e-5, "turn in %s" % path)
            formers += 1
    assert formers >= 2 * len(jobs()), formers


@test
def bores_in_dxf_are_circles_on_the_layer_of_their_drill(bench):
    circles = 0
    for version in VERSIONS:
        for _, part, path in each_part(bench, version):
            found = [e for e in entities(sound(path)) if e.dxftype() == "CIRCLE"]
            for circle in found:
                assert circle.dxf.layer.startswith(("DRILL_", "CBORE_")), circle.dxf.layer
                name = PAIRED.match(circle.dxf.layer)
                if name and version == "r2000":
                    close_to(2 * circle.dxf.radius, float(name.group("diameter")), 1e-3, path)
            flat = [h for h in part["holes"] if abs(abs(h["axis"][2]) - 1) < 1e-6]
            assert len(found) == len(flat) + sum(1 for h in flat if h.get("counterbore")), (path, len(found), len(flat))
            assert not [e for e in entities(sound(path)) if e.dxftype() in ("SPLINE", "ELLIPSE")], path
            circles += len(found)
    assert circles > 0, "no demo has a bore across a board"


@test
def every_layer_of_a_dxf_file_is_defined_with_a_colour_and_used(bench):
    for version in VERSIONS:
        for _, _, path in each_part(bench, version):
            document = sound(path)
            defined = {layer.dxf.name: layer.dxf.color for layer in document.layers}
            used = {e.dxf.layer for e in entities(document)}
            # Readers add layers of their own when they load a file: what the file itself defines is looked up in it.
            with open(path, encoding="ascii") as file:
                text = file.read()
            table = text[text.index("\nLAYER\n"):]
            table = table[:table.index("ENDTAB")]
            for name in used | {"0"}:
                assert "\n  2\n%s\n" % name in table, (path, name)
            assert "OUTLINE" in used and used <= set(defined), (path, used, defined)
            assert all(1 <= colour <= 255 for colour in defined.values()), (path, defined)


@test
def labels_in_dxf_are_strokes_on_their_own_layer_and_can_be_left_out(bench):
    strokes = 0
    for version in VERSIONS:
        for _, _, path in each_part(bench, version):
            for entity in entities(sound(path)):
                assert entity.dxftype() not in ("TEXT", "MTEXT"), path
                if entity.dxf.layer == "LABEL":
                    assert entity.dxftype() in ("LWPOLYLINE", "POLYLINE") and not closed(entity), path
                    strokes += 1
    assert strokes > 100, strokes
    summary = bench.built(changed(small(), outputs__labels=False), "out", "--no-sheets", *ONLY)
    for _, path in flat_parts(bench, summary):
        document = sound(path)
        assert "LABEL" not in {e.dxf.layer for e in entities(document)}, path
        with open(path, encoding="ascii") as file:
            assert "LABEL" not in file.read(), path


@test
def a_part_in_dxf_lies_with_its_lower_left_at_the_origin_as_in_svg(bench):
    parts = 0
    for _, part, path in each_part(bench, "r2000"):
        xs = [x for x, _, _ in outline(sound(path))]
        with open(os.path.splitext(path)[0] + ".svg", encoding="utf-8") as file:
            width = float(re.search(r'width="([\d.]+)mm"', file.read()).group(1))
        close_to(min(xs), 0, 1e-6, "left edge of %s" % part["name"])
        close_to(max(xs), width, 2e-6, "right edge of %s" % part["name"])
        parts += 1
    assert parts >= 3, parts


@test
def nested_sheets_in_dxf_hold_every_piece_and_a_border_that_is_not_cut(bench):
    sheets = 0
    for version in VERSIONS:
        for job in jobs().values():
            summary = bench.built(changed(job, outputs__dxf=version), "out", *ONLY)
            wanted = sum(part["count"] for part, _ in flat_parts(bench, summary))
            pieces = 0
            for name in sorted(os.listdir(bench.path("out", "sheets"))):
                if not name.endswith(".dxf"):
                    continue
                found = entities(sound(bench.path("out", "sheets", name)))
                frame = [e for e in found if e.dxf.layer == "SHEET_BORDER" and "POLYLINE" in e.dxftype() and closed(e)]
                assert len(frame) == 1, (name, frame)
                corners = [(x, y) for x, y, _ in vertices(frame[0])]
                assert (0, 0) in corners and len(corners) == 4 and min(min(c) for c in corners) == 0, corners
                pieces += sum(1 for e in found if e.dxf.layer == "OUTLINE")
                assert {e.dxf.layer for e in found} >= {"OUTLINE", "LABEL", "CHECK_100", "SHEET_BORDER"}, name
                sheets += 1
            assert pieces == wanted, (pieces, wanted)
    assert sheets >= 2 * len(jobs()), sheets
