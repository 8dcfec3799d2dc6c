"""Command line, exit statuses, help, and what the light commands load."""
import glob
import os
import re
import signal
import time

from harness import Skip, entries, test, tree
from jobs import changed, collapsing, failing_check, small

COMMANDS = ("build", "check", "measure", "list", "start")


@test
def every_command_explains_itself(bench):
    for args in [("--help",)] + [(c, "--help") for c in COMMANDS]:
        result = bench.run(*args)
        assert result.status == 0 and "lamwright" in result.text and not result.err, (args, result)
        if len(args) > 1:
            assert args[0] in result.text, (args, result)


@test
def the_version_is_one_line(bench):
    result = bench.run("--version")
    assert result.status == 0 and re.fullmatch(r"lamwright \d+\.\d+\.\d+\S*\n", result.text), result


@test
def a_wrong_command_line_exits_2_with_one_line_and_nothing_on_stdout(bench):
    job = bench.job(small())
    wrong = [(), ("bend",), ("--bend",), ("build",), ("build", job), ("build", job, "-o"), ("build", "-o", "out"),
             ("build", job, "-o", "out", "--frobnicate"), ("build", job, job, "-o", "out", "--open"), ("check",), ("check", job, "--csv", "--json"),
             ("check", job, "--json=maybe"), ("measure",), ("list",), ("list", "shoes"), ("list", "timbers", "glues"), ("start",),
             ("start", "banana"), ("build", job, "-o", "out", "--step", "ap203"), ("build", job, "-o", "out", "-o", "other"),
             ("build", job, "-o", "")]
    seen = 0
    for args in wrong:
        result = bench.run(*args)
        assert result.status == 2, (args, result)
        assert not result.out, (args, result)
        assert args == () or len(result.errors.strip().splitlines()) == 1, (args, result)
        seen += 1
    assert seen == 21
    assert not os.path.exists(bench.path("out"))


@test
def lists_show_what_is_known_with_sources(bench):
    for what, name in (("methods", "one-part"), ("exporters", "step"), ("timbers", "birch-yellow"), ("boards", "18"),
                       ("glues", "pvac-d3"), ("cauls", "slatted-hardwood-28"), ("straps", "50")):
        result = bench.run("list", what)
        assert result.status == 0 and name in result.text and not result.err, (what, result)
    for what in ("timbers", "boards", "glues", "cauls", "straps"):
        assert "source" in bench.run("list", what).text.lower(), what


TRADE_TABLES = ("timbers", "bends", "boards", "glues", "cauls", "straps", "classes", "fasteners")
PEAR = """[timbers.pear]
label = "Pear"
E_along = 9000
E_across = 700
shear = 800
poisson = 0.4
strength = 80
density = 690
hardwood = true
structural_ratio = 100
"""


@test
def every_trade_table_is_listed_with_figures_units_and_sources(bench):
    rows = 0
    for table in TRADE_TABLES:
        result = bench.run("list", table)
        assert result.status == 0 and not result.err, (table, result)
        lines = result.text.splitlines()
        assert len(lines) >= 12 and len(lines) % 3 == 0, (table, result)
        for name, figures, source in zip(lines[::3], lines[1::3], lines[2::3]):
            assert name[0] != " " and len(name.split(None, 1)) == 2, "a name and a label: %r" % name
            assert figures[0] == " " and re.search(r"\d (mm|MPa|N|g/m2)\b", figures), figures
            assert re.match(r" +source: \S", source), source
            rows += 1
    assert rows >= 80, rows
    assert "E_along 15290 MPa" in bench.run("list", "timbers").text
    assert "sheet [2440, 1220] mm" in bench.run("list", "boards").text


@test
def fields_of_every_trade_table_are_listed(bench):
    result = bench.run("list", "fields")
    assert result.status == 0 and not result.err, result
    for table in TRADE_TABLES:
        assert re.search(r"^%s +source " % table, result.text, re.M), table
    assert re.search(r"^timbers +E_along +needs it +100 to 50000 MPa +modulus", result.text, re.M), result


@test
def own_trade_rows_are_listed_with_their_file(bench):
    bench.write("mine.toml", PEAR + '[straps.strap-50]\ntension = 3100\nsource = "weighed"\n')
    timbers = bench.run("list", "timbers", "--data", "mine.toml")
    assert timbers.status == 0 and re.search(r"^pear +Pear$", timbers.text, re.M), timbers
    assert "source: own data (mine.toml)" in timbers.text and "birch-yellow" in timbers.text
    straps = bench.run("list", "straps", "--data", "mine.toml")
    assert "tension 3100 N" in straps.text and "source: weighed; the rest: LC 2500 daN" in straps.text, straps
    assert "rating 25000 N" in straps.text and "tension 3500 N" not in straps.text, straps
    assert "pear" not in bench.run("list", "timbers").text


@test
def rows_given_to_the_command_come_on_top_of_the_job_s(bench):
    bench.write("own/pear.toml", PEAR)
    bench.write("more.toml", "[timbers.pear]\ndensity = 700\n")
    bench.write("strap.toml", "[straps.strap-50]\ntension = 3100\n")
    # The job's file lies beside the job, --data where the program runs.
    job = bench.job(changed(small(), data="pear.toml",
                            layup__plies=[{"timber": "pear", "thickness": 1.5, "count": 7}]), "own/job.toml")
    assert bench.run("check", job).status == 0
    plain = bench.run("check", job, "--json")
    changed_strap = bench.run("check", job, "--json", "--data", "more.toml", "--data", "strap.toml")
    assert plain.status == 0 and changed_strap.status == 0, changed_strap
    assert plain.out != changed_strap.out, "3100 N in place of 3500 changes the pressure"
    twice = bench.run("check", job, "--json", "--data", "more.toml", "--data", "strap.toml")
    assert twice.out == changed_strap.out
    built = bench.run("build", job, "-o", "out", "--despite-fails", "--data", "strap.toml")
    assert built.status == 0 and os.path.isfile(bench.path("out", "summary.json")), built
    alone = changed(small(), layup__plies=[{"timber": "pear", "thickness": 1.5, "count": 7}])
    assert bench.run("check", bench.job(alone)).status == 3
    assert bench.run("check", bench.job(alone), "--data", "own/pear.toml").status == 0


@test
def a_job_may_name_several_files_of_rows(bench):
    bench.write("pear.toml", PEAR)
    bench.write("strap.toml", "[straps.strap-50]\ntension = 3100\n")
    plies = [{"timber": "pear", "thickness": 1.5, "count": 7}]
    job = changed(small(), layup__plies=plies, straps__kind="strap-50")
    both = bench.run("check", bench.job(changed(job, data=["pear.toml", "strap.toml"])), "--json")
    by_option = bench.run("check", bench.job(job), "--json", "--data", "pear.toml", "--data", "strap.toml")
    assert both.status == 0 and both.out == by_option.out, (both, by_option)


@test
def wrong_trade_rows_exit_3_and_missing_files_5_with_one_line_each(bench):
    bench.write("typo.toml", PEAR + "E_alnog = 3\n")
    bench.write("broken.toml", "[timbers.pear\n")
    bench.write("binary.toml", b"\xff\xfe[\x00")
    job = bench.job(small())
    in_job = bench.job(changed(small(), data="typo.toml"), "in-job.toml")
    gone_in_job = bench.job(changed(small(), data="gone.toml"), "gone-in-job.toml")
    wrong = [(("list", "timbers", "--data", "typo.toml"), 3, 'typo.toml:11:11: timbers.pear.E_alnog: is not a field of the timbers '
              'table; did you mean "E_along"?'),
             (("check", job, "--data", "typo.toml"), 3, "E_alnog"), (("check", in_job), 3, "typo.toml:11:11"),
             (("build", job, "-o", "out", "--data", "typo.toml"), 3, "E_alnog"),
             (("check", job, "--data", "broken.toml"), 3, "broken.toml:1:14"),
             (("list", "straps", "--data", "binary.toml"), 3, "UTF-16"),
             (("list", "timbers", "--data", "gone.toml"), 5, "gone.toml: cannot be read: No such file or directory"),
             (("check", job, "--data", "gone.toml"), 5, "gone.toml"), (("check", gone_in_job), 5, "gone.toml"),
             (("build", job, "-o", "out", "--data", "gone.toml"), 5, "gone.toml"),
             (("list", "timbers", "--data", bench.folder), 5, "Is a directory"),
             (("list", "timbers", "--data", ""), 2, "--data FILE is empty"), (("list", "timbers", "--data"), 2, "--data")]
    seen = 0
    for args, status, text in wrong:
        result = bench.run(*args)
        assert result.status == status, (args, result)
        assert not result.out and len(result.errors.strip().splitlines()) == 1 and text in result.errors, (args, result)
        seen += 1
    assert seen == 13
    assert not os.path.exists(bench.path("out"))


@test
def jobs_to_begin_from_can_be_built(bench):
    for shape in ("arch", "ell", "u", "ess", "flat"):
        start = bench.run("start", shape)
        assert start.status == 0 and start.out and not start.err, (shape, start)
        result = bench.build(start.text, shape)
        assert result.status == 0, (shape, result)
        assert os.path.isfile(bench.path(shape, "summary.json"))


@test
def a_failed_check_exits_4_and_builds_nothing(bench):
    job = failing_check()
    result = bench.build(job)
    assert result.status == 4, result
    assert not os.path.exists(bench.path("out"))
    assert bench.run("check", bench.job(job), "--json").status == 4
    assert bench.build(job, "out", "--despite-fails").status == 0 and os.path.isfile(bench.path("out", "summary.json"))


@test
def a_sound_job_exits_0(bench):
    checked = bench.run("check", bench.job(small()))
    assert checked.status == 0 and "pass" in checked.text, checked
    result = bench.build(small())
    assert result.status == 0 and not re.search("(?i)error", result.errors), result


@test
def geometry_that_does_not_exist_exits_3(bench):
    result = bench.build(collapsing())
    assert result.status == 3, result
    for word in ("bend", "30", "38", "collapses"):
        assert word in result.errors, result
    assert bench.run("check", bench.job(collapsing())).status == 3


@test
def files_that_cannot_be_read_exit_5(bench):
    os.makedirs(bench.path("folder"))
    for args in (("build", "missing.toml", "-o", "out"), ("check", "missing.toml"), ("check", "folder"), ("measure", "folder")):
        result = bench.run(*args)
        assert result.status == 5, (args, result)
        assert len(result.errors.strip().splitlines()) == 1 and args[1] in result.errors, (args, result)


@test
def a_full_stdout_exits_5(bench):
    job = bench.job(small())
    for args in (("list", "timbers"), ("start", "arch"), ("check", job), ("check", job, "--json"), ("measure", job), ("--help",),
                 ("--version",)):
        with open("/dev/full", "wb") as full:
            result = bench.run(*args, stdout=full)
        assert result.status == 5, (args, result)


@test
def light_commands_load_no_solid_kernel(bench):
    job = bench.job(small())
    for i, args in enumerate([("check", job), ("measure", job), ("list", "timbers"), ("start", "arch"), ("--version",)]):
        log = bench.path("loader%d" % i)
        result = bench.run(*args, env={"LD_DEBUG": "files", "LD_DEBUG_OUTPUT": log})
        assert result.status == 0 and result.out, (args, result)
        traces = "".join(open(name, errors="replace").read() for name in glob.glob(log + ".*"))
        if not traces:
            raise Skip("the loader gives no trace")
        assert "libc.so" in traces, "the trace shows what is loaded"
        loaded = sorted(set(re.findall(r"libTK\w+", traces)))
        assert not loaded, "%s loads %s" % (args[0], loaded)


@test
def the_trace_of_a_build_shows_the_solid_kernel(bench):
    # Proves that the test above would see it.
    log = bench.path("loader")
    bench.run("build", bench.job(small()), "-o", bench.path("out"), "--despite-fails", env={"LD_DEBUG": "files", "LD_DEBUG_OUTPUT": log})
    traces = "".join(open(name, errors="replace").read() for name in glob.glob(log + ".*"))
    assert "libTK" in traces


@test
def interruption_exits_130_or_143_and_leaves_the_folder_as_it_was(bench):
    job = bench.job(changed(small(), panel__width=6000, formers__spacing={"count": 80}))
    bench.run("build", job, "-o", bench.path("out"), "--despite-fails")
    before_tree, before = tree(bench.path("out")), entries(bench.folder)
    seen = {}
    for number, status in ((signal.SIGINT, 130), (signal.SIGTERM, 143)):
        for delay in (0.01, 0.02, 0.03, 0.05, 0.07, 0.09, 0.12, 0.16, 0.2, 0.3):
            process = bench.start("build", job, "-o", bench.path("out"), "--despite-fails")
            time.sleep(delay)
            process.send_signal(number)
            ended = process.wait(timeout=60)
            assert ended in (0, status, -number), "ended with %s" % ended  # a signal before main() is the system's
            assert tree(bench.path("out")) == before_tree and entries(bench.folder) == before, "left behind: %s" % entries(bench.folder)
            if ended == status:
                seen[number] = seen.get(number, 0) + 1
    assert len(seen) == 2, "no run was interrupted while it worked: %s" % seen
