"""Seating by numerical means, beside the program's closed form: a rigid half on a bed that pushes and never pulls.
Pressures are integrated in small panels and the bed's energy is minimised, with no closed form of any run. Shares no code
with the program."""
import math

from oracle import girth, poses, walk

# Gauss-Legendre, five points on [-1, 1]: exact to degree 9 (Abramowitz and Stegun, table 25.4).
NODES = [(-0.906179845938664, 0.236926885056189), (-0.538469310105683, 0.478628670499366), (0.0, 0.568888888888889),
         (0.538469310105683, 0.478628670499366), (0.906179845938664, 0.236926885056189)]
PANELS = 60             # to a run; a panel of 150 / 60 degrees leaves an error below 1e-20
EXTREME_SAMPLES = 4000  # to a run: between two of them a sinusoid of 150 degrees rises by less than 1e-7 of itself


class Bed:
    """The neutral line posed with the pull vertical, the middle of its chord at the origin. What a force along the normal
    at station s does to the half is `lever(s)`: its X, its Y, and its moment about the chord's middle over the chord."""

    def __init__(self, start, runs):
        self.start, self.runs = start, runs
        self.poses = poses(start, runs)
        (x0, y0, _), (x1, y1, _) = self.poses[0], self.poses[-1]
        self.chord = math.hypot(x1 - x0, y1 - y0)
        self.joints = [0.0]
        for length, _ in runs:
            self.joints.append(self.joints[-1] + length)
        assert math.hypot(x0 + x1, y0 + y1) < 1e-6 * self.chord, "the chord's middle is not the origin"

    def lever_in(self, run, s):
        x, y, h = walk(self.poses[run], self.runs[run][1], s)
        nx, ny = -math.sin(h), math.cos(h)
        return nx, ny, (x * ny - y * nx) / self.chord

    def samples(self, count):
        """(station, lever) evenly along every run, both its ends included."""
        for run, (length, _) in enumerate(self.runs):
            for i in range(count + 1):
                s = length * i / count
                yield self.joints[run] + s, self.lever_in(run, s)

    def nodes(self, breaks):
        """(weight, lever) for an integral along the line, panels split at the breaks (stations)."""
        out = []
        for run, (length, _) in enumerate(self.runs):
            low = self.joints[run]
            cuts = sorted([length * i / PANELS for i in range(PANELS + 1)]
                          + [b - low for b in breaks if 0 < b - low < length])
            for a, b in zip(cuts, cuts[1:]):
                for node, weight in NODES:
                    out.append((weight * (b - a) / 2, self.lever_in(run, (a + b) / 2 + node * (b - a) / 2)))
        return out

    def crossings(self, rate):
        """Stations where the pressure of the motion `rate` changes sign, by bisection."""
        out = []
        for run, (length, _) in enumerate(self.runs):
            def value(s, run=run):
                return dot(rate, self.lever_in(run, s))
            for i in range(200):
                a, b = length * i / 200, length * (i + 1) / 200
                if value(a) * value(b) < 0:
                    for _ in range(60):
                        middle = (a + b) / 2
                        a, b = (middle, b) if value(a) * value(middle) > 0 else (a, middle)
                    out.append(self.joints[run] + (a + b) / 2)
        return out


def dot(a, b):
    return sum(x * y for x, y in zip(a, b))


def solved(matrix, right):
    """Gaussian elimination with the largest pivot; None where a pivot is lost."""
    n = len(right)
    rows = [list(matrix[i]) + [right[i]] for i in range(n)]
    scale = max(abs(v) for row in rows for v in row[:n])
    for i in range(n):
        best = max(range(i, n), key=lambda r: abs(rows[r][i]))
        if abs(rows[best][i]) < 1e-13 * scale:
            return None
        rows[i], rows[best] = rows[best], rows[i]
        for r in range(i + 1, n):
            factor = rows[r][i] / rows[i][i]
            for c in range(i, n + 1):
                rows[r][c] -= factor * rows[i][c]
    out = [0.0] * n
    for i in reversed(range(n)):
        out[i] = (rows[i][n] - dot(rows[i][i + 1:n], out[i + 1:])) / rows[i][i]
    return out


def stiffness(nodes, free, rate):
    """Sum of weight * lever x lever over what is in touch under `rate` (all when None), of the free motions."""
    out = [[0.0] * len(free) for _ in free]
    for weight, lever in nodes:
        if rate is not None and dot(rate, lever) <= 0:
            continue
        for i, fi in enumerate(free):
            for j, fj in enumerate(free):
                out[i][j] += weight * lever[fi] * lever[fj]
    return out


def energy(nodes, rate, load):
    """Of the bed less the work of the pull: least where the half rests. The bed never pulls."""
    bed = 0.0
    for weight, lever in nodes:
        p = dot(rate, lever)
        if p > 0:
            bed += weight * p * p / 2
    return bed - dot(rate, load)


def descended(bed, nodes, free, load, rate):
    """Newton steps on the energy, halved until it falls: convex, so any start leads to the same rest."""
    for _ in range(200):
        forces = [0.0, 0.0, 0.0]
        for weight, lever in nodes:
            p = dot(rate, lever)
            if p > 0:
                for i in range(3):
                    forces[i] += weight * p * lever[i]
        left = [load[f] - forces[f] for f in free]
        if max(abs(v) for v in left) < 1e-13 * abs(load[1]):
            return rate
        step = solved(stiffness(nodes, free, rate), left) or solved(stiffness(nodes, free, None), left)
        if step is None:
            raise ValueError("the bed does not hold the half")
        before, factor = energy(nodes, rate, load), 1.0
        while factor > 1e-9:
            tried = list(rate)
            for f, s in zip(free, step):
                tried[f] += factor * s
            if energy(nodes, tried, load) < before:
                break
            factor /= 2
        else:
            return rate  # no way down: rounding is reached
        rate = tried
    raise ValueError("the half does not come to rest")


def rest(bed, at, pull, guided=False):
    """Rate of pressure (X, Y, turn) under `pull` (N per mm of width) along X = at. `guided`: held sideways at the height of
    the chord's middle. A single arc or flat cannot resist one motion; balanced, it is left out."""
    load = [0.0, pull, pull * at / bed.chord]
    free = [1, 2] if guided else [0, 1, 2]
    if len(bed.runs) == 1 and not guided:
        if bed.runs[0][1] == 0:
            if abs(bed.start[2]) > 1e-9:
                raise ValueError("slides")
            free = [1, 2]
        else:
            x, y, h = bed.start
            if abs(x + math.sin(h) / bed.runs[0][1] - at) > 1e-7:
                raise ValueError("rolls")
            free = [0, 1]
    # The first guess, all in touch, may need a pull of the bed; then the breaks are put where it lifts.
    rate = [0.0, pull / girth(bed.runs), 0.0]
    breaks = []
    for _ in range(4):
        rate = descended(bed, bed.nodes(breaks), free, load, rate)
        breaks = bed.crossings(rate)
    return rate, breaks


def seating(bed, at, pull):
    """Pressures in MPa over the line, lifted stretches as 0, and where they lie."""
    rate, breaks = rest(bed, at, pull)
    values = [(s, dot(rate, lever)) for s, lever in bed.samples(EXTREME_SAMPLES)]
    mean = sum(w * max(0.0, dot(rate, lever)) for w, lever in bed.nodes(breaks)) / girth(bed.runs)
    return {"least": max(0.0, min(p for _, p in values)), "greatest": max(p for _, p in values), "mean": mean,
            "lifted": lifted(bed, rate, breaks), "rate": rate,
            # Of the half, anticlockwise, times the bed's stiffness: radians N/mm3.
            "tilt_stiffness": -rate[2] / bed.chord}


def lifted(bed, rate, breaks):
    ends = [0.0] + sorted(breaks) + [bed.joints[-1]]
    out = []
    for a, b in zip(ends, ends[1:]):
        run = max(i for i in range(len(bed.runs)) if bed.joints[i] <= (a + b) / 2)
        if b - a > 1e-9 and dot(rate, bed.lever_in(run, (a + b) / 2 - bed.joints[run])) < 0:
            out.append([a, b])
    return out


def stray(bed):
    """How far the pull line may stand left and right of the chord's middle before any stretch lifts, negative on the
    side to which it has to move before none does; None where one lifts everywhere. With all in touch the pressure is
    linear in the position: p0 + at * p1."""
    if len(bed.runs) > 1:
        matrix = stiffness(bed.nodes([]), [0, 1, 2], None)
        zero, one = solved(matrix, [0, 1, 0]), solved(matrix, [0, 0, 1 / bed.chord])
    elif bed.runs[0][1] == 0:
        zero, one = [0, 1 / bed.joints[-1], 0], [0, 0, 12 / bed.joints[-1] ** 2]
    else:
        return [0.0, 0.0]  # a single arc rolls
    low, high = -math.inf, math.inf
    for _, lever in bed.samples(EXTREME_SAMPLES):
        p0, p1 = dot(zero, lever), dot(one, lever)
        if p1 > 1e-18:
            low = max(low, -p0 / p1)
        elif p1 < -1e-18:
            high = min(high, -p0 / p1)
    return [-low, high] if low <= high else None


def side_thrust(bed, at, pull):
    """Force of a guide on the half, N per mm of width, positive to the right."""
    rate, breaks = rest(bed, at, pull, guided=True)
    return -sum(w * max(0.0, dot(rate, lever)) * lever[0] for w, lever in bed.nodes(breaks))
