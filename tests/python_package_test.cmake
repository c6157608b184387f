# Installs the Python package by pip as a user without a network does, from the sources and from a source distribution,
# and uses it. PYTHON is the interpreter to make the virtual environment with. What is compiled is not optimised: other
# tests try the module itself.
include(${CMAKE_CURRENT_LIST_DIR}/run.cmake)
file(REMOVE_RECURSE ${WORK})
set(copied ${WORK}/repository/source)
set(unpacked ${WORK}/distribution/source)
file(MAKE_DIRECTORY ${WORK}/elsewhere)
foreach(part CMakeLists.txt LICENSE README.md hydro bindings)
  file(COPY ${SOURCE}/${part} DESTINATION ${copied} PATTERN __pycache__ EXCLUDE)
endforeach()
file(TOUCH ${copied}/bindings/hydro/_hydro.so) # as an editable installation leaves one

# The machine's own settings of pip must not help. Both builds lie alike in WORK, so that ccache, where it is, knows the
# second from the first.
set(ENV{PIP_CONFIG_FILE} /dev/null)
set(pip ${WORK}/venv/bin/python -m pip --isolated --disable-pip-version-check)
set(offline --no-build-isolation --no-index)
set(ENV{CXX} ${COMPILER})
set(ENV{CMAKE_ARGS} -DCMAKE_CXX_FLAGS_RELEASE=-O0)
find_program(CCACHE ccache)
if(CCACHE)
  set(ENV{CMAKE_CXX_COMPILER_LAUNCHER} ${CCACHE})
  set(ENV{CCACHE_BASEDIR} ${WORK})
  set(ENV{CCACHE_NOHASHDIR} true)
endif()

# files(FOLDER OUT): all files under it.
function(files folder out)
  file(GLOB_RECURSE found RELATIVE ${folder} ${folder}/*)
  set(${out} "${found}" PARENT_SCOPE)
endfunction()

# expect_files(WHAT FOLDER FILE...): it holds these files, no others.
function(expect_files what folder)
  files(${folder} unexpected)
  set(missing ${ARGN})
  list(REMOVE_ITEM missing ${unexpected})
  list(REMOVE_ITEM unexpected ${ARGN})
  if(missing OR unexpected)
    message(SEND_ERROR "${what} lacks '${missing}' and should not have '${unexpected}'")
  endif()
endfunction()

# build_with(FOLDER ...): runs a command that builds from FOLDER/source, which it must leave as it is.
function(build_with folder)
  files(${folder}/source before)
  file(MAKE_DIRECTORY ${folder}/temporary)
  set(ENV{TMPDIR} ${folder}/temporary)
  run(${ARGN})
  expect_files("${folder}/source after the build" ${folder}/source ${before})
endfunction()

# The loss in 1 ft of 3 in pipe is far below 1e-3 psi.
file(WRITE ${WORK}/elsewhere/yard.toml [[
supply.pressure = "30 psi"
pipe.wide = { inside_diameter = "3 in", hazen_williams = 150 }
outlet.spray = { flow = "1.2 gpm", at = "30 psi" }
line = [{ name = "row", pipe = "wide", outlet = "spray", count = 1, spacing = "1 ft" }]
]])
file(WRITE ${WORK}/elsewhere/use.py "
import importlib.metadata, pathlib, sys
import hydro
assert pathlib.Path(hydro.__file__).is_relative_to(sys.prefix), hydro.__file__
assert hydro.__version__ == importlib.metadata.version('hydro-laterals') == '${VERSION}', hydro.__version__
row = hydro.solve(hydro.read_layout('yard.toml')).line('row')
assert abs(row.pressure.to(hydro.psi)[0] - 30) < 1e-3, row.pressure
assert abs(row.flow.to(hydro.gpm)[0] - 1.2) < 1e-4, row.flow
")
function(use_and_uninstall)
  run(${CMAKE_COMMAND} -E chdir ${WORK}/elsewhere ${WORK}/venv/bin/python -I -W error use.py)
  run(${pip} uninstall --yes hydro-laterals)
  file(GLOB_RECURSE left ${WORK}/venv/lib/*hydro*)
  if(left)
    message(SEND_ERROR "uninstalled, but there still are\n${left}")
  endif()
endfunction()

run(${PYTHON} -m venv --system-site-packages ${WORK}/venv)
build_with(${WORK}/repository ${pip} install ${offline} ${copied}/bindings)
use_and_uninstall()

build_with(${WORK}/repository ${CMAKE_COMMAND} -E chdir ${copied}/bindings ${WORK}/venv/bin/python -c
           "__import__('setuptools.build_meta').build_meta.build_sdist('${WORK}/distribution')")
file(GLOB archive ${WORK}/distribution/*.tar.gz)
file(ARCHIVE_EXTRACT INPUT ${archive} DESTINATION ${WORK}/distribution)
file(GLOB folder ${WORK}/distribution/hydro?laterals-${VERSION}) # - or _ depends on setuptools
file(RENAME ${folder} ${unpacked})
files(${copied} expected)
list(FILTER expected EXCLUDE REGEX "\\.so$")
list(TRANSFORM expected REPLACE "^bindings/(setup\\.py|pyproject\\.toml)$" "\\1")
expect_files("the source distribution" ${unpacked} ${expected} PKG-INFO)

build_with(${WORK}/distribution ${pip} wheel ${offline} --no-deps --wheel-dir ${WORK}/distribution ${unpacked})
file(GLOB wheel ${WORK}/distribution/*.whl)
file(ARCHIVE_EXTRACT INPUT ${wheel} DESTINATION ${WORK}/wheel)
file(GLOB_RECURSE package RELATIVE ${copied}/bindings ${copied}/bindings/hydro/*)
list(FILTER package EXCLUDE REGEX "\\.so$")
file(GLOB module RELATIVE ${WORK}/wheel ${WORK}/wheel/hydro/_hydro.*.so)
set(metadata hydro_laterals-${VERSION}.dist-info)
file(GLOB_RECURSE licence RELATIVE ${WORK}/wheel ${WORK}/wheel/${metadata}/LICENSE) # its place depends on setuptools
expect_files("the wheel" ${WORK}/wheel ${package} ${module} ${licence} ${metadata}/METADATA ${metadata}/RECORD
             ${metadata}/WHEEL ${metadata}/top_level.txt)
run(${CMAKE_COMMAND} -E compare_files ${WORK}/wheel/${licence} ${SOURCE}/LICENSE)
file(READ ${WORK}/wheel/${metadata}/METADATA said)
foreach(line "Name: hydro-laterals" "Version: ${VERSION}" "License(-Expression)?: MIT" "Requires-Dist: numpy" "# hydro")
  if(NOT said MATCHES "\n${line}\n")
    message(SEND_ERROR "the wheel's METADATA has no line '${line}'")
  endif()
endforeach()
run(${pip} install ${offline} ${wheel})
use_and_uninstall()
