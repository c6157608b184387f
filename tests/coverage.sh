#!/bin/sh
# Compiles the library without optimisation, runs all tests, programs and examples with it, and says how many of its
# lines and branches they come to; fails below 95 % and 85 %. Branches that only exceptions take do not count. The
# folder of the build has what is not come to, file by file: not_covered.txt.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
HYDRO_BUILD=${HYDRO_BUILD:-$root/build/coverage}
. "$root/examples/setup.sh"

install g++ make cmake libboost-dev libfmt-dev libtomlplusplus-dev nlohmann-json3-dev libeigen3-dev libhwy-dev libcli11-dev \
  libgtest-dev libgmock-dev libsundials-dev gcovr
compile all -DCMAKE_PROJECT_INCLUDE="$root/tests/coverage.cmake" -DCMAKE_CXX_COMPILER=g++ -DHYDRO_STRICT=ON \
  -DHYDRO_PYTHON=OFF -DHYDRO_BENCHMARKS=OFF -DHYDRO_EXAMPLES=ON -DHYDRO_TESTS=ON -DBUILD_SHARED_LIBS=ON

# Counts of an earlier run would be added to.
find "$build" -name '*.gcda' -delete
rm -f "$build/failed"
# Each process adds to one file of counts for each of the library's, so the unit tests share as few as there are
# processors.
shards=$(nproc)
for shard in $(seq 0 $((shards - 1))); do
  (
    export GTEST_TOTAL_SHARDS="$shards" GTEST_SHARD_INDEX="$shard"
    "$build/tests/hydro_tests" --gtest_brief=1 >"$build/shard_$shard.log" 2>&1 || touch "$build/failed"
  ) &
done
wait
tail -n 2 "$build"/shard_*.log
[ ! -e "$build/failed" ]
# Left out is what only compiles and installs.
ctest --test-dir "$build" --output-on-failure --parallel "$(nproc)" --timeout 3600 --label-exclude hydro_tests \
  --exclude-regex '^(must_not_compile\.|floors|headers_alone|api_reference|installed|consumer\.|packages)'

cd "$root"
gcovr --root . --filter 'hydro/' --object-directory "$build" -j "$(nproc)" \
  --exclude-throw-branches --exclude-unreachable-branches --fail-under-line 95 --fail-under-branch 85 \
  --txt "$build/not_covered.txt" --print-summary
