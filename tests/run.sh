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

results=$(mktemp -d)
trap 'rm -rf "$results"' EXIT
# start NAME COMMAND...: runs a program whose last line is "N passed, N failed" beside the others.
started=()
start() {
  local name=$1
  shift
  started+=("$name")
  { "$@" >"$results/$name" 2>&1; echo $? >"$results/$name.status"; } &
}

passed=0
failed=0
# count NAME: adds up what a program found; one that says nothing of the kind counts as one failure.
count() {
  local name=$1 line status
  line=$(grep -E '^[0-9]+ passed, [0-9]+ failed$' "$results/$name" | tail -n 1)
  status=$(cat "$results/$name.status")
  if [ -z "$line" ]; then
    tail -40 "$results/$name"
    line="0 passed, 1 failed"
  elif [ "$status" -ne 0 ] || [ "${line#*, }" != "0 failed" ]; then
    tail -80 "$results/$name"
  fi
  echo "$name: $line"
  passed=$((passed + $(echo "$line" | cut -d' ' -f1)))
  failed=$((failed + $(echo "$line" | cut -d' ' -f3)))
}

# The system's own Python: it has the readers that Debian packages bring.
start "black box" /usr/bin/python3 tests/cli/black_box.py "$build/cli/lamwright"
start "unit tests" tests/support/count_catch.sh "$build/tests/lamwright_tests"
start "golden files" bash tests/cli/golden.sh "$build/cli/lamwright"
start "faults" /usr/bin/python3 tests/faults/faults.py "$build/cli/lamwright"
start "fuzzing" bash tests/fuzz/run.sh "$build/tests/fuzz"
start "library" /usr/bin/python3 tests/api/library.py "$build"
start "installed" /usr/bin/python3 tests/consumer/run.py "$build"
wait
for name in "${started[@]}"; do count "$name"; done

if [ "$((passed + failed))" -eq 0 ]; then failed=1; fi
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
