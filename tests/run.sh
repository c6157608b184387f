#!/bin/sh
# Runs every test.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
HYDRO_BUILD=${HYDRO_BUILD:-$root/build/tests}
. "$root/examples/setup.sh"

install g++ make cmake libboost-dev libfmt-dev libtomlplusplus-dev nlohmann-json3-dev libeigen3-dev libhwy-dev libcli11-dev \
  libgtest-dev libgmock-dev libsundials-dev libbenchmark-dev \
  python3-dev pybind11-dev python3-numpy python3-pytest python3-hypothesis python3-scipy python3-pandas \
  python3-matplotlib python3-joblib python3-distributed mypy \
  python3-venv python3-pip python3-setuptools python3-wheel ccache doxygen dpkg-dev file pkgconf
# Built as for the Debian packages, so that they are tried too; BUILD_SHARED_LIBS=OFF leaves them out.
compile all -DBUILD_SHARED_LIBS=ON -DCMAKE_INSTALL_PREFIX=/usr \
  -DHYDRO_EXAMPLES=ON -DHYDRO_TESTS=ON -DHYDRO_BENCHMARKS=ON

ctest --test-dir "$build" --output-on-failure --parallel "$(nproc)"
