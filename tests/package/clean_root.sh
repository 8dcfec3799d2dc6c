#!/usr/bin/env bash
# Makes the Debian packages, installs them in a clean Debian of this machine's own release and uses them there. Ends with
# "N passed, N failed". Not part of tests/run.sh: it fetches a small Debian.
#   clean_root.sh [BUILD]
set -uo pipefail
cd "$(dirname "$0")/../.."
build=$(realpath "${1:-build/test}")
. tests/package/checks.sh
. shared/setup.sh
lamwright_install "${LAMWRIGHT_PACKAGING_PACKAGES[@]}" || exit 1

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
chmod 755 "$work"
mkdir "$work/packages" "$work/carried" "$work/outside"

check "the packages are made" env --chdir="$build" cpack -G DEB -B "$work/packages"
[ "$failed" -eq 0 ] || told
program=$(ls "$work"/packages/lamwright_*.deb)
libraries=$(ls "$work"/packages/liblamwright-dev_*.deb)
bash tests/package/contents.sh "$program" "$libraries" "$work/carried/contents"

job=shelf-nosing.toml
cp "fixtures/jobs/$job" "$program" "$libraries" "$work/carried"
cp -r tests/package/*.sh tests/package/own "$work/carried"
cp tests/consumer/*.?pp "$work/carried/own"
"$build/cli/lamwright" build "fixtures/jobs/$job" -o "$work/outside/out" --despite-fails >"$work/outside/told"

# Debian's own archives as this machine knows them, whatever else it knows.
apt-get indextargets --format 'deb $(SITE) $(RELEASE) $(COMPONENT)' 'Created-By: Packages' 'Origin: Debian' |
  sort -u >"$work/archives"
release=$(. /etc/os-release && echo "$VERSION_CODENAME")
CARRIED=$work/carried mmdebstrap --quiet --variant=minbase \
  --customize-hook='cp -r "$CARRIED" "$1/carried"' \
  --customize-hook='chroot "$1" bash /carried/inside.sh >"$CARRIED/told" 2>&1 || true' \
  --customize-hook='cp -r "$1/carried/." "$CARRIED"' \
  "$release" /dev/null "$work/archives" >"$work/root.log" 2>&1 || cat "$work/root.log"

cat "$work/carried/told"
taken_over "$work/carried/contents" "$work/carried/inside"
check "the tree made there is the one made here" diff -r -x '*.pdf' "$work/outside/out" "$work/carried/out"
for name in drawings templates; do
  check "$name.pdf was written there" test -s "$work/carried/out/$name.pdf"
done
told
