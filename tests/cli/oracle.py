#!/usr/bin/env python3
"""Works out a one-part press from its job alone, in plain trigonometry: the program is held against it.

`solve(job)` takes the job as a dict with the keys of a job file (lengths in mm) and returns a dict of figures in the
frame of the built press: base line Y = 0, chord of the blank's neutral line level, X = 0 at its middle. It shares no
code with the program. Limits: plies of one modulus (or a given springback), a caul given as {thickness, pitch,
coverage} with lagging open, no guide rollers, no beam tilt. Run alone, it first proves itself on figures worked out by hand.
"""
import math
import sys

STRAP_WIDTH = 50.0      # the default strap row
RATCHET = 230.0
LEAST_FLAT = 60.0


# --- profiles: a start (x, y, heading) and runs (length, curvature); curvature > 0 bends to the right -------------

def walk(pose, k, s):
    """The pose after s along curvature k. Chord form: no loss of figures for shallow arcs."""
    x, y, h = pose
    a = k * s / 2
    c = s * (math.sin(a) / a if abs(a) > 1e-6 else 1 - a * a / 6)
    return x + c * math.cos(h - a), y + c * math.sin(h - a), h - 2 * a


def poses(start, runs):
    """Poses at the beginning of every run and at the end."""
    out = [start]
    for length, k in runs:
        out.append(walk(out[-1], k, length))
    return out


def at(start, runs, s):
    pose = start
    for length, k in runs:
        if s <= length:
            return walk(pose, k, s)
        pose = walk(pose, k, length)
        s -= length
    return pose


def merged(runs):
    out = []
    for length, k in runs:
        if length == 0:
            continue
        if out and abs(out[-1][1] - k) < 1e-13:
            out[-1] = (out[-1][0] + length, k)
        else:
            out.append((length, k))
    return out


def parallel(start, runs, d):
    """The parallel at d to the outer (left) side."""
    x, y, h = start
    moved = (x - d * math.sin(h), y + d * math.cos(h), h)
    out = []
    for length, k in runs:
        scale = 1 + k * d
        if scale <= 0:
            raise ValueError("collapses: radius %g, distance %g" % (1 / abs(k), abs(d)))
        out.append((length * scale, k / scale))
    return moved, out


def carried_on(start, runs, left, right):
    x, y, h = start
    begin = (x - left * math.cos(h), y - left * math.sin(h), h)
    return begin, merged([(left, 0.0)] + list(runs) + [(right, 0.0)])


def girth(runs):
    return sum(length for length, _ in runs)


def turn(runs):
    return sum(length * k for length, k in runs)


def extremes(start, runs):
    """(low x, low y, high x, high y) of the curve."""
    xs, ys = [], []
    pose = start
    for length, k in runs:
        xs.append(pose[0])
        ys.append(pose[1])
        if k:
            first, last = sorted((pose[2], pose[2] - k * length))
            quarter = math.ceil(first / (math.pi / 2))
            while quarter * math.pi / 2 < last:
                p = walk(pose, k, (pose[2] - quarter * math.pi / 2) / k)
                xs.append(p[0])
                ys.append(p[1])
                quarter += 1
        pose = walk(pose, k, length)
    xs.append(pose[0])
    ys.append(pose[1])
    return min(xs), min(ys), max(xs), max(ys)


def area_under(start, runs):
    """Integral of y dx along the curve: trapezoids plus the circle segments above the chords (crowns add)."""
    total = 0.0
    pose = start
    for length, k in runs:
        end = walk(pose, k, length)
        total += (pose[1] + end[1]) / 2 * (end[0] - pose[0])
        if k:
            a = k * length  # positive for a crown, which lies above its chord
            total += (a - math.sin(a)) / (2 * k * k)
        pose = end
    return total


def as_run(length, k):
    """As the summary gives a run: length, radius or None, turn in degrees."""
    return {"length": length, "radius": None if k == 0 else 1 / abs(k), "turn": math.degrees(length * k)}


# --- the job --------------------------------------------------------------------------------------------------------

def profile_runs(items):
    out = []
    for item in items:
        if "line" in item:
            out.append((float(item["line"]), 0.0))
        else:
            k = math.copysign(1 / item["radius"], item["bend"])
            out.append((item["radius"] * math.radians(abs(item["bend"])), k))
    return merged(out)


def get(job, path, default):
    table = job
    for name in path.split("."):
        if not isinstance(table, dict) or name not in table:
            return default
        table = table[name]
    return table


def sheets(job):
    out = []
    for ply in job["layup"]["plies"]:
        out += [float(ply["thickness"])] * ply.get("count", 1)
    return out


def pack(job):
    """Thickness, neutral height, and the share lost for plies of one modulus bonded with soft glue lines."""
    plies = sheets(job)
    line = get(job, "layup.glue_line", 0.0)
    heights, at_height = [], 0.0
    for t in plies:
        heights.append(at_height + t / 2)
        at_height += t + line
    thickness = at_height - line
    neutral = sum(t * h for t, h in zip(plies, heights)) / sum(plies)
    own = sum(t ** 3 / 12 for t in plies)
    whole = own + sum(t * (h - neutral) ** 2 for t, h in zip(plies, heights))
    return thickness, neutral, own / whole


def share_lost(job, thickness, neutral, face, computed):
    given = get(job, "press.springback", "computed")
    if given == "none":
        return 0.0
    if given == "computed":
        return computed
    if isinstance(given, dict):  # own test piece: radii of the described face, moved to the neutral line
        up = neutral - face
        return 1 - (given["form_radius"] + up) / (given["part_radius"] + up)
    return float(given)


def formers(job, pack_width, widest, board):
    spacing = get(job, "formers.spacing", None)
    room = pack_width - widest
    if isinstance(spacing, dict) and "count" in spacing:
        n = spacing["count"]
    elif isinstance(spacing, dict):
        n = math.ceil(room / (spacing["max_clear"] + board) - 1e-9) + 1
    else:
        n = math.ceil(room / spacing - 1e-9) + 1
    pitch = room / (n - 1)
    return n, pitch, [widest / 2 + i * pitch for i in range(n)]


def flats_of(runs):
    return [length for length, k in runs if k == 0 and length >= LEAST_FLAT - 1e-6]


def senses(runs):
    return {math.copysign(1, k) for _, k in runs if k}


def datum(runs):
    """Station of the datum slat on the neutral line, for bends of one sense: the middle, or that of an L's bend."""
    is_l = len(runs) == 3 and runs[0][1] == 0 and runs[2][1] == 0 and len(flats_of(runs)) == 2
    return runs[0][0] + runs[1][0] / 2 if is_l else girth(runs) / 2


def station_on_parallel(runs, s, d):
    out = 0.0
    for length, k in runs:
        part = min(s, length)
        out += part * (1 + k * d)
        s -= part
        if s <= 0:
            break
    return out


def caul_ends(job, runs, d):
    """Stations of the top caul's outer edges on the cover's outer face, which lies d outside the neutral line."""
    end = girth(runs) + d * turn(runs)
    caul = get(job, "caul.kind", {})
    if "pitch" not in caul:
        return 0.0, end
    half = caul["pitch"] * caul.get("coverage", 1.0) / 2
    if get(job, "caul.lagging", "auto") != "open":
        raise ValueError("slats that lie close beside changes of shape are not worked out here")
    pitch = caul["pitch"]
    middle = station_on_parallel(runs, datum(runs), d)

    def reach(room):
        return math.floor((room - half) / pitch + 1e-9) * pitch + half

    return middle - reach(middle), middle + reach(end - middle)


def strap_end(start, runs, station, side, exit_angle):
    """Point where the strap leaves the line, and its direction. side is -1 at the left end, 1 at the right."""
    x, y, h = at(start, runs, station)
    tx, ty = math.cos(h), math.sin(h)
    nx, ny = -ty, tx
    c, s = math.cos(exit_angle), math.sin(exit_angle)
    return (x, y), (side * tx * c - nx * s, side * ty * c - ny * s)


def solve(job):
    thickness, neutral_height, computed = pack(job)
    face = {"inner": 0.0, "outer": thickness, "centre": thickness / 2}[get(job, "panel.face", "inner")]
    trim = float(get(job, "panel.trim", 15))
    cover = float(get(job, "layup.cover", 3))
    caul = float(job["caul"]["kind"]["thickness"])
    liner = float(get(job, "caul.liner", 0))
    extend = float(get(job, "formers.extend", 25))
    min_depth = float(get(job, "formers.min_depth", 100))
    board = job["formers"]["board"]["measured"]
    beam_width, beam_depth = get(job, "beams.section", [46, 90])
    screw = get(job, "beams.screw", {"diameter": 5, "length": 100, "reach": 60, "pitch": 150})
    exit_angle = math.radians(get(job, "straps.exit", 25))

    released = profile_runs(job["panel"]["profile"])
    share = share_lost(job, thickness, neutral_height, face, computed)
    origin = (0.0, 0.0, 0.0)
    _, neutral = parallel(origin, released, neutral_height - face)
    neutral = [(length, k / (1 - share)) for length, k in neutral]
    _, neutral = carried_on(origin, neutral, trim, trim)

    # Level chord, its middle at X = 0.
    end = poses(origin, neutral)[-1]
    chord = math.hypot(end[0], end[1])
    start = (-chord / 2, 0.0, -math.atan2(end[1], end[0]))

    def line(height):
        return parallel(start, neutral, height - neutral_height)

    inner, outer, described = line(0), line(thickness), line(face)
    contact = carried_on(*line(-(cover + caul + liner)), extend, extend)

    # Straps leave the smooth line at caul thickness, square outside the last slat's outer edge.
    slat_line = line(thickness + cover)
    outer_line = parallel(*slat_line, caul)
    left_s, right_s = caul_ends(job, neutral, thickness + cover - neutral_height)
    ends = []
    for side, s in ((-1, left_s), (1, right_s)):
        on_outer = station_on_parallel(slat_line[1], s, caul)
        ends.append(strap_end(*outer_line, on_outer, side, exit_angle))

    # The base: ratchet room on both straps, wood under the lowest point of the contact edge.
    drop = beam_depth * 2 / 3
    run_least = RATCHET + 20
    low_x, low_y, high_x, high_y = extremes(*contact)
    if any(d[1] >= -1e-9 for _, d in ends):
        raise ValueError("the strap does not go down")
    base = min([p[1] + run_least * d[1] + drop for p, d in ends] + [low_y - min_depth])

    straps = []
    for (px, py), (dx, dy) in ends:
        run = (py - (base - drop)) / -dy
        straps.append({"leaves": [px, py - base], "mark": [px + run * dx, -drop], "run": run,
                       "exit_deg": math.degrees(exit_angle)})

    first, last = poses(*contact)[0], poses(*contact)[-1]
    left, right = (first[0], first[1] - base), (last[0], last[1] - base)
    raised = (contact[0][0], contact[0][1] - base, contact[0][2])
    pack_width = job["panel"]["width"] + 2 * trim
    widest = max(board, beam_width, STRAP_WIDTH)
    n, pitch, stations = formers(job, pack_width, widest, board)

    return {
        "thickness": thickness, "neutral_height": neutral_height, "springback": share,
        "girth": {"inner": girth(inner[1]), "outer": girth(outer[1]), "neutral": girth(neutral)},
        "released": [as_run(*r) for r in released],
        "pressed": [as_run(*r) for r in described[1]],
        "contact": [as_run(*r) for r in contact[1]],
        "contact_curve": (raised, contact[1]),
        "heading": math.degrees(start[2]), "chord": chord, "base": base,
        "ends": [left, right],
        "straps": straps,
        "square": square_sides(left, right, straps),
        "former": {"width": high_x - low_x, "height": high_y - base, "area": area_under(raised, contact[1]),
                   "thickness": board},
        "pack_width": pack_width, "count": n, "pitch": pitch, "stations": stations,
        "screws": screw_stations(left[0], right[0], screw["pitch"]),
        "counterbore": beam_depth + screw["reach"] - screw["length"],
        "beam": [beam_width, beam_depth],
        "strap_height": beam_depth / 3,
        "clamp_holes": sum(math.ceil(length / 200 - 1e-9) for length in flats_of(neutral)),
        "panel_volume": thickness * (girth(inner[1]) + thickness / 2 * turn(inner[1])) * pack_width,
        "datum": datum(neutral),
        "neutral": (start, neutral),
    }


def square_sides(left, right, straps):
    """True when sides square down from the contact edge's ends stay clear of both straps whichever way the room is
    measured, False when they clearly do not, None when it depends on that."""
    verdicts = []
    for (x, y), strap, side in ((left, straps[0], -1), (right, straps[1], 1)):
        (px, py), (mx, my) = strap["leaves"], strap["mark"]
        length = math.hypot(mx - px, my - py)
        dx, dy = (mx - px) / length, (my - py) / length
        # Signed distance of the side's two ends to the strap's line, positive on the former's side.
        away = [side * ((x - px) * dy - (yy - py) * dx) for yy in (min(y, py), 0.0)]
        across = [a / abs(dy) for a in away]
        room = min(away + across)
        verdicts.append(True if room > 32 else False if max(away + across) < 8 else None)
    return True if all(verdicts) else False if False in verdicts else None


def screw_stations(left, right, pitch):
    out = []
    for i in range(-200, 201):
        x = i * pitch
        if left + 40 - 1e-6 <= x <= right - 40 + 1e-6:
            out.append(x)
    return out


# --- self test ------------------------------------------------------------------------------------------------------

def worked_job(profile, plies, trim, count=4):
    return {
        "panel": {"width": 900, "trim": trim, "profile": profile},
        "layup": {"glue": "pvac-d3", "glue_line": 0, "cover": 3,
                  "plies": [{"timber": "birch-yellow", "thickness": 1.5, "count": plies}]},
        "press": {"method": "one-part", "springback": "none"},
        "caul": {"kind": {"thickness": 35}},
        "formers": {"board": {"nominal": 18, "measured": 17.6}, "spacing": {"count": count}, "extend": 25},
        "straps": {"tension": 2500, "exit": 25, "friction": 0.2, "tighten": "both-ends"},
    }


W1 = worked_job([{"bend": 120, "radius": 400}], 8, 0)
W2 = worked_job([{"line": 120}, {"bend": 70, "radius": 380}, {"line": 60}, {"bend": 25, "radius": 900}], 7, 15)
W3 = worked_job([{"bend": 30, "radius": 1500}], 6, 0)

# Worked out by hand, independently of any code, to four places.
WORKED = [
    ("W1", W1, {"inner": 837.7580, "outer": 862.8908, "leaves": [(-389.7114, 189.0487), (389.7114, 189.0487)],
                "marks": [(-411.5004, -60), (411.5004, -60)], "runs": [250, 250], "width": 652.0024, "height": 326.0487,
                "ends": [(-326.0012, 123.3980), (326.0012, 123.3980)], "area": 174786.69, "radii": [362],
                "heading": 60, "clamps": 0}),
    ("W2", W2, {"inner": 1066.9567, "outer": 1084.3663, "leaves": [(-489.5753, 183.0937), (485.4976, 187.5436)],
                "marks": [(-547.9317, -60), (583.0134, -60)], "runs": [250, 266.0586], "width": 881.5320, "height": 364.0067,
                "ends": [(-437.4411, 109.6820), (444.0909, 107.5890)], "area": 244709.24, "radii": [342, 862],
                "heading": 51.5012, "clamps": 2}),
    ("W3", W3, {"leaves": [(-400.3931, 188.5742), (400.3931, 188.5742)], "marks": [(-696.6322, -60), (696.6322, -60)],
                "runs": [386.7128, 386.7128], "width": 805.0832, "height": 156.2869,
                "ends": [(-402.5416, 100), (402.5416, 100)], "area": 110781.87, "radii": [1462], "heading": 15, "clamps": 0}),
]


def check(what, value, wanted, tolerance=0.001):
    assert abs(value - wanted) <= tolerance, "%s: %.6f, worked out %.6f" % (what, value, wanted)


def compare_worked(name, got, want):
    for face in ("inner", "outer"):
        if face in want:
            check(name + " girth " + face, got["girth"][face], want[face])
    for i in range(2):
        for axis in range(2):
            check(name + " leaves", got["straps"][i]["leaves"][axis], want["leaves"][i][axis])
            check(name + " mark", got["straps"][i]["mark"][axis], want["marks"][i][axis])
            check(name + " contact end", got["ends"][i][axis], want["ends"][i][axis])
        check(name + " run", got["straps"][i]["run"], want["runs"][i])
    check(name + " width", got["former"]["width"], want["width"])
    check(name + " height", got["former"]["height"], want["height"])
    check(name + " area", got["former"]["area"], want["area"], 0.01)  # given to two places
    check(name + " heading", got["heading"], want["heading"], 1e-4)
    radii = [r["radius"] for r in got["contact"] if r["radius"]]
    assert len(radii) == len(want["radii"])
    for r, w in zip(radii, want["radii"]):
        check(name + " contact radius", r, w)
    assert got["clamp_holes"] == want["clamps"], name + " clamp holes"
    assert got["square"] is True, name + " sides"


def self_test():
    for name, job, want in WORKED:
        compare_worked(name, solve(job), want)
    # Pack 930, widest 50, 4 formers.
    got = solve(W2)
    check("pitch", got["pitch"], 293.3333)
    for z, w in zip(got["stations"], (25, 318.3333, 611.6667, 905)):
        check("station", z, w)
    # Six equal plies lose 1/36; the radius 1275 along the neutral line is pressed to 1239.5833.
    bow = worked_job([{"bend": 2 * math.degrees(math.asin(600 / 1275)), "radius": 1275}], 6, 0)
    bow["panel"]["face"] = "centre"
    bow["press"]["springback"] = "computed"
    got = solve(bow)
    check("springback", got["springback"], 1 / 36, 1e-12)
    check("pressed radius", got["pressed"][0]["radius"], 1239.5833)
    check("pressed chord", got["chord"], 1197.1737)
    # Test piece pressed at 600 and released at 640 (on the middle): wanted 600, press at 562.5.
    piece = worked_job([{"bend": 60, "radius": 600}], 6, 0)
    piece["panel"]["face"] = "centre"
    piece["press"]["springback"] = {"form_radius": 600, "part_radius": 640}
    check("test piece", solve(piece)["pressed"][0]["radius"], 562.5)
    # A slatted caul: W1's cover face has girth 120 deg * 415 = 869.174, half 434.587. Slats of 45 every 50: eight each
    # side reach 400 + 22.5 = 422.5; the strap leaves 12.087 before the end, 12.087 / 415 rad = 1.6687 deg.
    slatted = dict(W1, caul={"kind": {"thickness": 35, "pitch": 50, "coverage": 0.9}, "lagging": "open"})
    got = solve(slatted)
    angle = math.radians(60) - (434.5870 - 422.5) / 415
    check("slatted leaves", got["straps"][1]["leaves"][0], 450 * math.sin(angle))
    print("oracle: %d worked cases, stations, springback and slats agree" % len(WORKED))


if __name__ == "__main__":
    try:
        self_test()
    except AssertionError as error:
        print("oracle: " + str(error), file=sys.stderr)
        sys.exit(1)
