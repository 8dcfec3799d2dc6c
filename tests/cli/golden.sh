#!/usr/bin/env bash
# Compares the program's output of the golden job byte for byte with fixtures/golden. Ends with "N passed, N failed".
# PDF files are left out: their bytes hang on the version of the library that writes them.
set -uo pipefail
program=$(realpath "$1")
cd "$(dirname "$0")/../.."
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
passed=0
failed=0
(cd fixtures/jobs && env -u SOURCE_DATE_EPOCH "$program" build reading-desk.toml -o "$out/tree" >/dev/null) || failed=1
while IFS= read -r file; do
  if cmp -s "fixtures/golden/reading-desk/$file" "$out/tree/$file"; then
    passed=$((passed + 1))
  else
    echo "differs: $file (bash tests/accept.sh accepts it)"
    failed=$((failed + 1))
  fi
done < <({ (cd fixtures/golden/reading-desk && find . -type f); (cd "$out/tree" && find . -type f ! -name '*.pdf'); } | sort -u)
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
