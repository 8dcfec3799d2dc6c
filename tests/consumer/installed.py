"""What the tests of an installed lamwright stand on: one prefix and one project that uses it, made when first asked for."""
import functools
import os
import subprocess

from harness import Bench, tree

HERE = os.path.dirname(os.path.abspath(__file__))
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
