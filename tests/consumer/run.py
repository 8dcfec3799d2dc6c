#!/usr/bin/env python3
"""Installs a build, moves what was installed, and uses it from outside: the program, and its libraries from a project of
somebody else's.

    run.py BUILD [WORD...]

WORDs choose tests by their names. The last line reads "N passed, N failed"; the exit status is 0 when none failed.
"""
import functools
import os
import shutil
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True
HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "cli"))

import harness  # noqa: E402
from harness import Bench, differences, test, tree  # noqa: E402

PROJECT = os.path.realpath(os.path.join(HERE, "..", ".."))
JOB = os.path.join(PROJECT, "fixtures", "jobs", "shelf-nosing.toml")
SETTINGS = {}


def output_of(*command, status=0):
    done = subprocess.run(command, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
    assert done.returncode == status, "%s: status %d\n%s" % (" ".join(command), done.returncode, done.stdout[-4000:])
    return done.stdout


@functools.lru_cache(None)
def prefix():
    """Where it was installed, under a name that it was not installed to."""
    first, moved = (os.path.join(SETTINGS["folder"], name) for name in ("first", "moved here"))
    output_of("cmake", "--install", SETTINGS["build"], "--prefix", first)
    os.rename(first, moved)
    return moved


@functools.lru_cache(None)
def consumer():
    """The build folder of the project that uses what was installed."""
    folder = os.path.join(SETTINGS["folder"], "consumer")
    output_of("cmake", "-S", HERE, "-B", folder, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Debug", "-DCMAKE_CXX_FLAGS_DEBUG=-O0",
              "-DCMAKE_PREFIX_PATH=" + prefix())
    return folder


def made(*targets):
    output_of("cmake", "--build", consumer(), "--parallel", "2", "--target", *targets)
    return [os.path.join(consumer(), target) for target in targets]


def installed(bench):
    return Bench(os.path.join(prefix(), "bin", "lamwright"), bench.folder)


def built(bench, out):
    """What that program makes of a job, called from a folder that is neither the job's nor its own."""
    result = bench.run("build", JOB, "-o", bench.path(out), "--despite-fails", "--no-sheets")
    assert result.status == 0, result
    return tree(bench.path(out))


def counts(text):
    last = text.strip().splitlines()[-1].split()
    assert last[1] == "passed," and last[2:] == ["0", "failed"] and int(last[0]) > 0, text
    return int(last[0])


@test
def the_program_its_modules_libraries_and_headers_are_installed_and_nothing_else(bench):
    found = sorted(tree(prefix()))
    for wanted in ("bin/lamwright", "lib/lamwright/lamwright-step.so", "lib/lamwright/lamwright-pdf.so",
                   "lib/liblamwright_kernel.a", "lib/cmake/lamwright/lamwrightConfig.cmake",
                   "include/lamwright/kernel/plugin/registry.hpp", "share/doc/lamwright/copyright",
                   "share/doc/liblamwright-dev/copyright"):
        assert wanted in found, (wanted, found)
    headers = [name for name in found if name.startswith("include/")]
    assert headers and all(name.startswith(("include/lamwright/shared/", "include/lamwright/kernel/",
                                            "include/lamwright/exporters/")) and name.endswith(".hpp")
                           for name in headers), headers
    others = [name for name in found if not name.startswith(("bin/lamwright", "lib/lamwright/", "lib/liblamwright_",
                                                             "lib/cmake/lamwright/", "include/lamwright/", "share/doc/",
                                                             "share/man/", "share/bash-completion/"))]
    assert not others, others


@test
def package_files_know_neither_where_they_were_made_nor_where_they_were_installed(bench):
    files = {name: text for name, text in tree(prefix()).items() if name.startswith("lib/cmake/")}
    assert len(files) >= 5, sorted(files)
    for name, text in files.items():
        for place in (PROJECT, SETTINGS["build"], SETTINGS["folder"]):
            assert place.encode() not in text, (name, place)


@test
def the_installed_program_writes_what_the_one_in_the_build_folder_writes(bench):
    inside, outside = built(bench, "inside"), built(installed(bench), "outside")
    assert "press.step" in inside and "drawings.pdf" in inside and "job-sheet.html" in inside
    assert not differences(inside, outside), differences(inside, outside)


@test
def a_link_to_the_installed_program_finds_the_modules_too(bench):
    link = bench.path("lamwright")
    os.symlink(os.path.join(prefix(), "bin", "lamwright"), link)
    assert "press.step" in built(Bench(link, bench.folder), "out")


@test
def a_press_method_and_an_exporter_of_ones_own_work_in_another_program(bench):
    assert counts(output_of(*made("own_parts"))) == 9


@test
def all_exporters_work_in_another_program(bench):
    assert counts(output_of(*made("all_exporters"))) == 9


@test
def every_public_header_compiles_alone(bench):
    made("headers_alone")
    with open(os.path.join(consumer(), "alone", "all.cpp"), encoding="utf-8") as file:
        assert len(file.readlines()) > 100
    assert len(os.listdir(os.path.join(consumer(), "alone"))) > 10


def main():
    if len(sys.argv) < 2:
        print(__doc__, file=sys.stderr)
        return 2
    build = os.path.realpath(sys.argv[1])
    folder = tempfile.mkdtemp(prefix="press-install-")
    SETTINGS.update(build=build, folder=folder)
    try:
        return harness.run_all(os.path.join(build, "cli", "lamwright"), sys.argv[2:], keep=False)
    finally:
        shutil.rmtree(folder, ignore_errors=True)


if __name__ == "__main__":
    sys.exit(main())
