"""Builds the distribution hydro-laterals, that is, the Python package hydro with its C++ module.

A source distribution is this repository without what only its developers need. There this file and
pyproject.toml lie at the top, where installers look for them; all else lies where it does here.
"""

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from setuptools import Extension, setup
from setuptools.command.build_ext import build_ext
from setuptools.command.sdist import sdist
from setuptools.errors import ExecError

NEEDS = """\
hydro is built from C++ sources. What went wrong stands above; usually one of these is missing or
too old: CMake (3.25), make, a C++20 compiler, the headers of Python, pybind11 (2.10), Boost (1.74),
fmt (9), toml++ and nlohmann-json. On Debian and Ubuntu:

  apt-get install g++ make cmake libboost-dev libfmt-dev libtomlplusplus-dev nlohmann-json3-dev libeigen3-dev libhwy-dev \\
    python3-dev pybind11-dev

More options for CMake are taken from the environment variable CMAKE_ARGS."""

here = Path(__file__).resolve().parent
root = here if (here / "bindings").is_dir() else here.parent
if not (root / "hydro" / "hydro.hpp").is_file():
    raise SystemExit(f"No C++ sources of hydro in {root}: build from a whole copy of them.")
os.chdir(root)  # setuptools looks for the licence here


def run(*command: str, quiet: bool = False) -> None:
    try:
        failure = subprocess.run(command, stdout=subprocess.DEVNULL if quiet else None).returncode
    except OSError as error:
        failure = error.strerror
    if failure:
        raise ExecError(f"{shlex.join(command)}\nended with: {failure}\n\n{NEEDS}")


class BuildByCMake(build_ext):
    def build_extension(self, ext: Extension) -> None:
        build = os.path.join(self.build_temp, "cmake")
        options = {
            "CMAKE_BUILD_TYPE": "Release",
            "CMAKE_MODULE_LINKER_FLAGS_RELEASE": "-s",
            "BUILD_SHARED_LIBS": "OFF",
            "HYDRO_TESTS": "OFF",
            "HYDRO_EXAMPLES": "OFF",
            "HYDRO_BENCHMARKS": "OFF",
            "Python_EXECUTABLE": sys.executable,
            "CMAKE_REQUIRE_FIND_PACKAGE_Python": "ON",
            "CMAKE_REQUIRE_FIND_PACKAGE_pybind11": "ON",
        }
        try:  # one that pip has fetched is where CMake does not look
            import pybind11
        except ImportError:
            pass
        else:
            options["pybind11_DIR"] = pybind11.get_cmake_dir()
        defines = [f"-D{name}={value}" for name, value in options.items()]
        defines += shlex.split(os.environ.get("CMAKE_ARGS", ""))
        os.environ.setdefault("CMAKE_BUILD_PARALLEL_LEVEL", str(os.cpu_count() or 1))
        run("cmake", "-S", str(root), "-B", build, *defines, quiet=True)
        run("cmake", "--build", build, "--config", "Release", "--target", "hydro_python")
        module = Path(self.get_ext_fullpath(ext.name))
        self.mkpath(str(module.parent))
        self.copy_file(os.path.join(build, "python", "hydro", module.name), str(module))


class SourceDistribution(sdist):
    def make_release_tree(self, base_dir: str, files: list[str]) -> None:
        lifted = [here / "pyproject.toml", here / "setup.py"]
        kept = [root / name for name in ("CMakeLists.txt", "LICENSE", "README.md")]
        for folder in (root / "hydro", root / "bindings"):
            kept += [path for path in folder.rglob("*") if path.suffix not in (".pyc", ".so")]
        for path in lifted + [path for path in kept if path.is_file() and path not in lifted]:
            copy = Path(base_dir) / (path.name if path in lifted else path.relative_to(root))
            self.mkpath(str(copy.parent))
            self.copy_file(str(path), str(copy))
        self.distribution.metadata.write_pkg_info(base_dir)


def version() -> str:
    found = re.search(r"project\(\s*hydro\s+VERSION\s+([\d.]+)", Path("CMakeLists.txt").read_text())
    if not found:
        raise SystemExit(f"No project(hydro VERSION ...) in {root / 'CMakeLists.txt'}")
    return found[1]


with TemporaryDirectory(prefix="hydro-") as scratch:  # nothing is left between the sources
    setup(
        name="hydro-laterals",
        version=version(),
        description="Pressure and flow along irrigation lines",
        long_description=Path("README.md").read_text(encoding="utf-8"),
        long_description_content_type="text/markdown",
        author="the hydro authors",
        license="MIT",
        license_files=["LICENSE"],
        classifiers=[
            "Operating System :: POSIX",
            "Programming Language :: C++",
            "Programming Language :: Python :: 3",
            "Topic :: Scientific/Engineering",
            "Typing :: Typed",
        ],
        python_requires=">=3.11",
        install_requires=["numpy"],
        extras_require={"plot": ["matplotlib"], "dataframe": ["pandas"], "progress": ["tqdm"]},
        packages=["hydro", "hydro.plot"],
        package_dir={"": "bindings"},
        package_data={"hydro": ["*.pyi", "py.typed"]},
        ext_modules=[Extension("hydro._hydro", sources=[])],
        cmdclass={"build_ext": BuildByCMake, "sdist": SourceDistribution},
        options={"build": {"build_base": scratch}, "egg_info": {"egg_base": scratch}},
        zip_safe=False,
    )
