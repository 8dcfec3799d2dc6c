"""Two-part presses: figures of summary.json against an independent calculation, and cases reported by practitioners."""
import json
import math

import oracle_two_part as oracle
from harness import close_to, test
from jobs import changed, small

EXACT = 0.001    # mm
SHARE = 1e-6     # of a pressure: what the oracle's numerical integration is good to

L = [{"line": 340}, {"bend": 90, "radius": 60}, {"line": 340}]
UNEQUAL = [{"line": 500}, {"bend": 90, "radius": 60}, {"line": 200}]
S = [{"line": 60}, {"bend": 45, "radius": 420}, {"line": 80}, {"bend": -40, "radius": 480}, {"line": 90}]
U = [{"line": 110}, {"bend": 62, "radius": 120}, {"line": 180}, {"bend": 62, "radius": 120}, {"line": 110}]
CROWN = [{"line": 120}, {"bend": 70, "radius": 380}, {"line": 60}, {"bend": 25, "radius": 900}]
ARC = [{"bend": 80, "radius": 450}]
WAVE = [{"bend": -30, "radius": 700}, {"bend": 55, "radius": 350}, {"line": 40}, {"bend": -20, "radius": 900}]


def job_of(profile, **more):
    """Boards of 36: no screw comes near their faces, so that no fixing blocks stick out beside the formers and the
    straps stand by the formers alone."""
    job = {
        "panel": {"width": 500, "trim": 15, "profile": profile},
        "layup": {"glue_line": 0, "cover": 2, "plies": [{"timber": "birch-yellow", "thickness": 1, "count": 9}]},
        "press": {"method": "two-part", "springback": "none"},
        "caul": {"kind": {"thickness": 16}},
        "formers": {"board": {"nominal": 36, "measured": 36}, "spacing": {"count": 4}},
        "straps": {"tension": 2500},
    }
    return changed(job, **more)


def pressed(profile, **press):
    """A job whose press table has these keys too."""
    return job_of(profile, press={"method": "two-part", "springback": "none", **press})


JOBS = [
    ("equal L", job_of(L)),
    ("unequal L", job_of(UNEQUAL)),
    ("unequal L along its bisector", pressed(UNEQUAL, pull="bisector")),
    ("L at 12 degrees", pressed(L, pull=12)),
    ("unequal L at -7.5 degrees, pulled 30 to the right", pressed(UNEQUAL, pull=-7.5, pull_at=30)),
    ("L pulled 40 to the left", pressed(L, pull_at=-40)),
    ("L pulled so far to the right that it lifts", pressed(L, pull_at=110)),
    ("S", job_of(S)),
    ("S along its bisector", pressed(S, pull="bisector")),
    ("S leaning so far that it lifts", pressed(S, pull=9)),
    ("crown of two radii that lifts when pulled through its middle",
     pressed([{"bend": 38, "radius": 540}, {"bend": 40, "radius": 790}], pull="bisector")),
    ("shallow U with draft", job_of(U)),
    ("U pressed off the middle", pressed(U, pull_at=25)),
    ("crown with flats", job_of(CROWN)),
    ("wave", job_of(WAVE)),
    ("arc with trim", job_of(ARC)),
    ("arc alone", job_of(ARC, panel__trim=0)),
    ("hollow arc alone", job_of([{"bend": -80, "radius": 450}], panel__trim=0)),
    ("sheathed", job_of(S, caul={"kind": "sheathed", "sheathing": [3, 3]})),
    ("bare stack without covers", job_of(L, caul={"kind": "bare"}, layup__cover=0)),
    ("liner", job_of(U, caul={"kind": {"thickness": 16}, "liner": 3})),
    ("springback computed", job_of(CROWN, press={"method": "two-part", "springback": "computed"})),
    ("face outer", job_of(S, panel__face="outer")),
    ("face centre, no trim", job_of(UNEQUAL, panel__face="centre", panel__trim=0)),
    ("other beams, depth and extension", job_of(CROWN, beams={"section": [60, 120], "screw": {"length": 130}}, formers={
        "board": {"nominal": 40, "measured": 40}, "spacing": {"count": 3}, "extend": 40, "min_depth": 130})),
    ("straps at every second former", job_of(S, formers__spacing={"count": 4}, beams={"every": 2})),
]


# --- comparing ------------------------------------------------------------------------------------------------------

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


def compare_panel(summary, want):
    close_to(summary["panel"]["thickness"], want["thickness"], 1e-6, "thickness")
    close_to(summary["springback"]["ratio"], want["springback"], 1e-9, "springback")
    for face in ("inner", "outer", "neutral"):
        close_to(summary["panel"]["girth"][face], want["girth"][face], EXACT, "girth " + face)
    same_runs(summary["panel"]["released"]["runs"], want["released"], "released")
    same_runs(summary["panel"]["pressed"]["runs"], want["pressed"], "pressed")


def compare_frame(summary, want):
    press = summary["press"]
    assert press["method"] == "two-part" and press["reason"]
    assert len(press["stations"]) == want["count"], press["stations"]
    same_runs(press["contact"]["lower"]["runs"], want["lower"]["runs"], "lower contact edge")
    same_runs(press["contact"]["upper"]["runs"], want["upper"]["runs"], "upper contact edge")
    close_to(press["pull"]["axis_deg"], want["axis_deg"], 1e-6, "pull axis")
    for i in (0, 1):
        close_to(press["pull"]["through"][i], want["through"][i], EXACT, "pull line " + "xy"[i])
    assert len(press["straps"]) == 2
    for got, w, side in zip(press["straps"], want["straps"], ("left", "right")):
        for key in ("leaves", "mark"):
            for i in (0, 1):
                close_to(got[key][i], w[key][i], EXACT, "%s strap %s %s" % (side, key, "xy"[i]))
        close_to(got["run"], w["run"], EXACT, side + " run")
        assert got["exit_deg"] == 0, got


def compare_formers(summary, want):
    for half, kind, edge in (("lower", "former-lower", "lower"), ("upper", "former-upper", "upper")):
        formers = parts_of(summary, kind)
        assert sum(p["count"] for p in formers) == want["count"], "%s: %s" % (kind, formers)
        former = formers[0]
        for i in (0, 1):
            close_to(former["size"][i], want["former"][half][i], EXACT, "%s size %s" % (kind, "xy"[i]))
        bored = sum(math.pi / 4 * h["diameter"] ** 2 for h in former["holes"]
                    if h["kind"] == "through" and abs(abs(h["axis"][2]) - 1) < 1e-9)
        # Areas to 0.01 mm2 from lengths to 1e-9.
        close_to(former["area"] + bored, want["areas"][half], 0.01, kind + " face area")
        # The shift that moves the lowest left corner of its own frame to (0, 0): both ends of the contact edge are known.
        close_to(-former["origin"][0], min(end[0] for end in want[edge]["ends"]), EXACT, kind + " left end")
    beams = parts_of(summary, "beam")
    assert sum(p["count"] for p in beams) == 2 * len(summary["press"]["strapped"]), beams
    for i in range(3):
        close_to(beams[0]["size"][i], want["beam"][i], EXACT, "beam size %s" % "xyz"[i])


def compare_runs(got, want):
    assert [g["run"] for g in got] == [w["run"] for w in want], got
    for g, w in zip(got, want):
        for key, tolerance in (("angle_deg", 1e-6), ("share", 1e-8)):
            for end in ("least", "greatest"):
                close_to(g[key][end], w[key][end], tolerance, "%s %s %s" % (g["run"], key, end))


def compare_seating(summary, want):
    seating, wanted, unit = summary["press"]["seating"], want["seating"], want["unit"]
    assert seating["hold"] == "held", seating
    close_to(seating["pull"], want["pull"], 1e-6, "pull")
    close_to(seating["unit"], unit, 1e-9, "unit")
    for key in ("least", "mean", "greatest"):
        close_to(seating[key], wanted[key], SHARE * unit + 1e-9, "seating " + key)
    close_to(seating["side_thrust"], want["side_thrust"], SHARE * want["pull"], "side thrust")
    assert (seating["stray"] is None) == (want["stray"] is None), (seating["stray"], want["stray"])
    for got, w, side in zip(seating["stray"] or [], want["stray"] or [], ("left", "right")):
        close_to(got, w, EXACT, "stray " + side)
    assert len(seating["lifted"]) == len(wanted["lifted"]), "lifted %s, expected %s" % (seating["lifted"], wanted["lifted"])
    for got, w in zip(seating["lifted"], wanted["lifted"]):
        for i in (0, 1):
            close_to(got[i], w[i], EXACT, "lifted stretch")
    # Degrees are rounded to 1e-9; smaller tilts have no sign to speak of.
    if abs(seating["tilt_deg"]) > 1e-8:
        assert seating["tilt_deg"] * wanted["tilt_stiffness"] > 0, "tilts the wrong way: %s" % seating


def compare(summary, job):
    want = oracle.solve(job)
    compare_panel(summary, want)
    compare_frame(summary, want)
    compare_formers(summary, want)
    compare_runs(summary["press"]["pull"]["runs"], want["runs"])
    compare_seating(summary, want)
    return want


def over_jobs(bench, jobs, check):
    """Runs a check on every job and tells all that differ in one go."""
    faults, seen = [], 0
    for name, job in jobs:
        try:
            check(bench, job, "out%d" % seen)
        except AssertionError as error:
            faults.append("%s: %s" % (name, error))
        seen += 1
    assert seen == len(jobs) and seen > 0
    assert not faults, "%d of %d differ\n%s" % (len(faults), seen, "\n".join(faults))


@test
def the_oracle_of_two_part_presses_proves_itself(bench):
    oracle.self_test()


@test
def two_part_presses_agree_with_the_oracle(bench):
    assert len(JOBS) >= 10
    over_jobs(bench, JOBS, lambda b, job, out: compare(b.figures(job, out), job))


# --- mirror ---------------------------------------------------------------------------------------------------------

def mirrored(job):
    back = changed(job, panel__profile=job["panel"]["profile"][::-1])
    pull, at = job["press"].get("pull"), job["press"].get("pull_at")
    if isinstance(pull, (int, float)):
        back["press"]["pull"] = -pull
    if at:
        back["press"]["pull_at"] = -at
    return back


def compare_mirrored(bench, job, out):
    there, back = bench.figures(job, out + "a")["press"], bench.figures(mirrored(job), out + "b")["press"]
    for half in ("lower", "upper"):
        same_runs(back["contact"][half]["runs"], there["contact"][half]["runs"][::-1], half + " contact edge")
    close_to(back["pull"]["axis_deg"], -there["pull"]["axis_deg"], 1e-7, "axis")
    close_to(back["pull"]["through"][0], -there["pull"]["through"][0], EXACT, "pull line")
    close_to(back["pull"]["through"][1], there["pull"]["through"][1], EXACT, "pull line")
    for a, b in zip(there["pull"]["runs"], back["pull"]["runs"][::-1]):
        assert a["run"].split()[0] == b["run"].split()[0]
        close_to(b["share"]["least"], a["share"]["least"], 1e-8, "share")
    for a, b in zip(there["straps"], back["straps"][::-1]):
        for key in ("leaves", "mark"):
            close_to(b[key][0], -a[key][0], EXACT, key)
            close_to(b[key][1], a[key][1], EXACT, key)
    a, b = there["seating"], back["seating"]
    for key in ("least", "mean", "greatest"):
        close_to(b[key], a[key], 2e-9, key)  # both rounded to 1e-9
    close_to(b["side_thrust"], -a["side_thrust"], 1e-6, "side thrust")
    close_to(b["tilt_deg"], -a["tilt_deg"], 2e-9, "tilt")
    close_to(b["stray"][0], a["stray"][1], 1e-6, "stray")
    close_to(b["stray"][1], a["stray"][0], 1e-6, "stray")
    assert len(a["lifted"]) == len(b["lifted"])


@test
def a_mirrored_two_part_job_gives_the_mirrored_summary(bench):
    over_jobs(bench, JOBS, compare_mirrored)


# --- the pull -------------------------------------------------------------------------------------------------------

@test
def pulls_are_compared_by_the_pressures_that_they_make(bench):
    seen = 0
    for name, job in JOBS[1:5] + JOBS[7:9]:
        pull = bench.figures(job, "out%d" % seen)["press"]["pull"]
        b = oracle.blank(job)
        assert any(c["pull"] == "square-to-chord" for c in pull["compared"]), pull["compared"]
        for c in pull["compared"] + [pull["best"]]:
            bed = oracle.Bed(oracle.upright(b["start"], math.radians(c["axis_deg"])), b["runs"])
            want = oracle.seating(bed, c["at"], b["chord"])
            for key in ("least", "mean", "greatest"):
                close_to(c[key], want[key], 2 * SHARE, "%s, %s: %s" % (name, c.get("pull", "best"), key))
            close_to(c["spread"], (want["greatest"] - want["least"]) / want["mean"], 1e-5, "spread")
            assert c["spread"] >= pull["best"]["spread"] - 1e-6, "%s: %s is more even than the best" % (name, c)
            seen += 1
    assert seen >= 18


@test
def the_method_is_two_part_where_a_bend_is_hollow(bench):
    for profile, method in ((S, "two-part"), (CROWN, "one-part"), ([{"bend": -60, "radius": 500}], "two-part")):
        job = job_of(profile, press={"springback": "none"})
        assert bench.figures(job, "out" + method + str(len(profile)))["press"]["method"] == method


@test
def more_tension_or_more_straps_press_in_proportion(bench):
    base = bench.figures(job_of(S), "a")["press"]["seating"]
    tight = bench.figures(job_of(S, straps={"tension": 3000}), "b")["press"]["seating"]
    more = bench.figures(job_of(S, formers__spacing={"count": 6}), "c")["press"]["seating"]
    # 4 formers, 2 straps of 2 legs of 2500.
    close_to(base["pull"], 4 * 2 * 2 * 2500, 1e-6, "pull")
    for key in ("least", "mean", "greatest"):
        close_to(tight[key], base[key] * 1.2, 3e-9, key)
        close_to(more[key], base[key] * 1.5, 3e-9, key)


@test
def a_press_that_no_pressure_balances_has_none_in_its_summary(bench):
    press = bench.figures(pressed(L, pull_at=300))["press"]
    assert press["seating"]["hold"] == "tips", press["seating"]
    for key in ("least", "mean", "greatest", "tilt_deg", "lifted"):
        assert press["seating"][key] is None, (key, press["seating"])
    assert press["seating"]["stray"][0] > 0 and press["seating"]["stray"][1] > 0, press["seating"]
    chosen = [p["pull"] for p in press["pull"]["compared"] if p["chosen"]]
    assert chosen == ["square-to-chord, at 300"], press["pull"]["compared"]


@test
def a_pull_beyond_the_stray_lifts_and_one_within_does_not(bench):
    left, right = bench.figures(job_of(UNEQUAL), "a")["press"]["seating"]["stray"]
    for at, lifts in ((-left + 0.1, False), (-left - 0.1, True), (right - 0.1, False), (right + 0.1, True)):
        seating = bench.figures(pressed(UNEQUAL, pull_at=round(at, 6)), "b")["press"]["seating"]
        assert bool(seating["lifted"]) == lifts and (seating["least"] == 0) == lifts, (at, seating)


@test
def fixing_blocks_beside_thin_boards_only_move_the_straps_outward(bench):
    # Boards of 17.6 need blocks at the caul screws; what sticks out of a leaning end keeps 10 from the strap as well.
    thin = bench.figures(job_of(L, formers__board={"nominal": 18, "measured": 17.6}), "a")
    assert parts_of(thin, "fixing-block")
    want = oracle.solve(job_of(L))
    for got, w, side in zip(thin["press"]["straps"], want["straps"], (-1, 1)):
        assert side * (got["mark"][0] - w["mark"][0]) >= -EXACT, (got, w)
        close_to(got["mark"][1], w["mark"][1], EXACT, "mark")
        close_to(got["leaves"][1], w["leaves"][1], EXACT, "leaves")


# --- cases from problem reports -------------------------------------------------------------------------------------

def bare(profile, plies, **more):
    """A mould right on the faces: no covers, no caul, no trim."""
    job = job_of(profile, caul={"kind": "bare"}, layup={"glue_line": 0, "cover": 0, "plies": plies}, panel__trim=0)
    return changed(job, **more)


def ply(thickness, count):
    return [{"timber": "birch-yellow", "thickness": thickness, "count": count}]


def radii(summary, half):
    return [r["radius"] for r in summary["press"]["contact"][half]["runs"] if r["radius"] is not None]


def lengths(summary, half):
    return [r["length"] for r in summary["press"]["contact"][half]["runs"]]


P_S = [{"bend": 60, "radius": 600}, {"bend": -60, "radius": 600}]


@test
def f03_both_edges_of_an_s_are_parallels_and_not_one_line_pulled_apart(bench):
    # 5 x 1.905 = 9.525 between the edges, square to them, everywhere.
    job = bare(P_S, ply(1.905, 5), formers__extend=0)
    summary = bench.figures(job)
    for got, wanted in zip(radii(summary, "lower"), (600, 600)):
        close_to(got, wanted, EXACT, "lower radius")
    for got, wanted in zip(radii(summary, "upper"), (609.525, 590.475)):
        close_to(got, wanted, EXACT, "upper radius")
    # Closed along Y: over the inflection, where both edges are square to 30 degrees off the vertical, the vertical gap
    # of parallels is more than 9.525 and the normal one 9.525. The two halves' heights tell where the upper stands.
    compare(summary, job)


@test
def c11_both_faces_of_an_s_are_as_long_as_its_middle(bench):
    summary = bench.figures(bare(P_S, ply(1.905, 5), formers__extend=0))
    for half in ("lower", "upper"):
        close_to(sum(lengths(summary, half)), 1256.637, EXACT, half)
    for face in ("inner", "outer", "neutral"):
        close_to(summary["panel"]["girth"][face], 1256.637, EXACT, face)
    centred = bench.figures(bare(P_S, ply(1.905, 5), formers__extend=0, panel__face="centre"), "centre")
    for got, wanted in zip(radii(centred, "lower") + radii(centred, "upper"),
                           (600 - 4.7625, 600 + 4.7625, 600 + 4.7625, 600 - 4.7625)):
        close_to(got, wanted, EXACT, "radius")


@test
def f04_male_and_female_radii_differ_by_the_blank(bench):
    bend = [{"bend": 90, "radius": 100}]
    for glue_line, female in ((0, 112.0), (0.1, 112.9)):  # nine glue lines
        summary = bench.figures(bare(bend, ply(1.2, 10), layup__glue_line=glue_line), "out%g" % glue_line)
        close_to(radii(summary, "lower")[0], 100, EXACT, "male")
        close_to(radii(summary, "upper")[0], female, EXACT, "female")
        close_to(summary["panel"]["girth"]["inner"], 157.080, EXACT, "inner girth")
        close_to(summary["panel"]["girth"]["outer"], female * math.pi / 2, EXACT, "outer girth")  # 175.929 without glue
        girths = [b["girth"] for b in summary["blanks"]]
        assert girths and all(157.080 - EXACT < g < female * math.pi / 2 + EXACT for g in girths), girths


@test
def f05_liners_are_taken_off_both_halves(bench):
    summary = bench.figures(bare([{"bend": 60, "radius": 600}], ply(1.5, 12), caul__liner=3), "a")
    close_to(radii(summary, "lower")[0], 597, EXACT, "male")
    close_to(radii(summary, "upper")[0], 621, EXACT, "female")
    close_to(radii(bench.figures(bare(L, ply(1.5, 12), caul__liner=3), "b"), "lower")[0], 57, EXACT, "L")
    tight = [{"line": 340}, {"bend": 90, "radius": 15}, {"line": 340}]
    for liner in (15, 18):
        result = bench.run("check", bench.job(bare(tight, ply(1.5, 12), caul__liner=liner)))
        assert result.status == 3 and "15" in result.errors, result
        assert "lower contact edge" in result.errors, result


@test
def f06_sheathing_makes_a_crown_former_smaller_and_a_hollow_one_larger(bench):
    sheathed = {"kind": "sheathed", "sheathing": [3, 3]}
    for turn, lower, upper in ((60, 594, 600 + 9 + 6), (-60, 606, 600 - 9 - 6)):
        summary = bench.figures(bare([{"bend": turn, "radius": 600}], ply(1, 9), caul=sheathed), "out%d" % turn)
        close_to(radii(summary, "lower")[0], lower, EXACT, "rib")
        close_to(radii(summary, "upper")[0], upper, EXACT, "upper rib")


@test
def f10_an_l_along_one_leg_gets_nothing_on_that_leg(bench):
    by_run = {}
    for pull in (45, -45, 0):
        summary = bench.figures(pressed(L, pull=pull), "out%d" % pull)
        by_run[pull] = summary["press"]["pull"]["runs"]
    for pull, wall, floor in ((45, 0, 2), (-45, 2, 0)):
        close_to(by_run[pull][wall]["angle_deg"]["greatest"], 90, 1e-6, "wall's angle")
        close_to(by_run[pull][wall]["share"]["least"], 0, 1e-8, "wall's share")
        close_to(by_run[pull][floor]["share"]["least"], 1, 1e-8, "floor's share")
        result = bench.run("check", bench.job(pressed(L, pull=pull)))
        assert result.status == 4, "a wall along the pull fails: %r" % result
    for leg in (0, 2):
        close_to(by_run[0][leg]["share"]["least"], math.sqrt(0.5), 1e-8, "leg's share")  # 0.7071


@test
def f10_walls_with_little_draft_are_told_and_the_bisector_offered(bench):
    u = [{"line": 200}, {"bend": 83, "radius": 80}, {"line": 150}, {"bend": 83, "radius": 80}, {"line": 200}]
    summary = bench.figures(job_of(u))
    for wall in (0, 4):
        close_to(summary["press"]["pull"]["runs"][wall]["share"]["least"], 0.121869, 1e-6, "sin 7 degrees")
        close_to(summary["press"]["pull"]["runs"][wall]["angle_deg"]["greatest"], 83, 1e-6, "wall")
    # 70 to 90 - draft (5) is a caution.
    told = [f for f in summary["findings"] if f["verdict"] == "caution" and abs((f["value"] or 0) - 83) < 1e-3]
    assert told and told[0]["advice"], summary["findings"]
    # The least greatest angle of an unequal L is along its bisector: told among the pulls that are compared.
    unequal = bench.figures(job_of(UNEQUAL), "b")["press"]["pull"]["compared"]
    axis = oracle.solve(pressed(UNEQUAL, pull="bisector"))["axis_deg"]
    offered = [c for c in unequal if c["pull"] == "bisector"]
    assert len(offered) == 1, unequal
    close_to(offered[0]["axis_deg"], axis, 1e-6, "bisector")


@test
def f11_an_undercut_is_refused_at_both_ends(bench):
    job = job_of([{"bend": 200, "radius": 300}])
    for command in (("check", bench.job(job)), ("build", bench.job(job), "-o", bench.path("out"))):
        result = bench.run(*command)
        assert result.status == 3, result
        assert "undercut" in result.errors and "10" in result.errors, result
    # Turned, it is worse at one end: 10 + 15.
    result = bench.run("check", bench.job(changed(job, press__pull=15)))
    assert result.status == 3 and "undercut" in result.errors and "25" in result.errors, result


@test
def f12_straight_ends_go_on_and_blanks_carry_the_trim(bench):
    job = bare(L, ply(1.5, 12), panel__trim=25, formers__extend=50)
    summary = bench.figures(job)
    for half in ("lower", "upper"):
        got = lengths(summary, half)
        assert len(got) == 3, got
        close_to(got[0], 340 + 25 + 50, EXACT, half + " first line")
        close_to(got[2], 340 + 25 + 50, EXACT, half + " last line")
    girth = summary["panel"]["girth"]
    close_to(girth["outer"] - girth["inner"], 28.274, EXACT, "girths")  # 18 pi / 2
    close_to(girth["inner"], 680 + 50 + 60 * math.pi / 2, EXACT, "inner girth with trim")
    girths = [b["girth"] for b in summary["blanks"] for _ in range(b["count"])]
    assert len(girths) == 12, summary["blanks"]
    assert all(girth["inner"] - EXACT < g < girth["outer"] + EXACT for g in girths), girths
    for b in summary["blanks"]:
        close_to(b["width"], 500 + 50, EXACT, "blank width")


@test
def an_arc_pulled_past_its_centre_rolls_and_fails(bench):
    result = bench.run("check", bench.job(job_of(ARC, panel__trim=0, press={"method": "two-part", "springback": "none",
                                                                            "pull_at": 5})))
    assert result.status == 4, result


@test
def a_demo_job_of_two_halves_is_the_same_on_every_run(bench):
    a = bench.figures(job_of(S), "a")
    b = bench.figures(job_of(S), "b")
    assert json.dumps(a["press"]) == json.dumps(b["press"])
