"""Many runs of the program at once in one folder."""
import os
import shutil
import subprocess
import time

from rig import difference, snapshot
from scenes import earlier, run, small_job, write

ROUNDS = {False: 3, True: 40}
RUNS = 8
PAUSES = (0, 0.02, 0.05)


def started(rig, folder, job, out):
    return subprocess.Popen([rig.program, "build", job, "-o", out, "--no-sheets", "--only", "json,csv,svg"], cwd=folder, env=rig.environment(),
                            stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)


def whole_outputs(rig, origin, out):
    """What a folder may be afterwards: what each job makes of it alone."""
    outputs = []
    for number in range(RUNS):
        folder = rig.path("alone")
        shutil.rmtree(folder, ignore_errors=True)
        shutil.copytree(origin, folder, symlinks=True)
        run(rig, "build", "jobs/%d.toml" % number, "-o", out, "--no-sheets", "--only", "json,csv,svg", cwd=folder)
        outputs.append(snapshot(folder))
    return outputs


def started_apart(rig, folder, out, pause):
    """All jobs; some seconds apart, so that in some rounds one begins as another ends."""
    for number in range(RUNS):
        yield started(rig, folder, "jobs/%d.toml" % number, out)
        time.sleep(pause)


def wrong_round(rig, origin, out, whole, pause):
    folder = rig.path("crowd")
    shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(origin, folder, symlinks=True)
    processes = list(started_apart(rig, folder, out, pause))
    statuses = []
    for process in processes:
        errors = process.communicate(timeout=120)[1].decode("utf-8", "replace")
        statuses.append(process.returncode)
        if process.returncode not in (0, 5):
            return "status %d: %s" % (process.returncode, errors), 0
        if process.returncode == 5 and (len(errors.splitlines()) != 1 or out not in errors):
            return "the message is %r" % errors, 0
    done = [number for number, status in enumerate(statuses) if status == 0]
    found = snapshot(folder)
    if not any(found == whole[number] for number in done):
        return "%d builds said that they were done; the folder is none of theirs: %s" % (
            len(done), difference(found, whole[done[0]]) if done else "none"), len(done)
    return None, len(done)


def crowd(rig, count, every, name, prepare, out):
    origin = rig.path(name.replace(" ", "-"))
    prepare(origin)
    for number in range(RUNS):
        write(os.path.join(origin, "jobs", "%d.toml" % number), small_job("Nosing %d" % number))
    whole = whole_outputs(rig, origin, out)
    problems, done = [], 0
    for number in range(ROUNDS[every]):
        problem, finished = wrong_round(rig, origin, out, whole, PAUSES[number % len(PAUSES)])
        done += finished
        if problem:
            problems.append(problem)
    print("%s: %d rounds of %d at once, %d of them done" % (name, ROUNDS[every], RUNS, done), flush=True)
    count.check(name, "\n  ".join(problems[:5]))


def over(rig, count, every):
    """crowd of builds over an earlier output"""
    crowd(rig, count, every, over.__doc__, earlier(rig, "--no-sheets", "--only", "json,csv,dxf"), "place/out")


def new(rig, count, every):
    """crowd of builds into a new folder"""
    crowd(rig, count, every, new.__doc__, lambda folder: os.makedirs(os.path.join(folder, "place")), "place/out")


def deep(rig, count, every):
    """crowd of builds into new folders below one another"""
    crowd(rig, count, every, deep.__doc__, lambda folder: os.makedirs(os.path.join(folder, "place")), "place/a/b/out")


def drawings(rig, count, every):
    """crowd of drawings over one file"""
    folder, problems, done = rig.path("drawings"), [], 0
    write(os.path.join(folder, "sheet.svg"), "<svg/>\n")
    profiles = ["[{line = %d}, {bend = 70, radius = 380}]" % (100 + number) for number in range(RUNS)]
    whole = []
    for profile in profiles:
        run(rig, "measure", profile, "-o", "sheet.svg", cwd=folder)
        whole.append(snapshot(folder))
    for _ in range(ROUNDS[every]):
        processes = [subprocess.Popen([rig.program, "measure", profile, "-o", "sheet.svg"], cwd=folder, env=rig.environment(),
                                      stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL) for profile in profiles]
        statuses = [process.wait(timeout=120) for process in processes]
        done += statuses.count(0)
        if statuses != [0] * RUNS or snapshot(folder) not in whole:
            problems.append("statuses %s, then %s" % (statuses, difference(snapshot(folder), whole[0])))
    print("%s: %d rounds of %d at once, %d of them done" % (drawings.__doc__, ROUNDS[every], RUNS, done), flush=True)
    count.check(drawings.__doc__, "\n  ".join(problems[:5]))


ALL = (over, new, deep, drawings)
