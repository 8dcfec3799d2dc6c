"""Profiles from measured points and from drawings, as a user gives them. DXF files are written by an independent
writer, ezdxf (Debian: python3-ezdxf); circles and lines are held against formulas of our own."""
import json
import math
import xml.etree.ElementTree as xml

from harness import Skip, close_to as close_to_named, test, to_toml
from jobs import changed, small

# A crown of R 1275 (chord 1200, rise 150), thirteen points moved by up to 0.4 mm. The arc by least squares is the
# minimum of the sum of squared distances, found by a separate programme of ours.
SITE = [(-600.1, 0.3), (-506.1, 44.8), (-409.2, 83.0), (-309.2, 111.7), (-207.4, 133.4), (-104.0, 145.4), (0.0, 150.1),
        (104.0, 146.1), (207.3, 132.7), (309.3, 112.3), (409.0, 82.2), (506.3, 45.4), (599.9, -0.3)]


def close_to(value, wanted, tolerance):
    close_to_named(value, wanted, tolerance, "figure")


def table(points, separator=",", decimal="."):
    rows = [separator.join(("%.4f" % v).replace(".", decimal) for v in p) for p in points]
    return "\n".join(rows) + "\n"


def measured(bench, profile, *more):
    result = bench.run("measure", profile, "--json", *more)
    assert result.status == 0, result
    return json.loads(result.text)


def fitted(bench, file, *more):
    result = bench.run("fit", file, "--json", *more)
    assert result.status == 0, result
    return json.loads(result.text)


def refused(bench, *arguments):
    result = bench.run(*arguments)
    assert result.status == 3 and result.text == "", result
    return result.errors


def writer():
    try:
        import ezdxf
    except ImportError:
        raise Skip("no ezdxf for this Python")
    return ezdxf


@test
def an_arc_through_noisy_points_is_the_least_squares_arc(bench):
    bench.write("site.csv", table(SITE))
    arc = fitted(bench, "site.csv", "--fit", "arc")
    assert len(arc["runs"]) == 1
    run = arc["runs"][0]
    close_to(run["radius"], 1274.328, 0.0006)
    close_to(arc["greatest"], 0.472, 0.0006)
    close_to(arc["rms"], 0.328, 0.0006)
    # Centre: square to the start heading (degrees) at the radius.
    heading = math.radians(arc["start"]["heading"])
    x, y = arc["start"]["at"]
    close_to(x + run["radius"] * math.sin(heading), -0.190, 0.0006)
    close_to(y - run["radius"] * math.cos(heading), -1124.287, 0.0006)


@test
def points_in_every_style_of_table_give_the_same_runs(bench):
    texts = {"comma.csv": table(SITE), "semicolon.csv": table(SITE, ";", ","), "tab.tsv": table(SITE, "\t"),
             "blank.txt": table(SITE, " "), "head.csv": "x [mm]; y [mm]\n" + table(SITE, ";"),
             "windows.csv": "\ufeff" + table(SITE).replace("\n", "\r\n"),
             "inch.csv": "x (in), y (in)\n" + table([(x / 25.4, y / 25.4) for x, y in SITE]).replace("\n", "\n")}
    radii = {}
    for name, text in texts.items():
        bench.write(name, text)
        radii[name] = fitted(bench, name, "--fit", "arc")["runs"][0]["radius"]
    for name, radius in radii.items():
        close_to(radius, radii["comma.csv"], 0.5 if name == "inch.csv" else 1e-6)


@test
def a_bad_row_is_named_by_file_and_line(bench):
    bench.write("site.csv", table(SITE[:4]) + "12,4O\n" + table(SITE[4:]))
    errors = refused(bench, "fit", "site.csv")
    assert "site.csv:5" in errors and "4O" in errors, errors


@test
def a_fit_is_printed_as_a_profile_that_can_be_pasted(bench):
    bench.write("site.csv", table(SITE))
    printed = bench.run("fit", "site.csv")
    assert printed.status == 0 and printed.errors == "", printed
    text = "[panel]\nwidth = 600\n" + printed.text
    again = measured(bench, bench.write("pasted.toml", text))
    first = fitted(bench, "site.csv")
    assert len(again["runs"]) == len(first["runs"])
    for a, b in zip(again["runs"], first["runs"]):
        close_to(a["length"], b["length"], 1e-3)
    bench.built("units = \"mm\"\n" + text + "[layup]\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = 5}]\n", "out",
                "--only", "json", "--no-sheets")


@test
def a_job_takes_its_profile_from_a_points_file_beside_it(bench):
    bench.write("site/points.csv", table(SITE))
    job = changed(small(), panel__profile={"points": "points.csv", "fit": "arc"})
    path = bench.write("site/job.toml", to_toml(job))
    result = bench.run("build", path, "-o", bench.path("out"), "--despite-fails", "--only", "json", "--no-sheets")
    assert result.status == 0, result
    runs = bench.summary()["panel"]["released"]["runs"]
    assert len(runs) == 1
    close_to(runs[0]["radius"], 1274.328, 0.0006)


@test
def offsets_from_a_straight_edge_give_the_arc(bench):
    # R 900 over a chord of 1200: offset at x is sqrt(R^2 - (x - 600)^2) - sqrt(R^2 - 600^2).
    offsets = [math.sqrt(900**2 - (x - 600)**2) - math.sqrt(900**2 - 600**2) for x in range(0, 1201, 100)]
    got = measured(bench, "{offsets = [%s], every = 100, fit = \"arc\"}" % ", ".join("%.9f" % o for o in offsets))
    close_to(got["runs"][0]["radius"], 900, 1e-6)
    inches = measured(bench, "{offsets = [0, \"1 1/2 in\", \"2 in\", \"1 1/2 in\", 0], every = \"1 ft\", fit = \"arc\"}")
    # Chord 4 ft: the five points lie near R = (24^2 + 2^2) / (2 * 2) in = 145 in.
    assert 3600 < inches["runs"][0]["radius"] < 3800, inches


@test
def an_outlier_is_named_and_does_not_make_runs(bench):
    points = [(x, math.sqrt(1000**2 - x * x) - 800 + 0.1 * math.sin(x * x)) for x in range(-500, 501, 10)]
    points[40] = (points[40][0], points[40][1] + 6)
    bench.write("site.csv", table(points))
    got = fitted(bench, "site.csv", "--tolerance", "1")
    assert [s["point"] for s in got["suspects"]] == [41], got["suspects"]
    assert len(got["runs"]) == 1, got["runs"]


SVG_HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" %s>'


def svg(size, body):
    return SVG_HEAD % size + body + "</svg>"


@test
def sizes_of_svg_files_are_true(bench):
    line = '<path d="M0 0L%g 0"/>'
    units = {"3401.5748031496px": 900, "3401.57480314961pt": 1200, "120cm": 1200,
             "47.244094488189in": 1200, "1200mm": 1200, "100pc": 100 / 6 * 25.4}
    for width, length in units.items():
        bench.write("line.svg", svg('width="%s" viewBox="0 0 1000 100"' % width, line % 1000))
        close_to(measured(bench, "line.svg")["girth"], length, 1e-6)
    for size in ('width="100%" height="100%" viewBox="0 0 1000 100"', 'viewBox="0 0 1000 100"'):
        bench.write("line.svg", svg(size, line % 1000))
        assert "scale" in refused(bench, "measure", "line.svg")
        close_to(measured(bench, '{svg = "line.svg", scale = 0.5}')["girth"], 500, 1e-9)


@test
def pixels_are_taken_at_96_to_the_inch_unless_said_otherwise(bench):
    bench.write("line.svg", svg('width="2834.65px" height="283.465px" viewBox="0 0 2834.65 283.465"',
                                '<path d="M0 0H2834.65"/>'))
    got = measured(bench, "line.svg")
    close_to(got["girth"], 750, 0.01)
    assert any("96" in note for note in got["read"]), got["read"]
    close_to(measured(bench, '{svg = "line.svg", dpi = 72}')["girth"], 1000, 0.01)


@test
def an_svg_path_is_chosen_by_its_id_or_layer(bench):
    bench.write("front.svg", svg('width="1000mm" height="400mm" viewBox="0 0 1000 400"',
                                 '<rect width="1000" height="400" id="frame"/>'
                                 '<g id="curves"><path id="inner" d="M0 300A500 500 0 01600 300"/></g>'
                                 '<path id="outer" d="M0 200A800 800 0 01600 200"/>'))
    close_to(measured(bench, '{svg = "front.svg", path = "inner"}')["runs"][0]["radius"], 500, 1e-6)
    close_to(measured(bench, '{svg = "front.svg", layer = "curves"}')["runs"][0]["radius"], 500, 1e-6)
    close_to(measured(bench, '{svg = "front.svg", path = "outer"}')["runs"][0]["radius"], 800, 1e-6)
    errors = refused(bench, "measure", '{svg = "front.svg", path = "inne"}')
    assert "did you mean \"inner\"?" in errors, errors
    refused(bench, "measure", "front.svg")


@test
def compact_arc_flags_and_nested_transforms_are_read(bench):
    bench.write("half.svg", svg('width="900mm" height="600mm" viewBox="0 0 900 600"',
                                '<g transform="translate(100,0)"><g transform="rotate(0) translate(0 400)">'
                                '<path d="M0 0A300 300 0 01600 0"/></g></g>'))
    got = measured(bench, "half.svg")
    assert len(got["runs"]) == 1
    close_to(got["runs"][0]["radius"], 300, 1e-6)
    close_to(got["runs"][0]["turn"], 180, 1e-6)  # up in the drawing is up on the bench


@test
def a_free_curve_from_svg_becomes_few_runs_within_its_tolerance(bench):
    bench.write("free.svg", svg('width="1000mm" height="300mm" viewBox="0 0 1000 300"', '<path d="M0 200Q500 0 1000 200"/>'))
    for tolerance in (0.05, 0.2):
        got = measured(bench, '{svg = "free.svg", tolerance = %g}' % tolerance)
        assert got["drawing"]["fitted"] and 0 < got["drawing"]["deviation"] <= tolerance, got["drawing"]
        # A parabola of chord 1000 and rise 100 is 1026.060630 long and turns by 43.60282 degrees: closed forms.
        close_to(got["girth"], 1026.060630, 3 * tolerance)
        close_to(got["turn"], 43.60282, 1)
        assert len(got["runs"]) <= 12, got["runs"]


@test
def a_kink_is_refused_and_eased(bench):
    bench.write("ell.svg", svg('width="600mm" height="600mm" viewBox="0 0 600 600"', '<polyline points="0,500 0,0 500,0"/>'))
    errors = refused(bench, "measure", '{svg = "ell.svg"}')
    assert "90 degrees" in errors and "ease = R" in errors, errors
    got = measured(bench, '{svg = "ell.svg", ease = 60}')
    assert [round(r["length"], 6) for r in got["runs"]] == [440, round(30 * math.pi, 6), 440], got["runs"]


def dxf_files(bench, draw, versions=("R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"), units=4):
    """The same drawing in every version, as (version, file)."""
    for version in versions:
        document = writer().new(version)
        document.header["$INSUNITS"] = units
        draw(document, document.modelspace())
        name = "drawing-%s.dxf" % version
        document.saveas(bench.path(name))
        yield version, name


def stated(version):
    """R12 knows no header variable for its unit."""
    return ', units = "mm"' if version == "R12" else ""


@test
def dxf_of_every_version_gives_lines_and_arcs_as_they_are(bench):
    def draw(document, space):
        document.layers.add("PROFILE")
        on = {"layer": "PROFILE"}
        space.add_line((400, 0), (60, 0), dxfattribs=on)
        space.add_arc((60, 60), 60, 180, 270, dxfattribs=on)
        space.add_line((0, 60), (0, 400), dxfattribs=on)
        space.add_circle((900, 900), 50)
    seen = 0
    for version, name in dxf_files(bench, draw):
        got = measured(bench, '{dxf = "%s", layer = "PROFILE", outer = "down"%s}' % (name, stated(version)))
        assert [round(r["length"], 6) for r in got["runs"]] == [340, round(30 * math.pi, 6), 340], (version, got["runs"])
        close_to(got["runs"][1]["turn"], 90, 1e-6)
        assert not got["drawing"]["fitted"]
        seen += 1
    assert seen == 7


@test
def bulges_curve_to_their_own_side(bench):
    # tan(15 degrees): an arc of 60 degrees, R 600, below a chord drawn left to right; below the chord it hangs.
    for bulge, radius, turn in ((-0.2679491924311227, 600, 60), (0.2679491924311227, 600, -60), (-1.5, 325, 4 * math.degrees(math.atan(1.5)))):
        def draw(document, space):
            if document.dxfversion == "AC1009":
                space.add_polyline2d([(0, 0, bulge), (600, 0, 0)], format="xyb")
            else:
                space.add_lwpolyline([(0, 0, bulge), (600, 0, 0)], format="xyb")
        for version, name in dxf_files(bench, draw, ("R12", "R2000")):
            got = measured(bench, '{dxf = "%s", outer = "up"%s}' % (name, stated(version)))
            close_to(got["runs"][0]["radius"], radius, 1e-6)
            close_to(got["runs"][0]["turn"], turn, 1e-6)


@test
def units_of_dxf_files_are_kept_or_asked_for(bench):
    def draw(document, space):
        space.add_line((0, 0), (10, 0))
    for units, length in ((1, 254), (4, 10), (5, 100), (6, 10000), (2, 3048)):
        for _, name in dxf_files(bench, draw, ("R2000",), units):
            close_to(measured(bench, name)["girth"], length, 1e-9)
    for _, name in dxf_files(bench, draw, ("R2000",), 0):
        assert "units" in refused(bench, "measure", name)
        close_to(measured(bench, '{dxf = "%s", units = "in"}' % name)["girth"], 254, 1e-9)


@test
def splines_and_ellipses_of_dxf_are_followed(bench):
    def ellipse(document, space):
        space.add_ellipse((0, 0), major_axis=(500, 0), ratio=0.4, start_param=0, end_param=math.pi)
    for _, name in dxf_files(bench, ellipse, ("R2000", "R2018")):
        got = measured(bench, name)
        close_to(got["girth"], 2301.311260 / 2, 0.2)  # half of a complete elliptic integral
        close_to(got["turn"], 180, 1e-6)  # its end tangents are known

    def spline(document, space):
        space.add_rational_spline([(100, 0), (100, 100), (0, 100)], [1, math.sqrt(0.5), 1], degree=2)
    for _, name in dxf_files(bench, spline, ("R2000",)):
        got = measured(bench, name)
        assert len(got["runs"]) == 1, got["runs"]
        close_to(got["runs"][0]["radius"], 100, 1e-6)


@test
def loose_pieces_are_joined_and_gaps_told(bench):
    def drawing(gap):
        def draw(document, space):
            space.add_line((60, 0), (400, 0))
            space.add_line((0, 60 + gap), (0, 400))
            space.add_arc((60, 60), 60, 180, 270)
            space.add_arc((60, 60), 60, 180, 270)  # drawn twice
        return draw
    for gap in (0, 1e-4, 0.0099):
        for _, name in dxf_files(bench, drawing(gap), ("R2000",)):
            got = measured(bench, '{dxf = "%s", outer = "down"}' % name)
            close_to(got["drawing"]["largest_gap"], gap, 1e-9)
            assert any("lie on another" in note for note in got["read"]), got["read"]
    for _, name in dxf_files(bench, drawing(0.2), ("R2000",)):
        errors = refused(bench, "measure", '{dxf = "%s", outer = "down"}' % name)
        assert "0.2 away" in errors and "(0, 60.2)" in errors, errors
        assert measured(bench, '{dxf = "%s", outer = "down", join = 0.25}' % name)["girth"] > 700


@test
def binary_and_foreign_files_are_refused_politely(bench):
    bench.write("binary.dxf", b"Some Binary DXF xxxx\r\n\x1a\x00" + bytes(200))
    bench.write("picture.dxf", b"\x89PNG\r\n\x1a\n" + bytes(100))
    bench.write("empty.dxf", "")
    bench.write("empty.svg", "")
    bench.write("page.svg", "<html><body/></html>")
    bench.write("cut.svg", svg('width="10mm" height="10mm" viewBox="0 0 10 10"', '<path d="M0 0L10 0"/>')[:-12])
    for name in ("binary.dxf", "picture.dxf", "empty.dxf", "empty.svg", "page.svg", "cut.svg"):
        errors = refused(bench, "measure", name)
        assert errors.count("\n") == 1 and len(errors) < 400 and name in errors, errors
    missing = bench.run("measure", "nowhere.svg")
    assert missing.status == 5 and "nowhere.svg" in missing.errors, missing


@test
def a_doubtful_side_asks(bench):
    bench.write("hanging.csv", table([(x, (x / 300.0)**2 * 60) for x in range(-300, 301, 20)]))
    errors = refused(bench, "fit", "hanging.csv")
    assert "outer = \"up\"" in errors and "outer = \"down\"" in errors, errors
    up, down = (fitted(bench, "hanging.csv", "--outer", side) for side in ("up", "down"))
    assert all(r["turn"] <= 0 for r in up["runs"]) and all(r["turn"] >= 0 for r in down["runs"])


@test
def sheets_of_measure_and_fit_are_svg_in_true_size(bench):
    bench.write("site.csv", table(SITE))
    for command in ("measure", "fit"):
        for paper, size in (("a4", {"210mm", "297mm"}), ("a3", {"297mm", "420mm"})):
            result = bench.run(command, "site.csv", "-o", bench.path(command + ".svg"), "--paper", paper)
            assert result.status == 0, result
            root = xml.parse(bench.path(command + ".svg")).getroot()
            assert {root.get("width"), root.get("height")} == size, root.attrib
    before = open(bench.path("fit.svg"), "rb").read()
    assert bench.run("fit", "site.csv", "-o", bench.path("fit.svg"), "--paper", "a3").status == 0
    assert open(bench.path("fit.svg"), "rb").read() == before
    assert bench.run("fit", "site.csv", "-o", "fit.png").status == 2
    assert bench.run("fit", "site.csv", "-o", "nowhere/fit.svg").status == 5
    assert bench.run("fit", "site.csv", "--paper", "letter").status == 2


@test
def hostile_names_of_curve_files_are_only_names(bench):
    for name in ('a"b.csv', "a b\\c.csv", "ü板.csv", "$(x) 'y'.csv", "<b>&.csv"):
        bench.write(name, table(SITE))
        assert len(fitted(bench, name, "--fit", "arc")["runs"]) == 1
        result = bench.run("fit", name, "-o", bench.path("out.svg"))
        assert result.status == 0, result
        xml.parse(bench.path("out.svg"))


@test
def keys_that_belong_to_another_form_are_refused(bench):
    bench.write("site.csv", table(SITE))
    for extra in ('path = "x"', "join = 1", "dpi = 96"):
        assert "has no use with points" in refused(bench, "measure", '{points = "site.csv", %s}' % extra)
    assert "is given beside" in refused(bench, "measure", '{points = "site.csv", svg = "x.svg"}')
    assert "tolerance" in refused(bench, "measure", '{points = "site.csv", tolerence = 1}')
    for kind in ("arcs", "arcs 0", "arcs x", "spline"):
        result = bench.run("fit", "site.csv", "--fit", kind)
        assert result.status == 2 and "--fit: read" in result.errors, result
        assert "allowed runs, arc, or arcs" in refused(bench, "measure", '{points = "site.csv", fit = "%s"}' % kind)
    result = bench.run("fit", "site.csv", "--tolerance", "nan")
    assert result.status == 2 and "--tolerance" in result.errors, result


@test
def known_ends_hold(bench):
    bench.write("site.csv", table(SITE))
    got = measured(bench, '{points = "site.csv", start = {at = [-600, 0], heading = 28.072}, end = {at = [600, 0]}, tolerance = 2}')
    close_to(got["chord"], 1200, 1e-6)


@test
def a_sheet_never_replaces_what_was_read(bench):
    bench.write("line.svg", svg('width="100mm" viewBox="0 0 100 10"', '<path d="M0 0H100"/>'))
    before = open(bench.path("line.svg"), "rb").read()
    for profile in ("line.svg", '{svg = "line.svg"}', "./line.svg"):
        result = bench.run("measure", profile, "-o", "line.svg")
        assert result.status == 2 and "name another file" in result.errors, result
    assert open(bench.path("line.svg"), "rb").read() == before


@test
def two_wrong_points_among_few_are_named(bench):
    rows = [(x, math.sqrt(900**2 - x * x) - 800 + 0.05 * math.sin(7.0 * x)) for x in range(-450, 451, 30)]
    for i, off in ((9, 6), (20, -8)):
        rows[i] = (rows[i][0], rows[i][1] + off)
    bench.write("site.csv", table(rows))
    got = fitted(bench, "site.csv")
    assert [s["point"] for s in got["suspects"]] == [10, 21], got
    assert len(got["runs"]) == 1 and abs(got["runs"][0]["radius"] - 900) < 3, got["runs"]


@test
def a_closed_drawing_and_a_ring_of_points_are_refused(bench):
    bench.write("ring.svg", svg('width="900mm" viewBox="0 0 900 900"', '<circle cx="400" cy="400" r="300"/>'))
    assert "closed curve" in refused(bench, "measure", "ring.svg")
    bench.write("ring.csv", table([(200 * math.cos(t / 30 * math.pi), 200 * math.sin(t / 30 * math.pi)) for t in range(61)]))
    assert "come round" in refused(bench, "fit", "ring.csv")


@test
def every_form_that_the_readme_shows_is_read(bench):
    for form in ("{chord = 1200, rise = 150}", "{three_points = [[0, 0], [600, 150], [1200, 0]]}",
                 "{offsets = [0, 86, 134, 150, 134, 86, 0], every = 200}"):
        run, = measured(bench, form)["runs"]
        close_to(run["radius"], 1275, 12)


@test
def long_free_curves_are_followed_though_a_run_is_all_but_flat(bench):
    """An S of 16 m that crosses over in its middle, and an arc of R 150 000 as it was drawn."""
    bench.write("long.svg", svg('width="20000mm" viewBox="0 0 20000 4000"',
                                '<path id="s" d="M0 2000C4000 1200 12000 2800 16000 2000"/>'
                                '<path id="flat" d="M0 3000A150000 150000 0 0 1 9000 3000"/>'))
    got = measured(bench, '{svg = "long.svg", path = "s"}')
    assert got["drawing"]["deviation"] <= 0.05, got["drawing"]
    close_to(measured(bench, '{svg = "long.svg", path = "flat"}')["runs"][0]["radius"], 150000, 0.01)
    bench.write("tight.svg", svg('width="20mm" viewBox="0 0 20 20"', '<path d="M0 10A3 3 0 0 1 6 10"/>'))
    assert "allowed 5 or more" in refused(bench, "measure", "tight.svg")
    bench.write("flat.csv", table([(x, 10000 * (1 - ((x - 3000) / 3000)**2) / 400) for x in range(0, 6001, 100)]))
    assert "allowed 5 to 100000" in refused(bench, "fit", "flat.csv", "--fit", "arc")
