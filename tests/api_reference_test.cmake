# Makes the API reference of BUILD and fails if Doxygen warns of anything, or if one of HEADERS does not begin with the
# block that the reference shows. Every type needs a sentence; members whose names say it all need none.
include(${CMAKE_CURRENT_LIST_DIR}/run.cmake)
set(docs ${BUILD}/hydro_docs)
file(REMOVE ${docs}/warnings.txt)
run(${CMAKE_COMMAND} --build ${BUILD} --target hydro_docs)
if(output MATCHES "warning:|error:")
  message(SEND_ERROR "Doxygen does not understand hydro/api_reference.cmake:\n${output}")
endif()
file(READ ${docs}/warnings.txt warnings)
string(REGEX REPLACE "[^\n]*: Member [^\n]* is not documented\\.\n" "" warnings "${warnings}")
if(warnings)
  string(REPLACE "\n" "\n  " warnings "\n${warnings}") # indented, so that CMake leaves the lines as they are
  message(SEND_ERROR "Doxygen warns:${warnings}")
endif()

foreach(header ${HEADERS})
  cmake_path(GET header FILENAME name)
  file(READ ${header} text)
  if(NOT text MATCHES "^// ${name}: [^\n]+\n(// [^\n]+\n)*//\n(//( [^\n]+)?\n)+#pragma once\n")
    message(SEND_ERROR "${header} does not begin with '// ${name}: ' and a sentence, a line '//', the file block, and "
                       "'#pragma once'")
  endif()
endforeach()
file(READ ${docs}/html/friction_8hpp.html page)
if(NOT page MATCHES "Hazen-Williams   h = 10.67 L Q")
  message(SEND_ERROR "the reference does not show the formulas of friction.hpp")
endif()
