#!/usr/bin/env python3
"""Works out a two-part press from its job alone: the program is held against it.

`solve(job)` takes the job as a dict with the keys of a job file (lengths in mm) and returns a dict of figures in the
frame of the built press: pull axis vertical, X = 0 the middle of the chord of the blank's neutral line, Y = 0 the foot of
the lower formers. Geometry is plain trigonometry, the seating that of `oracle_bed`. It shares no code with the program. Limits: plies of one
modulus (or a given springback), a caul given as {thickness}, "sheathed" or "bare", `straps.tension` given, boards so
thick that no fixing blocks stick out, beams not tilted, ends at least THIN_END from the pull. Run alone, it first proves
itself on figures worked out by hand.
"""
import math
import sys

import oracle
from oracle import as_run, carried_on, extremes, get, girth, parallel, poses
from oracle_bed import Bed, dot, seating, side_thrust, stray

STRAP_CLEAR = 10.0      # from the strap's inner edge to anything it passes
BEAM_PAST_STRAP = 60.0
THIN_END = math.radians(10)  # a contact edge that ends nearer to the pull leaves a feather of wood beside a square side

# --- the press ------------------------------------------------------------------------------------------------------

def caul_thickness(job):
    kind = get(job, "caul.kind", None)
    if kind == "bare":
        return 0.0
    if kind == "sheathed":
        return float(sum(job["caul"]["sheathing"]))
    return float(kind["thickness"])


def blank(job):
    """The blank's neutral line, chord level, its middle at the origin; heights and what else follows from the lay-up."""
    thickness, neutral_height, computed = oracle.pack(job)
    face = {"inner": 0.0, "outer": thickness, "centre": thickness / 2}[get(job, "panel.face", "inner")]
    released = oracle.profile_runs(job["panel"]["profile"])
    share = oracle.share_lost(job, thickness, neutral_height, face, computed)
    trim = float(get(job, "panel.trim", 15))
    _, neutral = parallel((0.0, 0.0, 0.0), released, neutral_height - face)
    _, neutral = carried_on((0.0, 0.0, 0.0), [(length, k / (1 - share)) for length, k in neutral], trim, trim)
    end = poses((0.0, 0.0, 0.0), neutral)[-1]
    chord = math.hypot(end[0], end[1])
    start = (-chord / 2, 0.0, -math.atan2(end[1], end[0]))
    return {"thickness": thickness, "neutral_height": neutral_height, "share": share, "start": start, "runs": neutral,
            "chord": chord, "released": released, "face": face}


def headings(start, runs):
    """Least and greatest heading of each run."""
    return [tuple(sorted((a[2], b[2]))) for a, b in zip(poses(start, runs), poses(start, runs)[1:])]


def axis_of(job, start, runs):
    """Radians from the chord's normal, positive when the axis' upper end leans right. A normal stands at its heading to
    the left of the chord's normal, so the axis midway between the extreme normals leans by minus their middle."""
    given = get(job, "press.pull", "square-to-chord")
    if given == "square-to-chord":
        return 0.0
    if given == "bisector":
        spans = headings(start, runs)
        return -(min(low for low, _ in spans) + max(high for _, high in spans)) / 2
    return math.radians(given)


def upright(start, axis):
    """The line turned about the origin until the axis is vertical."""
    x, y, h = start
    c, s = math.cos(axis), math.sin(axis)
    return x * c - y * s, x * s + y * c, h + axis


def pull_runs(start, runs):
    """Each run's angles to the pull and the share of the pressure that comes through, cos of the angle."""
    lines = bends = 0
    out = []
    for (low, high), (_, k) in zip(headings(start, runs), runs):
        if k:
            bends += 1
        else:
            lines += 1
        most = max(abs(low), abs(high))
        least = 0.0 if low <= 0 <= high else min(abs(low), abs(high))
        out.append({"run": "bend %d" % bends if k else "line %d" % lines,
                    "angle_deg": {"least": math.degrees(least), "greatest": math.degrees(most)},
                    "share": {"least": max(0.0, math.cos(most)), "greatest": max(0.0, math.cos(least))}})
    return out


def strapped(count, every):
    """How many of the formers carry a strap: the first, every n-th, and always the last."""
    return len(set(range(0, count, every)) | {count - 1})


def solve(job):
    b = blank(job)
    axis = axis_of(job, b["start"], b["runs"])
    at = float(get(job, "press.pull_at", 0))
    start, runs = upright(b["start"], axis), b["runs"]
    if max(abs(start[2]), abs(start[2] - oracle.turn(runs))) > math.pi / 2 - THIN_END:
        raise ValueError("an end of a former is thin")
    beam_depth = float(get(job, "beams.section", [46, 90])[1])
    min_depth = float(get(job, "formers.min_depth", 100))
    extend = float(get(job, "formers.extend", 25))
    stack = float(get(job, "layup.cover", 3)) + caul_thickness(job) + float(get(job, "caul.liner", 0))

    def line(height):
        return parallel(start, runs, height - b["neutral_height"])

    lower = carried_on(*line(-stack), extend, extend)
    upper = carried_on(*line(b["thickness"] + stack), extend, extend)
    base = extremes(*lower)[1] - min_depth
    top = extremes(*upper)[3] - base + min_depth + beam_depth

    # The loops: what lies widest of both contact edges decides, for cauls and blank lie between their ends.
    boxes = [extremes(*lower), extremes(*upper)]
    widest = max(max(box[2] - at, at - box[0]) for box in boxes)
    reach = widest + STRAP_CLEAR + oracle.STRAP_WIDTH / 2
    straps = [{"leaves": [at + side * reach, top], "mark": [at + side * reach, -beam_depth], "run": top + beam_depth,
               "exit_deg": 0.0} for side in (-1, 1)]

    width = job["panel"]["width"] + 2 * float(get(job, "panel.trim", 15))
    count = job["formers"]["spacing"]["count"]
    stations = strapped(count, get(job, "beams.every", 1))
    total = 2 * 2 * float(job["straps"]["tension"]) * stations
    bed = Bed(start, runs)
    seat = seating(bed, at, total / width)
    return {
        "thickness": b["thickness"], "springback": b["share"], "chord": b["chord"], "width": width, "count": count,
        "girth": {name: girth(line(height)[1]) for name, height in
                  (("inner", 0), ("outer", b["thickness"]), ("neutral", b["neutral_height"]))},
        "released": [as_run(*r) for r in b["released"]],
        "pressed": [as_run(*r) for r in line(b["face"])[1]],
        "axis_deg": math.degrees(axis), "through": [at, -base], "runs": pull_runs(start, runs),
        "lower": placed(lower, base), "upper": placed(upper, base), "base": base, "top": top,
        "straps": straps, "beam": [2 * reach + 2 * BEAM_PAST_STRAP, beam_depth, float(get(job, "beams.section", [46, 90])[0])],
        "former": {"lower": [boxes[0][2] - boxes[0][0], boxes[0][3] - base],
                   "upper": [boxes[1][2] - boxes[1][0], top - beam_depth - (boxes[1][1] - base)]},
        "areas": areas(lower, upper, base, top - beam_depth),
        "pull": total, "unit": total / (b["chord"] * width), "seating": seat,
        "stray": stray(bed), "side_thrust": side_thrust(bed, at, total / width) * width,
    }


def placed(curve, base):
    """Runs of a contact edge, its start in the frame of the press, and its two ends there."""
    (x, y, h), runs = curve
    start = (x, y - base, h)
    end = poses(start, runs)[-1]
    return {"runs": [as_run(*r) for r in runs], "curve": (start, runs), "ends": [list(start[:2]), list(end[:2])]}


def areas(lower, upper, base, foot):
    """Face areas of the formers before bores, with square sides: under the lower edge, over the upper."""
    (x, y, h), runs = lower
    under = oracle.area_under((x, y - base, h), runs)
    (x, y, h), runs = upper
    left, right = x, poses(upper[0], runs)[-1][0]
    return {"lower": under, "upper": foot * (right - left) - oracle.area_under((x, y - base, h), runs)}


# --- self test ------------------------------------------------------------------------------------------------------

def job_of(profile, **more):
    """A job on the neutral line itself: face centre, no trim, no springback."""
    job = {
        "panel": {"width": 900, "trim": 0, "face": "centre", "profile": profile},
        "layup": {"glue": "pvac-d3", "glue_line": 0, "cover": 2,
                  "plies": [{"timber": "birch-yellow", "thickness": 1, "count": 12}]},
        "press": {"method": "two-part", "springback": "none"},
        "caul": {"kind": {"thickness": 16}},
        "formers": {"board": {"nominal": 18, "measured": 17.6}, "spacing": {"count": 4}, "extend": 25},
        "straps": {"tension": 2500},
    }
    for table, keys in more.items():
        job[table] = dict(job.get(table, {}), **keys)
    return job


# Worked out by hand in closed form, pressures as multiples of pull / (chord * width).
L = [{"line": 300}, {"bend": 90, "radius": 69}, {"line": 300}]
UNEQUAL = [{"line": 500}, {"bend": 90, "radius": 69}, {"line": 200}]
SHALLOW = [{"line": 180}, {"bend": 60, "radius": 309}, {"line": 260}]
S = [{"bend": 50, "radius": 400}, {"line": 80}, {"bend": -35, "radius": 500}, {"line": 120}]
WORKED = [
    ("L", L, 45.0000, 521.8448, (0.94934, 1.34256, 0.98903), (60.91, 60.91), 0.0, (0.94934, 1.34256, 0.98903)),
    ("unequal L", UNEQUAL, 25.3029, 629.3822, (0.91021, 1.32469, 0.99100), (82.81, 79.07), 19.6971,
     (0.48000, 1.82440, 1.04649)),
    ("shallow crown", SHALLOW, 33.3175, 691.2095, (0.93253, 1.10022, 0.99694), (28.23, 40.84), -3.3175,
     (0.38157, 1.53124, 1.00055)),
    ("S", S, 28.6136, 828.5567, (0.91737, 1.03940, 0.99930), None, -3.6136, (0.58140, 1.41088, 0.99710)),
]


def check(what, value, wanted, tolerance):
    assert abs(value - wanted) <= tolerance, "%s: %.9g, worked out %.9g" % (what, value, wanted)


def bed_of(runs, heading, axis=0.0):
    """A bed from runs (length, curvature), its chord's middle at the origin."""
    end = poses((0.0, 0.0, heading), runs)[-1]
    return Bed(upright((-end[0] / 2, -end[1] / 2, heading), axis), runs)


def test_worked_table():
    for name, profile, heading, chord, square, strays, bisector, leaning in WORKED:
        got = solve(job_of(profile))
        check(name + " heading", math.degrees(blank(job_of(profile))["start"][2]), heading, 1e-4)
        check(name + " chord", got["chord"], chord, 1e-4)
        turned = solve(job_of(profile, press={"pull": "bisector"}))
        check(name + " bisector", turned["axis_deg"], bisector, 1e-4)
        for what, run, want in (("square", got, square), ("bisector", turned, leaning)):
            for key, value in zip(("least", "greatest", "mean"), want):
                # Given to five places.
                check("%s %s %s" % (name, what, key), run["seating"][key] / run["unit"], value, 6e-6)
        if strays:
            for value, want in zip(got["stray"], strays):
                check(name + " stray", value, want, 0.005)


def test_flat():
    """p = pull / L (1 + 12 x at / L^2) within the middle third, a triangle over 3 (L / 2 - at) beyond it."""
    bed = bed_of([(600.0, 0.0)], 0.0)
    check("flat stray", stray(bed)[0], 100, 1e-9)
    check("flat stray", stray(bed)[1], 100, 1e-9)
    got = seating(bed, 40, 3.0)
    check("trapezoid least", got["least"], 3.0 / 600 * (1 - 6 * 40 / 600), 1e-12)
    check("trapezoid greatest", got["greatest"], 3.0 / 600 * (1 + 6 * 40 / 600), 1e-12)
    # Right side pressed down: clockwise. phi k = -12 pull at / L^3.
    check("trapezoid tilt", got["tilt_stiffness"], -12 * 3.0 * 40 / 600 ** 3, 1e-18)
    got = seating(bed, 200, 3.0)
    check("triangle greatest", got["greatest"], 2 * 3.0 / 300, 1e-10)
    check("triangle lifts from", got["lifted"][0][0], 0, 0)
    check("triangle lifts to", got["lifted"][0][1], 300, 1e-6)
    check("triangle mean", got["mean"], 3.0 / 600, 1e-11)
    assert len(got["lifted"]) == 1
    refuses(bed_of([(600.0, 0.0)], 0.1), 0, "slides")


def test_arc():
    """Balanced through its centre p = pull cos(t) / (R (a + sin a cos a)) over -a to a."""
    a, radius = math.radians(40), 500.0
    bed = bed_of([(2 * a * radius, 1 / radius)], a)
    got = seating(bed, 0, 3.0)
    top = 3.0 / (radius * (a + math.sin(a) * math.cos(a)))
    check("arc greatest", got["greatest"], top, 1e-6 * top)
    check("arc least", got["least"], top * math.cos(a), 1e-6 * top)
    check("arc mean", got["mean"], top * math.sin(a) / a, 1e-9 * top)
    refuses(bed, 5, "rolls")


def test_lift_on_bends():
    """A lift on bends: what the pressures found add up to, summed up anew on a fine even grid."""
    runs = [(300.0, 0.0), (69 * math.pi / 2, 1 / 69), (300.0, 0.0)]
    bed = bed_of(runs, math.radians(45))
    for at in (-130, -20, 95):
        got = seating(bed, at, 1.0)
        sums = [0.0, 0.0, 0.0]
        for run, (length, _) in enumerate(runs):
            n = 20000  # midpoints: kinks cost (length / n)^2 of the slope
            for i in range(n):
                lever = bed.lever_in(run, length * (i + 0.5) / n)
                p = max(0.0, dot(got["rate"], lever))
                for j in range(3):
                    sums[j] += p * lever[j] * length / n
        check("L sideways", sums[0], 0, 1e-7)
        check("L pull", sums[1], 1, 1e-7)
        check("L moment", sums[2] * bed.chord, at, 1e-5)
        assert bool(got["lifted"]) == (abs(at) > 60.91), at


def test_frame():
    """An L of 340 - R60 - 340 inside, 12 thick, cover 2, caul 16: headings 45 and -45, by hand."""
    job = job_of([{"line": 340}, {"bend": 90, "radius": 60}, {"line": 340}], panel={"face": "inner"})
    got = solve(job)
    half = math.sqrt(0.5)
    # Chord: two legs of 340 and the arc of R66, all at 45 degrees: (340 + 66) sqrt 2.
    check("chord", got["chord"], 406 / half, 1e-9)
    # The lower edge lies 24 under the neutral line: its bend has R42; its ends 365 out and 24 in along 45 degrees.
    lower = got["lower"]
    check("radius", lower["runs"][1]["radius"], 42, 1e-9)
    check("upper radius", got["upper"]["runs"][1]["radius"], 90, 1e-9)
    left = -406 * half * 1 - 25 * half + 24 * half
    check("lower end", lower["ends"][0][0], left, 1e-9)
    check("lower end", lower["ends"][0][1], 100, 1e-9)
    outer = -(406 + 25 + 24) * half
    check("upper end", got["upper"]["ends"][0][0], outer, 1e-9)
    check("upper end", got["upper"]["ends"][0][1], 100 + 48 * half, 1e-9)
    check("strap", got["straps"][1]["mark"][0], -outer + 10 + 25, 1e-9)
    check("mark", got["straps"][1]["mark"][1], -90, 0)
    # The upper edge's top: the corner point of its tangents is (365 + 90) sqrt 1/2 above its ends, the arc's crown
    # 90 (sqrt 2 - 1) below that corner; 100 of wood and 90 of beam above.
    crown = 100 + 48 * half + (365 + 90) * half - 90 * (math.sqrt(2) - 1)
    check("top", got["straps"][0]["leaves"][1], crown + 190, 1e-9)
    check("beam", got["beam"][0], 2 * (35 - outer) + 120, 1e-9)
    check("pull", got["pull"], 4 * 2500 * 4, 0)
    check("share", got["runs"][0]["share"]["least"], half, 1e-12)
    # Every second of four formers and always the last: the first, the third, the fourth.
    check("strapped", strapped(4, 2), 3, 0)


def test_mirror():
    """The mirrored job, its pull line and axis turned over, presses alike."""
    there = solve(job_of(UNEQUAL, press={"pull": 8, "pull_at": 30}))
    back = solve(job_of(UNEQUAL[::-1], press={"pull": -8, "pull_at": -30}))
    for key in ("least", "greatest", "mean"):
        check("mirrored " + key, back["seating"][key], there["seating"][key], 1e-12)
    check("mirrored thrust", back["side_thrust"], -there["side_thrust"], 1e-6)
    check("mirrored stray", back["stray"][0], there["stray"][1], 1e-9)
    check("mirrored tilt", back["seating"]["tilt_stiffness"], -there["seating"]["tilt_stiffness"], 1e-15)
    check("mirrored strap", back["straps"][0]["mark"][0], -there["straps"][1]["mark"][0], 1e-9)


def refuses(bed, at, word):
    try:
        seating(bed, at, 1.0)
    except ValueError as error:
        assert word in str(error), error
    else:
        raise AssertionError("the half is not held there")


def self_test():
    tests = (test_worked_table, test_flat, test_arc, test_lift_on_bends, test_frame, test_mirror)
    for test in tests:
        test()
    print("oracle of two-part presses: %d worked lines, flat, arc, lift, frame and mirror agree" % len(WORKED))


if __name__ == "__main__":
    try:
        self_test()
    except AssertionError as error:
        print("oracle: " + str(error), file=sys.stderr)
        sys.exit(1)
