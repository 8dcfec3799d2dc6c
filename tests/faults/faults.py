#!/usr/bin/env python3
"""Lets the program's file calls fail, one after the other, and looks at what it leaves behind.

    faults.py PROGRAM [bounded|all] [--library FILE] [WORD...]

Whatever fails, the output is the earlier one or the new one, whole, and the user's own files are in it. `bounded` takes
some calls of the frequent kinds, `all` takes every call of every kind, once and from then on (of builds with solids and
printed sheets some). WORDs choose scenes by their names. The last line reads "N passed, N failed".
"""
import argparse
import errno
import itertools
import os
import shutil
import signal
import sys
import tempfile

sys.dont_write_bytecode = True
sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))

import crowds  # noqa: E402
import disks  # noqa: E402
import meanwhile  # noqa: E402
import scenes  # noqa: E402
from rig import KINDS, Fault, Rig  # noqa: E402

ERRORS = {
    "open-read": (errno.EACCES, errno.EMFILE, errno.EIO), "open-write": (errno.EACCES, errno.EMFILE, errno.ENOSPC),
    "open-folder": (errno.EACCES, errno.EMFILE), "read": (errno.EIO, errno.EINTR), "write": (errno.EIO, errno.ENOSPC, errno.EINTR),
    "close": (errno.EIO,), "sync": (errno.EIO, errno.ENOSPC), "truncate": (errno.EIO,), "rename": (errno.EACCES, errno.EIO, errno.EINVAL),
    "link": (errno.EPERM, errno.EMLINK, errno.EIO), "symlink": (errno.EPERM,), "unlink": (errno.EACCES, errno.EIO),
    "rmdir": (errno.EACCES, errno.EIO), "mkdir": (errno.EACCES, errno.ENOSPC), "readdir": (errno.EIO,),
    "flock": (errno.EWOULDBLOCK, errno.ENOLCK), "chmod": (errno.EPERM,), "stat": (errno.EACCES, errno.EIO)}
SIGNALS = (signal.SIGTERM, signal.SIGINT, signal.SIGKILL)
FOR_EVER = 10 ** 9


def some(calls, most):
    """The numbers of all calls, or so many of them evenly, the first and the last among them."""
    if calls <= most:
        return range(1, calls + 1)
    return sorted({1 + round(i * (calls - 1) / (most - 1)) for i in range(most)})


def faults_of(kind, calls, most, lasting):
    for at, error in itertools.product(some(calls, most), ERRORS[kind]):
        yield Fault(kind, at, errno=error)
        if lasting and error != errno.EINTR:
            yield Fault(kind, at, errno=error, until=FOR_EVER)
    if kind == "write":
        for at in some(calls, most):
            yield Fault(kind, at, short=1)
        yield Fault(kind, 1, short=1, until=FOR_EVER)


def signals_of(kind, calls, most):
    for at, number in itertools.product(some(calls, most), SIGNALS):
        yield Fault(kind, at, signal=int(number))


class Count:
    def __init__(self):
        self.passed = self.failed = self.faults = self.survived = 0

    def check(self, name, problem):
        if problem:
            self.failed += 1
            print("FAILED: %s: %s" % (name, problem), flush=True)
        else:
            self.passed += 1

    def group(self, scene, what, calls, faults):
        """One check: all faults of a kind in one scene."""
        problems, through, number = [], 0, 0
        for fault in faults:
            problem, whole = scene.after_fault(fault)
            number += 1
            through += whole
            if problem:
                problems.append("%s: %s" % (" ".join("%s=%s" % pair for pair in fault.environment().items()), problem))
        self.faults += number
        self.survived += through
        print("%s, %s: %d calls, %d faults, %d of them left the old, %d the new" % (scene.name, what, calls, number, number - through, through),
              flush=True)
        self.check("%s, %s" % (scene.name, what), "" if not problems else "%d faults\n  %s" % (len(problems), "\n  ".join(problems[:5])))


def try_scene(count, scene, kinds, most, lasting):
    for kind in kinds:
        if scene.calls[kind]:
            count.group(scene, kind, scene.calls[kind], faults_of(kind, scene.calls[kind], most, lasting))
    every = sum(number for kind, number in scene.calls.items() if kind != "stage")
    count.group(scene, "signals at calls", every, signals_of("any", every, most))
    if scene.calls["stage"] > 1:
        count.group(scene, "signals at stages", scene.calls["stage"], signals_of("stage", scene.calls["stage"], most))
    if scene.calls["write"]:
        steps = min(most, 40)
        rooms = sorted({0, 1, scene.written - 1, *(round(scene.written * i / steps) for i in range(1, steps))})
        count.group(scene, "disk full", scene.calls["write"], (Fault("room", room=room) for room in rooms))


def main():
    parser = argparse.ArgumentParser(description="Faults of file calls.")
    parser.add_argument("program")
    parser.add_argument("extent", nargs="?", choices=("bounded", "all"), default="bounded")
    parser.add_argument("words", nargs="*", help="scenes whose names contain one of these")
    parser.add_argument("--library", help="lamwright_faults.so; else the one that was built with the program")
    options = parser.parse_args()
    program = os.path.realpath(options.program)
    library = os.path.realpath(options.library or os.path.join(os.path.dirname(program), "..", "tests", "faults", "lamwright_faults.so"))
    if not os.access(program, os.X_OK) or not os.path.isfile(library):
        print("%s or %s is missing\n0 passed, 1 failed" % (program, library))
        return 1
    folder = os.path.realpath(tempfile.mkdtemp(prefix="faults-"))
    count, every = Count(), options.extent == "all"
    calls = 0
    try:
        rig = Rig(program, library, folder)
        count.check("calls that are watched", scenes.unwatched(program, library))
        for turn in scenes.ALL:
            if options.words and not any(word in turn.scene.__doc__ for word in options.words):
                continue
            scene = turn.scene(rig)
            calls += sum(scene.calls.values())
            try_scene(count, scene, KINDS if every else turn.kinds, turn.most if every else turn.few, every)
        for case in (*crowds.ALL, *disks.ALL, *meanwhile.ALL):
            if not options.words or any(word in case.__doc__ for word in options.words):
                case(rig, count, every)
    finally:
        shutil.rmtree(folder, ignore_errors=True)
    print("%d calls counted, %d faults injected, %d survived with the new output" % (calls, count.faults, count.survived))
    print("%d passed, %d failed" % (count.passed, count.failed))
    return 0 if count.failed == 0 and count.passed > 0 else 1


if __name__ == "__main__":
    sys.exit(main())
