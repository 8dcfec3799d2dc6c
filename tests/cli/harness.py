"""What the black-box tests stand on: running the program, writing jobs, comparing folders. Standard library only."""
import json
import os
import resource
import shutil
import signal
import subprocess
import tempfile
import time
import traceback

TESTS = []


class Skip(Exception):
    """Raised by a test that this machine cannot run; the reason is printed."""


def test(function):
    """Marks a test. Its name is printed as a sentence: underscores become spaces."""
    TESTS.append(function)
    return function


class Result:
    def __init__(self, status, out, err, seconds, rss):
        self.status, self.out, self.err, self.seconds, self.rss = status, out, err, seconds, rss

    @property
    def text(self):
        return self.out.decode("utf-8", "replace")

    @property
    def errors(self):
        return self.err.decode("utf-8", "replace")

    def __repr__(self):
        return "status %s\n  stdout: %s\n  stderr: %s" % (self.status, self.text[:800], self.errors[:1500])


class Bench:
    """One temporary folder and the program under test."""

    def __init__(self, program, folder):
        self.program, self.folder = program, folder

    def path(self, *names):
        return os.path.join(self.folder, *names)

    def write(self, name, content):
        path = self.path(name)
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(path, "wb") as file:
            file.write(content if isinstance(content, bytes) else content.encode("utf-8"))
        return path

    def job(self, job, name="job.toml"):
        return self.write(name, job if isinstance(job, (str, bytes)) else to_toml(job))

    def run(self, *args, env=None, cwd=None, timeout=120, prepare=None, stdout=None, restore=True):
        """Runs the program in a plain environment; output goes through files, so that nothing blocks."""
        clean = {"PATH": os.environ.get("PATH", "/usr/bin:/bin"), "HOME": self.folder, "LANG": "C.UTF-8"}
        clean.update(env or {})
        with tempfile.TemporaryFile() as out, tempfile.TemporaryFile() as err:
            started = time.monotonic()
            process = subprocess.Popen([self.program, *map(str, args)], stdin=subprocess.DEVNULL, stdout=stdout or out,
                                       stderr=err, cwd=cwd or self.folder, env=clean, preexec_fn=prepare,
                                       restore_signals=restore)
            status, rss = wait(process, started + timeout)
            seconds = time.monotonic() - started
            out.seek(0)
            err.seek(0)
            return Result(status, out.read(), err.read(), seconds, rss)

    def start(self, *args):
        clean = {"PATH": os.environ.get("PATH", "/usr/bin:/bin"), "HOME": self.folder, "LANG": "C.UTF-8"}
        return subprocess.Popen([self.program, *map(str, args)], stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL,
                                stderr=subprocess.DEVNULL, cwd=self.folder, env=clean)

    def build(self, job, out="out", *more, **kwargs):
        return self.run("build", self.job(job), "-o", self.path(out), *more, **kwargs)

    def built(self, job, out="out", *more, **kwargs):
        """Builds whatever the checks say and returns the summary."""
        result = self.build(job, out, "--despite-fails", *more, **kwargs)
        assert result.status == 0, "build failed: %r" % result
        return self.summary(out)

    def figures(self, job, out="out", *more, **kwargs):
        """The summary alone, for tests that ask for figures only."""
        return self.built(job, out, "--only", "json", "--no-sheets", *more, **kwargs)

    def summary(self, out="out"):
        with open(self.path(out, "summary.json"), encoding="utf-8") as file:
            return json.load(file)


def wait(process, deadline):
    """Status (negative: the signal) and peak memory in kB."""
    while True:
        pid, raw, usage = os.wait4(process.pid, os.WNOHANG)
        if pid:
            process.returncode = os.waitstatus_to_exitcode(raw)
            return process.returncode, usage.ru_maxrss
        if time.monotonic() > deadline:
            process.send_signal(signal.SIGKILL)
            os.wait4(process.pid, 0)
            process.returncode = -9
            raise AssertionError("the program did not end in time")
        time.sleep(0.002)


def toml_value(value):
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
    if isinstance(value, dict):
        return "{" + ", ".join("%s = %s" % (k, toml_value(v)) for k, v in value.items()) + "}"
    if isinstance(value, (list, tuple)):
        return "[" + ", ".join(map(toml_value, value)) + "]"
    return repr(value)


def to_toml(job):
    """Plain values first, then each table under its head."""
    lines = ["%s = %s" % (k, toml_value(v)) for k, v in job.items() if not isinstance(v, dict)]
    for name, table in job.items():
        if isinstance(table, dict):
            lines.append("[%s]" % name)
            lines += ["%s = %s" % (k, toml_value(v)) for k, v in table.items()]
    return "\n".join(lines) + "\n"


def tree(folder):
    """Every file below a folder as {relative path: bytes}."""
    found = {}
    for base, _, names in os.walk(folder):
        for name in names:
            path = os.path.join(base, name)
            with open(path, "rb") as file:
                found[os.path.relpath(path, folder)] = file.read()
    return found


def entries(folder):
    """Every name below a folder, directories too."""
    return sorted(os.path.relpath(os.path.join(base, name), folder)
                  for base, dirs, names in os.walk(folder) for name in dirs + names)


def differences(a, b):
    names = sorted(set(a) | set(b))
    return [name for name in names if a.get(name) != b.get(name)]


def limit_file_size(size):
    """For `prepare`: writes past `size` bytes fail with EFBIG (with restore=False) or end the program."""
    return lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))


def close_to(value, wanted, tolerance, what):
    assert value is not None and abs(value - wanted) <= tolerance, "%s: %r, expected %.6f" % (what, value, wanted)


def run_all(program, chosen, keep, times=False):
    passed = failed = skipped = 0
    for function in TESTS:
        name = function.__name__.replace("_", " ")
        if chosen and not any(word in name for word in chosen):
            continue
        folder = tempfile.mkdtemp(prefix="press-test-")
        started = time.monotonic()
        try:
            function(Bench(program, folder))
            passed += 1
        except Skip as reason:
            skipped += 1
            print("skipped: %s: %s" % (name, reason))
        except Exception as error:  # an assertion, or a test that tripped over what it found
            failed += 1
            print("FAILED: %s" % name)
            detail = str(error) if isinstance(error, AssertionError) and str(error) else traceback.format_exc()
            print("  " + detail.strip().replace("\n", "\n  "))
        finally:
            if times:
                print("%6.1f s  %s" % (time.monotonic() - started, name), flush=True)
            if not keep:
                shutil.rmtree(folder, ignore_errors=True)
    if skipped:
        print("%d skipped" % skipped)
    print("%d passed, %d failed" % (passed, failed))
    return 0 if failed == 0 and passed > 0 else 1
