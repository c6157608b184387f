#!/bin/sh
# Runs clang-tidy with the checks of .clang-tidy over the library and the examples, or over the files that are named.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
HYDRO_BUILD=${HYDRO_BUILD:-$root/build/tidy}
. "$root/examples/setup.sh"

install clang clang-tidy make cmake libboost-dev libfmt-dev libtomlplusplus-dev nlohmann-json3-dev libeigen3-dev libhwy-dev \
  libcli11-dev
# Only the list of commands is wanted, without the cache before the compiler's name.
cmake -S "$root" -B "$build" -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_CXX_COMPILER_LAUNCHER= -DCMAKE_EXPORT_COMPILE_COMMANDS=ON \
  -DHYDRO_PYTHON=OFF -DHYDRO_BENCHMARKS=OFF -DHYDRO_TESTS=OFF -DHYDRO_EXAMPLES=ON >/dev/null

cd "$root"
[ $# -gt 0 ] || set -- hydro/*/*.cpp examples/*.cpp
printf '%s\n' "$@" | xargs -P "$(nproc)" -n 1 clang-tidy -p "$build" --quiet
