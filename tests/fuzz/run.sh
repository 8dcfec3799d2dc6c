#!/usr/bin/env bash
# Tries each reader for some seconds on inputs made from its seeds, the same ones every time; ends with
# "N passed, N failed". An input that fails is kept in the folder of the fuzz programs, which is the argument.
set -uo pipefail
here=$(cd "$(dirname "$0")" && pwd)
seeds=$here/../../fixtures/seeds
cd "$1" || exit 1
passed=0
failed=0
# count STATUS: counts it as one check
count() {
  if [ "$1" -eq 0 ]; then passed=$((passed + 1)); else failed=$((failed + 1)); fi
}
# The rig itself: it finds the fault of a target that has one, and keeps nothing but the word that shows it.
finds_a_fault() {
  local found
  ./fuzz_faulty "$here/faulty" 1000 1 >/dev/null 2>&1
  found=$(cat crash-fuzz_faulty-* 2>/dev/null)
  rm -f crash-fuzz_faulty-*
  [ "$found" = bend ] || { echo "fuzz_faulty: its fault was not found"; return 1; }
}
# both TARGET SEEDS ROUNDS TARGET SEEDS ROUNDS: two targets beside one another
both() {
  ./"fuzz_$1" "$seeds/$2" "$3" 1 & local first=$!
  ./"fuzz_$4" "$seeds/$5" "$6" 1
  count $?
  wait "$first"
  count $?
}
finds_a_fault
count $?
both points points 20000 svg_path svg-path 20000
both svg_file svg 20000 dxf dxf 20000
both csv csv 10000 lengths lengths 20000
both job job 1500 trade trade 3000
./fuzz_plan "$seeds/plan" 300 1
count $?
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
