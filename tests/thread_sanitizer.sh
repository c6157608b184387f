#!/bin/sh
# Builds the library and the tests in which threads work together with clang++ under the thread sanitizer, and runs them.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
HYDRO_BUILD=${HYDRO_BUILD:-$root/build/threads}
. "$root/examples/setup.sh"

install clang libclang-rt-dev make cmake libboost-dev libfmt-dev libtomlplusplus-dev nlohmann-json3-dev libeigen3-dev \
  libhwy-dev libgtest-dev libgmock-dev libsundials-dev
compile hydro_thread_tests -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=None \
  '-DCMAKE_CXX_FLAGS=-O1 -gline-tables-only -fsanitize=thread' -DHYDRO_STRICT=ON -DHYDRO_PYTHON=OFF -DHYDRO_BENCHMARKS=OFF \
  -DHYDRO_EXAMPLES=OFF -DHYDRO_TESTS=ON -DBUILD_SHARED_LIBS=OFF

# Of the tests in these files those of threads: more of one thread shows nothing more.
TSAN_OPTIONS=halt_on_error=1 "$build/tests/hydro_thread_tests" --gtest_brief=1 \
  --gtest_filter='ManyThreads.*:InParallel.*:FirstOf.*:*Thread*:*Stop*'
