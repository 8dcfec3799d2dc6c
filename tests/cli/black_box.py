#!/usr/bin/env python3
"""Runs the program as a user would and holds it against the design.

    black_box.py PROGRAM [--seed N] [--jobs N] [--keep] [--times] [--sanitized] [WORD...]

WORDs choose tests by their names. The last line reads "N passed, N failed"; the exit status is 0 when none failed.
"""
import argparse
import os
import sys

sys.dont_write_bytecode = True
sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))

import cases_command  # noqa: E402,F401  (importing registers the tests)
import cases_curves  # noqa: E402,F401
import cases_determinism  # noqa: E402,F401
import cases_dxf  # noqa: E402,F401
import cases_errors  # noqa: E402
import cases_figures  # noqa: E402
import cases_files  # noqa: E402,F401
import cases_gltf  # noqa: E402,F401
import cases_notebook  # noqa: E402,F401
import cases_outputs  # noqa: E402,F401
import cases_page  # noqa: E402,F401
import cases_pdf  # noqa: E402,F401
import cases_press  # noqa: E402,F401
import cases_schema  # noqa: E402,F401
import cases_series  # noqa: E402,F401
import cases_step  # noqa: E402,F401
import cases_supply  # noqa: E402,F401
import cases_two_part  # noqa: E402,F401
import cases_view  # noqa: E402,F401
import harness  # noqa: E402
import oracle  # noqa: E402
import oracle_pressure  # noqa: E402


def main():
    parser = argparse.ArgumentParser(description="Black-box tests of the program.")
    parser.add_argument("program")
    parser.add_argument("words", nargs="*", help="run only tests whose names contain one of these")
    parser.add_argument("--seed", type=int, default=1, help="of the random jobs")
    parser.add_argument("--jobs", type=int, default=12, help="how many random jobs")
    parser.add_argument("--keep", action="store_true", help="keep the temporary folders")
    parser.add_argument("--times", action="store_true", help="tell the seconds of each test")
    parser.add_argument("--sanitized", action="store_true", help="the program has sanitizers and takes more of all")
    options = parser.parse_args()
    program = os.path.abspath(options.program)
    if not os.access(program, os.X_OK):
        print("%s cannot be run" % program, file=sys.stderr)
        print("0 passed, 1 failed")
        return 1
    if options.sanitized:
        cases_errors.LIMITS.update(seconds=60, memory=4e6)
    cases_figures.SETTINGS.update(seed=options.seed, jobs=options.jobs)
    oracle.self_test()
    oracle_pressure.self_test()
    return harness.run_all(program, options.words, options.keep, options.times)


if __name__ == "__main__":
    sys.exit(main())
