"""The shop notebook: test pieces kept in a CSV file, fitted, and named by a job."""
import csv
import io
import json
import math
import os
import stat
import subprocess

from harness import close_to, entries, limit_file_size, test
from jobs import changed, small

HEADER = "date,layup,glue,thickness,face,to_neutral,pressed,released,note"
KEY = "7 x birch-yellow 1.5 along + glue line 0.1"
# Seven plies of 1.5 and six glue lines of 0.1: 11.1 thick, the neutral line of equal plies in the middle.
THICKNESS, MIDDLE = 11.1, 5.55
NAMED = {"springback": {"notebook": "springback.csv"}}


def read(bench, name):
    with open(bench.path(name), "rb") as file:
        return file.read()


def add(bench, job, pressed, released, *more, **kwargs):
    return bench.run("notebook", "add", job, "--pressed", pressed, "--released", released, *more, **kwargs)


def fitted(pieces):
    """Share and spread of (pressed, released) radii of the neutral line; released None is flat."""
    k = [1 / p for p, _ in pieces]
    lost = [1 / p - (1 / r if r else 0) for p, r in pieces]
    share = sum(a * b for a, b in zip(lost, k)) / sum(a * a for a in k)
    if len(pieces) < 2:
        return share, None
    return share, math.sqrt(sum((a / b - share) ** 2 for a, b in zip(lost, k)) / (len(pieces) - 1))


def shown(bench, *args):
    result = bench.run("notebook", "show", *args, "--json")
    assert result.status == 0 and not result.err, result
    return json.loads(result.text)


def row(pressed, released, note="", layup=KEY, glue="pvac-d3"):
    return ["", layup, glue, THICKNESS, "inner", MIDDLE, pressed, released, note]


def notebook(rows, **style):
    text = io.StringIO()
    writer = csv.writer(text, **style)
    writer.writerow(HEADER.split(","))
    writer.writerows(rows)
    return text.getvalue()


@test
def notebook_commands_explain_themselves(bench):
    for args in (("--help",), ("add", "--help"), ("show", "--help")):
        result = bench.run("notebook", *args)
        assert result.status == 0 and "Usage: lamwright notebook" in result.text and not result.err, (args, result)
    assert "notebook" in bench.run("--help").text


@test
def a_wrong_notebook_command_line_exits_2_and_writes_nothing(bench):
    job = bench.job(small())
    wrong = [(), ("burn",), ("add",), ("add", job), ("add", job, "--pressed", "600"), ("add", job, "--released", "600"),
             ("show",), ("show", "a", "b"), ("add", job, "--pressed", "600", "--released", "round"),
             ("add", job, "--pressed", "flat", "--released", "600"), ("add", job, "--pressed", "", "--released", "600"),
             ("add", job, "--pressed", "4", "--released", "600"), ("add", job, "--pressed", "600", "--released", "2e5"),
             ("add", job, "--pressed", "600,5", "--released", "640"), ("add", job, "--pressed", "600 kg", "--released", "640"),
             ("add", job, "--pressed", "600", "--released", "640", "--date", "2026-02-29"),
             ("add", job, "--pressed", "600", "--released", "640", "--date", "14.3.2026"),
             ("add", job, "--pressed", "600", "--released", "640", "--date", ""),
             ("add", job, "--pressed", "600", "--released", "640", "--note", "bell \x07"),
             ("add", job, "--pressed", "600", "--released", "640", "--file", ""), ("show", "x.csv", "--pressed", "3")]
    seen = 0
    for args in wrong:
        result = bench.run("notebook", *args)
        assert result.status == 2 and not result.out, (args, result)
        assert len(result.errors.strip().splitlines()) == 1, (args, result)
        seen += 1
    assert seen == 21
    assert entries(bench.folder) == ["job.toml"], entries(bench.folder)


@test
def a_piece_begins_a_notebook_beside_the_job(bench):
    job = bench.job(small(), "own/job.toml")
    result = add(bench, job, "600", "612.5", "--date", "2026-03-14", "--note", 'dry, "warm"\nsecond line')
    assert result.status == 0 and not result.err, result
    assert entries(bench.folder) == ["own", "own/job.toml", "own/springback.csv"], entries(bench.folder)
    assert read(bench, "own/springback.csv").decode() == (
        HEADER + "\n2026-03-14," + KEY + ',pvac-d3,11.1,inner,5.55,600,612.5,"dry, ""warm""\nsecond line"\n')
    # Of the neutral line: 1 - 605.55 / 618.05.
    assert "share lost 0.0202" in result.text and "1 piece, share 0.0202; computed 0.018" in result.text, result
    again = add(bench, job, "600", "flat")
    assert again.status == 0 and "2 pieces" in again.text, again
    assert read(bench, "own/springback.csv").decode().endswith("\n," + KEY + ",pvac-d3,11.1,inner,5.55,600,flat,\n")


@test
def another_reader_of_such_files_reads_the_same(bench):
    job = bench.job(small())
    notes = ["", 'say "x"', "a,b", "line\nbreak", " blanks ", "=1+1", "Türblatt 板"]
    for i, note in enumerate(notes):
        assert add(bench, job, 600 + i, 640, "--note", note).status == 0
    with open(bench.path("springback.csv"), newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file, strict=True))
    assert [r["note"] for r in rows] == notes
    assert [float(r["pressed"]) for r in rows] == [600 + i for i in range(7)]
    assert all(float(r["thickness"]) == THICKNESS and float(r["to_neutral"]) == MIDDLE for r in rows)
    want = fitted([(600 + i + MIDDLE, 640 + MIDDLE) for i in range(7)])
    got = shown(bench, "springback.csv")["layups"]
    assert len(got) == 1 and got[0]["pieces"] == 7
    close_to(got[0]["share"], want[0], 1e-9, "share")
    close_to(got[0]["spread"], want[1], 1e-9, "spread")


@test
def lengths_of_pieces_take_units_and_the_face_of_the_job(bench):
    inches = changed(small(), units="in", panel__width=24, panel__profile=[{"bend": 90, "radius": 18}], panel__face="outer",
                     layup__plies=[{"timber": "birch-yellow", "thickness": "1/16 in", "count": 4}], layup__glue_line=0)
    job = bench.job(inches)
    assert add(bench, job, "20", '22 1/2"').status == 0
    assert add(bench, job, "508 mm", "1 ft 10 1/2 in").status == 0
    lines = read(bench, "springback.csv").decode().splitlines()
    assert len(lines) == 3 and lines[1] == lines[2], lines
    # Four plies of 1.5875; the neutral line lies 3.175 inside the outer face.
    assert lines[1] == ",4 x birch-yellow 1.5875 along,pvac-d3,6.35,outer,-3.175,508,571.5,", lines
    close_to(shown(bench, "springback.csv")["layups"][0]["share"], 1 - (508 - 3.175) / (571.5 - 3.175), 1e-9, "share")


@test
def notebooks_are_shown_by_lay_up_with_what_to_write_in_a_job(bench):
    bench.write("shop.csv", notebook([row(600, 640), row(500, 520, layup="6 plies of something"), row(500, "flat"),
                                      row(700, 690, glue="urea")]))
    result = shown(bench, "shop.csv")
    assert result["schema"] == 1 and result["job"] == 'springback = {notebook = "shop.csv"}', result
    names = [(r["layup"], r["glue"], r["pieces"]) for r in result["layups"]]
    assert names == [(KEY, "pvac-d3", 2), ("6 plies of something", "pvac-d3", 1), (KEY, "urea", 1)], names
    first, second, third = result["layups"]
    want = fitted([(600 + MIDDLE, 640 + MIDDLE), (500 + MIDDLE, None)])
    close_to(first["share"], want[0], 1e-9, "share")
    close_to(first["spread"], want[1], 1e-9, "spread")
    # The elastic rule by hand, one modulus: loose sum(t^3), glued sum((to - z)^3 - (from - z)^3) * 4.
    heights = [(i * 1.6 - MIDDLE, i * 1.6 + 1.5 - MIDDLE) for i in range(7)]
    close_to(first["computed"], 7 * 1.5 ** 3 / sum(4 * (b ** 3 - a ** 3) for a, b in heights), 1e-9, "computed")
    assert second["spread"] is None and second["computed"] is None, second
    assert third["share"] < 0, "it closed"
    table = bench.run("notebook", "show", bench.path("shop.csv"))
    assert table.status == 0 and not table.err, table
    assert 'springback = {notebook = "shop.csv"}' in table.text and "6 plies of something" in table.text, table
    assert "lay-up" in table.text.splitlines()[0] and "computed" in table.text.splitlines()[0], table


@test
def lay_ups_of_own_rows_are_computed_when_their_file_is_given(bench):
    bench.write("shop.csv", notebook([row(600, 640, layup="3 x pear 2 along")]))
    bench.write("pear.toml", "[timbers.pear]\nE_along = 9000\nE_across = 700\nshear = 800\npoisson = 0.4\nstrength = 80\n"
                             "density = 690\nhardwood = true\nstructural_ratio = 100\n")
    assert shown(bench, "shop.csv")["layups"][0]["computed"] is None
    close_to(shown(bench, "shop.csv", "--data", "pear.toml")["layups"][0]["computed"], 1 / 9, 1e-9, "computed")
    bench.write("bad.toml", "[timbers.pear]\nE_along = -1\n")
    assert bench.run("notebook", "show", "shop.csv", "--data", "bad.toml").status == 3
    assert bench.run("notebook", "show", "shop.csv", "--data", "absent.toml").status == 5


@test
def a_job_is_pressed_by_its_notebook(bench):
    bench.write("springback.csv", notebook([row(600, 640), row(450, 470), row(450, "flat", glue="urea")]))
    summary = bench.figures(changed(small(), press=NAMED))
    share, spread = fitted([(600 + MIDDLE, 640 + MIDDLE), (450 + MIDDLE, 470 + MIDDLE)])
    got = summary["springback"]
    close_to(got["ratio"], share, 1e-9, "share")
    close_to(got["spread"], spread, 1e-9, "spread")
    assert got["pieces"] == 2, got
    assert got["source"] == "shop notebook, 2 pieces, share %s +- %s" % (("%.4f" % share).rstrip("0"),
                                                                          ("%.4f" % spread).rstrip("0")), got
    bend = [r for r in summary["panel"]["pressed"]["runs"] if r["turn"]][0]
    close_to(bend["radius"], (450 + MIDDLE) * (1 - share) - MIDDLE, 1e-9, "pressed radius")
    # Relative to the job, wherever the program runs.
    assert bench.run("check", bench.path("job.toml"), cwd="/").status == 0
    plain = bench.figures(small(), "plain")["springback"]
    assert plain["spread"] is None and plain["pieces"] == 0, plain


@test
def a_notebook_may_be_begun_for_a_job_that_already_names_it(bench):
    job = bench.job(changed(small(), press={"springback": {"notebook": "shop.csv"}}))
    missing = bench.run("check", job)
    assert missing.status == 5 and "shop.csv" in missing.errors, missing
    assert add(bench, job, 600, 620).status == 0
    assert entries(bench.folder) == ["job.toml", "shop.csv"], "the file that the job names"
    assert bench.run("check", job).status == 0
    other = bench.job(changed(small(), press={"springback": {"notebook": "shop.csv"}}, layup__glue="pvac-d4"), "other.toml")
    lacks = bench.run("check", other)
    assert lacks.status == 3 and len(lacks.errors.strip().splitlines()) == 1, lacks
    assert "(%s, pvac-d4)" % KEY in lacks.errors and "it holds %s, pvac-d3" % KEY in lacks.errors, lacks
    assert add(bench, other, 600, 620).status == 0
    assert bench.run("check", other).status == 0
    assert len(shown(bench, "shop.csv")["layups"]) == 2


@test
def a_piece_that_came_out_flat_leaves_no_curve_to_press(bench):
    job = bench.job(changed(small(), press=NAMED))
    assert add(bench, job, 600, "flat").status == 0
    result = bench.run("check", job)
    assert result.status == 3 and "a share of 1 leaves no curve" in result.errors, result


@test
def what_is_there_is_kept_byte_for_byte(bench):
    job = bench.job(small())
    line = "14/03/2026," + KEY + ",pvac-d3,11.10,Inner,5.55,600,640.0,"
    new = "," + KEY + ",pvac-d3,11.1,inner,5.55,600,612.5,"
    seen = 0
    for before, after in (
            (HEADER + "\n", HEADER + "\n" + new + "\n"),
            (HEADER, HEADER + "\n" + new + "\n"),
            (HEADER + "\n" + line, HEADER + "\n" + line + "\n" + new + "\n"),
            ("\ufeff" + HEADER + "\r\n" + line + "ä\r\n", "\ufeff" + HEADER + "\r\n" + line + "ä\r\n" + new + "\r\n"),
            (HEADER + "\r\n" + line + '"a\nb"', HEADER + "\r\n" + line + '"a\nb"\r\n' + new + "\r\n"),
            (HEADER + ",,\n,,,,,,,,,,\n", HEADER + ",,\n,,,,,,,,,,\n" + new + "\n")):
        bench.write("springback.csv", before)
        result = add(bench, job, 600, 612.5)
        assert result.status == 0, (before, result)
        assert read(bench, "springback.csv").decode() == after, (before, read(bench, "springback.csv"))
        seen += 1
    assert seen == 6


@test
def a_file_that_is_no_notebook_is_refused_and_left_alone(bench):
    job = bench.job(small())
    seen = 0
    for content in (b"", b"a,b\n1,2\n", HEADER.replace(",", ";").encode() + b"\n", b'"open', b"\x00\x01\x02",
                    HEADER.encode("utf-16"), HEADER[:-1].encode() + b"\n", b"note," + HEADER.encode() + b"\n",
                    b"[panel]\nwidth = \"600\"\n"):
        bench.write("shop.csv", content)
        for args in (("add", job, "--pressed", "600", "--released", "640", "--file", "shop.csv"), ("show", "shop.csv")):
            result = bench.run("notebook", *args)
            assert result.status == 5 and not result.out and "is not a shop notebook" in result.errors, (content, result)
            assert len(result.errors.strip().splitlines()) == 1, result
            seen += 1
        assert read(bench, "shop.csv") == content
    assert seen == 18
    assert "save it as CSV with commas" in bench.run("notebook", "show", bench.write("s.csv", HEADER.replace(",", ";"))).errors
    assert entries(bench.folder) == ["job.toml", "s.csv", "shop.csv"]


@test
def a_wrong_row_is_named_by_its_line_and_nothing_is_added(bench):
    job = bench.job(changed(small(), press=NAMED))
    content = notebook([row(600, 640, "two\nlines"), row("600,5", 640)])
    bench.write("springback.csv", content)
    for args in (("notebook", "show", "springback.csv"), ("check", job),
                 ("notebook", "add", job, "--pressed", "600", "--released", "640")):
        result = bench.run(*args)
        assert result.status == 3 and not result.out, (args, result)
        assert 'springback.csv:4: pressed: read "600,5"' in result.errors, (args, result)
    assert read(bench, "springback.csv").decode() == content


@test
def a_faulty_lay_up_adds_no_piece(bench):
    job = bench.job(changed(small(), layup__plies=[{"timber": "no-such-wood", "thickness": 1.5, "count": 7}]))
    result = add(bench, job, 600, 640)
    assert result.status == 3 and "no-such-wood" in result.errors, result
    assert bench.run("notebook", "add", "absent.toml", "--pressed", "600", "--released", "640").status == 5
    assert entries(bench.folder) == ["job.toml"]


@test
def places_that_cannot_hold_a_notebook_exit_5(bench):
    job = bench.job(small())
    os.mkdir(bench.path("folder"))
    seen = 0
    for name in ("folder", "absent/shop.csv", "job.toml/shop.csv", "/proc/shop.csv", "/dev/null", "x" * 300):
        result = add(bench, job, 600, 640, "--file", name)
        assert result.status == 5 and not result.out, (name, result)
        assert len(result.errors.strip().splitlines()) == 1, (name, result)
        seen += 1
    assert seen == 6
    assert bench.run("notebook", "show", "absent.csv").status == 5
    assert bench.run("notebook", "show", "folder").status == 5
    assert entries(bench.folder) == ["folder", "job.toml"]


@test
def a_write_that_fails_leaves_the_notebook_as_it_was(bench):
    job = bench.job(small())
    content = notebook([row(600, 640, "x" * 900)] * 5)
    assert len(content) > 4096
    bench.write("springback.csv", content)
    result = add(bench, job, 600, 640, prepare=limit_file_size(4096), restore=False)
    assert result.status == 5 and not result.out, result
    assert read(bench, "springback.csv").decode() == content
    assert entries(bench.folder) == ["job.toml", "springback.csv"]
    assert add(bench, job, 600, 640).status == 0


@test
def permissions_and_links_of_a_notebook_are_kept(bench):
    job = bench.job(small())
    path = bench.write("store/shop.csv", HEADER + "\n")
    os.chmod(path, 0o640)
    os.symlink(path, bench.path("springback.csv"))
    assert add(bench, job, 600, 640).status == 0
    assert os.path.islink(bench.path("springback.csv"))
    assert stat.S_IMODE(os.stat(path).st_mode) == 0o640
    assert len(read(bench, "store/shop.csv").splitlines()) == 2
    assert add(bench, job, 600, 640, "--file", "new.csv", prepare=lambda: os.umask(0o027)).status == 0
    assert stat.S_IMODE(os.stat(bench.path("new.csv")).st_mode) == 0o640


@test
def pieces_added_at_one_time_are_all_kept(bench):
    job = bench.job(small())
    running = [bench.start("notebook", "add", job, "--pressed", str(600 + i), "--released", "700") for i in range(24)]
    for process in running:
        try:
            assert process.wait(60) == 0
        except subprocess.TimeoutExpired:
            process.kill()
            raise
    rows = list(csv.DictReader(io.StringIO(read(bench, "springback.csv").decode())))
    assert sorted(float(r["pressed"]) for r in rows) == [600 + i for i in range(24)]
    assert entries(bench.folder) == ["job.toml", "springback.csv"]


@test
def rows_from_any_spreadsheet_fit_alike(bench):
    rows = [row(600, 640), row(480, 505), row(900, 1000)]
    want = fitted([(600 + MIDDLE, 640 + MIDDLE), (480 + MIDDLE, 505 + MIDDLE), (900 + MIDDLE, 1000 + MIDDLE)])
    seen = 0
    for style in ({}, {"quoting": csv.QUOTE_ALL}, {"lineterminator": "\n"}, {"quoting": csv.QUOTE_NONNUMERIC}):
        for mark in ("", "\ufeff"):
            bench.write("shop.csv", mark + notebook(rows, **style))
            got = shown(bench, "shop.csv")["layups"]
            assert len(got) == 1, got
            close_to(got[0]["share"], want[0], 1e-9, "share")
            close_to(got[0]["spread"], want[1], 1e-9, "spread")
            seen += 1
    assert seen == 8
