#!/usr/bin/env bash
# Compares the program's golden output byte for byte with fixtures/golden. Ends with "N passed, N failed".
set -uo pipefail
program=$(realpath "$1")
cd "$(dirname "$0")/../.."
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
passed=0
failed=0
bash tests/cli/golden_output.sh "$program" "$out" || failed=1
while IFS= read -r file; do
  if cmp -s "fixtures/golden/$file" "$out/$file"; then
    passed=$((passed + 1))
  else
    echo "differs: $file (bash tests/accept.sh accepts it)"
    failed=$((failed + 1))
  fi
done < <({ (cd fixtures/golden && find . -type f); (cd "$out" && find . -type f); } | sort -u)
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
