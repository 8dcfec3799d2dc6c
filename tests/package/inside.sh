#!/usr/bin/env bash
# Runs inside the clean root: installs the packages from /carried, uses them as an ordinary user, removes them.
set -uo pipefail
. /carried/checks.sh
export DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8

installs() { apt-get install --yes --quiet --no-install-recommends "$@"; }
remains() { find / -xdev \( -path /proc -o -path /carried -o -path /home \) -prune -o -name '*lamwright*' -print; }
as_user() { su joiner -c "cd /home/joiner && $*"; }

useradd --create-home joiner
check "the program is installed with what it needs" installs /carried/lamwright_*.deb

version=$(dpkg-query --show --showformat '${Version}' lamwright)
check "it tells its version" grep -qF "${version%%-*}" <(as_user lamwright --version)
check "it lists its exporters" grep -q step <(as_user lamwright list exporters)
install -m 644 /carried/*.toml /home/joiner
job=$(cd /home/joiner && ls ./*.toml)
check "it checks a job" grep -q pass <(as_user lamwright check "$job")
check "it builds a job" as_user lamwright build "$job" -o out --despite-fails
cp -r /home/joiner/out /carried/out
for file in man/man1/lamwright.1.gz bash-completion/completions/lamwright; do
  check "there is share/$file" test -s "/usr/share/$file"
done

check "the libraries are installed with what they need" installs /carried/liblamwright-dev_*.deb
check "a compiler is installed" installs cmake g++ make
check "a program is made with the libraries" as_user "cmake -S /carried/own -B own && cmake --build own"
check "it works" as_user own/own_parts
check "both are removed" apt-get purge --yes --quiet lamwright liblamwright-dev
check "what the libraries needed is removed" apt-get autoremove --purge --yes --quiet
check "nothing of ours is left" test -z "$(remains)"
kept /carried/inside
