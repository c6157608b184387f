#!/bin/sh
# Fuzzes every target for so many seconds; fails when one finds something, and tells where the input lies.
#
#   sh tests/fuzz/run.sh 20
#
# HYDRO_FUZZ_SEED makes a run like another; without it each goes its own way.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
seconds=${1:?how many seconds for each target?}
HYDRO_BUILD=${HYDRO_BUILD:-$root/build/fuzz}
. "$root/examples/setup.sh"

install make cmake libboost-dev libfmt-dev libtomlplusplus-dev nlohmann-json3-dev libeigen3-dev libhwy-dev clang libclang-rt-dev
export CXX=clang++ CXXFLAGS='-O1 -g'
compile fuzz -DHYDRO_FUZZ=ON -DHYDRO_TESTS=OFF -DHYDRO_EXAMPLES=OFF -DHYDRO_BENCHMARKS=OFF -DHYDRO_PYTHON=OFF \
  -DHYDRO_STRICT=ON -DCMAKE_BUILD_TYPE=None

# fuzz TARGET: goes on from what earlier runs left in the build folder; what it finds lies beside.
fuzz() {
  here=$root/tests/fuzz
  mkdir -p "$build/corpus/$1" "$build/found"
  set -- "$1" "$build/corpus/$1" "$here/corpus/$1"
  [ ! -d "$here/regressions/$1" ] || set -- "$@" "$here/regressions/$1"
  target=$1
  shift
  case $target in
    solve_layout) set -- -max_len=2048 "$@" ;;
    *) set -- -dict="$here/words.dict" -use_value_profile=1 "$@" ;;
  esac
  "$build/tests/fuzz/fuzz_$target" -max_total_time="$seconds" -seed="${HYDRO_FUZZ_SEED:-0}" -timeout=20 -rss_limit_mb=2048 \
    -artifact_prefix="$build/found/$target-" -print_final_stats=1 "$@" \
    >"$build/$target.log" 2>&1 && found=0 || found=1
  sed -n 's/^stat::number_of_executed_units: */'"$target"': inputs tried: /p' "$build/$target.log"
  [ "$found" -eq 0 ] || {
    tail -n 40 "$build/$target.log" >&2
    return 1
  }
}

status=0
for each in fault_text layout_file solve_layout unit_text; do
  fuzz $each || status=1
done
exit $status
