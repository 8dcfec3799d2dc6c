#!/usr/bin/env python3
"""Works out from a job whether it will press: belt tension and pressure round the curve, the strips that stay short of it,
pressure along the width, the laminate, springback, bend limits, glue and masses. The program is held against it.

Geometry is that of `oracle`; the slats are solved by finite elements with the bed lumped at the nodes, where the program
integrates it along the elements. Figures of trade rows are written out here, with where they come from. It shares no code
with the program. Run alone, it first proves itself on figures worked out by hand.
"""
import math
import sys

import oracle
from oracle import get, girth, parallel
from oracle_two_part import strapped

# Moduli in MPa along and across the grain, shear, Poisson's ratio along over across, strength: yellow birch, Wood Handbook
# FPL-GTR-282 (2021), Tables 5-1, 5-2, 5-3a, E_L = 1.10 x the bending modulus; density 1.12 x 0.62 x 1000 kg/m3.
BIRCH = {"E": 15290.0, "E_across": 764.5, "G": 1039.7, "nu": 0.451, "strength": 114.0, "density": 694.0}
D40 = {"E": 13000.0, "E_90": 870.0, "density": 660.0}  # EN 338:2016, Table 3
PLYWOOD_DENSITY = 680.0                                # birch plywood, from memory
HARDBOARD = {"E": 4000.0, "strength": 35.0, "density": 950.0}  # usual for EN 622-2 boards, from memory
PVAC = {"spread": 150.0, "low": 0.2, "high": 1.0}      # usual data-sheet figures, from memory
STRAP = 50.0
CLAMP = 1500.0
EN_1995_RATIO = 240.0  # EN 1995-1-1 6.4.3: R/t below it costs strength


# --- laminate and springback ----------------------------------------------------------------------------------------

def plies(job):
    """(thickness, timber, angle of the fibres to the girth in radians), inner to outer."""
    out = []
    for ply in job["layup"]["plies"]:
        grain = ply.get("grain", "along")
        angle = {"along": 0.0, "across": 90.0}.get(grain, grain)
        out += [(float(ply["thickness"]), BIRCH, math.radians(angle))] * ply.get("count", 1)
    return out


def heights(job):
    """Lower and upper face of every ply over the inner face."""
    out, at = [], 0.0
    for t, _, _ in plies(job):
        out.append((at, at + t))
        at += t + get(job, "layup.glue_line", 0.1)
    return out


def reduced(timber, angle):
    """Plane-stress stiffness of one ply, turned: Jones, Mechanics of Composite Materials, 2.6 (section from memory). By the
    tensor's turning, not the usual polynomials."""
    back = timber["nu"] * timber["E_across"] / timber["E"]
    bulk = 1 - timber["nu"] * back
    q = [[timber["E"] / bulk, timber["nu"] * timber["E_across"] / bulk], [0.0, timber["E_across"] / bulk]]
    tensor = {}
    for i, j, v in ((0, 0, q[0][0]), (0, 1, q[0][1]), (1, 0, q[0][1]), (1, 1, q[1][1])):
        tensor[i, i, j, j] = v
    for a in ((0, 1, 0, 1), (0, 1, 1, 0), (1, 0, 0, 1), (1, 0, 1, 0)):
        tensor[a] = timber["G"]
    c, s = math.cos(angle), math.sin(angle)
    turned = ((c, -s), (s, c))

    def component(*at):
        return sum(turned[at[0]][i] * turned[at[1]][j] * turned[at[2]][k] * turned[at[3]][m] * v
                   for (i, j, k, m), v in tensor.items())

    pairs = ((0, 0), (1, 1), (0, 1))
    return [[component(*a, *b) for b in pairs] for a in pairs]


def laminate(job, about=None):
    """A, B, D about a height over the inner face, or else the middle of the thickness: N/mm, N, N mm."""
    faces = heights(job)
    middle = faces[-1][1] / 2 if about is None else about
    out = {name: [[0.0] * 3 for _ in range(3)] for name in "ABD"}
    for (low, high), (_, timber, angle) in zip(faces, plies(job)):
        q = reduced(timber, angle)
        low, high = low - middle, high - middle
        for name, power in (("A", 1), ("B", 2), ("D", 3)):
            for i in range(3):
                for j in range(3):
                    out[name][i][j] += q[i][j] * (high ** power - low ** power) / power
    return out


def along_girth(timber, angle):
    """Modulus of one ply by itself, pulled round the curve: along the fibres or square to them."""
    if angle == 0:
        return timber["E"]
    if abs(angle - math.pi / 2) < 1e-12:
        return timber["E_across"]
    raise ValueError("grain at an angle is not worked out here")


def bending(job):
    """Bonded and loose stiffness round the curve, N mm2 per mm, and the neutral height."""
    layers = [(low, high, along_girth(timber, angle)) for (low, high), (_, timber, angle) in zip(heights(job), plies(job))]
    weight = sum(e * (b - a) for a, b, e in layers)
    neutral = sum(e * (b * b - a * a) / 2 for a, b, e in layers) / weight
    bonded = sum(e * ((b - neutral) ** 3 - (a - neutral) ** 3) / 3 for a, b, e in layers)
    loose = sum(e * (b - a) ** 3 / 12 for a, b, e in layers)
    return {"bonded": bonded, "loose": loose, "neutral": neutral, "share": loose / bonded}


# --- round the curve ------------------------------------------------------------------------------------------------

def tension(job, turn, to_here):
    """Of a strap after `to_here` of the pack's turn, both exits counted (Euler-Eytelwein)."""
    mu, pull = get(job, "straps.friction", 0.2), float(job["straps"]["tension"])
    leaving = math.radians(get(job, "straps.exit", 25))
    left = pull * math.exp(-mu * (leaving + to_here))
    if get(job, "straps.tighten", "both-ends") == "one-end":
        return left
    return max(left, pull * math.exp(-mu * (leaving + turn - to_here)))


def belt(job):
    """The outer face of the blank, one run after another: (length, curvature, turn before it)."""
    got = oracle.solve(job)
    _, runs = parallel(*got["neutral"], got["thickness"] - got["neutral_height"])
    out, turned = [], 0.0
    for length, k in runs:
        out.append((length, k, turned))
        turned += length * k
    return got, out, turned


def along_girth_pressure(job):
    """Mean over the width at every station of the outer face as a function, and over the whole face."""
    got, runs, turn = belt(job)
    straps, width = strapped(got["count"], get(job, "beams.every", 1)), got["pack_width"]

    def in_run(run, s):
        length, k, before = run
        if k:
            return tension(job, turn, before + s * k) * k * straps / width
        if length >= oracle.LEAST_FLAT - 1e-6:
            return math.ceil(length / 200 - 1e-9) * CLAMP * got["count"] / (length * width)
        return 0.0

    steps, total = 2000, 0.0  # midpoints: exact to (turn of a run / 2000)^2 of the pressure
    for run in runs:
        total += sum(in_run(run, run[0] * (i + 0.5) / steps) for i in range(steps)) * run[0] / steps
    return {"runs": runs, "in_run": in_run, "mean": total / girth([r[:2] for r in runs]), "got": got}


def short_strip(job, side):
    """Strip at an end that stays short of the curve: p l^2 / 2 + F l = M, all per mm of width: the bounds of it with the
    bend's pressure counted over all of the strip, and over none, for a flat before the bend gets none from the strap. At an
    end without a ratchet the force on the end slat is taken before and after the strap's turn there."""
    got, runs, turn = belt(job)
    order = runs if side == 0 else runs[::-1]
    pitch = got["pitch"] * min(get(job, "beams.every", 1), got["count"] - 1)
    first = next((i for i, r in enumerate(order) if r[1]), None)
    flat = sum(r[0] for r in order[:first])
    _, k, before = order[first]
    if flat >= oracle.LEAST_FLAT - 1e-6:
        return 0.0, 0.0
    neutral = [r for r in got["neutral"][1]]
    k_neutral = (neutral if side == 0 else neutral[::-1])[first][1]
    here = before if side == 0 else before + order[first][0] * k
    pull = float(job["straps"]["tension"])
    if get(job, "straps.tighten", "both-ends") == "one-end" and side == 1:
        pull = tension(job, turn, turn)
    leaving = math.radians(get(job, "straps.exit", 25))
    force = 2 * pull * math.sin(leaving / 2) / pitch
    if get(job, "straps.tighten", "both-ends") == "one-end" and side == 1:
        slack = force * math.exp(-get(job, "straps.friction", 0.2) * leaving)
    else:
        slack = force
    pressure = tension(job, turn, here) * k / pitch
    moment = k_neutral * bending(job)["loose"]
    none = moment / slack
    return (math.sqrt(force * force + 2 * pressure * moment) - force) / pressure, none


# --- along the width ------------------------------------------------------------------------------------------------

def bed_stiffness(job):
    """N/mm per mm2 of face: covers, plies and both cauls in series, each by its modulus across the grain."""
    caul = float(job["caul"]["kind"]["thickness"])
    soft = sum(t / timber["E_across"] for t, timber, _ in plies(job))
    soft += 2 * (caul + float(get(job, "layup.cover", 3))) / D40["E_90"] + get(job, "caul.bedding", 0.0)
    return 1 / soft


def solve_banded(rows, right):
    """Symmetric, rows[i][j] = A[i][i + j]; elimination without pivots."""
    n, reach = len(right), len(rows[0])
    x = list(right)
    for i in range(n):
        row = rows[i]
        end = min(reach, n - i)
        for j in range(1, end):
            factor = row[j] / row[0]
            if factor:
                below = rows[i + j]
                for m in range(j, end):
                    below[m - j] -= factor * row[m]
                x[i + j] -= factor * x[i]
    for i in reversed(range(n)):
        x[i] = (x[i] - sum(rows[i][j] * x[i + j] for j in range(1, min(reach, n - i)))) / rows[i][0]
    return x


def nodes_between(marks, size):
    marks = sorted(marks)
    out = [marks[0]]
    for a, b in zip(marks, marks[1:]):
        if b - a > 1e-6:
            n = max(2, math.ceil((b - a) / size))
            out += [a + (b - a) * i / n for i in range(1, n + 1)]
    return out


def beam_rows(spans, stiffnesses):
    """Two Hermite beams side by side: at every node the deflection and slope of the upper, then of the lower."""
    rows = [[0.0] * 8 for _ in range(4 * (len(spans) + 1))]
    for e, length in enumerate(spans):
        own = [[12, 6 * length, -12, 6 * length], [0, 4 * length ** 2, -6 * length, 2 * length ** 2],
               [0, 0, 12, -6 * length], [0, 0, 0, 4 * length ** 2]]
        for beam, ei in enumerate(stiffnesses):
            at = [4 * e + 2 * beam, 4 * e + 2 * beam + 1, 4 * e + 4 + 2 * beam, 4 * e + 5 + 2 * beam]
            for i in range(4):
                for j in range(i, 4):
                    rows[at[i]][at[j] - at[i]] += ei / length ** 3 * own[i][j]
    return rows


def along_width(width, ei, k, stations, loaded, wanted, over=STRAP, size=4.0):
    """Pressure at the wanted width stations over its mean: slats of one stiffness on both sides, the lower resting on the
    former mid-planes, the upper under an even load `over` wide at every loaded station. The bed pushes and never pulls."""
    marks = {0.0, width} | set(stations) | set(wanted)
    for z in loaded:
        marks |= {max(0.0, z - over / 2), min(width, z + over / 2)}
    zs = nodes_between(marks, size)
    spans = [b - a for a, b in zip(zs, zs[1:])]
    share = [0.0] * len(zs)
    right = [0.0] * (4 * len(zs))
    for e, length in enumerate(spans):
        share[e] += length / 2
        share[e + 1] += length / 2
        middle = (zs[e] + zs[e + 1]) / 2
        load = sum(1 / over for z in loaded if abs(middle - z) < over / 2)
        for at, force in ((4 * e, length / 2), (4 * e + 4, length / 2), (4 * e + 1, length ** 2 / 12), (4 * e + 5, -length ** 2 / 12)):
            right[at] += load * force
    held = {min(range(len(zs)), key=lambda i: abs(zs[i] - z)) for z in stations}
    touching = [True] * len(zs)
    for _ in range(80):
        rows = beam_rows(spans, (ei, ei))
        for i, weight in enumerate(share):
            spring = k * weight * (1.0 if touching[i] else 1e-9)
            rows[4 * i][0] += spring
            rows[4 * i + 2][0] += spring
            rows[4 * i][2] -= spring
            if i in held:
                rows[4 * i + 2][0] += 1e6 * k * width
        x = solve_banded(rows, right)
        now = [x[4 * i] > x[4 * i + 2] for i in range(len(zs))]
        if now == touching:
            break
        touching = now
    else:
        raise ValueError("the slats do not come to rest")
    p = [k * max(0.0, x[4 * i] - x[4 * i + 2]) for i in range(len(zs))]
    mean = sum((a + b) / 2 * length for a, b, length in zip(p, p[1:], spans)) / width
    return [p[min(range(len(zs)), key=lambda i: abs(zs[i] - z))] / mean for z in wanted]


def slat_stiffness(job):
    kind = job["caul"]["kind"]
    return kind.get("EI", D40["E"] * float(kind["thickness"]) ** 3 / 12 * kind.get("coverage", 1.0))


# --- bends, glue, masses --------------------------------------------------------------------------------------------

def bend_radius(job, ply):
    """Inside radius, pressed, of a ply in its tightest bend, its least before strength suffers and before it cracks."""
    got = oracle.solve(job)
    low, high = heights(job)[ply]
    least = math.inf
    for _, k in got["neutral"][1]:
        if k:
            edge = low if k > 0 else high
            least = min(least, 1 / abs(k) + math.copysign(1, k) * (edge - got["neutral_height"]))
    t = high - low
    return {"radius": least, "strength": EN_1995_RATIO * t, "elastic": BIRCH["E"] / (2 * BIRCH["strength"]) * t}


def glue(job):
    got = oracle.solve(job)
    area = got["girth"]["neutral"] * got["pack_width"] / 1e6
    lines = len(plies(job)) - 1
    return {"lines": lines, "area": area, "mass": lines * area * PVAC["spread"] / 1000}


def masses(job, summary):
    """By the volumes that the summary gives to the parts of the lower half, and the panel's own."""
    got = oracle.solve(job)
    lower = 0.0
    for part in summary["parts"]:
        if part["kind"] != "panel":
            density = D40["density"] if part["stock"].startswith("D40") else PLYWOOD_DENSITY
            lower += part["volume"] * part["count"] * density / 1e9
    wood = 0.0
    for (low, high), (_, timber, _) in zip(heights(job), plies(job)):
        middle = girth(parallel(*got["neutral"], (low + high) / 2 - got["neutral_height"])[1])
        wood += (high - low) * middle * got["pack_width"] * timber["density"] / 1e9
    return {"lower": lower, "panel": wood + glue(job)["mass"]}


# --- self test ------------------------------------------------------------------------------------------------------

def check(what, value, wanted, tolerance):
    assert abs(value - wanted) <= tolerance, "%s: %.9g, worked out %.9g" % (what, value, wanted)


def test_belt():
    """120 degrees, 2500 N at both ends, mu 0.2: 2500 e^(-0.2 x 25 deg) = 2291.08, at the middle e^(-0.2 x 85 deg): 1858.16."""
    turn = math.radians(120)
    check("tension at the end", tension(oracle.W1, turn, 0), 2291.08, 0.005)
    check("tension in the middle", tension(oracle.W1, turn, turn / 2), 1858.16, 0.005)


def test_laminate():
    """Yellow birch 0/90/0 of 1.5 mm, worked by hand: A11 47 499.8, A12 1567.49, A22 25 487.7, A66 4678.74 N/mm, D11 113 174,
    D12 2645.15, D22 9992.34, D66 7895.37 N mm."""
    job = {"layup": {"glue_line": 0, "plies": [{"thickness": 1.5}, {"thickness": 1.5, "grain": "across"}, {"thickness": 1.5}]}}
    got = laminate(job)
    for name, i, j, want in (("A", 0, 0, 47499.8), ("A", 0, 1, 1567.49), ("A", 1, 1, 25487.7), ("A", 2, 2, 4678.74),
                             ("D", 0, 0, 113174), ("D", 0, 1, 2645.15), ("D", 1, 1, 9992.34), ("D", 2, 2, 7895.37)):
        check("%s%d%d" % (name, i + 1, j + 1), got[name][i][j] / want, 1, 3e-5)
    # A single ply at 45 degrees: Q11 = (U11 + 2 Q12 + U22) / 4 + Q66.
    q, turned = reduced(BIRCH, 0.0), reduced(BIRCH, math.pi / 4)
    check("at 45 degrees", turned[0][0], (q[0][0] + 2 * q[0][1] + q[1][1]) / 4 + q[2][2], 1e-9)


def test_springback():
    for n in (2, 3, 6, 10):
        job = {"layup": {"glue_line": 0, "plies": [{"thickness": 1.5, "count": n}]}}
        check("share of %d plies" % n, bending(job)["share"], 1 / n ** 2, 1e-12)
    unequal = {"layup": {"glue_line": 0, "plies": [{"thickness": 1.5}, {"thickness": 3}, {"thickness": 1.5}]}}
    check("1.5 / 3 / 1.5", bending(unequal)["share"], 0.15625, 1e-12)


def test_slats():
    """Slats of 1e9 on a bed of 20, straps and formers every 100, 150 and 200, far from the ends: least over greatest 0.98967,
    0.94934, 0.85245 where straps and formers are points (Hetenyi). Straps 1 wide; nodes 2 apart leave 1e-3."""
    for pitch, want in ((100, 0.98967), (150, 0.94934), (200, 0.85245)):
        count = 2 * (1200 // pitch) // 2 + 1
        stations = [100 + pitch * i for i in range(count)]
        middle = stations[count // 2]
        got = along_width(stations[-1] + 100, 1e9, 20.0, stations, stations, [middle, middle + pitch / 2], over=1.0, size=2.0)
        check("least over greatest at %d" % pitch, got[1] / got[0], want, 1e-3)


def test_closing():
    """T 2500, exit 25, radius 400, E as birch, 8 plies of 1.5: M = 8 x 15290 x 1.5^3 / 12 / 406 = 84.734 N, F = 2 x 2500 x
    sin 12.5 deg / pitch, p = 2291.08 / (412 pitch); pitch 283.333: F 3.81954, p 0.0196267, l = 21.0467."""
    got = short_strip(oracle.W1, 0)
    check("strip", got[0], 21.0467, 1e-3)


def self_test():
    for function in (test_belt, test_laminate, test_springback, test_slats, test_closing):
        function()
    print("oracle of pressures: belt, laminate, springback, slats and closing agree with figures worked by hand")


if __name__ == "__main__":
    try:
        self_test()
    except AssertionError as error:
        print("oracle of pressures: " + str(error), file=sys.stderr)
        sys.exit(1)
