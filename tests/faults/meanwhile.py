"""What the user does in the output folder while a build is at work there."""
import os
import signal
import subprocess

from rig import Fault
from scenes import build_over

STOPPED = int(signal.SIGSTOP)


def put_in(folder):
    """a new file"""
    with open(os.path.join(folder, "late.txt"), "w", encoding="utf-8") as file:
        file.write("late\n")
    return "late.txt", b"late\n"


def save(folder):
    """a file saved as editors do, by renaming a new one over it"""
    with open(os.path.join(folder, "notes.txt~"), "w", encoding="utf-8") as file:
        file.write("second thoughts\n")
    os.rename(os.path.join(folder, "notes.txt~"), os.path.join(folder, "notes.txt"))
    return "notes.txt", b"second thoughts\n"


def add_to(folder):
    """a file written on"""
    with open(os.path.join(folder, "notes.txt"), "a", encoding="utf-8") as file:
        file.write("more\n")
    return "notes.txt", b"mine\nmore\n"


def wrong(scene, rig, kind, at, act):
    """Stops the build at a call, acts, lets it go on; what is wrong afterwards."""
    scene.reset()
    environment = dict(rig.environment(), LD_PRELOAD=rig.library, LAMWRIGHT_FAULT_BELOW=scene.below,
                       **Fault(kind, at, signal=STOPPED).environment())
    process = subprocess.Popen([rig.program, *scene.arguments], cwd=scene.folder, env=environment, stdin=subprocess.DEVNULL,
                               stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
    _, status = os.waitpid(process.pid, os.WUNTRACED)
    if not os.WIFSTOPPED(status):
        return "the build was not stopped"
    out = os.path.join(scene.below, "out")
    name, content = act(out)
    process.send_signal(signal.SIGCONT)
    errors = process.communicate(timeout=120)[1].decode("utf-8", "replace")
    if process.returncode != 0:
        return "status %d: %s" % (process.returncode, errors)
    path = os.path.join(out, name)
    with open(path if os.path.exists(path) else os.devnull, "rb") as file:
        found = file.read()
    return None if found == content else "%s holds %r" % (name, found)


def meanwhile(rig, count, every):
    """files that change during a build"""
    scene = build_over(rig)
    calls = sum(number for kind, number in scene.calls.items() if kind != "stage")
    some = [("write", 1), ("link", 1), ("link", scene.calls["link"]), ("rename", 1), ("unlink", 1)]
    for act in (put_in, save, add_to):
        places = [("any", at) for at in range(1, calls + 1)] if every else some
        problems = [(place, problem) for place in places for problem in [wrong(scene, rig, *place, act)] if problem]
        name = "%s: %s" % (meanwhile.__doc__, act.__doc__)
        print("%s: stopped at %d calls" % (name, len(places)), flush=True)
        count.faults += len(places)
        count.check(name, "\n  ".join("at %s %d: %s" % (*place, problem) for place, problem in problems[:5]))


ALL = (meanwhile,)
