# setup.sh: readies a Debian (12 or later) or Ubuntu (24.04 or later) machine and builds. Read by examples/run.sh,
# tests/run.sh and tests/fuzz/run.sh, not run by itself.
#
#   root                   of the project, where the script that reads this does not lie one folder below it
#   CXX, CXXFLAGS          choose the compiler and its flags
#   HYDRO_BUILD            folder of the build, default build/run
#   HYDRO_CMAKE_OPTIONS    more options for cmake

root=${root:-$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)}
build=${HYDRO_BUILD:-$root/build/run}

say() {
  printf '%s\n' "$*" >&2
}

# install PACKAGE...: installs those that are missing; asks nothing.
install() {
  if ! command -v dpkg-query >/dev/null 2>&1; then
    say "This is neither Debian nor Ubuntu: building with what is here. Wanted are what these packages hold: $*"
    return 0
  fi
  missing=
  for package in "$@"; do
    case $(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null) in
      installed) ;;
      *) missing="$missing $package" ;;
    esac
  done
  [ -n "$missing" ] || return 0

  if [ "$(id -u)" -eq 0 ]; then
    as_root=
  elif command -v sudo >/dev/null 2>&1 && sudo -n true 2>/dev/null; then
    as_root='sudo -n'
  else
    say "Some packages are missing and only an administrator can install them:"
    say "  apt-get update && apt-get install -y --no-install-recommends$missing"
    exit 1
  fi
  say "Installing:$missing"
  # shellcheck disable=SC2086  # words are wanted
  { $as_root apt-get -q update &&
    $as_root env DEBIAN_FRONTEND=noninteractive \
      apt-get -q install -y --no-install-recommends $missing; } >&2 </dev/null
}

# compile TARGETS OPTION...: configures once and builds the targets, names with spaces between.
compile() {
  targets=$1
  shift
  # shellcheck disable=SC2086  # words are wanted
  cmake -S "$root" -B "$build" "$@" ${HYDRO_CMAKE_OPTIONS-} >"$root/build/configure.log" 2>&1 || {
    cat "$root/build/configure.log" >&2
    exit 1
  }
  # shellcheck disable=SC2086  # words are wanted
  cmake --build "$build" --target $targets --parallel "$(nproc)" >"$root/build/compile.log" 2>&1 || {
    cat "$root/build/compile.log" >&2
    exit 1
  }
}

mkdir -p "$root/build"
