#!/usr/bin/env bash
# Runs a Catch2 program and ends with "N passed, N failed", counting test cases.
report=$(mktemp)
trap 'rm -f "$report"' EXIT
"$1" --reporter xml --out "$report"
line=$(grep -o '<OverallResultsCases [^/]*' "$report" | tail -n 1)
value() { printf '%s' "$line" | sed -n "s/.* $1=\"\([0-9]*\)\".*/\1/p"; }
passed=$(value successes)
failed=$(value failures)
if [ -z "$passed" ] || [ "$((passed + failed))" -eq 0 ]; then
  echo "no test ran"
  exit 1
fi
[ "$failed" -gt 0 ] && "$1" --reporter compact | grep -v 'passed' | head -100
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
