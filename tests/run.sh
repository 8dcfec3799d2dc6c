#!/usr/bin/env bash
# Installs what is missing, builds everything and runs every test. The last line is "N passed, N failed".
set -uo pipefail
cd "$(dirname "$0")/.."
. shared/setup.sh

lamwright_install "${LAMWRIGHT_BUILD_PACKAGES[@]}" "${LAMWRIGHT_TEST_PACKAGES[@]}" || exit 1

build=build/test
log=$build.log
mkdir -p build
cmake -S . -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DLAMWRIGHT_TESTS=ON >"$log" 2>&1 || { cat "$log"; exit 1; }
echo "Building ..."
cmake --build "$build" --parallel "$(lamwright_jobs)" >>"$log" 2>&1 || { tail -60 "$log"; exit 1; }

passed=0
failed=0
# count NAME COMMAND...: runs a program whose last line is "N passed, N failed" and adds it up; a program that says
# nothing of the kind counts as one failure.
count() {
  local name=$1 line
  shift
  local output
  output=$("$@" 2>&1)
  local status=$?
  line=$(printf '%s\n' "$output" | grep -E '^[0-9]+ passed, [0-9]+ failed$' | tail -n 1)
  if [ -z "$line" ]; then
    printf '%s\n' "$output" | tail -40
    line="0 passed, 1 failed"
  elif [ "$status" -ne 0 ] || [ "${line#*, }" != "0 failed" ]; then
    printf '%s\n' "$output" | tail -80
  fi
  echo "$name: $line"
  passed=$((passed + $(echo "$line" | cut -d' ' -f1)))
  failed=$((failed + $(echo "$line" | cut -d' ' -f3)))
}

count "unit tests" tests/support/count_catch.sh "$build/tests/lamwright_tests"
count "fuzzing" bash tests/fuzz/run.sh "$build/tests/fuzz"
count "golden files" bash tests/cli/golden.sh "$build/cli/lamwright"
# The system's own Python: it has the readers that Debian packages bring.
count "black box" /usr/bin/python3 tests/cli/black_box.py "$build/cli/lamwright"

if [ "$((passed + failed))" -eq 0 ]; then failed=1; fi
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
