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
             ("build", job, "-o", "out", "--frobnicate"), ("build", job, job, "-o", "out"), ("check",), ("check", job, "extra"),
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
