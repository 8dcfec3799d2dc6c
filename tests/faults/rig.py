"""Runs a program under faults of its file calls and holds what it leaves against what was there before and after."""
import collections
import errno
import os
import shutil
import signal
import subprocess

KINDS = ("open-read", "open-write", "open-folder", "read", "write", "close", "sync", "truncate", "rename", "link", "symlink", "unlink",
         "rmdir", "mkdir", "readdir", "flock", "chmod", "stat")
# What a run may leave behind when it is killed, when taking it away is what fails, or when another run seems to be at work
# there; the next run clears it.
CLEARING = ("unlink", "rmdir", "readdir", "open-folder", "stat", "flock")
TEMPORARY = ".lamwright"


class Fault:
    """What shall happen, in the words of order.hpp, and how it is told."""

    def __init__(self, kind, at=None, **settings):
        self.kind, self.at = kind, at
        self.settings = dict(settings, kind=kind)
        if at:
            self.settings["at"] = at

    @property
    def signal(self):
        return self.settings.get("signal", 0)

    @property
    def harmless(self):
        """A program that cannot go on after these is wrong."""
        return self.settings.get("errno") == errno.EINTR or "short" in self.settings

    @property
    def lasting(self):
        return "until" in self.settings

    @property
    def hopeless(self):
        """Less room than the output takes."""
        return "room" in self.settings

    def environment(self):
        return {"LAMWRIGHT_FAULT_" + key.upper(): str(value) for key, value in self.settings.items()}


class Run:
    def __init__(self, status, errors, calls):
        self.status, self.errors, self.calls = status, errors, calls
        self.fired = sum(1 for call in calls if call[2])

    def counts(self):
        return collections.Counter(kind for kind, _, _ in self.calls)


def snapshot(folder):
    """Every name below a folder with what it is: mode and bytes, or where a link leads."""
    found = {}
    for base, folders, files in os.walk(folder):
        for name in folders + files:
            path = os.path.join(base, name)
            key = os.path.relpath(path, folder)
            if os.path.islink(path):
                found[key] = ("link", os.readlink(path))
            elif os.path.isdir(path):
                found[key] = ("folder", os.stat(path).st_mode)
            else:
                with open(path, "rb") as file:
                    found[key] = ("file", os.stat(path).st_mode, file.read())
    return found


def finished(found, before):
    """Without what has a temporary name, and without new folders that hold nothing else."""
    kept = {name: what for name, what in found.items() if TEMPORARY not in name}
    filled = {folder for name, what in kept.items() if what[0] != "folder" for folder in parents(name)}
    return {name: what for name, what in kept.items() if what[0] != "folder" or name in before or name in filled}


def parents(name):
    while os.path.dirname(name):
        name = os.path.dirname(name)
        yield name


def difference(found, wanted):
    names = sorted(name for name in set(found) | set(wanted) if found.get(name) != wanted.get(name))
    return ", ".join("%s %s" % (name, "is missing" if name not in found else "is new" if name not in wanted else "differs")
                     for name in names[:4]) + (" and %d more" % (len(names) - 4) if len(names) > 4 else "")


class Scene:
    """A command, the folder that it starts from, and what that folder is before and after it.

    `prepare(folder)` makes the folder once; each run gets a copy of its own. Calls fail below its folder `below`, which
    messages have to name.
    """

    def __init__(self, rig, name, arguments, prepare, below="place"):
        self.rig, self.name, self.arguments = rig, name, arguments
        self.origin = rig.path(name.replace(" ", "-") + ".origin")
        self.folder = rig.path("run")
        shutil.rmtree(self.origin, ignore_errors=True)
        os.makedirs(self.origin)
        prepare(self.origin)
        self.place, self.below = below, os.path.join(self.folder, below)
        self.before = snapshot(self.origin)
        self.reset()
        done = self.run(None)
        assert done.status == 0, "%s: %d: %s" % (name, done.status, done.errors)
        self.after = snapshot(self.folder)
        assert self.after != self.before and self.after == finished(self.after, self.before), sorted(self.after)
        assert self.run(None).status == 0
        self.twice = snapshot(self.folder)
        self.calls = done.counts()
        self.written = sum(len(what[2]) for key, what in self.after.items() if what[0] == "file" and what != self.before.get(key))

    def reset(self):
        shutil.rmtree(self.folder, ignore_errors=True)
        shutil.copytree(self.origin, self.folder, symlinks=True)

    def run(self, fault):
        return self.rig.run(self.arguments, self.folder, self.below, fault)

    def after_fault(self, fault):
        """Runs from the beginning under a fault; the first thing that is wrong, or None; and whether it went through."""
        self.reset()
        run = self.run(fault)
        if fault.at and not run.fired:
            return "the fault was not met", False
        found = snapshot(self.folder)
        kept = finished(found, self.before)
        return self.wrong(fault, run, kept) or self.wrong_leftover(fault, run, kept, found), kept == self.after

    def wrong(self, fault, run, kept):
        if kept not in (self.before, self.after):
            return "neither as before (%s) nor whole (%s)" % (difference(kept, self.before), difference(kept, self.after))
        stopped = {signal.SIGTERM: 143, signal.SIGINT: 130, signal.SIGKILL: -signal.SIGKILL}
        refused = stopped.get(fault.signal, 5)
        if run.status not in ((0,) if fault.harmless else (5,) if fault.hopeless else (0, refused)):
            return "status %d: %s" % (run.status, run.errors)
        if run.status == -signal.SIGKILL:
            return None
        if (kept == self.after) != (run.status == 0):
            return "status %d, but the folder is %s" % (run.status, "the new one" if kept == self.after else "as before")
        return None if run.status == 0 else self.wrong_message(fault, run.errors)

    def wrong_message(self, fault, errors):
        """One line that names the place; a fault that lasts may be told of several files."""
        wanted = "stopped; nothing was written" if fault.signal else self.place
        lines = errors.splitlines()
        if not lines or (len(lines) > 1 and not fault.lasting) or not all(line.startswith("lamwright: ") and wanted in line for line in lines):
            return "the message is %r" % errors
        return None

    def wrong_leftover(self, fault, run, kept, found):
        if found == kept:
            return None
        if fault.signal != signal.SIGKILL and fault.kind not in CLEARING:
            return "left behind: " + difference(found, kept)
        again = self.run(None)
        wanted = self.after if kept == self.before else self.twice
        found = snapshot(self.folder)
        if again.status != 0 or found != wanted:
            return "the next run does not clear up: status %d, %s %s" % (again.status, difference(found, wanted), again.errors)
        return None


class Rig:
    def __init__(self, program, library, folder):
        self.program, self.library, self.folder = program, library, folder

    def path(self, *names):
        return os.path.join(self.folder, *names)

    def environment(self):
        return {"PATH": os.environ.get("PATH", "/usr/bin:/bin"), "HOME": self.folder, "LANG": "C.UTF-8"}

    def run(self, arguments, cwd, below, fault):
        log = self.path("calls")
        if os.path.exists(log):
            os.remove(log)
        env = dict(self.environment(), LD_PRELOAD=self.library, LAMWRIGHT_FAULT_BELOW=below, LAMWRIGHT_FAULT_LOG=log,
                   **(fault.environment() if fault else {}))
        done = subprocess.run([self.program, *arguments], cwd=cwd, env=env, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL,
                              stderr=subprocess.PIPE, timeout=120)
        calls = []
        if os.path.exists(log):
            with open(log, encoding="utf-8", errors="replace") as file:
                calls = [line.rstrip("\n").split("\t") for line in file]
        return Run(done.returncode, done.stderr.decode("utf-8", "replace"), calls)
