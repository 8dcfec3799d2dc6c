"""The shape of summary.json and of what stands beside it."""
import json
import math
import os
import re
import xml.etree.ElementTree as ET

import oracle
from harness import test, tree
from jobs import changed, failing_check, small


def is_number(v):
    return isinstance(v, (int, float)) and not isinstance(v, bool) and math.isfinite(v)


def is_point(v, n):
    return isinstance(v, list) and len(v) == n and all(map(is_number, v))


def is_runs(v):
    return isinstance(v, dict) and isinstance(v.get("runs"), list) and v["runs"] and all(
        is_number(r["length"]) and r["length"] > 0 and is_number(r["turn"]) and
        (r["radius"] is None and r["turn"] == 0 or is_number(r["radius"]) and r["radius"] > 0 and r["turn"] != 0)
        for r in v["runs"])


def summary_of(bench):
    return bench.built(oracle.W2)


@test
def summary_head_and_panel_have_their_keys(bench):
    s = summary_of(bench)
    assert s["schema"] == 1 and s["units"] == "mm" and isinstance(s["title"], str)
    panel = s["panel"]
    assert panel["width"] == 900 and panel["count"] == 1 and is_number(panel["thickness"])
    assert all(is_number(panel["girth"][k]) for k in ("inner", "outer", "neutral"))
    assert is_runs(panel["released"]) and is_runs(panel["pressed"])
    assert is_number(s["springback"]["ratio"]) and isinstance(s["springback"]["source"], str)


@test
def summary_press_has_its_keys(bench):
    press = summary_of(bench)["press"]
    assert press["method"] == "one-part" and isinstance(press["reason"], str)
    assert is_point(press["stations"], 4)
    assert is_runs(press["contact"]["lower"])
    assert len(press["straps"]) == 2
    for strap in press["straps"]:
        assert is_point(strap["leaves"], 2) and is_point(strap["mark"], 2)
        assert is_number(strap["run"]) and is_number(strap["exit_deg"])


@test
def summary_parts_have_their_keys(bench):
    parts = summary_of(bench)["parts"]
    names = [p["name"] for p in parts]
    assert len(set(names)) == len(names), "names are unique"
    assert {"former-lower", "beam", "spacer-block", "panel"} <= {p["kind"] for p in parts}
    known = {"former-lower", "former-upper", "beam", "spacer-block", "fixing-block", "panel", "pressing-beam", "bearer",
             "slat", "template"}
    for p in parts:
        assert p["kind"] in known, p["kind"]
        assert isinstance(p["count"], int) and p["count"] >= 1 and isinstance(p["stock"], str)
        assert is_point(p["size"], 3) and is_point(p["origin"], 2)
        assert is_number(p["volume"]) and p["volume"] > 0 and is_number(p["area"]) and p["area"] > 0
        for h in p["holes"]:
            assert h["kind"] in ("through", "counterbored", "blind"), h
            assert is_number(h["diameter"]) and is_point(h["at"], 3) and is_point(h["axis"], 3)
            assert "depth" in h and (is_number(h["depth"]) if h["kind"] == "blind" else True)
            assert h["kind"] != "through" or h["depth"] is None
            assert abs(math.hypot(*h["axis"]) - 1) < 1e-8
            if h["kind"] == "counterbored":
                assert is_number(h["counterbore"]["diameter"]) and is_number(h["counterbore"]["depth"])
        assert isinstance(p["files"], list) and all(isinstance(f, str) and not f.startswith("/") for f in p["files"])


@test
def summary_glue_and_blanks_have_their_keys(bench):
    s = summary_of(bench)
    assert isinstance(s["glue"], dict) and s["glue"]
    assert s["blanks"]
    # Seven plies of 1.5 with trim: 930 wide; developed at their own middles, 1066.957 + turn * (i - 1/2) * 1.5.
    assert sum(b["count"] for b in s["blanks"]) == 7
    for b in s["blanks"]:
        assert b["ply"] and abs(b["width"] - 930) < 1e-6
    girths = sorted(b["girth"] for b in s["blanks"] for _ in range(b["count"]))
    turn = math.radians(95)
    for i, g in enumerate(girths):
        assert abs(g - (1066.956662729 + turn * (i + 0.5) * 1.5)) < 0.001, girths


@test
def summary_findings_have_their_keys(bench):
    findings = summary_of(bench)["findings"]
    assert findings
    for f in findings:
        assert {"id", "title", "value", "limit", "unit", "verdict", "where", "basis", "advice"} <= set(f), f
        assert f["verdict"] in ("pass", "caution", "fail") and is_number(f["value"]) and f["id"] and f["title"] and f["basis"]
        assert f["advice"] or f["verdict"] == "pass", "a finding says what to change: %s" % f


@test
def check_prints_its_findings_as_json(bench):
    result = bench.run("check", bench.job(oracle.W2), "--json")
    assert result.status in (0, 4), result
    data = json.loads(result.text)
    findings = data["findings"] if isinstance(data, dict) else data
    assert findings and all(f["verdict"] in ("pass", "caution", "fail") for f in findings)
    assert (result.status == 4) == any(f["verdict"] == "fail" for f in findings)


@test
def failed_findings_stand_in_the_summary_of_a_build_despite_them(bench):
    s = bench.built(failing_check())
    failed = [f for f in s["findings"] if f["verdict"] == "fail"]
    assert failed and all(f["value"] > f["limit"] or f["value"] < f["limit"] for f in failed)


@test
def the_list_of_files_is_complete_and_true(bench):
    bench.built(oracle.W2)
    listed = [line for line in open(bench.path("out", "files.txt"), encoding="utf-8").read().splitlines() if line]
    found = set(tree(bench.path("out")))
    missing = found - set(listed) - {"files.txt"}
    assert not missing, "not listed: %s" % sorted(missing)
    for line in listed[1:]:
        assert line in found, "listed but not there: %s" % line
    for name in ("summary.json", "press.step"):
        assert name in found


@test
def parts_have_step_files_and_boards_have_svg(bench):
    for p in bench.built(oracle.W2)["parts"]:
        kinds = {os.path.splitext(f)[1] for f in p["files"]}
        assert ".step" in kinds, p["name"]
        assert p["kind"] not in ("former-lower", "fixing-block") or ".svg" in kinds, p["name"]


@test
def drawings_are_written(bench):
    bench.built(oracle.W2)
    found = tree(bench.path("out"))
    names = ("drawings/press.svg", "drawings/former-lower.svg", "drawings/beam.svg")
    missing = [name for name in names if name not in found]
    assert not missing, missing


@test
def drawings_are_well_formed_in_millimetres(bench):
    bench.built(oracle.W2)
    seen = 0
    for name, content in tree(bench.path("out")).items():
        if not name.endswith(".svg"):
            continue
        root = ET.fromstring(content)
        width, height, box = root.get("width"), root.get("height"), root.get("viewBox")
        assert width.endswith("mm") and height.endswith("mm") and box, name
        sizes = [float(v) for v in box.split()]
        assert abs(float(width[:-2]) - sizes[2]) < 1e-6 and abs(float(height[:-2]) - sizes[3]) < 1e-6, name
        seen += 1
    assert seen >= 3


@test
def no_output_holds_a_negative_zero_or_a_number_that_is_none(bench):
    bench.built(oracle.W1)
    seen = 0
    for name, content in tree(bench.path("out")).items():
        if not name.endswith((".json", ".svg", ".dxf", ".csv")):
            continue
        text = content.decode("utf-8")
        zero = re.search(r"(?<![\w.+-])-0(\.0*)?(?![\w.])", text)
        assert not zero, "%s: %s" % (name, text[max(0, zero.start() - 40):zero.end() + 10])
        word = re.search(r"(?<![A-Za-z])[-+]?(nan|inf|NaN|Infinity)(?![A-Za-z])", text)
        assert not word, "%s: %s" % (name, text[max(0, word.start() - 40):word.end() + 10])
        seen += 1
    assert seen >= 3


@test
def step_files_name_their_schema_and_blank_date(bench):
    bench.built(changed(small(), title="Plain"))
    text = open(bench.path("out", "press.step"), encoding="ascii").read()
    assert text.startswith("ISO-10303-21;") and text.rstrip().endswith("END-ISO-10303-21;")
    assert "AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }" in text
    assert "1970-01-01T00:00:00" in text
    assert text.count("MANIFOLD_SOLID_BREP(") >= 4
    assert "B_SPLINE_SURFACE" not in text and "PCURVE" not in text  # edges of pilots in a curved face are splines


@test
def the_other_step_schema_is_named_without_a_stray_dot(bench):
    bench.built(small(), "out", "--step", "ap242")
    text = open(bench.path("out", "press.step"), encoding="ascii").read()
    assert "AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }" in text
    assert "MIM_LF." not in text


@test
def a_date_comes_from_the_job_or_the_environment_and_never_from_the_clock(bench):
    def header(out):
        return open(bench.path(out, "press.step"), encoding="ascii").read()[:2000]

    bench.built(small(), "a", env={"SOURCE_DATE_EPOCH": "1700000000"})
    assert "2023-11-14" in header("a"), header("a")
    bench.built(changed(small(), date="2024-05-06"), "b", env={"SOURCE_DATE_EPOCH": "1700000000"})
    assert "2024-05-06" in header("b") and "2023-11-14" not in header("b")
