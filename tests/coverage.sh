#!/bin/sh
# Builds the library, its tests, the programs and the examples without optimisation, runs them, and says how many lines
# and branches of hydro/ they come to; fails below 95 % and 85 %. Branches that only exceptions take do not count. What
# is not come to stands, file by file, in the folder of the build: not_covered.txt.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
HYDRO_BUILD=${HYDRO_BUILD:-$root/build/coverage}
. "$root/examples/setup.sh"

install g++ make cmake libboost-dev libfmt-dev libtomlplusplus-dev nlohmann-json3-dev libeigen3-dev libhwy-dev libcli11-dev \
  libgtest-dev libgmock-dev libsundials-dev gcovr
compile all -DCMAKE_CXX_COMPILER=g++ -DCMAKE_BUILD_TYPE=Debug '-DCMAKE_CXX_FLAGS=-O0 --coverage' -DHYDRO_STRICT=ON \
  -DHYDRO_PYTHON=OFF -DHYDRO_BENCHMARKS=OFF -DHYDRO_EXAMPLES=ON -DHYDRO_TESTS=ON -DBUILD_SHARED_LIBS=OFF

# Counts of an earlier run would be added to.
find "$build" -name '*.gcda' -delete
# Left out is what only compiles and installs.
ctest --test-dir "$build" --output-on-failure --parallel "$(nproc)" --timeout 3600 \
  --exclude-regex '^(must_not_compile\.|floors|headers_alone|api_reference|installed|consumer\.|packages)'

cd "$root"
gcovr --root . --filter 'hydro/' --object-directory "$build" -j "$(nproc)" \
  --exclude-throw-branches --exclude-unreachable-branches --fail-under-line 95 --fail-under-branch 85 \
  --txt "$build/not_covered.txt" --print-summary
