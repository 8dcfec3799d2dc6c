#!/usr/bin/env bash
# A long run, some hours on two cores: the program and all unit tests under the address and undefined-behaviour
# sanitizers, the fuzz targets with a kernel that has them too, then the program under the thread sanitizer. Asks for
# what tests/run.sh installs. The last line is "N passed, N failed".
#   bash tests/sanitize.sh [address|thread]...   both unless named
set -uo pipefail
cd "$(dirname "$0")/.."
export LSAN_OPTIONS=suppressions=$PWD/tests/exporters/step/lsan.supp:print_suppressions=0
export ASAN_OPTIONS=detect_stack_use_after_return=1:strict_string_checks=1
export UBSAN_OPTIONS=print_stacktrace=1:halt_on_error=1
export TSAN_OPTIONS=halt_on_error=1
passed=0
failed=0
# try NAME COMMAND...: one check; its output is shown when it fails
try() {
  local name=$1 log
  shift
  log=$(mktemp)
  if "$@" >"$log" 2>&1; then
    passed=$((passed + 1)) && echo "$name: passed"
  else
    failed=$((failed + 1)) && tail -60 "$log" && echo "$name: failed"
  fi
  rm -f "$log"
}

# Faults of the program show in its own exit statuses: 0, or 3 and 4 for a job that cannot be or that fails a check.
builds() {
  local out status
  out=$(mktemp -d)
  "$1" build "$2" -o "$out/press" --despite-fails
  status=$?
  rm -rf "$out"
  [ "$status" -eq 0 ] || [ "$status" -eq 3 ]
}

build_jobs() {
  for job in fixtures/jobs/*.toml; do try "$2, $(basename "$job" .toml)" builds "$1" "$job"; done
}

# The unit tests run beside the others: all are programs of one thread that take long.
under_address() {
  local log
  cmake --preset asan >/dev/null && nice cmake --build --preset asan || { failed=$((failed + 1)); return; }
  log=$(mktemp)
  build/asan/tests/lamwright_tests >"$log" 2>&1 &
  unit=$!
  trap 'kill "$unit" 2>/dev/null' EXIT
  build_jobs build/asan/cli/lamwright "address sanitizer"
  try "fuzzing with a sanitized kernel" bash tests/fuzz/run.sh build/asan/tests/fuzz
  try "black box under the address sanitizer" \
    /usr/bin/python3 tests/cli/black_box.py --sanitized build/asan/cli/lamwright
  try "unit tests under the address sanitizer" ended "$unit" "$log"
  trap - EXIT
  rm -f "$log"
}

# ended PID LOG: with the status of that process, and what it printed
ended() {
  wait "$1"
  local status=$?
  cat "$2"
  return "$status"
}

under_thread() {
  cmake --preset tsan >/dev/null && nice cmake --build --preset tsan || { failed=$((failed + 1)); return; }
  build_jobs build/tsan/cli/lamwright "thread sanitizer"
}

[ $# -gt 0 ] || set -- address thread
for kind in "$@"; do "under_$kind"; done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
