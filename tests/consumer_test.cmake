# Builds and runs a stranger's project in WORK, WAY being add_subdirectory, or find_package or pkg_config of what is
# installed under PREFIX.
include(${CMAKE_CURRENT_LIST_DIR}/run.cmake)
file(REMOVE_RECURSE ${WORK})
file(MAKE_DIRECTORY ${WORK}/build)

if(WAY STREQUAL pkg_config)
  file(GLOB_RECURSE pc ${PREFIX}/hydro.pc)
  cmake_path(GET pc PARENT_PATH folder)
  set(ENV{PKG_CONFIG_PATH} ${folder})
  cmake_path(GET folder PARENT_PATH libraries)
  set(ENV{LD_LIBRARY_PATH} ${libraries})
  run(sh -c "${COMPILER} ${FLAGS} -std=c++20 ${SOURCE}/tests/consumer/stranger.cpp \
             $(${PKG_CONFIG} --cflags --libs hydro) -o ${WORK}/build/stranger")
else()
  run(${CMAKE_COMMAND} -S ${SOURCE}/tests/consumer/${WAY} -B ${WORK}/build -D CMAKE_BUILD_TYPE=Debug
      -D CMAKE_CXX_COMPILER=${COMPILER} "-DCMAKE_CXX_FLAGS=${FLAGS}" -D CMAKE_PREFIX_PATH=${PREFIX} -D HYDRO=${SOURCE})
  run(${CMAKE_COMMAND} --build ${WORK}/build --parallel 2)
endif()
run(${WORK}/build/stranger)
if(NOT output MATCHES "^3[0-9]\\.[0-9]+\n$")
  message(FATAL_ERROR "the stranger printed '${output}', not the pressure of outlet 24")
endif()
