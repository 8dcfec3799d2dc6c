#!/usr/bin/env bash
# Accepts the program's present output as the golden files. Look at the difference before you commit it.
set -euo pipefail
cd "$(dirname "$0")/.."
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
bash tests/cli/golden_output.sh "${1:-build/test/cli/lamwright}" "$out"
rm -rf fixtures/golden
cp -r "$out" fixtures/golden
chmod 755 fixtures/golden
git status --short fixtures/golden
