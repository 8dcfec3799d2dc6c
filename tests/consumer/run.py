#!/usr/bin/env python3
"""Installs a build, moves what was installed, and uses it from outside: the program, and its libraries from a project of
somebody else's.

    run.py BUILD [WORD...]

WORDs choose tests by their names. The last line reads "N passed, N failed"; the exit status is 0 when none failed.
"""
import os
import shutil
import sys
import tempfile

sys.dont_write_bytecode = True
HERE = os.path.dirname(os.path.abspath(__file__))
sys.path[:0] = [HERE, os.path.join(HERE, "..", "cli")]

import cases_installed  # noqa: E402,F401  (importing registers the tests)
import cases_plugin  # noqa: E402,F401
import harness  # noqa: E402
from installed import SETTINGS  # noqa: E402


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
