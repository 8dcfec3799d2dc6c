#!/usr/bin/env bash
# Accepts the program's present output of the golden job. Look at the difference before you commit it.
set -euo pipefail
cd "$(dirname "$0")/.."
program=${1:-build/test/cli/lamwright}
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
(cd fixtures/jobs && env -u SOURCE_DATE_EPOCH "../../$program" build reading-desk.toml -o "$out/reading-desk" >/dev/null)
find "$out" -name '*.pdf' -delete
rm -rf fixtures/golden/reading-desk
mkdir -p fixtures/golden
cp -r "$out/reading-desk" fixtures/golden/reading-desk
git status --short fixtures/golden
