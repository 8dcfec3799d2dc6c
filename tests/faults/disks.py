"""A real disk that is too small, where one can be mounted."""
import os
import shutil
import subprocess

from rig import difference, snapshot
from scenes import earlier

PAGE = 4096


def attempt(rig, origin, size):
    """None when a disk of this size cannot be mounted; else what is wrong, or an empty text, and the status."""
    mount = rig.path("disk")
    os.makedirs(mount, exist_ok=True)
    if subprocess.run(["mount", "-t", "tmpfs", "-o", "size=%d" % size, "tmpfs", mount], capture_output=True).returncode != 0:
        return None
    try:
        for name in os.listdir(os.path.join(origin, "place")):
            shutil.copytree(os.path.join(origin, "place", name), os.path.join(mount, name), symlinks=True)
        before = snapshot(mount)
        done = subprocess.run([rig.program, "build", os.path.join(origin, "jobs", "job.toml"), "-o", os.path.join(mount, "out"), "--no-sheets",
                               "--only", "json,csv,svg"], env=rig.environment(), capture_output=True, stdin=subprocess.DEVNULL)
        found, errors = snapshot(mount), done.stderr.decode("utf-8", "replace")
        if done.returncode == 0:
            return "" if "out/drawings/press.svg" in found and "out/notes.txt" in found else "a file is missing", 0
        if done.returncode != 5 or len(errors.splitlines()) != 1 or mount not in errors:
            return "status %d: %s" % (done.returncode, errors), done.returncode
        return difference(found, before), 5
    finally:
        subprocess.run(["umount", mount], check=True)


def real(rig, count, every):
    """disk that is really full"""
    origin = rig.path("disk.origin")
    earlier(rig, "--no-sheets", "--only", "json,csv,dxf")(origin)
    used = sum(-(-os.path.getsize(os.path.join(base, name)) // PAGE) * PAGE for base, _, names in os.walk(os.path.join(origin, "place"))
               for name in names if not os.path.islink(os.path.join(base, name)))
    problems, statuses = [], []
    for pages in range(0, 400, 5 if every else 40):
        told = attempt(rig, origin, used + pages * PAGE)
        if told is None:
            print("skipped: %s: nothing can be mounted here" % real.__doc__)
            return
        statuses.append(told[1])
        if told[0]:
            problems.append("%d pages left: %s" % (pages, told[0]))
    print("%s: %d sizes, %d too small" % (real.__doc__, len(statuses), statuses.count(5)), flush=True)
    if not problems and not (statuses[0] == 5 and statuses[-1] == 0):
        problems = ["the sizes do not reach from too small to large enough: %s" % statuses]
    count.check(real.__doc__, "\n  ".join(problems[:5]))


ALL = (real,)
