#!/usr/bin/env bash
# Writes what the golden files are compared with: golden_output.sh PROGRAM FOLDER. One demo job whole, two others (two
# moulds; two crowned halves) without their nested sheets, and the sheets of a measured and of a drawn curve. PDF files
# are left out: their bytes hang on the version of the library that writes them.
set -euo pipefail
program=$(realpath "$1")
out=$(realpath "$2")
cd "$(dirname "$0")/../../fixtures"
unset SOURCE_DATE_EPOCH
(cd jobs && "$program" build reading-desk.toml -o "$out/reading-desk" >/dev/null)
for job in book-tray table-leaf; do
  (cd jobs && "$program" build "$job.toml" --no-sheets -o "$out/$job" >/dev/null)
done
find "$out" -name '*.pdf' -delete
for page in "$out"/*/job-sheet.html; do /usr/bin/python3 ../tests/cli/golden_page.py "$page"; done
mkdir "$out/curves"
(cd curves && "$program" fit alcove.csv --tolerance 0.6 -o "$out/curves/alcove.svg" >"$out/curves/alcove.txt")
(cd curves && "$program" measure '{svg = "counter.svg", path = "inner"}' -o "$out/curves/counter.svg" >"$out/curves/counter.txt")
