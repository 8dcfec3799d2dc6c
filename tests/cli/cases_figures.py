"""Figures of summary.json against hand-worked cases and the oracle."""
import json
import math
import os
import re

import oracle
from harness import close_to, test
from jobs import changed, random_jobs, small

SETTINGS = {"seed": 1, "jobs": 12}  # black_box.py --seed, --jobs
EXACT = 0.001


def parts_of(summary, kind):
    return [p for p in summary["parts"] if p["kind"] == kind]


def same_runs(got, wanted, what):
    assert len(got) == len(wanted), "%s: %d runs, expected %d: %s" % (what, len(got), len(wanted), got)
    for g, w in zip(got, wanted):
        close_to(g["length"], w["length"], EXACT, what + " length")
        close_to(g["turn"], w["turn"], 1e-6, what + " turn")
        if w["radius"] is None:
            assert g["radius"] is None and g["turn"] == 0, "%s: a straight line has radius null and turn 0: %s" % (what, g)
        else:
            close_to(g["radius"], w["radius"], EXACT, what + " radius")


def compare_press(summary, want):
    panel, press = summary["panel"], summary["press"]
    close_to(panel["thickness"], want["thickness"], 1e-6, "thickness")
    for face in ("inner", "outer", "neutral"):
        close_to(panel["girth"][face], want["girth"][face], EXACT, "girth " + face)
    close_to(summary["springback"]["ratio"], want["springback"], 1e-9, "springback")
    same_runs(panel["released"]["runs"], want["released"], "released")
    same_runs(panel["pressed"]["runs"], want["pressed"], "pressed")
    same_runs(press["contact"]["lower"]["runs"], want["contact"], "contact edge")
    assert press["method"] == "one-part" and press["reason"]
    assert len(press["stations"]) == want["count"], "formers: %s" % press["stations"]
    for z, w in zip(press["stations"], want["stations"]):
        close_to(z, w, EXACT, "station")
    assert len(press["straps"]) == 2
    for got, w, side in zip(press["straps"], want["straps"], ("left", "right")):
        for key in ("leaves", "mark"):
            for i in (0, 1):
                close_to(got[key][i], w[key][i], EXACT, "%s strap %s %s" % (side, key, "xy"[i]))
        close_to(got["run"], w["run"], EXACT, side + " run")
        close_to(got["exit_deg"], w["exit_deg"], 1e-9, side + " exit")


def compare_former(summary, want):
    formers = parts_of(summary, "former-lower")
    assert sum(p["count"] for p in formers) == want["count"]
    former = formers[0]
    close_to(former["size"][0], want["former"]["width"], EXACT, "former width")
    close_to(former["size"][1], want["former"]["height"], EXACT, "former height")
    close_to(former["size"][2], want["former"]["thickness"], 1e-9, "former thickness")
    clamps = [h for h in former["holes"] if h["kind"] == "through"]
    assert len(clamps) == want["clamp_holes"], "clamp holes: %d, expected %d" % (len(clamps), want["clamp_holes"])
    bored = sum(math.pi / 4 * h["diameter"] ** 2 for h in clamps)
    # Areas to 0.01 mm2 from lengths to 1e-9.
    close_to(former["area"], want["former"]["area"] - bored, 0.01, "former area")
    blind = sum(math.pi / 4 * h["diameter"] ** 2 * h["depth"] for h in former["holes"] if h["kind"] == "blind")
    # The caps over pilot mouths in a curved edge, pi r^4 / 8R each, are below 0.05 mm3 for R over 60.
    close_to(former["volume"], former["area"] * former["size"][2] - blind, 0.05 * len(former["holes"]) + 0.01, "former volume")
    compare_pilots(former, want)
    compare_screws(summary, former, want)


def compare_pilots(former, want):
    """Caul pilots 3 x 30 square to the contact edge: at the middle of the girth, at curve to flat, inside both ends."""
    pilots = [h for h in former["holes"] if h["kind"] == "blind" and abs(h["diameter"] - 3) < 1e-9 and h["axis"][1] < 0]
    assert pilots, "no caul pilots"
    start, neutral = want["neutral"]
    stations, s = [want["datum"]], 0.0
    for (length, k), (_, after) in zip(neutral, neutral[1:]):
        s += length
        if (k == 0) != (after == 0):
            stations.append(s)
    for station in stations:
        x, y, h = oracle.at(start, neutral, station)
        at = (x, y - want["base"])
        exact = [p for p in pilots if abs(cross(p, at)) < 1e-3 and abs(heading_of(p) - h) < 1e-6]
        # Bores of 3 keep 5 of wood between them down to 30 deep, where they draw together: within about 12 of each
        # other one pilot serves for two.
        near = [p for p in pilots if abs(cross(p, at)) < 12 and math.dist(p["at"][:2], at) < 100]
        assert exact or near, "no pilot at girth station %.3f" % station
    for p in pilots:
        close_to(p["depth"], 30, 1e-9, "pilot depth")
        close_to(distance_to(want["contact_curve"], p["at"]), 0, 1e-3, "pilot off the contact edge")
        close_to(p["at"][2], want["former"]["thickness"] / 2, 1e-6, "pilot in the middle of the board")


def heading_of(hole):
    """Heading of the edge that an axis enters squarely: the axis turned left."""
    return math.atan2(hole["axis"][0], -hole["axis"][1])


def cross(hole, point):
    """Distance of a point to a hole's axis."""
    dx, dy = point[0] - hole["at"][0], point[1] - hole["at"][1]
    return dx * hole["axis"][1] - dy * hole["axis"][0]


def distance_to(curve, at):
    """By bisection of a fine walk: independent of closed forms."""
    start, runs = curve
    total = oracle.girth(runs)

    def away(s):
        x, y, _ = oracle.at(start, runs, s)
        return math.hypot(x - at[0], y - at[1])

    steps = 2000
    best = min(range(steps + 1), key=lambda i: away(total * i / steps))
    low, high = total * max(0, best - 1) / steps, total * min(steps, best + 1) / steps
    for _ in range(100):
        a, b = low + (high - low) / 3, high - (high - low) / 3
        low, high = (low, b) if away(a) < away(b) else (a, high)
    return away((low + high) / 2)


def compare_screws(summary, former, want):
    """Foot pilots in the former over counterbored screw bores and strap holes in the beam."""
    feet = sorted(h["at"][0] for h in former["holes"] if h["kind"] == "blind" and abs(h["axis"][1] - 1) < 1e-9)
    assert len(feet) == len(want["screws"]), "foot pilots at %s, expected %s" % (feet, want["screws"])
    beams = parts_of(summary, "beam")
    others = [h["at"][0] for h in former["holes"] + beams[0]["holes"] if h["kind"] == "through"]
    for x, w in zip(feet, want["screws"]):
        # A screw may make way for a clamp hole or a strap hole in its place.
        in_the_way = [o for o in others if abs(o - w) < 45]
        close_to(x, w, 45 if in_the_way else EXACT, "foot pilot")
    assert sum(p["count"] for p in beams) == want["count"]
    beam = beams[0]
    width, depth = want["beam"]
    close_to(beam["size"][1], depth, 1e-9, "beam depth")
    close_to(beam["size"][2], width, 1e-9, "beam width")
    bores = [h for h in beam["holes"] if h["kind"] == "counterbored"]
    assert sorted(round(h["at"][0], 3) for h in bores) == [round(x, 3) for x in feet], "screw bores lie under the pilots"
    for h in bores:
        close_to(h["counterbore"]["depth"], want["counterbore"], 1e-9, "counterbore depth")
        close_to(h["counterbore"]["diameter"], 16, 1e-9, "counterbore diameter")
        assert abs(h["at"][1]) < 1e-9 and h["axis"][1] == 1, "screw bores go in from below: %s" % h
        # ISO 273, M5: clearance 5.3 fine, 5.5 medium, 5.8 coarse. A wood screw of 5 has as much room.
        assert h["diameter"] >= 5.8 and h["diameter"] <= 1.25 * 5
        # Washer under an M5 head: spot face 13 (JIS B 1001); the counterbore takes it.
        assert h["counterbore"]["diameter"] >= 13
    for strap in want["straps"]:
        near = [h for h in beam["holes"] if h["kind"] == "through" and abs(h["at"][0] - strap["mark"][0]) < EXACT]
        assert near, "no strap hole at X = %.4f" % strap["mark"][0]
        close_to(near[0]["at"][1], want["strap_height"], 1e-6, "strap hole height")
        assert abs(abs(near[0]["axis"][2]) - 1) < 1e-9, "strap holes go across the beam"


def compare(summary, job):
    want = oracle.solve(job)
    compare_press(summary, want)
    if want["square"]:
        compare_former(summary, want)
    panel = parts_of(summary, "panel")
    assert len(panel) == 1
    close_to(panel[0]["volume"] / want["panel_volume"], 1, 1e-9, "panel volume, relative")
    close_to(panel[0]["size"][2], want["pack_width"], 1e-6, "panel's size along Z is the pack's width")


def compare_worked(bench, name):
    _, job, want = next(w for w in oracle.WORKED if w[0] == name)
    summary = bench.figures(job)
    press = summary["press"]
    for face in ("inner", "outer"):
        if face in want:
            close_to(summary["panel"]["girth"][face], want[face], EXACT, "girth " + face)
    for i in (0, 1):
        for axis in (0, 1):
            close_to(press["straps"][i]["leaves"][axis], want["leaves"][i][axis], EXACT, "leaves")
            close_to(press["straps"][i]["mark"][axis], want["marks"][i][axis], EXACT, "mark")
        close_to(press["straps"][i]["run"], want["runs"][i], EXACT, "run")
    radii = [r["radius"] for r in press["contact"]["lower"]["runs"] if r["radius"] is not None]
    assert len(radii) == len(want["radii"])
    for r, w in zip(radii, want["radii"]):
        close_to(r, w, EXACT, "contact radius")
    former = parts_of(summary, "former-lower")[0]
    close_to(former["size"][0], want["width"], EXACT, "width")
    close_to(former["size"][1], want["height"], EXACT, "height")
    holes = sum(math.pi / 4 * h["diameter"] ** 2 for h in former["holes"] if h["kind"] == "through")
    close_to(former["area"] + holes, want["area"], 0.01, "face area before bores")
    close_to(former["origin"][0], -want["ends"][0][0], EXACT, "shift to the lower left")
    close_to(former["origin"][1], 0, EXACT, "shift to the lower left")
    compare(summary, job)


@test
def worked_case_w1_symmetric_crown(bench):
    compare_worked(bench, "W1")


@test
def worked_case_w2_unequal_ends(bench):
    compare_worked(bench, "W2")


@test
def worked_case_w3_shallow_crown(bench):
    compare_worked(bench, "W3")


@test
def random_jobs_agree_with_the_oracle(bench):
    seen, faults = 0, []
    print("random jobs: seed %d, %d jobs" % (SETTINGS["seed"], SETTINGS["jobs"]))
    for seed, job in random_jobs(SETTINGS["seed"], SETTINGS["jobs"]):
        try:
            compare(bench.figures(job, "out%d" % seed), job)
        except AssertionError as error:
            faults.append("job %d: %s\n    %s" % (seed, error, json.dumps(job)))
        seen += 1
    assert seen == SETTINGS["jobs"]
    assert not faults, "%d of %d differ\n%s" % (len(faults), seen, "\n".join(faults[:5]))


@test
def slatted_cauls_let_the_strap_leave_from_the_last_whole_slat(bench):
    seen = 0
    for profile in ([{"bend": 120, "radius": 400}],
                    [{"line": 200}, {"bend": 80, "radius": 300}, {"line": 200}],
                    [{"line": 120}, {"bend": 70, "radius": 380}, {"line": 60}, {"bend": 25, "radius": 900}]):
        for pitch in (50, 63):
            job = changed(oracle.W1, panel__profile=profile, caul={"kind": {"thickness": 28, "pitch": pitch, "coverage": 0.9},
                                                                          "lagging": "open"})
            compare_press(bench.figures(job, "out%d" % seen), oracle.solve(job))
            seen += 1
    assert seen == 6


@test
def a_mirrored_profile_gives_the_mirrored_press(bench):
    faults, seen = [], 0
    for profile in ([{"bend": 90, "radius": 450}],
                    [{"line": 200}, {"bend": 80, "radius": 300}, {"line": 200}],
                    [{"bend": 30, "radius": 500}, {"bend": 30, "radius": 300}, {"bend": 30, "radius": 500}],
                    [{"line": 250}, {"bend": 80, "radius": 200}, {"line": 220}, {"bend": 80, "radius": 200}, {"line": 250}],
                    [{"line": 120}, {"bend": 70, "radius": 380}, {"line": 60}, {"bend": 25, "radius": 900}]):
        # Slats with gaps everywhere: close ones leave a gap for the pins on one side only.
        job = changed(small(), caul={"lagging": "open"})
        there = bench.figures(changed(job, panel__profile=profile), "a")["press"]["straps"]
        back = bench.figures(changed(job, panel__profile=profile[::-1]), "b")["press"]["straps"]
        for end, other in ((there[0], back[1]), (there[1], back[0])):
            for key in ("leaves", "mark"):
                if abs(end[key][0] + other[key][0]) > EXACT or abs(end[key][1] - other[key][1]) > EXACT:
                    faults.append("%s: %s at %s, mirrored at %s" % (profile, key, end[key], other[key]))
        seen += 1
    assert seen == 5
    assert not faults, "\n".join(faults)


@test
def the_advice_on_a_collapse_holds(bench):
    seen = 0
    for springback in ("none", "computed", 0.05):
        job = changed(small(), panel__profile=[{"line": 100}, {"bend": 60, "radius": 30}, {"line": 100}],
                      caul={"kind": {"thickness": 35}}, press={"springback": springback})
        result = bench.run("check", bench.job(job))
        assert result.status == 3 and "collapses" in result.errors, result
        advised = float(re.search(r"raise the radius to ([0-9.]+)", result.errors).group(1))
        job = changed(job, panel__profile=[{"line": 100}, {"bend": 60, "radius": advised}, {"line": 100}])
        again = bench.run("check", bench.job(job))
        assert "collapses" not in again.errors, "springback %s: radius %g as advised, and: %r" % (springback, advised, again)
        seen += 1
    assert seen == 3


@test
def stations_follow_each_way_of_giving_the_spacing(bench):
    # Pack 930, widest 50 (strap), room 880. 300 at most: three bays; clear of 75 and board 17.6: ten bays.
    base = changed(oracle.W2, panel__width=900)
    for spacing, count in (({"count": 4}, 4), (300, 4), (293.4, 4), (293.3, 5), ({"max_clear": 75}, 11), ({"count": 2}, 2)):
        stations = bench.figures(changed(base, formers__spacing=spacing), "out")["press"]["stations"]
        assert len(stations) == count, "%s gives %s" % (spacing, stations)
        for i, z in enumerate(stations):
            close_to(z, 25 + 880 * i / (count - 1), EXACT, "station")


@test
def sheathed_moulds_without_straps_have_boards_flush(bench):
    # 1016 wide, boards of 18, clear at most 76.2: 12 formers, pitch 998 / 11 = 90.7273, first mid-plane at 9.
    job = changed(oracle.W1, panel__width=1016, caul={"kind": "sheathed", "sheathing": [3, 3]},
                  formers={"board": {"nominal": 18, "measured": 18}, "spacing": {"max_clear": 76.2}}, straps=None)
    stations = bench.figures(job)["press"]["stations"]
    assert len(stations) == 12, stations
    for i, z in enumerate(stations):
        close_to(z, 9 + i * 998 / 11, EXACT, "station")


@test
def trim_near_the_end_pilots_can_be_built(bench):
    # Pilots 15 inside each end and at the change from trim to bend come close to each other or merge.
    refused = []
    for trim in (5, 10, 12, 14, 15, 16, 17, 18, 20, 25):
        result = bench.build(changed(oracle.W1, panel__trim=trim), "out%d" % trim, "--despite-fails", "--no-sheets")
        if result.status != 0 or not os.path.isfile(bench.path("out%d" % trim, "summary.json")):
            refused.append("trim %g: %s" % (trim, result.errors.strip()))
    assert not refused, "\n".join(refused)


@test
def inches_and_millimetres_make_the_same_press(bench):
    metric = changed(small(), panel__width=914.4, panel__profile=[{"line": 50.8}, {"bend": 90, "radius": 457.2}])
    texts = changed(metric, panel__width="36 in", panel__profile=[{"line": "2\""}, {"bend": 90, "radius": "1 1/2 ft"}])
    units = changed(metric, units="in", panel__width=36, panel__profile=[{"line": 2}, {"bend": 90, "radius": 18}],
                    layup__plies=[{"timber": "birch-yellow", "thickness": "1.5 mm", "count": 7}])
    wanted = bench.figures(metric, "a")
    for name, job in (("b", texts), ("c", units)):
        got = bench.figures(job, name)
        close_to(got["panel"]["width"], 914.4, 1e-9, "width")
        assert got["units"] == "mm"
        for key in ("stations", "straps"):
            assert rounded(got["press"][key]) == rounded(wanted["press"][key]), key
        assert rounded(got["parts"][0]["size"]) == rounded(wanted["parts"][0]["size"])


def rounded(value):
    if isinstance(value, list):
        return [rounded(v) for v in value]
    if isinstance(value, dict):
        return {k: rounded(v) for k, v in value.items()}
    return round(value, 6) if isinstance(value, float) else value


@test
def whole_numbers_serve_as_lengths(bench):
    job = changed(small(), panel__width=600, layup__plies=[{"timber": "birch-yellow", "thickness": 2, "count": 5}])
    same = changed(small(), panel__width=600.0, layup__plies=[{"timber": "birch-yellow", "thickness": 2.0, "count": 5}])
    assert rounded(bench.figures(job, "a")["press"]) == rounded(bench.figures(same, "b")["press"])


@test
def measured_girth_is_printed(bench):
    result = bench.run("measure", bench.job(oracle.W2))
    assert result.status == 0, result
    assert "1036.95" in result.text, result  # 120 + 380 * 70 deg + 60 + 900 * 25 deg, without trim


@test
def parts_know_their_files(bench):
    summary = bench.built(oracle.W2)
    seen = 0
    for part in summary["parts"]:
        assert part["files"], part["name"]
        for name in part["files"]:
            assert os.path.isfile(bench.path("out", name)), name
            seen += 1
    assert seen >= 5
