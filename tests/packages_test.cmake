# Makes the Debian packages of BUILD in WORK, examines what they say and hold, unpacks them into WORK/root and runs
# check_line there. Needs no rights of an administrator.
include(${CMAKE_CURRENT_LIST_DIR}/run.cmake)
file(REMOVE_RECURSE ${WORK})
run(${CMAKE_COMMAND} -E chdir ${BUILD} cpack -B ${WORK})

string(REGEX MATCH "^[0-9]+\\.[0-9]+" soversion ${VERSION})
set(runtime libhydro${soversion})

# examine(PACKAGE DEPENDS FILE...): it depends on the first, a regular expression, and holds these files and its
# licence, no others. Headers are left to those who compile with them.
function(examine package depends)
  file(GLOB archive ${WORK}/${package}_${VERSION}_*.deb)
  run(dpkg-deb --field ${archive} Depends)
  if(NOT output MATCHES "${depends}")
    message(SEND_ERROR "${package} depends on '${output}', expected was ${depends}")
  endif()
  run(dpkg-deb -x ${archive} ${WORK}/${package})
  file(GLOB_RECURSE held RELATIVE ${WORK}/${package} ${WORK}/${package}/*)
  list(FILTER held EXCLUDE REGEX "^usr/include/|hydroTargets-[a-z]+\\.cmake$")
  set(expected ${ARGN} usr/share/doc/${package}/copyright)
  list(SORT held)
  list(SORT expected)
  if(NOT held STREQUAL expected)
    message(SEND_ERROR "${package} holds\n${held}\nexpected were\n${expected}")
  endif()
  run(dpkg-deb -x ${archive} ${WORK}/root)
endfunction()

set(system_libraries "libc6 [^,]*, libgcc-s1 [^,]*, libstdc\\+\\+6 [^,]*\n$")
set(vector_library_too "libc6 [^,]*, libgcc-s1 [^,]*, libhwy1 [^,]*, libstdc\\+\\+6 [^,]*\n$")
set(this_version "${runtime} \\(= ${VERSION}\\)")
examine(${runtime} "^${vector_library_too}" ${LIB}/libhydro.so.${soversion} ${LIB}/libhydro.so.${VERSION})
examine(
  libhydro-dev "^${this_version}, libboost-dev \\(>= 1\\.74\\)\n$"
  ${LIB}/libhydro.so ${LIB}/pkgconfig/hydro.pc ${LIB}/cmake/hydro/hydroConfig.cmake
  ${LIB}/cmake/hydro/hydroConfigVersion.cmake ${LIB}/cmake/hydro/hydroTargets.cmake)
set(programs usr/bin/check_line usr/bin/find_fault usr/bin/plan_day)
foreach(example bench gauge_low gauge_low_too ring strips)
  list(APPEND examples usr/share/doc/hydro-laterals/examples/ouzel_${example}.toml)
endforeach()
examine(hydro-laterals "^${this_version}, ${system_libraries}" ${programs} ${examples})

set(ENV{LD_LIBRARY_PATH} ${WORK}/root/${LIB})
execute_process(COMMAND ${WORK}/root/usr/bin/check_line ${WORK}/root/usr/share/doc/hydro-laterals/examples/ouzel_strips.toml
                RESULT_VARIABLE status OUTPUT_VARIABLE said)
if(NOT status EQUAL 1 OR NOT said MATCHES "outlet 7 is broken")
  message(FATAL_ERROR "check_line ended with ${status} and said\n${said}")
endif()
