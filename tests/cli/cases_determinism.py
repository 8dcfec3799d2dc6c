"""The same job gives the same bytes in every process, locale, time zone, place and terminal."""
import os
import pty
import re
import shutil
import subprocess
import threading
import time

import locales
from harness import differences, test, tree
from jobs import changed, small

JOBS = os.path.realpath(os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "fixtures", "jobs"))
# One mould, two moulds with slats, two crowned halves.
WHOLE = ("reading-desk", "seat-end", "table-leaf")


def read_all(handle, into):
    while True:
        try:
            got = os.read(handle, 65536)
        except OSError:  # nobody writes any more
            return
        if not got:
            return
        into.append(got)


def on_a_terminal(bench, arguments, cwd, env, prepare):
    """Runs the program with output and messages on a terminal; status and what was shown."""
    ours, theirs = pty.openpty()
    shown = []
    reader = threading.Thread(target=read_all, args=(ours, shown))
    process = subprocess.Popen([bench.program, *arguments], cwd=cwd, env=env, stdin=subprocess.DEVNULL, stdout=theirs, stderr=theirs,
                               preexec_fn=prepare)
    os.close(theirs)
    reader.start()
    status = process.wait(timeout=300)
    reader.join()
    os.close(ours)
    return status, b"".join(shown).decode("utf-8").replace("\r\n", "\n")


def on_one_processor(mask):
    def prepare():
        os.umask(mask)
        os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
    return prepare


def without_stages(text):
    return re.sub(r"^  [^\n]* \.\.\.\n", "", text, flags=re.M)


@test
def three_jobs_give_the_same_tree_in_every_locale_time_zone_place_and_terminal(bench):
    os.makedirs(bench.path("tmp"))
    german = dict(locales.in_force("de_DE"), TZ="Pacific/Kiritimati", HOME="/nonexistent", TMPDIR="/nonexistent", MALLOC_PERTURB_="165",
                  PATH="/usr/bin:/bin", TERM="xterm", COLUMNS="40")
    turkish = dict(locales.in_force("tr_TR"), TZ="America/St_Johns", TMPDIR=bench.path("tmp"), MALLOC_PERTURB_="90", USER="nobody")
    compared = 0
    for name in WHOLE:
        shutil.rmtree(bench.path("one"), ignore_errors=True)
        plain = bench.run("build", name + ".toml", "-o", bench.path("one"), cwd=JOBS, prepare=lambda: os.umask(0o022), timeout=300)
        assert plain.status == 0, plain
        first = tree(bench.path("one"))
        assert {"drawings.pdf", "templates.pdf", "press.step", "press.glb", "job-sheet.html", "sheets/1.dxf"} <= set(first), sorted(first)
        status, shown = on_a_terminal(bench, ["build", os.path.join(JOBS, name + ".toml"), "-o", "two"], bench.folder, german,
                                      on_one_processor(0o077))
        assert status == 0, shown
        again = bench.run("build", os.path.join("..", os.path.basename(JOBS), name + ".toml"), "-o", bench.path("three"), cwd=JOBS, env=turkish,
                          prepare=lambda: os.umask(0), timeout=300)
        assert again.status == 0, again
        assert "moving into place" in shown and "moving into place" not in plain.errors + again.errors
        for where, text in (("two", without_stages(shown)), ("three", again.text)):
            assert text.replace("in two\n", "in one\n").replace(bench.path(where), "one") == plain.text.replace(bench.path("one"), "one"), text
            other = tree(bench.path(where))
            assert not differences(first, other), (name, where, differences(first, other))
            compared += len(other)
            shutil.rmtree(bench.path(where))
    assert compared >= 6 * 40, compared


@test
def outputs_are_the_same_bytes_whatever_alone_is_different(bench):
    job = bench.job(changed(small(), title="Türblatt"))
    bench.run("build", job, "-o", bench.path("first"), "--despite-fails", "--no-sheets")
    first = tree(bench.path("first"))
    assert len(first) > 5
    os.makedirs(bench.path("sub", "folder"))
    time.sleep(1.1)  # a wall clock in seconds would show
    worlds = [(locales.in_force("de_DE"), None), (locales.in_force("tr_TR"), None), ({"TZ": "Pacific/Kiritimati"}, None),
              ({"TZ": "America/Los_Angeles", "LC_ALL": "C"}, None), ({}, bench.path("sub", "folder")),
              ({"HOME": "/nonexistent", "USER": "nobody", "TMPDIR": "/nonexistent"}, None)]
    for i, (env, cwd) in enumerate(worlds):
        result = bench.run("build", job, "-o", bench.path("again%d" % i), "--despite-fails", "--no-sheets", env=env, cwd=cwd)
        assert result.status == 0, (env, result)
        changed_files = differences(first, tree(bench.path("again%d" % i)))
        assert not changed_files, (env, cwd, changed_files)
    relative = bench.run("build", "job.toml", "-o", "relative", "--despite-fails", "--no-sheets")
    assert relative.status == 0 and not differences(first, tree(bench.path("relative")))
    shutil.copy(job, bench.path("sub", "other name.toml"))
    bench.run("build", bench.path("sub", "other name.toml"), "-o", bench.path("renamed"), "--despite-fails", "--no-sheets")
    assert not differences(first, tree(bench.path("renamed"))), "the job file's name shows"


@test
def what_is_printed_and_drawn_of_a_profile_is_the_same_in_every_locale(bench):
    curves = os.path.join(JOBS, "..", "curves")
    worlds = [{}, locales.in_force("de_DE"), locales.in_force("tr_TR")]
    commands = [["check", os.path.join(JOBS, "desk-front.toml")], ["check", os.path.join(JOBS, "back-rest.toml"), "--json"], ["list", "timbers"],
                ["start", "arch"], ["fit", os.path.join(curves, "alcove.csv"), "--tolerance", "0.6", "-o", "drawn.svg"],
                ["measure", '{svg = "%s", path = "inner"}' % os.path.join(curves, "counter.svg"), "-o", "drawn.svg"]]
    seen = 0
    for command in commands:
        found = []
        for env in worlds:
            result = bench.run(*command, env=env)
            assert result.status == 0, (command, result)
            found.append((result.out, result.err, tree(bench.folder).get("drawn.svg")))
        assert found[1] == found[0] and found[2] == found[0], command
        seen += 1
    assert seen == 6
