#!/usr/bin/env bash
# Looks at the packages without installing them.
#   contents.sh PROGRAM.deb LIBRARIES.deb COUNTS
set -uo pipefail
. "$(dirname "$0")/checks.sh"
program=$1
libraries=$2

field() { dpkg-deb --field "$1" "$2"; }
paths() { dpkg-deb --contents "$1" | awk '{print $6}' | grep -v '/$'; }
# Reads all that comes: a reader that stops early breaks the pipe, which pipefail takes for a failure.
holds() { paths "$1" | grep -xE "\./$2" >/dev/null; }
# strays DEB PATTERN: files that are not where they belong.
strays() { paths "$1" | grep -vE "^\./($2)"; }
# Whether all belongs to root and nobody else may write it.
tidy() { ! dpkg-deb --contents "$1" | awk '{print $1, $2}' | grep -vE '^[-d]rw[-x]r-[-x]r-[-x] root/root$'; }
needs() { field "$1" Depends | grep -E "(^|, )$2( |,|$)" >/dev/null; }

for file in usr/bin/lamwright usr/lib/lamwright/lamwright-step.so usr/lib/lamwright/lamwright-pdf.so \
  usr/share/doc/lamwright/copyright usr/share/man/man1/lamwright.1.gz \
  usr/share/bash-completion/completions/lamwright; do
  check "the program's package holds $file" holds "$program" "$file"
done
for file in 'usr/lib/.*/?liblamwright_kernel\.a' 'usr/lib/.*cmake/lamwright/lamwrightConfig\.cmake' \
  usr/include/lamwright/kernel/plugin/registry.hpp usr/share/doc/liblamwright-dev/copyright; do
  check "the libraries' package holds $file" holds "$libraries" "$file"
done
check "the program's package holds nothing else" \
  not strays "$program" 'usr/bin/lamwright$|usr/lib/lamwright/|usr/share/(doc/lamwright|man|bash-completion)/'
check "the libraries' package holds nothing else" \
  not strays "$libraries" 'usr/lib/.*(liblamwright_|cmake/lamwright/)|usr/include/lamwright/|usr/share/doc/liblamwright-dev/'

for package in "$program" "$libraries"; do
  name=$(field "$package" Package)
  check "$name belongs to root" tidy "$package"
  check "$name names no person" test "$(field "$package" Maintainer)" = "lamwright maintainers <maintainers@lamwright.invalid>"
  check "$name says what it is for" grep -q 'curved laminated wood panels' <(field "$package" Description)
done
for library in libc6 libstdc++6 libboost-program-options libtinyxml2 libpolyclipping libtomlplusplus libcairo2 \
  libocct-data-exchange; do
  check "the program needs $library" needs "$program" "${library//+/\\+}[0-9a-z.-]*"
done
check "the program needs nothing to build with" not grep -q -- -dev <(field "$program" Depends)
check "the program lies in its section" test "$(field "$program" Section)" = science
check "the libraries lie in their section" test "$(field "$libraries" Section)" = libdevel

unpacked=$(mktemp -d)
trap 'rm -rf "$unpacked"' EXIT
dpkg-deb --extract "$program" "$unpacked"
for file in bin/lamwright lib/lamwright/lamwright-step.so lib/lamwright/lamwright-pdf.so; do
  check "$file looks for libraries in the system's folders only" not grep -qE 'RPATH|RUNPATH' <(readelf -d "$unpacked/usr/$file")
  check "$file is stripped" not grep -q '\.symtab' <(readelf -S --wide "$unpacked/usr/$file")
done
check "the copyright names what is embedded" grep -q 'three.js authors' "$unpacked/usr/share/doc/lamwright/copyright"
kept "$3"
