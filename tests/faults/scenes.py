"""What is run under faults: builds, the notebook, drawings of profiles."""
import os
import re
import subprocess
from typing import Callable, NamedTuple

from rig import KINDS, Scene

FIXTURES = os.path.realpath(os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "fixtures"))
LIGHT = ("--no-sheets", "--only", "json,csv")
# Of files they tell or change nothing; `syscall` is how threads wait for one another.
LEFT_ALONE = {"umask", "isatty", "syscall"}


def write(path, text):
    os.makedirs(os.path.dirname(path), exist_ok=True)
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)


def fixture(*names):
    with open(os.path.join(FIXTURES, *names), encoding="utf-8") as file:
        return file.read()


def small_job(title="Nosing"):
    return re.sub(r'title = ".*"', 'title = "%s"' % title, fixture("jobs", "shelf-nosing.toml"))


def run(rig, *arguments, cwd):
    done = subprocess.run([rig.program, *arguments], cwd=cwd, env=rig.environment(), stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL,
                          stderr=subprocess.PIPE)
    assert done.returncode == 0, done.stderr


def with_own_files(folder):
    """What a user may have put into an output: files, one in a folder of ours, links; and neighbours outside."""
    write(os.path.join(folder, "out", "notes.txt"), "mine\n")
    write(os.path.join(folder, "out", ".hidden"), "mine\n")
    write(os.path.join(folder, "out", "lists", "prices.txt"), "mine too\n")
    write(os.path.join(folder, "out", "sketches", "first", "edge.txt"), "mine as well\n")
    write(os.path.join(folder, "beside", "keep.txt"), "a neighbour\n")
    os.chmod(os.path.join(folder, "out", "notes.txt"), 0o600)
    os.symlink("notes.txt", os.path.join(folder, "out", "newest"))
    os.symlink("../beside", os.path.join(folder, "out", "neighbours"))


def earlier(rig, *options):
    """An output of another job in place/out, with files of the user's; the job to build in jobs/."""
    def prepare(folder):
        write(os.path.join(folder, "jobs", "job.toml"), small_job("Second nosing"))
        write(os.path.join(folder, "first.toml"), small_job("First nosing").replace("width = 150", "width = 140"))
        os.makedirs(os.path.join(folder, "place"))
        run(rig, "build", "first.toml", "-o", "place/out", *options, cwd=folder)
        os.remove(os.path.join(folder, "first.toml"))
        with_own_files(os.path.join(folder, "place"))
    return prepare


def jobs_alone(folder):
    write(os.path.join(folder, "jobs", "job.toml"), small_job())
    os.makedirs(os.path.join(folder, "place"))


def build_over(rig):
    """build over an earlier output"""
    return Scene(rig, build_over.__doc__, ["build", "jobs/job.toml", "-o", "place/out", *LIGHT],
                 earlier(rig, "--no-sheets", "--only", "json,csv,dxf"))


def build_new(rig):
    """build into new folders"""
    return Scene(rig, build_new.__doc__, ["build", "jobs/job.toml", "-o", "place/a/b/out", *LIGHT], jobs_alone)


def build_into_empty(rig):
    """build into an empty folder"""
    def prepare(folder):
        jobs_alone(folder)
        os.makedirs(os.path.join(folder, "place", "out"))
    return Scene(rig, build_into_empty.__doc__, ["build", "jobs/job.toml", "-o", "place/out", *LIGHT], prepare)


def build_whole(rig):
    """build of solids and printed sheets over an earlier output"""
    return Scene(rig, build_whole.__doc__, ["build", "jobs/job.toml", "-o", "place/out", "--no-sheets", "--only", "step,pdf,json"],
                 earlier(rig, "--no-sheets", "--only", "json,csv,step"))


def inputs(rig):
    """build from a job that names other files"""
    def prepare(folder):
        job = fixture("jobs", "alcove-lining.toml").replace("../curves", ".").replace("schema = 1", 'schema = 1\ndata = "rows.toml"')
        write(os.path.join(folder, "jobs", "job.toml"), job + '\n[press]\nspringback = {notebook = "springback.csv"}\n')
        write(os.path.join(folder, "jobs", "alcove.csv"), fixture("curves", "alcove.csv"))
        write(os.path.join(folder, "jobs", "rows.toml"), fixture("shop", "rows.toml"))
        write(os.path.join(folder, "jobs", "prices.toml"), fixture("shop", "prices.toml"))
        run(rig, "notebook", "add", "jobs/job.toml", "--pressed", "600", "--released", "612", cwd=folder)
        os.makedirs(os.path.join(folder, "place"))
    return Scene(rig, inputs.__doc__, ["build", "jobs/job.toml", "-o", "place/out", "--data", "jobs/prices.toml", "--despite-fails", *LIGHT],
                 prepare, below="jobs")


def notebook_new(rig):
    """notebook add where there is none"""
    def prepare(folder):
        write(os.path.join(folder, "place", "job.toml"), small_job())
    return Scene(rig, notebook_new.__doc__, ["notebook", "add", "place/job.toml", "--pressed", "600", "--released", "612"], prepare)


def notebook_again(rig):
    """notebook add to one that is there"""
    def prepare(folder):
        write(os.path.join(folder, "jobs", "job.toml"), small_job())
        os.makedirs(os.path.join(folder, "place"))
        run(rig, "notebook", "add", "jobs/job.toml", "--pressed", "500", "--released", "flat", "--file", "place/own.csv", cwd=folder)
        os.chmod(os.path.join(folder, "place", "own.csv"), 0o640)
        write(os.path.join(folder, "place", "other.csv"), "not a notebook\n")
    return Scene(rig, notebook_again.__doc__,
                 ["notebook", "add", "jobs/job.toml", "--pressed", "600", "--released", "612", "--file", "place/own.csv"], prepare)


def sheet(rig, name, arguments):
    def prepare(folder):
        write(os.path.join(folder, "curves", "alcove.csv"), fixture("curves", "alcove.csv"))
        write(os.path.join(folder, "place", "sheet.svg"), "<svg/>\n")
    return Scene(rig, name, arguments, prepare)


def measured(rig):
    """measure that draws over a file"""
    return sheet(rig, measured.__doc__, ["measure", "[{line = 120}, {bend = 70, radius = 380}]", "-o", "place/sheet.svg"])


def fitted(rig):
    """fit that draws over a file"""
    return sheet(rig, fitted.__doc__, ["fit", "curves/alcove.csv", "--tolerance", "0.6", "-o", "place/sheet.svg"])


EVERY = 10 ** 9


class Turn(NamedTuple):
    """A scene, how many calls of a kind a bounded run and a whole one take, and which kinds a bounded one."""

    scene: Callable
    few: int
    most: int = EVERY
    kinds: tuple = KINDS


ALL = (Turn(build_over, 24), Turn(build_new, 8), Turn(build_into_empty, 4),
       Turn(build_whole, 3, 16, ("open-write", "write", "close", "rename", "link")), Turn(inputs, 6), Turn(notebook_new, 6),
       Turn(notebook_again, 8), Turn(measured, 6), Turn(fitted, 3))

FILE_CALLS = re.compile(
    r"(f?open(64)?|openat(64)?|creat(64)?|mk(d|s|os)temp(64)?|p?read(64|v)?|p?write(64|v)?|readv|writev|sendfile(64)?|copy_file_range|close|fclose|"
    r"f(data)?sync|f?truncate(64)?|rename(at2?)?|link(at)?|symlink(at)?|unlink(at)?|remove|mkdir(at)?|rmdir|(fd)?opendir|readdir(64)?|flock|lockf|"
    r"l?f?chmod(at)?|l?f?chown(at)?|[lf]?stat(at|x)?(64)?|access|faccessat|eaccess|realpath|readlink(at)?|utimensat|syscall)")


def names_of(file, option):
    listed = subprocess.run(["nm", "-D", option, file], check=True, capture_output=True, text=True).stdout
    return {line.split()[-1].split("@")[0] for line in listed.splitlines()}


def unwatched(program, library):
    """File calls of the program that the library does not stand in for; nothing when there are none."""
    called = {name for name in names_of(program, "--undefined-only") if FILE_CALLS.fullmatch(name)}
    assert {"open", "write", "close"} <= called, called
    return ", ".join(sorted(called - names_of(library, "--defined-only") - LEFT_ALONE))
