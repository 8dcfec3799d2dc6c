# Installs the Debian packages that lamwright is built and tested with; sourced by cli/demo.sh and tests/run.sh.
# Quiet about what is already there. Works as root and with sudo.

lamwright_as_root() {
  if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi
}

# lamwright_install PACKAGE...
lamwright_install() {
  local missing=()
  local package
  for package in "$@"; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return 0
  echo "Installing: ${missing[*]}"
  lamwright_as_root env DEBIAN_FRONTEND=noninteractive apt-get update -qq
  lamwright_as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
}

# What a build needs. libtbb-dev, fontconfig, freetype and X11 are linked by the OpenCASCADE targets.
LAMWRIGHT_BUILD_PACKAGES=(
  g++ cmake ninja-build pkg-config libeigen3-dev libtomlplusplus-dev nlohmann-json3-dev libtinyxml2-dev
  libboost-program-options-dev libpolyclipping-dev libcairo2-dev zlib1g-dev libtbb-dev libfontconfig-dev libfreetype-dev libx11-dev
  libocct-foundation-dev libocct-modeling-data-dev libocct-modeling-algorithms-dev libocct-visualization-dev
  libocct-ocaf-dev libocct-data-exchange-dev libjs-three
)
# What the tests need on top.
LAMWRIGHT_TEST_PACKAGES=(
  catch2 librapidcheck-dev python3 python3-ezdxf python3-numpy poppler-utils chromium chromium-driver python3-selenium assimp-utils
  doxygen locales tzdata binutils
)
# What making the Debian packages and trying them in a clean Debian needs.
LAMWRIGHT_PACKAGING_PACKAGES=(dpkg-dev file mmdebstrap)

# Builds run on all cores but never more than the memory carries (about 1.5 GB a compiler).
lamwright_jobs() {
  local cores memory
  cores=$(nproc)
  memory=$(awk '/MemAvailable/ {print int($2 / 1572864)}' /proc/meminfo)
  [ "$memory" -lt 1 ] && memory=1
  echo $((cores < memory ? cores : memory))
}
