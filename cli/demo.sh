#!/usr/bin/env bash
# Installs what is missing, builds lamwright and runs the demo job into ./out. Can be run again at any time.
set -euo pipefail
cd "$(dirname "$0")/.."
. shared/setup.sh

lamwright_install "${LAMWRIGHT_BUILD_PACKAGES[@]}"
cmake --preset release -DLAMWRIGHT_TESTS=OFF >build-demo.log 2>&1 || { cat build-demo.log; exit 1; }
echo "Building (a few minutes the first time) ..."
cmake --build --preset release --parallel "$(lamwright_jobs)" >>build-demo.log 2>&1 || { tail -40 build-demo.log; exit 1; }
rm -f build-demo.log

build/release/cli/lamwright build fixtures/jobs/reading-desk.toml -o out
cat <<'END'

Open these:
  out/job-sheet.html              the whole job on one page, with a press to turn and open (any browser)
  out/drawings/press.svg          the press in section and from the side (any browser)
  out/drawings/former-lower.svg   the former with its bores
  out/drawings/pressure.svg       the pressure over girth and width
  out/drawings.pdf                all drawings in one file
  out/templates.pdf               formers at full size, in tiles to print
  out/sheets/1.svg                parts laid out on the first sheet of board (1.dxf for the router)
  out/lists/cut-list.csv          what to cut; the other lists lie beside it
  out/press.step                  the whole press as solids (any CAD program)
  out/press.glb                   the press to look at in 3D (any glTF viewer)
  out/parts/former-lower.svg      the former at true size for the router
  out/summary.json                every figure
More jobs lie in fixtures/jobs; begin your own with: build/release/cli/lamwright start arch > my.toml
END
