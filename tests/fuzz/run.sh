#!/usr/bin/env bash
# Tries each reader for some seconds on inputs made from its seeds, the same ones every time; ends with
# "N passed, N failed". An input that fails is kept in the folder of the fuzz programs, which is the argument.
set -uo pipefail
here=$(cd "$(dirname "$0")" && pwd)
seeds=$here/../../fixtures/seeds
cd "$1" || exit 1
passed=0
failed=0
# try COMMAND...: counts it as one check
try() {
  if "$@"; then passed=$((passed + 1)); else failed=$((failed + 1)); fi
}
# The rig itself: it finds the fault of a target that has one, and keeps nothing but the word that shows it.
finds_a_fault() {
  local found
  ./fuzz_faulty "$here/faulty" 1000 1 >/dev/null 2>&1
  found=$(cat crash-fuzz_faulty-* 2>/dev/null)
  rm -f crash-fuzz_faulty-*
  [ "$found" = bend ] || { echo "fuzz_faulty: its fault was not found"; return 1; }
}
try finds_a_fault
try ./fuzz_points "$seeds/points" 20000 1
try ./fuzz_svg_path "$seeds/svg-path" 20000 1
try ./fuzz_svg_file "$seeds/svg" 20000 1
try ./fuzz_dxf "$seeds/dxf" 20000 1
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
